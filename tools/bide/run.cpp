// bide run S.json: one simulation, its summary, and the files asked for.
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <memory>
#include <string>
#include <variant>
#include <vector>

#include "bide/core/notice.hpp"
#include "bide/outcome/outcome.hpp"
#include "bide/report/run/csv.hpp"
#include "bide/report/run/json.hpp"
#include "bide/report/run/run_page.hpp"
#include "bide/report/run/sections.hpp"
#include "bide/report/run/terminal.hpp"
#include "bide/report/words/file.hpp"
#include "bide/report/words/text.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/study/questions/levers.hpp"
#include "bide/study/questions/unmeasured.hpp"
#include "bide/timeline/simulate.hpp"
#include "bide/weather/weather.hpp"
#include "commands.hpp"
#include "output.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

struct RunArguments {
  std::string scenario, timeline_csv, result_json, report_html;
  bool quiet = false, ascii = false, progress = false, no_levers = false;
};

struct Output {
  std::string what, path;
};

std::vector<Output> outputs(const RunArguments& arguments) {
  std::vector<Output> list;
  if (!arguments.timeline_csv.empty()) list.push_back({"timeline", arguments.timeline_csv});
  if (!arguments.result_json.empty()) list.push_back({"result", arguments.result_json});
  if (!arguments.report_html.empty()) list.push_back({"report", arguments.report_html});
  return list;
}

// Two names of one file, as far as the file system can tell.
bool same_file(const std::string& a, const std::string& b) {
  namespace fs = std::filesystem;
  std::error_code error;
  const auto resolved = [&error](const std::string& path) {
    const fs::path whole = fs::absolute(path, error);
    return error ? fs::path() : fs::weakly_canonical(whole, error);
  };
  const fs::path first = resolved(a), second = resolved(b);
  return !error && !first.empty() && first == second;
}

// What is wrong with the paths taken together; empty when nothing is.
std::string path_clash(const RunArguments& arguments) {
  const std::vector<Output> list = outputs(arguments);
  for (const Output& output : list) {
    if (same_file(output.path, arguments.scenario)) return output.path + ": would overwrite the scenario";
  }
  for (std::size_t i = 0; i < list.size(); ++i)
    for (std::size_t j = i + 1; j < list.size(); ++j)
      if (same_file(list[i].path, list[j].path)) return list[i].path + ": named for two outputs";
  return "";
}

int failed(const scenario::ValidScenario& scenario, const timeline::Failure& failure,
           report::Letters letters) {
  say("{}: the run failed ({}): {}\n", report::plain(scenario.file, letters), failure.ledger,
      failure.message);
  return exit_run_failed;
}

// The page with all it needs besides the run itself; an exit code where a further run was refused or failed.
std::variant<std::string, int> report_html(const report::Material& run, bool with_levers,
                                           report::Letters letters) {
  auto unmeasured = study::run_unmeasured(run.scenario);
  if (const auto* errors = std::get_if<scenario::Diagnostics>(&unmeasured)) {
    print(*errors, letters);
    return exit_input_refused;
  }
  if (const auto* failure = std::get_if<timeline::Failure>(&unmeasured))
    return failed(run.scenario, *failure, letters);
  report::pages::RunMaterial material{run, std::get<std::vector<study::Run>>(unmeasured)};
  if (!with_levers) return report::html::to_html(report::pages::run_page(material));
  const auto tried = study::try_levers(run.scenario);
  if (const auto* errors = std::get_if<scenario::Diagnostics>(&tried)) {
    print(*errors, letters);
    return exit_input_refused;
  }
  if (const auto* failure = std::get_if<timeline::Failure>(&tried))
    return failed(run.scenario, *failure, letters);
  material.levers = &std::get<study::LeversTried>(tried);
  return report::html::to_html(report::pages::run_page(material));
}

int run(const RunArguments& arguments) {
  const report::Letters letters = tool::letters(arguments.ascii);
  if (const std::string clash = path_clash(arguments); !clash.empty()) {
    say("{}\n", report::plain(clash, letters));
    return exit_usage;
  }
  const auto validated = scenario::validate_file(arguments.scenario);
  if (const auto* errors = std::get_if<scenario::Diagnostics>(&validated)) {
    print(*errors, letters);
    return exit_input_refused;
  }
  const auto& scenario = std::get<scenario::ValidScenario>(validated);
  const auto loaded = weather::load(scenario);
  if (const auto* errors = std::get_if<scenario::Diagnostics>(&loaded)) {
    print(*errors, letters);
    return exit_input_refused;
  }
  const auto& record = std::get<weather::Record>(loaded);
  for (const Output& output : outputs(arguments)) {
    if (const auto why = report::why_not_writable(output.path))
      return cannot_write(output.path, *why, letters);
  }

  ProgressLine progress(arguments.progress);
  timeline::Options options;
  options.progress = [&progress](double fraction) { progress(fraction); };
  auto simulated = timeline::simulate(scenario, record, options);
  progress.finish();
  if (const auto* failure = std::get_if<timeline::Failure>(&simulated))
    return failed(scenario, *failure, letters);
  auto& timeline = std::get<timeline::Timeline>(simulated);
  const outcome::Outcome outcome = outcome::read_outcome(timeline, scenario);

  report::TerminalOptions shown;
  shown.utf8 = letters == report::Letters::utf8;
  shown.width = terminal_width();
  for (const Output& output : outputs(arguments)) {
    std::string text;
    if (output.what == "report") {
      auto page = report_html({outcome, timeline, scenario}, !arguments.no_levers, letters);
      if (const int* exit_code = std::get_if<int>(&page)) return *exit_code;
      text = std::move(std::get<std::string>(page));
    } else {
      text = output.what == "timeline" ? report::timeline_csv(timeline, scenario)
                                       : report::result_json(outcome, timeline, scenario);
    }
    if (const auto why = report::write_whole(output.path, text))
      return cannot_write(output.path, *why, letters);
    shown.files.push_back({output.what, output.path});
  }
  if (arguments.quiet) {
    print(scenario.cautions, letters, "caution: ");
    return put(report::quiet_line(outcome, scenario, shown.utf8), "", false);
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
  command.flag("--quiet", arguments->quiet, "One line only; cautions go to the error stream");
  command.flag("--ascii", arguments->ascii, "No letters beyond ASCII");
  command.flag("--progress", arguments->progress, "Report progress even when not on a terminal");
  command.footer(standing_notice);
  command.does([arguments] { return run(*arguments); });
}

}  // namespace bide::tool
