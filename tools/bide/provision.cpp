// bide provision S.json: the least kit with which the crew lasts to a stated time.
#include "bide/study/questions/provision.hpp"

#include <fmt/format.h>

#include <memory>
#include <optional>

#include "bide/core/notice.hpp"
#include "bide/report/provision/provision.hpp"
#include "bide/report/provision/provision_page.hpp"
#include "commands.hpp"
#include "files.hpp"
#include "interrupt.hpp"
#include "output.hpp"
#include "pages.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

struct ProvisionArguments {
  std::string scenario, output, json;
  PageFiles pages;
  std::optional<double> until_h, confidence, mass_kg, volume_L;
  study::ProvisionQuestion question;
  bool full = false, ascii = false, force = false, progress = false;
};

int provide(const ProvisionArguments& arguments) {
  const scenario::Validated validated = scenario::validate_file(arguments.scenario);
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&validated)) {
    complain(*wrong);
    return exit_input_refused;
  }
  const auto& scenario = std::get<scenario::ValidScenario>(validated);
  Files files{files_of(scenario), {arguments.output, arguments.json, arguments.pages.report}};
  if (const int code = check(files); code != exit_ok) return code;
  if (const int code = ready_pages(arguments.pages); code != exit_ok) return code;

  study::ProvisionQuestion question = arguments.question;
  question.until_h = *arguments.until_h;
  question.confidence = arguments.confidence.value_or(question.confidence);
  question.limits.mass_kg = arguments.mass_kg.value_or(question.limits.mass_kg);
  question.limits.volume_L = arguments.volume_L.value_or(question.limits.volume_L);
  when_interrupted("Nothing is kept of a search that is not finished; the same command begins anew.");
  ProgressLine line(arguments.progress);
  const auto result = study::provision(scenario, question, [&](const study::ProvisionProgress& p) {
    line(p.futures_run, p.futures_left,
         fmt::format(", {} kits run, now at {:.1f} kg", p.kits_run, p.mass_kg));
  });
  line.finish();
  if (const auto* refusal = std::get_if<study::Refusal>(&result)) return refuse(*refusal);
  const auto& found = std::get<study::Provision>(result);
  if (!arguments.json.empty())
    if (const int code = put_result(report::provision_json(found), arguments.json); code != exit_ok)
      return code;
  if (!arguments.output.empty() && found.least)
    if (const int code = put(found.scenario_text, arguments.output, arguments.force); code != exit_ok)
      return code;
  const report::document::Page page = report::pages::provision_page(found);
  if (arguments.pages.any()) {
    files.read.insert(files.read.end(), files.written.begin(), files.written.end());
    if (const int code = write_pages(page, arguments.pages, files.read); code != exit_ok) return code;
  }
  if (is_output(arguments.json) || is_output(arguments.output)) return exit_ok;
  return print_page(page, arguments.ascii, arguments.full);
}

}  // namespace

void add_provision(Program& program) {
  auto arguments = std::make_shared<ProvisionArguments>();
  ProvisionArguments& a = *arguments;
  Command command = program.command("provision", "The least kit with which the crew lasts to a stated time");
  command.text("scenario", a.scenario, "Scenario file; what is uncertain in it is drawn").required();
  constexpr double soonest_h = 1;
  command
      .span("--until", a.until_h, {soonest_h, scenario::longest_h},
            "When help is there, counted from the start, such as 7d")
      .required();
  command.number("--confidence", a.confidence, {0.01, 0.999},
                 "Share of futures in which they last; 0.9 if left out");
  command.flag("--alive", a.question.alive, "Ask that they stay alive; without it, that they stay able");
  command.number("--kg", a.mass_kg, {0, 10000}, "Most that the kit may weigh, kg");
  command.number("--litres", a.volume_L, {0, 100000}, "Most room that the kit may take, L");
  constexpr std::uint64_t most = 1'000'000;
  command.number("-n,--futures", a.question.futures, {1, most}, "Futures to search the kit on");
  command.number("--fresh", a.question.fresh_futures, {1, most}, "Fresh futures to verify the kit found on");
  command.number("--seed", a.question.seed, any_seed, "Same seed, same answer");
  command.number("--threads", a.question.threads, any_threads,
                 "Threads; 0: one to a core. Results do not depend on it");
  command.text("-o,--output", a.output, "Write the scenario with the kit aboard");
  command.flag("--force", a.force, "Let -o write over a file");
  add_page_options(command, a.pages);
  command.flag("--full", a.full, "One dose less or more, confidence against weight, other kits as well");
  command.result("--json", a.json, "Write everything as JSON");
  command.flag("--ascii", a.ascii, "No letters beyond ASCII");
  command.flag("--progress", a.progress, "Report progress even when not on a terminal");
  command.footer(standing_notice);
  command.does([arguments] { return provide(*arguments); });
}

}  // namespace bide::tool
