// bide levers S.json: practical changes tried one at a time, and what each buys.
#include "bide/study/questions/levers.hpp"

#include <memory>

#include "bide/core/notice.hpp"
#include "bide/report/levers/levers.hpp"
#include "bide/report/levers/levers_page.hpp"
#include "commands.hpp"
#include "files.hpp"
#include "interrupt.hpp"
#include "output.hpp"
#include "pages.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

struct LeversArguments {
  std::string scenario, json;
  PageFiles pages;
  bool full = false, ascii = false;
};

int show_levers(const LeversArguments& arguments) {
  const scenario::Validated validated = scenario::validate_file(arguments.scenario);
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&validated)) {
    complain(*wrong);
    return exit_input_refused;
  }
  const auto& scenario = std::get<scenario::ValidScenario>(validated);
  if (const int code = check({files_of(scenario), {arguments.json, arguments.pages.report}}); code != exit_ok)
    return code;
  if (const int code = ready_pages(arguments.pages); code != exit_ok) return code;
  when_interrupted("Nothing is kept of changes that are not all tried; the same command begins anew.");
  const auto result = study::try_levers(scenario);
  if (const auto* refusal = std::get_if<study::Refusal>(&result)) return refuse(*refusal);
  const auto& tried = std::get<study::LeversTried>(result);
  const report::document::Page page = report::pages::levers_page(tried, scenario);
  if (arguments.pages.any()) {
    std::vector<std::filesystem::path> kept = files_of(scenario);
    kept.emplace_back(arguments.json);
    kept.emplace_back(arguments.pages.report);
    if (const int code = write_pages(page, arguments.pages, kept); code != exit_ok) return code;
  }
  if (!arguments.json.empty())
    if (const int code = put_result(report::levers_json(tried, scenario), arguments.json);
        code != exit_ok || is_output(arguments.json))
      return code;
  return print_page(page, arguments.ascii, arguments.full);
}

}  // namespace

void add_levers(Program& program) {
  auto arguments = std::make_shared<LeversArguments>();
  Command command = program.command("levers", "Practical changes tried one at a time, by the time each buys");
  command.text("scenario", arguments->scenario, "Scenario file").required();
  add_page_options(command, arguments->pages);
  command.flag("--full", arguments->full, "Every change tried, with its weight, room and price in air");
  command.result("--json", arguments->json, "Write everything as JSON");
  command.flag("--ascii", arguments->ascii, "No letters beyond ASCII");
  command.footer(standing_notice);
  command.does([arguments] { return show_levers(*arguments); });
}

}  // namespace bide::tool
