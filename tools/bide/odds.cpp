// bide odds S.json: the endurance window of a crew over many possible futures, given what is known so far.
#include <fmt/format.h>

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <variant>

#include "bide/core/notice.hpp"
#include "bide/report/odds/odds.hpp"
#include "bide/report/odds/odds_page.hpp"
#include "bide/report/run/terminal.hpp"
#include "bide/study/questions/replay.hpp"
#include "bide/study/questions/unmeasured.hpp"
#include "commands.hpp"
#include "files.hpp"
#include "interrupt.hpp"
#include "output.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

struct OddsArguments {
  std::string scenario, csv, json, report_html, output;
  std::uint64_t samples = 1000, seed = 1;
  int threads = 0;
  std::optional<double> alive_at_h, now_h;
  std::optional<std::uint64_t> sample, dump;
  bool full = false, quiet = false, ascii = false, progress = false, force = false;
};

int show_replay(const scenario::ValidScenario& uncertain, const OddsArguments& arguments,
                report::Letters shown) {
  const auto answer = study::replay(uncertain, arguments.seed, *arguments.sample);
  if (const auto* refusal = std::get_if<study::Refusal>(&answer)) return refuse(*refusal);
  const auto& replayed = std::get<study::Replay>(answer);
  auto members = study::run_unmeasured(replayed.scenario);
  if (const auto* refusal = std::get_if<study::Refusal>(&members)) return refuse(*refusal);
  report::TerminalOptions options;
  options.utf8 = shown == report::Letters::utf8;
  options.width = terminal_width();
  options.full = arguments.full;
  options.drawn = true;
  options.members = std::get<std::vector<study::Future>>(std::move(members));
  std::string text =
      report::terminal_summary(replayed.run.outcome, replayed.run.timeline, replayed.scenario, options);
  if (replayed.help)
    text += report::help_text(
        {*uncertain.scenario.uncertain->rescue, replayed.help_needed_h, uncertain.scenario.duration_h},
        *replayed.help, options.width, shown);
  return put(text, "", false);
}

std::variant<study::OddsAnswer, study::Refusal> ask(const scenario::ValidScenario& scenario,
                                                    const OddsArguments& arguments) {
  when_interrupted("Nothing is kept of odds that are not finished; the same command begins anew.");
  ProgressLine line(arguments.progress);
  auto answer = study::ask_odds(
      scenario,
      {arguments.samples, arguments.seed, {arguments.alive_at_h, arguments.now_h}, arguments.threads},
      [&](study::OddsPart part, const study::Progress& p) {
        line(static_cast<double>(p.done) / static_cast<double>(p.total),
             part == study::OddsPart::futures ? fmt::format(", {:.0f} futures/s", p.per_s)
                                              : " of the cases with ignorance held fixed");
      });
  line.finish();
  return answer;
}

int odds(const OddsArguments& arguments) {
  const report::Letters shown = letters(arguments.ascii);
  const auto validated = scenario::validate_file(arguments.scenario);
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&validated)) {
    print(*wrong, shown);
    return exit_input_refused;
  }
  const auto& scenario = std::get<scenario::ValidScenario>(validated);
  if (!scenario.scenario.uncertain) {
    print({{arguments.scenario, "/uncertain", "missing; odds need something that is uncertain"}}, shown);
    return exit_input_refused;
  }
  const bool dumped_to_a_file = arguments.dump && !arguments.output.empty() && arguments.output != "-";
  if (const int code = check(
          {files_of(scenario),
           {arguments.csv, arguments.json, arguments.report_html, dumped_to_a_file ? arguments.output : ""}});
      code != exit_ok)
    return code;
  if (arguments.dump)
    return put(study::text_of_future(scenario, arguments.seed, *arguments.dump), arguments.output,
               arguments.force);
  if (arguments.sample) return show_replay(scenario, arguments, shown);

  const auto asked = ask(scenario, arguments);
  if (const auto* refusal = std::get_if<study::Refusal>(&asked)) return refuse(*refusal);
  const auto& answer = std::get<study::OddsAnswer>(asked);
  if (!arguments.csv.empty())
    if (const int code = write_file(arguments.csv, report::odds_csv(answer)); code != exit_ok) return code;
  if (!arguments.json.empty())
    if (const int code = write_file(arguments.json, report::odds_json(answer)); code != exit_ok) return code;
  if (!arguments.report_html.empty()) {
    const std::string page = report::html::to_html(report::pages::odds_page(answer));
    if (const int code = write_file(arguments.report_html, page); code != exit_ok) return code;
  }
  if (arguments.quiet) print(scenario.cautions, shown, "caution: ");
  const int written =
      put(arguments.quiet ? report::odds_line(answer, shown)
                          : report::odds_text(answer, terminal_width(), shown, arguments.full),
          "", false);
  if (!answer.too_many_failed() || written != exit_ok) return written;
  say("{}: {} of {} samples have no result, more than 1 %\n", report::plain(arguments.scenario, shown),
      answer.failed.size(), answer.samples);
  return exit_run_failed;
}

}  // namespace

void add_odds(Program& program) {
  auto arguments = std::make_shared<OddsArguments>();
  OddsArguments& a = *arguments;
  Command command =
      program.command("odds", "Many possible futures: the endurance window, given what is known so far");
  command.text("scenario", a.scenario, "Scenario file with `uncertain`").required();
  constexpr std::uint64_t most = 100'000'000;
  command.number("-n,--futures", a.samples, {1, most}, "How many to draw");
  command.number("--seed", a.seed, any_seed, "Same seed, same futures");
  command.number("--threads", a.threads, any_threads, "0: one to a core; results do not depend on it");
  constexpr Allowed<double> hours{0, 1440};
  command.number("--alive-at", a.alive_at_h, hours, "Hours after the start: all known alive");
  command.number("--now", a.now_h, hours, "Hours after the start: the time of asking, no help yet");
  command.text("--csv", a.csv, "Write the shares against time as CSV");
  command.text("--json", a.json, "Write everything as JSON");
  command.text("--report", a.report_html, "Write a page for a browser or for print, as HTML");
  const Argument sample = command.number("--sample", a.sample, {0, most}, "Run this one future alone");
  command.number("--dump", a.dump, {0, most}, "Write this one future as a plain scenario").excludes(sample);
  command.text("-o,--output", a.output, "Where --dump writes; standard output if left out");
  command.flag("--force", a.force, "Let --dump write over a file");
  command.flag("--full", a.full, "Shares against time, causes, help and all unknowns as well");
  command.flag("--quiet", a.quiet, "One line only; cautions go to the error stream");
  command.flag("--ascii", a.ascii, "No letters beyond ASCII");
  command.flag("--progress", a.progress, "Report progress even when not on a terminal");
  command.footer(standing_notice);
  command.does([arguments] { return odds(*arguments); });
}

}  // namespace bide::tool
