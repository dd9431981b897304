// bide levers S.json: practical changes tried one at a time, and what each buys.
#include "bide/study/questions/levers.hpp"

#include <fmt/core.h>

#include <memory>

#include "bide/core/notice.hpp"
#include "bide/report/levers/levers.hpp"
#include "bide/report/levers/levers_page.hpp"
#include "bide/report/words/file.hpp"
#include "bide/scenario/document.hpp"
#include "commands.hpp"
#include "output.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

struct LeversArguments {
  std::string scenario, report_html;
  bool json = false, ascii = false;
};

int show_levers(const LeversArguments& arguments) {
  const report::Letters shown = letters(arguments.ascii);
  if (!arguments.report_html.empty())
    if (const auto why = report::why_not_writable(arguments.report_html))
      return cannot_write(arguments.report_html, *why, shown);
  const scenario::Validated validated = scenario::validate_file(arguments.scenario);
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&validated)) {
    complain(*wrong);
    return exit_input_refused;
  }
  const auto& scenario = std::get<scenario::ValidScenario>(validated);
  const auto result = study::try_levers(scenario);
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&result)) {
    complain(*wrong);
    return exit_input_refused;
  }
  if (const auto* failure = std::get_if<timeline::Failure>(&result)) {
    say("{}: a run failed ({}): {}\n", scenario.file, failure->ledger, failure->message);
    return exit_run_failed;
  }
  const auto& tried = std::get<study::LeversTried>(result);
  if (!arguments.report_html.empty()) {
    const std::string page = report::html::to_html(report::pages::levers_page(tried, scenario));
    if (const auto why = report::write_whole(arguments.report_html, page))
      return cannot_write(arguments.report_html, *why, shown);
  }
  if (arguments.json) return put(report::levers_json(tried, scenario), "", false);
  return put(report::levers_text(tried, scenario, shown, terminal_width()), "", false);
}

}  // namespace

void add_levers(Program& program) {
  auto arguments = std::make_shared<LeversArguments>();
  Command command = program.command("levers", "Practical changes tried one at a time, by the time each buys");
  command.text("scenario", arguments->scenario, "Scenario file").required();
  command.text("--report", arguments->report_html, "Write a page for a browser or for print, as HTML");
  command.flag("--json", arguments->json, "As JSON");
  command.flag("--ascii", arguments->ascii, "No letters beyond ASCII");
  command.footer(standing_notice);
  command.does([arguments] { return show_levers(*arguments); });
}

}  // namespace bide::tool
