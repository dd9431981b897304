// bide run S.json: one simulation, its summary, and the files asked for.
#include <fmt/format.h>

#include <memory>
#include <string>
#include <variant>
#include <vector>

#include "bide/core/notice.hpp"
#include "bide/report/run/csv.hpp"
#include "bide/report/run/json.hpp"
#include "bide/report/run/run_page.hpp"
#include "bide/report/run/sections.hpp"
#include "bide/report/run/terminal.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/study/ensemble/run_all.hpp"
#include "bide/study/questions/levers.hpp"
#include "bide/study/questions/unmeasured.hpp"
#include "commands.hpp"
#include "files.hpp"
#include "output.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

struct RunArguments {
  std::string scenario, timeline_csv, result_json, report_html;
  bool full = false, quiet = false, ascii = false, progress = false, no_levers = false;
};

// The page with all it needs besides the run itself, or why a further run has no result.
std::variant<std::string, study::Refusal> page_of(const report::Material& run,
                                                  const std::vector<study::Future>& members,
                                                  bool with_levers) {
  report::pages::RunMaterial material{run, members};
  if (!with_levers) return report::html::to_html(report::pages::run_page(material));
  auto tried = study::try_levers(run.scenario);
  if (auto* refusal = std::get_if<study::Refusal>(&tried)) return std::move(*refusal);
  material.levers = &std::get<study::LeversTried>(tried);
  return report::html::to_html(report::pages::run_page(material));
}

int run(const RunArguments& arguments) {
  const report::Letters letters = tool::letters(arguments.ascii);
  const auto validated = scenario::validate_file(arguments.scenario);
  if (const auto* errors = std::get_if<scenario::Diagnostics>(&validated)) {
    print(*errors, letters);
    return exit_input_refused;
  }
  const auto& scenario = std::get<scenario::ValidScenario>(validated);
  if (const int code =
          check({files_of(scenario), {arguments.timeline_csv, arguments.result_json, arguments.report_html}});
      code != exit_ok)
    return code;

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
  shown.members = std::get<std::vector<study::Future>>(std::move(members));
  const auto write = [&shown](const char* what, const std::string& path, const std::string& text) {
    shown.files.push_back({what, path});
    return write_file(path, text);
  };
  int code = exit_ok;
  if (!arguments.timeline_csv.empty())
    code = write("timeline", arguments.timeline_csv, report::timeline_csv(timeline, scenario));
  if (code == exit_ok && !arguments.result_json.empty())
    code = write("result", arguments.result_json,
                 report::result_json(outcome, timeline, scenario, shown.members));
  if (code == exit_ok && !arguments.report_html.empty()) {
    const auto page = page_of({outcome, timeline, scenario}, shown.members, !arguments.no_levers);
    if (const auto* refusal = std::get_if<study::Refusal>(&page)) return refuse(*refusal);
    code = write("report", arguments.report_html, std::get<std::string>(page));
  }
  if (code != exit_ok) return code;
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
  command.text("--timeline", arguments->timeline_csv, "Write the timeline as CSV");
  command.text("--json", arguments->result_json, "Write the result as JSON");
  const Argument report =
      command.text("--report", arguments->report_html, "Write a page for a browser or for print, as HTML");
  command.flag("--no-levers", arguments->no_levers, "Leave out of the page what would buy more time")
      .needs(report);
  command.flag("--full", arguments->full, "Figures, charts, events, evidence and cautions as well");
  command.flag("--quiet", arguments->quiet, "One line only; cautions go to the error stream");
  command.flag("--ascii", arguments->ascii, "No letters beyond ASCII");
  command.flag("--progress", arguments->progress, "Report progress even when not on a terminal");
  command.footer(standing_notice);
  command.does([arguments] { return run(*arguments); });
}

}  // namespace bide::tool
