#include "bide/report/study/study_table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <system_error>

#include "bide/core/csv.hpp"
#include "bide/core/file.hpp"
#include "bide/core/notice.hpp"
#include "bide/core/text.hpp"
#include "bide/report/study/study_text.hpp"
#include "bide/report/words/made_by.hpp"
#include "bide/report/words/text.hpp"
#include "bide/report/words/words.hpp"
#include "bide/scenario/words.hpp"
#include "bide/scenario/write.hpp"
#include "bide/study/questions/outputs.hpp"

namespace bide::report {
namespace {

study::InputValue words_of_value(const scenario::Value& value) {
  if (const auto* number = std::get_if<double>(&value)) return {*number, fmt::format("{}", *number)};
  if (const auto* truth = std::get_if<bool>(&value)) return {{}, *truth ? "true" : "false"};
  if (const auto* word = std::get_if<std::string>(&value)) return {{}, *word};
  return {};
}

std::string csv_words(std::string_view text) {
  return csv_cell(plain(text, Letters::utf8, 400));
}

std::string failures_of(const study::Drawn& drawn) {
  std::string out;
  for (const scenario::Failure& failure : drawn.failures)
    out += fmt::format("{}{} at {} h", out.empty() ? "" : "; ", scenario::word(failure.kind), failure.at_h);
  return out;
}

}  // namespace

std::string column_name(const std::string& name, const std::string& unit) {
  std::string words = name;
  constexpr std::string_view crew = "/crew/", person = "Person ";
  if (name.starts_with(crew)) {
    char* rest = nullptr;
    const long place = std::strtol(name.c_str() + crew.size(), &rest, 10);
    words = person_column_prefix(static_cast<int>(place)) + rest;
  } else if (name.starts_with(person)) {
    words = lower_case(name);
  }
  const auto column = [](std::string text) {
    std::erase(text, ',');  // "5,000 ppm"
    for (std::size_t at; (at = text.find('%')) != std::string::npos;) text.replace(at, 1, "pct");
    return underscored(text);
  };
  const std::string out = column(words), ending = column(unit);
  return ending.empty() || out.ends_with("_" + ending) ? out : out + "_" + ending;
}

std::vector<InputColumn> input_columns(const study::Study& study) {
  const study::Drawn first = study.draw(0);
  const std::vector<scenario::FieldLine> fields = scenario::field_lines();
  std::vector<InputColumn> out;
  for (std::size_t i = 0; i < first.settings.size(); ++i) {
    const std::string& pointer = first.settings[i].pointer;
    const auto field = std::find_if(fields.begin(), fields.end(), [&](const scenario::FieldLine& line) {
      return line.pointer == scenario::any_index(pointer);
    });
    const bool known = field != fields.end();
    out.push_back({pointer, known ? field->unit : "", known && field->is_number,
                   [i](const study::Drawn& drawn) { return words_of_value(drawn.settings[i].value); }});
  }
  const scenario::Uncertain& u = *study.scenario().scenario.uncertain;
  if (!u.events.empty())
    out.push_back({"failures", "", false, [](const study::Drawn& drawn) {
                     return study::InputValue{{}, failures_of(drawn)};
                   }});
  if (!u.alternatives.empty())
    out.push_back({"alternative", "", false, [](const study::Drawn& drawn) {
                     return study::InputValue{{}, drawn.alternative};
                   }});
  if (u.rescue)
    out.push_back({"rescue", "h", true, [](const study::Drawn& drawn) {
                     return study::InputValue{drawn.rescue_h, fmt::format("{}", drawn.rescue_h.value_or(0))};
                   }});
  return out;
}

std::optional<std::string> write_study_csv(const study::Study& study, const std::filesystem::path& records,
                                           const std::filesystem::path& path,
                                           const std::filesystem::path& notice) try {
  NewFile fresh(path);
  std::ofstream file(fresh.beside(), std::ios::binary);
  const std::vector<InputColumn> inputs = input_columns(study);
  const std::vector<study::Output> outputs = study::outputs(static_cast<int>(study.persons()));
  const std::string comments =
      fmt::format("# {}\n# {}\n# {}\n", standing_notice, standing_advice, made_by_line()) +
      csv_comment("study: " + plain(study.file().name)) +
      csv_comment("scenario: " + plain(study.scenario().scenario.name)) + csv_comment(design_words(study)) +
      fmt::format(
          "# An empty time was not reached within the {} h simulated, which says nothing of what comes "
          "after; a failed sample has a reason and no figures.\n",
          study.scenario().scenario.duration_h);
  if (notice.empty())
    file << comments;
  else if (auto why = write_whole(notice, comments))
    return why;
  file << "sample";
  for (const InputColumn& column : inputs) file << ',' << column_name(column.name, column.unit);
  for (const study::Output& output : outputs) file << ',' << column_name(output.name, output.unit);
  file << ",first_able_cause,first_alive_cause,failed_because\n";

  study.read(records, [&](const study::SampleResult& result) {
    std::string row = fmt::format("{}", result.index);
    const study::Drawn drawn = study.draw(result.index);
    for (const InputColumn& column : inputs) {
      const study::InputValue value = column.of(drawn);
      row += ',';
      if (!value.number)
        row += value.words.empty() ? std::string() : csv_words(value.words);
      else if (std::isfinite(*value.number))
        row += fmt::format("{:.10g}", *value.number);
    }
    const bool made = result.failure.empty();
    for (const study::Output& output : outputs) {
      const double value = made ? output.of(result) : study::not_there;
      row += std::isfinite(value) ? fmt::format(",{:.10g}", value) : ",";
    }
    const auto cause = [&](double study::PersonResult::*time, system::Limit study::PersonResult::*why) {
      if (!made) return "";
      const auto first = std::min_element(result.persons.begin(), result.persons.end(),
                                          [&](const auto& a, const auto& b) { return a.*time < b.*time; });
      return system::name_of((*first).*why);
    };
    row += fmt::format(",{},{},{}\n",
                       cause(&study::PersonResult::able_until_s, &study::PersonResult::able_cause),
                       cause(&study::PersonResult::alive_until_s, &study::PersonResult::alive_cause),
                       made ? std::string() : csv_words(result.failure));
    file << row;
  });
  file.close();
  if (!file) return "the disk took only a part of it";
  fresh.keep();
  return std::nullopt;
} catch (const std::system_error& error) {
  return error.code().message();
}

}  // namespace bide::report
