// bide run S.json: one simulation, its summary, and the files asked for.
#include <fmt/format.h>

#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "bide/core/notice.hpp"
#include "bide/report/run/answer_lines.hpp"
#include "bide/report/run/csv.hpp"
#include "bide/report/run/json.hpp"
#include "bide/report/run/range.hpp"
#include "bide/report/run/run_page.hpp"
#include "bide/report/run/sheets.hpp"
#include "bide/report/run/terminal.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/study/ensemble/run_all.hpp"
#include "bide/study/questions/quick_levers.hpp"
#include "bide/study/questions/unmeasured.hpp"
#include "commands.hpp"
#include "csv_file.hpp"
#include "files.hpp"
#include "interrupt.hpp"
#include "output.hpp"
#include "pages.hpp"
#include "terminal.hpp"
#include "xlsx.hpp"

namespace bide::tool {
namespace {

struct RunArguments {
  std::string scenario, timeline_csv, result_json, workbook;
  PageFiles pages;
  bool full = false, quiet = false, ascii = false, progress = false, no_levers = false, plain = false;
  bool alone() const { return is_output(result_json) || is_output(timeline_csv); }  // on standard output
};

// What would buy time: for a page in any case, for the summary where it is quick.
std::variant<std::optional<study::LeversTried>, study::Refusal> levers_of(
    const scenario::ValidScenario& scenario, const RunArguments& arguments) {
  const bool shown = !(arguments.quiet || arguments.alone()) || !arguments.workbook.empty();
  if (arguments.no_levers || !(shown || arguments.pages.any())) return std::nullopt;
  if (!arguments.pages.any()) return study::try_levers_quickly(scenario);
  auto tried = study::try_levers(scenario);
  if (auto* refusal = std::get_if<study::Refusal>(&tried)) return std::move(*refusal);
  return std::optional(std::get<study::LeversTried>(std::move(tried)));
}

int run(const RunArguments& arguments) {
  const report::Letters letters = tool::letters(arguments.ascii);
  const auto validated = scenario::validate_file(arguments.scenario);
  if (const auto* errors = std::get_if<scenario::Diagnostics>(&validated)) {
    print(*errors, letters);
    return exit_input_refused;
  }
  const auto& scenario = std::get<scenario::ValidScenario>(validated);
  Files files{files_of(scenario),
              {arguments.timeline_csv, notice_of(arguments.timeline_csv, arguments.plain),
               arguments.result_json, arguments.workbook, arguments.pages.report}};
  if (const int code = check(files); code != exit_ok) return code;
  if (const auto why = arguments.workbook.empty() ? std::nullopt : why_no_xlsx())
    return cannot_write(arguments.workbook, *why, letters);
  if (const int code = ready_pages(arguments.pages); code != exit_ok) return code;

  when_interrupted("Nothing is kept of a run that is not finished; the same command begins anew.");
  ProgressLine progress(arguments.progress);
  const auto result = study::run_one(scenario, [&progress](double fraction) { progress(fraction); });
  progress.finish();
  if (const auto* refusal = std::get_if<study::Refusal>(&result)) return refuse(*refusal);
  const auto& [timeline, outcome] = std::get<study::Run>(result);
  auto members = study::run_unmeasured(scenario);
  if (const auto* refusal = std::get_if<study::Refusal>(&members)) return refuse(*refusal);

  report::TerminalOptions shown;
  shown.utf8 = letters == report::Letters::utf8;
  shown.width = terminal_width();
  shown.full = arguments.full;
  shown.members = std::get<study::RangeMembers>(std::move(members));
  auto levers = levers_of(scenario, arguments);
  if (const auto* refusal = std::get_if<study::Refusal>(&levers)) return refuse(*refusal);
  shown.levers = std::get<std::optional<study::LeversTried>>(std::move(levers));

  const report::Material material{outcome, timeline, scenario};
  report::document::List written;
  const auto list = [&written](const char* what, const std::string& path) {
    if (!path.empty()) written.items.push_back(fmt::format("{}: {}", what, path));
  };
  list("timeline", arguments.timeline_csv);
  list("result", arguments.result_json);
  list("workbook", arguments.workbook);
  list("report", arguments.pages.report);
  list("charts", arguments.pages.charts);
  if (!written.items.empty()) shown.also.push_back({"Files", {std::move(written)}});
  if (!arguments.timeline_csv.empty())
    if (const int code =
            write_csv(arguments.timeline_csv, report::timeline_csv(timeline, scenario), arguments.plain);
        code != exit_ok)
      return code;
  if (!arguments.workbook.empty()) {
    const report::Answer answer =
        report::run_answer(material, shown.members, report::buys_line(shown.levers, scenario));
    if (const auto why =
            write_xlsx(report::run_sheets(material, answer), arguments.workbook, scenario.start_unix_s))
      return cannot_write(arguments.workbook, *why, letters);
  }
  if (arguments.pages.any()) {
    files.read.insert(files.read.end(), files.written.begin(), files.written.end());
    const report::pages::RunMaterial of_page{material, shown.members, shown.levers};
    if (const int code = write_pages(report::pages::run_page(of_page), arguments.pages, files.read);
        code != exit_ok)
      return code;
  }
  if (!arguments.result_json.empty())
    if (const int code = put_result(report::result_json(outcome, timeline, scenario, shown.members),
                                    arguments.result_json);
        code != exit_ok)
      return code;
  if (arguments.alone()) return exit_ok;
  if (arguments.quiet) {
    print(scenario.cautions, letters, "caution: ");
    return put(report::quiet_line(outcome, scenario, shown), "", false);
  }
  return put(report::terminal_summary(outcome, timeline, scenario, shown), "", false);
}

}  // namespace

void add_run(Program& program) {
  auto arguments = std::make_shared<RunArguments>();
  Command command = program.command("run", "One simulation: until when each person is able and alive");
  command.text("scenario", arguments->scenario, "Scenario file").required();
  const Argument timeline =
      command.result("--timeline", arguments->timeline_csv, "Write the timeline as CSV");
  command.result("--json", arguments->result_json, "Write the result as JSON");
  command.text("--xlsx", arguments->workbook,
               "Write result, people, cabin, timeline, stores and assumptions as a workbook");
  command.flag("--plain", arguments->plain, "The timeline's notice goes to a file beside it").needs(timeline);
  add_page_options(command, arguments->pages);
  command.flag("--no-levers", arguments->no_levers, "Do not try what would buy more time");
  command.flag("--full", arguments->full, "Each person, charts, events, evidence and cautions as well");
  command.flag("--quiet", arguments->quiet, "One line only; cautions go to the error stream");
  command.flag("--ascii", arguments->ascii, "No letters beyond ASCII");
  command.flag("--progress", arguments->progress, "Report progress even when not on a terminal");
  command.footer(standing_notice);
  command.does([arguments] { return run(*arguments); });
}

}  // namespace bide::tool
