// `bide validate`: every comparison with published findings, as one table.
#include <fmt/format.h>

#include <memory>
#include <nlohmann/json.hpp>

#include "bide/core/notice.hpp"
#include "bide/report/html/page.hpp"
#include "bide/report/words/made_by.hpp"
#include "commands.hpp"
#include "files.hpp"
#include "interrupt.hpp"
#include "output.hpp"
#include "terminal.hpp"
#include "validation/curve.hpp"
#include "validation/tables.hpp"
#include "validation_page.hpp"

namespace bide::tool {

namespace {

using validation::Row;
using validation::word;

std::string as_json(const std::vector<Row>& rows) {
  nlohmann::ordered_json out{{"format", "bide validation 1"},
                             {"notice", {standing_notice, standing_advice}},
                             {"made_by", report::made_by()},
                             {"rows", nlohmann::ordered_json::array()}};
  for (const Row& r : rows) {
    nlohmann::ordered_json row{{"topic", r.topic},
                               {"study", r.study},
                               {"quantity", r.quantity},
                               {"unit", r.unit},
                               {"class", word(r.source_class)},
                               {"kind", word(r.kind)},
                               {"calibrated", r.calibrated},
                               {"seen_before", r.seen_before},
                               {"published", r.published},
                               {"standard_error", nullptr},
                               {"low", r.low},
                               {"high", r.high},
                               {"model", r.model},
                               {"error_over_standard_error", nullptr},
                               {"trivial", nullptr},
                               {"two_node", nullptr},
                               {"holds", r.holds()},
                               {"cannot_miss", r.cannot_miss()},
                               {"conflicts_with", r.conflicts_with},
                               {"why", r.why}};
    if (r.standard_error) row["standard_error"] = *r.standard_error;
    if (const auto e = r.error_over_standard_error()) row["error_over_standard_error"] = *e;
    if (r.trivial) row["trivial"] = *r.trivial;
    if (r.two_node) row["two_node"] = *r.two_node;
    out["rows"].push_back(row);
  }
  return out.dump(2) + "\n";
}

struct ValidateArguments {
  bool json = false, studies = false;
  std::string report;
};

int validate(const ValidateArguments& arguments) {
  if (const int code = check({{}, {arguments.report}}); code != exit_ok) return code;
  when_interrupted("Nothing is kept of a comparison that is not finished; the same command begins anew.");
  const std::vector<Row> rows = validation::all_rows();
  if (!arguments.report.empty()) {
    const report::document::Page page = validation_page(rows, validation::all_curves(rows));
    if (const int code = write_file(arguments.report, report::html::to_html(page)); code != exit_ok)
      return code;
  }
  if (arguments.json) return put(as_json(rows), "", false);
  const std::string table =
      arguments.studies ? validation::studies_markdown(rows) : validation::rows_markdown(rows);
  return put(table + fmt::format("\n{}\n{}\n", standing_notice, standing_advice), "", false);
}

}  // namespace

void add_validate(Program& program) {
  auto arguments = std::make_shared<ValidateArguments>();
  Command command = program.command("validate", "Compare the model with published findings");
  const Argument json = command.flag("--json", arguments->json, "Every row as JSON");
  command.flag("--studies", arguments->studies, "One line a study, in place of one a row").excludes(json);
  command.text("--report", arguments->report,
               "Write a page for a browser: curves over published points, every row, what is missed and why");
  command.footer(standing_notice);
  command.does([arguments] { return validate(*arguments); });
}

}  // namespace bide::tool
