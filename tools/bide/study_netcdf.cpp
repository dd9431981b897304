#include "study_netcdf.hpp"

#ifndef BIDE_NETCDF

namespace bide::tool {
std::optional<std::string> why_no_netcdf() {
  return "this program was built without NetCDF (libnetcdf-dev)";
}
std::optional<std::string> write_study_netcdf(const study::Study&, const std::filesystem::path&,
                                              const std::filesystem::path&) {
  return why_no_netcdf();
}
}  // namespace bide::tool

#else

#include <fmt/format.h>
#include <netcdf.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <stdexcept>
#include <vector>

#include "bide/core/notice.hpp"
#include "bide/core/text.hpp"
#include "bide/core/time_utc.hpp"
#include "bide/report/study/study_table.hpp"
#include "bide/report/study/study_text.hpp"
#include "bide/report/words/file.hpp"
#include "bide/study/questions/outputs.hpp"
#include "bide/system/limits.hpp"

namespace bide::tool {
namespace {

constexpr std::size_t rows_at_once = 1024;

void must(int status) {
  if (status != NC_NOERR) throw std::runtime_error(nc_strerror(status));
}

// A file being written; closed by close(), or left behind unfinished.
class File {
 public:
  explicit File(const std::filesystem::path& path) {
    must(nc_create(path.c_str(), NC_NETCDF4 | NC_CLOBBER, &id_));
  }
  ~File() {
    if (open_) nc_close(id_);
  }
  File(const File&) = delete;
  File& operator=(const File&) = delete;
  void close() {
    open_ = false;
    must(nc_close(id_));
  }
  int id() const { return id_; }
  void text(int variable, const char* name, std::string_view value) const {
    must(nc_put_att_text(id_, variable, name, value.size(), value.data()));
  }

