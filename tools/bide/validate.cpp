// `bide validate`: every comparison with published findings, as one table.
#include <fmt/format.h>

#include <map>
#include <memory>
#include <nlohmann/json.hpp>

#include "commands.hpp"
#include "core/notice.hpp"
#include "output.hpp"
#include "validation/row.hpp"

namespace bide::tool {

namespace {

using validation::Row;

const char* word(validation::Kind kind) {
  switch (kind) {
    case validation::Kind::measured:
      return "measured";
    case validation::Kind::predicted_by_others:
      return "predicted by others";
    case validation::Kind::rule:
      return "rule";
  }
  return "";
}

const char* word(validation::Class source) {
  switch (source) {
    case validation::Class::published:
      return "published";
    case validation::Class::common_practice:
      return "common practice";
    case validation::Class::from_memory:
      return "from memory";
  }
  return "";
}

std::string as_json(const std::vector<Row>& rows) {
  nlohmann::ordered_json out = nlohmann::ordered_json::array();
  for (const Row& r : rows) {
    nlohmann::ordered_json row{{"topic", r.topic},
                               {"study", r.study},
                               {"quantity", r.quantity},
                               {"unit", r.unit},
                               {"class", word(r.source_class)},
                               {"kind", word(r.kind)},
                               {"calibrated", r.calibrated},
                               {"published", r.published},
                               {"standard_error", nullptr},
                               {"low", r.low},
                               {"high", r.high},
                               {"model", r.model},
                               {"error_over_standard_error", nullptr},
                               {"trivial", nullptr},
                               {"holds", r.holds()},
                               {"why", r.why}};
    if (r.standard_error) row["standard_error"] = *r.standard_error;
    if (const auto e = r.error_over_standard_error()) row["error_over_standard_error"] = *e;
    if (r.trivial) row["trivial"] = *r.trivial;
    out.push_back(row);
  }
  return out.dump(2) + "\n";
}

std::string as_table(const std::vector<Row>& rows) {
  std::string out =
      "| topic | quantity | published | holds within | model | error / s.e. | kind | class | |\n";
  out += "|---|---|---|---|---|---|---|---|---|\n";
  for (const Row& r : rows) {
    const auto e = r.error_over_standard_error();
    out += fmt::format("| {} | {}, {} | {:.4g} | {:.4g} to {:.4g} | {:.4g} | {} | {}{} | {} | {} |\n",
                       r.topic, r.quantity, r.unit, r.published, r.low, r.high, r.model,
                       e ? fmt::format("{:+.1f}", *e) : "", word(r.kind), r.calibrated ? ", calibrated" : "",
                       word(r.source_class), r.holds() ? "holds" : "**misses**: " + r.why);
  }
  // One vote a study: it holds when most of its independent rows do. Calibrated rows do not count.
  std::map<std::string, std::pair<int, int>> studies;
  int calibrated = 0;
  for (const Row& r : rows) {
    if (r.calibrated) {
      ++calibrated;
      continue;
    }
    auto& [held, all] = studies[r.study];
    held += r.holds() ? 1 : 0;
    ++all;
  }
  int held_studies = 0;
  for (const auto& [study, votes] : studies) held_studies += 2 * votes.first > votes.second ? 1 : 0;
  out += fmt::format(
      "\n{} rows, {} of them calibrated and not counted; {} of {} studies hold (most of their rows do).\n",
      rows.size(), calibrated, held_studies, studies.size());
  return out;
}

}  // namespace

void add_validate(CLI::App& app, int& exit_code) {
  CLI::App* command = app.add_subcommand("validate", "Compare the model with published findings");
  auto json = std::make_shared<bool>(false);
  command->add_flag("--json", *json, "An array of rows");
  command->callback([json, &exit_code] {
    const std::vector<Row> rows = validation::all_rows();
    exit_code = put(
        *json ? as_json(rows) : as_table(rows) + fmt::format("\n{}\n{}\n", standing_notice, standing_advice),
        "", false);
  });
}

}  // namespace bide::tool
