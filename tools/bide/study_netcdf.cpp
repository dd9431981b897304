#include "study_netcdf.hpp"

#ifndef BIDE_NETCDF

namespace bide::tool {
std::optional<std::string> why_no_netcdf() {
  return "this program was built without NetCDF (libnetcdf-dev)";
}
std::optional<std::string> write_study_netcdf(const study::Study&, const std::filesystem::path&,
                                              const std::filesystem::path&, const std::string&) {
  return why_no_netcdf();
}
}  // namespace bide::tool

#else

#include <fmt/format.h>
#include <netcdf.h>

#include <array>
#include <cmath>
#include <functional>
#include <limits>
#include <stdexcept>
#include <vector>

#include "bide/core/file.hpp"
#include "bide/core/people.hpp"
#include "bide/core/text.hpp"
#include "bide/report/study/study_table.hpp"
#include "bide/report/study/study_text.hpp"
#include "bide/report/words/attributes.hpp"
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

// One variable over the samples, or over samples and people: numbers, whole numbers, flags or words.
struct Variable {
  enum class Kind { number, whole, flag, words };
  std::string name, long_name, units;
  Kind kind = Kind::number;
  bool by_person = false;
  std::function<double(const Row&, std::size_t person)> number{};
  std::function<std::string(const Row&)> words{};
  int id = 0;
  std::vector<double> numbers{};
  std::vector<std::string> texts{};
};
using Kind = Variable::Kind;

void add_inputs(const study::Study& study, std::vector<Variable>& out) {
  for (const report::InputColumn& column : report::input_columns(study)) {
    Variable input{"input_" + underscored(lower_case(column.name)), "input " + column.name,
                   udunits(column.unit)};
    if (column.is_number) {
      input.number = [column](const Row& row, std::size_t) {
        return column.of(row.drawn).number.value_or(study::not_there);
      };
    } else {
      input.kind = Kind::words;
      input.words = [column](const Row& row) { return column.of(row.drawn).words; };
    }
    out.push_back(std::move(input));
  }
}

// A figure of one person is one variable over all of them. Times are plain hours: as times of a calendar or
// as durations they would be decoded to what has no value for "not reached".
void add_figures(const study::Study& study, std::vector<Variable>& out) {
  const std::vector<study::Output> outputs = study::outputs(static_cast<int>(study.persons()));
  for (const study::Output& output : outputs) {
    if (output.person > 0) continue;
    std::vector<study::Output> of_persons;
    for (const study::Output& each : outputs)
      if (each.figure == output.figure && (each.person < 0) == (output.person < 0))
        of_persons.push_back(each);
    Variable figure{underscored(lower_case(output.figure)),
                    output.figure + (output.is_time ? ", time since the start; missing if not reached" : ""),
                    udunits(output.unit)};
    figure.by_person = output.person == 0;
    figure.number = [of_persons = std::move(of_persons)](const Row& row, std::size_t p) {
      return row.result.failure.empty() ? of_persons[p].of(row.result) : study::not_there;
    };
    out.push_back(std::move(figure));
  }
}

void add_cause(std::vector<Variable>& out, const std::string& what, system::Limit study::PersonResult::*why) {
  Variable cause{what + "_cause", "what ends being " + what, "", Kind::flag, true};
  cause.number = [why](const Row& row, std::size_t p) {
    const auto limit = row.result.failure.empty() ? row.result.persons[p].*why : system::Limit::none;
    return static_cast<double>(limit);
  };
  out.push_back(std::move(cause));
}

std::vector<Variable> variables(const study::Study& study) {
  std::vector<Variable> out;
  out.push_back({"sample", "number of the sample, from 0", "1", Kind::whole, false,
                 [](const Row& row, std::size_t) { return static_cast<double>(row.result.index); }});
  add_inputs(study, out);
  add_figures(study, out);
  add_cause(out, "able", &study::PersonResult::able_cause);
  add_cause(out, "alive", &study::PersonResult::alive_cause);
  Variable failed{"failed_because", "why a sample has no result; empty when it has", "", Kind::words};
  failed.words = [](const Row& row) { return row.result.failure; };
  out.push_back(std::move(failed));
  return out;
}

nc_type type_of(Kind kind) {
  switch (kind) {
    case Kind::number:
      return NC_DOUBLE;
    case Kind::whole:
      return NC_INT64;
    case Kind::flag:
      return NC_BYTE;
    case Kind::words:
      return NC_STRING;
  }
  return NC_DOUBLE;
}

struct Dimensions {
  int sample = 0, person = 0;
};