 private:
  int id_ = 0;
  bool open_ = true;
};

// As UDUNITS-2 knows them.
std::string udunits(const std::string& unit) {
  if (unit == "ppm") return "1e-6";
  if (unit == "mOsm/kg") return "mmol kg-1";
  return unit.empty() ? "1" : unit;
}

struct Row {
  const study::SampleResult& result;
  study::Drawn drawn;
};

// One variable over the samples: numbers, flags or words.
struct Variable {
  enum class Kind { number, flag, words };
  std::string name, long_name, units;
  Kind kind = Kind::number;
  std::function<double(const Row&)> number{};
  std::function<std::string(const Row&)> words{};
  int id = 0;
  std::vector<double> numbers{};
  std::vector<std::string> texts{};
};

std::string hours_since(const study::Study& study) {
  const auto& u = *study.scenario().scenario.uncertain;
  const bool start_varies = std::any_of(u.inputs.entries.begin(), u.inputs.entries.end(),
                                        [](const auto& each) { return each.first == "/start_time_utc"; });
  return start_varies ? "h" : "hours since " + format_time_utc(study.scenario().start_unix_s);
}

using Kind = Variable::Kind;

std::vector<Variable> variables(const study::Study& study) {
  std::vector<Variable> out;
  out.push_back({"sample", "number of the sample", "1", Kind::number,
                 [](const Row& row) { return static_cast<double>(row.result.index); }});
  for (const report::InputColumn& column : report::input_columns(study)) {
    Variable input{"input_" + underscored(lower_case(column.name)), "input " + column.name,
                   udunits(column.unit)};
    if (column.is_number) {
      input.number = [column](const Row& row) {
        return column.of(row.drawn).number.value_or(study::not_there);
      };
    } else {
      input.kind = Kind::words;
      input.words = [column](const Row& row) { return column.of(row.drawn).words; };
    }
    out.push_back(std::move(input));
  }
  const std::string time_units = hours_since(study);
  for (const study::Output& output : study::outputs(static_cast<int>(study.persons())))
    out.push_back({underscored(lower_case(output.name)), output.name,
                   output.is_time ? time_units : udunits(output.unit), Kind::number,
                   [output](const Row& row) {
                     return row.result.failure.empty() ? output.of(row.result) : study::not_there;
                   }});
  for (std::size_t p = 0; p < study.persons(); ++p) {
    const auto cause = [&](const char* what, system::Limit study::PersonResult::*why) {
      out.push_back({fmt::format("person_{}_{}_cause", p + 1, what),
                     fmt::format("what ends person {} being {}", p + 1, what), "1", Kind::flag,
                     [p, why](const Row& row) {
                       const auto limit =
                           row.result.failure.empty() ? row.result.persons[p].*why : system::Limit::none;
                       return static_cast<double>(limit);
                     }});
    };
    cause("able", &study::PersonResult::able_cause);
    cause("alive", &study::PersonResult::alive_cause);
  }
  out.push_back({"failed_because",
                 "why a sample has no result; empty when it has",
                 "",
                 Kind::words,
                 {},
                 [](const Row& row) { return row.result.failure; }});
  return out;
}

void define(const File& file, int dimension, Variable& variable) {
  const nc_type type = variable.kind == Kind::words  ? NC_STRING
                       : variable.kind == Kind::flag ? NC_BYTE
                                                     : NC_DOUBLE;
  must(nc_def_var(file.id(), variable.name.c_str(), type, 1, &dimension, &variable.id));
  file.text(variable.id, "long_name", variable.long_name);
  if (variable.kind == Kind::number) {
    constexpr double fill = std::numeric_limits<double>::quiet_NaN();
    file.text(variable.id, "units", variable.units);
    if (variable.name != "sample")
      must(nc_put_att_double(file.id(), variable.id, "_FillValue", NC_DOUBLE, 1, &fill));
    constexpr int shuffle = 1, compress = 1, level = 4;
    must(nc_def_var_deflate(file.id(), variable.id, shuffle, compress, level));
  }
  if (variable.kind == Kind::flag) {
    std::vector<signed char> values;
    std::string meanings;
    for (int i = 0; i <= static_cast<int>(system::Limit::none); ++i) {
      const std::string name = system::name_of(static_cast<system::Limit>(i));
      values.push_back(static_cast<signed char>(i));
      meanings += (i == 0 ? "" : " ") + (name.empty() ? "none" : name);
    }
    must(nc_put_att_schar(file.id(), variable.id, "flag_values", NC_BYTE, values.size(), values.data()));
    file.text(variable.id, "flag_meanings", meanings);
  }
}

void put_rows(const File& file, Variable& variable, std::size_t start, std::size_t count) {
  if (variable.kind == Kind::words) {
    std::vector<const char*> pointers;
    for (const std::string& text : variable.texts) pointers.push_back(text.c_str());
    must(nc_put_vara_string(file.id(), variable.id, &start, &count, pointers.data()));
    variable.texts.clear();
  } else {
    must(nc_put_vara_double(file.id(), variable.id, &start, &count, variable.numbers.data()));
    variable.numbers.clear();
  }
}

void write(const study::Study& study, const std::filesystem::path& records,
           const std::filesystem::path& path) {
  File file(path);
  file.text(NC_GLOBAL, "Conventions", "CF-1.10");
  file.text(NC_GLOBAL, "title", study.file().name);
  file.text(NC_GLOBAL, "source", "bide, scenario: " + study.scenario().scenario.name);
  file.text(NC_GLOBAL, "comment",
            fmt::format("{} {} {}", standing_notice, standing_advice, study.file().setting));
  file.text(NC_GLOBAL, "design", report::design_words(study));
  file.text(
      NC_GLOBAL, "missing_times",
      fmt::format(
          "A time that is missing was not reached within the {} h simulated, which says nothing of what "
          "comes after; a failed sample has its reason in failed_because.",
          study.scenario().scenario.duration_h));
  int dimension = 0;
  must(nc_def_dim(file.id(), "sample", study.plan().size(), &dimension));
  std::vector<Variable> all = variables(study);
  for (Variable& variable : all) define(file, dimension, variable);
  must(nc_enddef(file.id()));

  std::size_t held = 0, written = 0;
  const auto flush = [&] {
    for (Variable& variable : all) put_rows(file, variable, written, held);
    written += held;
    held = 0;
  };
  study.read(records, [&](const study::SampleResult& result) {
    const Row row{result, study.draw(result.index)};
    for (Variable& variable : all) {
      if (variable.kind == Kind::words) {
        variable.texts.push_back(variable.words(row));
      } else {
        const double value = variable.number(row);
        const bool finite = std::isfinite(value);
        variable.numbers.push_back(finite ? value : std::numeric_limits<double>::quiet_NaN());
      }
    }
    if (++held == rows_at_once) flush();
  });
  if (held > 0) flush();
  file.close();
}

}  // namespace

std::optional<std::string> why_no_netcdf() {
  return std::nullopt;
}

std::optional<std::string> write_study_netcdf(const study::Study& study, const std::filesystem::path& records,
                                              const std::filesystem::path& path) {
  try {
    report::NewFile fresh(path);
    write(study, records, fresh.beside());
    fresh.keep();
  } catch (const std::exception& error) {
    return error.what();
  }
  return std::nullopt;
}

}  // namespace bide::tool

#endif