void define(const File& file, const Dimensions& dimensions, Variable& variable) {
  const std::array<int, 2> over{dimensions.sample, dimensions.person};
  must(nc_def_var(file.id(), variable.name.c_str(), type_of(variable.kind), variable.by_person ? 2 : 1,
                  over.data(), &variable.id));
  file.text(variable.id, "long_name", variable.long_name);
  if (!variable.units.empty()) file.text(variable.id, "units", variable.units);
  if (variable.kind == Kind::number) {
    constexpr double fill = std::numeric_limits<double>::quiet_NaN();
    must(nc_put_att_double(file.id(), variable.id, "_FillValue", NC_DOUBLE, 1, &fill));
  }
  if (variable.kind == Kind::number || variable.kind == Kind::whole) {
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

void put_rows(const File& file, Variable& variable, std::size_t first, std::size_t rows,
              std::size_t persons) {
  const std::array start{first, std::size_t{0}}, count{rows, persons};
  if (variable.kind == Kind::words) {
    std::vector<const char*> pointers;
    for (const std::string& text : variable.texts) pointers.push_back(text.c_str());
    must(nc_put_vara_string(file.id(), variable.id, start.data(), count.data(), pointers.data()));
    variable.texts.clear();
  } else {
    must(nc_put_vara_double(file.id(), variable.id, start.data(), count.data(), variable.numbers.data()));
    variable.numbers.clear();
  }
}

// The file of a study is the same bytes whenever it is written.
void describe(const File& file, const study::Study& study, const std::string& command) {
  const auto about = [&](const char* name, std::string_view value) { file.text(NC_GLOBAL, name, value); };
  for (const auto& [name, value] : report::attributes_of(study.scenario())) about(name.c_str(), value);
  about("title", study.file().name);
  about("summary", fmt::format("Simulated endurance of the crew of a life raft, one run for each sample. {}",
                               study.file().setting));
  about("history", command);
  about("command", command);
  about("design", report::design_words(study));
  const int seed = study.file().design.seed;
  must(nc_put_att_int(file.id(), NC_GLOBAL, "seed", NC_INT, 1, &seed));
  about("missing_times",
        fmt::format("A time that is missing was not reached within the {} h simulated, which says nothing of "
                    "what comes after; a failed sample has its reason in failed_because.",
                    study.scenario().scenario.duration_h));
}

void put_persons(const File& file, int variable, std::size_t persons) {
  std::vector<std::string> labels;
  for (std::size_t p = 0; p < persons; ++p) labels.push_back(person_label(static_cast<int>(p)));
  std::vector<const char*> pointers;
  for (const std::string& label : labels) pointers.push_back(label.c_str());
  must(nc_put_var_string(file.id(), variable, pointers.data()));
}

void write(const study::Study& study, const std::filesystem::path& records, const std::filesystem::path& path,
           const std::string& command) {
  File file(path);
  describe(file, study, command);
  const std::size_t persons = study.persons();
  Dimensions dimensions;
  must(nc_def_dim(file.id(), "sample", study.plan().size(), &dimensions.sample));
  must(nc_def_dim(file.id(), "person", persons, &dimensions.person));
  int labels = 0;
  must(nc_def_var(file.id(), "person", NC_STRING, 1, &dimensions.person, &labels));
  file.text(labels, "long_name", "person, in the order of the scenario");
  std::vector<Variable> all = variables(study);
  for (Variable& variable : all) define(file, dimensions, variable);
  must(nc_enddef(file.id()));
  put_persons(file, labels, persons);

  std::size_t held = 0, written = 0;
  const auto flush = [&] {
    for (Variable& variable : all) put_rows(file, variable, written, held, persons);
    written += held;
    held = 0;
  };
  study.read(records, [&](const study::SampleResult& result) {
    const Row row{result, study.draw(result.index)};
    for (Variable& variable : all) {
      if (variable.kind == Kind::words) {
        variable.texts.push_back(variable.words(row));
        continue;
      }
      for (std::size_t p = 0; p < (variable.by_person ? persons : 1); ++p) {
        const double value = variable.number(row, p);
        variable.numbers.push_back(std::isfinite(value) ? value : std::numeric_limits<double>::quiet_NaN());
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
                                              const std::filesystem::path& path, const std::string& command) {
  try {
    NewFile fresh(path);
    write(study, records, fresh.beside(), command);
    fresh.keep();
  } catch (const std::exception& error) {
    return error.what();
  }
  return std::nullopt;
}

}  // namespace bide::tool

#endif
