// bide odds S.json: the endurance window of a crew over many possible futures, given what is known so far.
// Without a file: the same from a few flags, told from now on.
#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <variant>

#include "bide/core/notice.hpp"
#include "bide/report/odds/from_now.hpp"
#include "bide/report/odds/night.hpp"
#include "bide/report/odds/odds.hpp"
#include "bide/report/odds/odds_page.hpp"
#include "bide/report/run/terminal.hpp"
#include "bide/scenario/patch.hpp"
#include "bide/study/questions/quick_levers.hpp"
#include "bide/study/questions/replay.hpp"
#include "bide/study/questions/unmeasured.hpp"
#include "commands.hpp"
#include "csv_file.hpp"
#include "files.hpp"
#include "interrupt.hpp"
#include "night.hpp"
#include "output.hpp"
#include "pages.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

struct OddsArguments {
  std::string scenario, csv, json, output;
  PageFiles pages;
  std::uint64_t samples = 1000, seed = 1;
  int threads = 0;
  std::optional<double> alive_at_h, now_h;
  std::optional<std::string> now;  // read by kind of question
  NightFlags night;
  std::optional<std::uint64_t> sample, dump;
  bool full = false, quiet = false, ascii = false, progress = false, force = false, plain = false,
       no_levers = false;
  bool alone() const { return is_output(json) || is_output(csv); }  // on standard output
  // Files to be written, but for where -o and the drawings go.
  std::vector<std::filesystem::path> written() const {
    return {csv, notice_of(csv, plain), json, pages.report};
  }
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
  options.members = std::get<study::RangeMembers>(std::move(members));
  if (replayed.help)
    options.also.push_back(report::help_section(
        {*uncertain.scenario.uncertain->rescue, replayed.help_needed_h, uncertain.scenario.duration_h},
        *replayed.help));
  return put(
      report::terminal_summary(replayed.run.outcome, replayed.run.timeline, replayed.scenario, options), "",
      false);
}

std::variant<study::OddsAnswer, study::Refusal> ask(const scenario::ValidScenario& scenario,
                                                    const study::OddsQuestion& question, bool progress) {
  when_interrupted("Nothing is kept of odds that are not finished; the same command begins anew.");
  ProgressLine line(progress);
  auto answer = study::ask_odds(scenario, question, [&](study::OddsPart part, const study::Progress& p) {
    line(static_cast<double>(p.done) / static_cast<double>(p.total),
         part == study::OddsPart::futures ? fmt::format(", {:.0f} futures/s", p.per_s)
                                          : " of the cases with ignorance held fixed");
  });
  line.finish();
  return answer;
}

study::OddsQuestion question_of(const OddsArguments& arguments) {
  study::OddsQuestion out;
  out.futures = arguments.samples;
  out.seed = arguments.seed;
  out.known = {arguments.alive_at_h, arguments.now_h};
  out.threads = arguments.threads;
  return out;
}

// Writes the files asked for.
// @param page of the answer
int write_files(const study::OddsAnswer& answer, const report::document::Page& page,
                const OddsArguments& arguments) {
  if (!arguments.csv.empty())
    if (const int code = write_csv(arguments.csv, report::odds_csv(answer), arguments.plain); code != exit_ok)
      return code;
  if (!arguments.json.empty())
    if (const int code = put_result(report::odds_json(answer), arguments.json); code != exit_ok) return code;
  if (!arguments.pages.any()) return exit_ok;
  std::vector<std::filesystem::path> kept = arguments.written();
  if (!arguments.scenario.empty())
    for (std::filesystem::path& each : files_of(answer.scenario)) kept.push_back(std::move(each));
  if (!arguments.output.empty()) kept.emplace_back(arguments.output);
  return write_pages(page, arguments.pages, kept);
}

// Prints the answer, unless JSON or a table is alone there; exit code 3 when too many samples have no result.
int show(const study::OddsAnswer& answer, const report::document::Page& page, const OddsArguments& arguments,
         report::Letters shown) {
  const int written = arguments.alone() ? exit_ok
                      : arguments.quiet ? put(report::odds_line(answer, shown), "", false)
                                        : print_page(page, arguments.ascii, arguments.full);
  if (!answer.too_many_failed() || written != exit_ok) return written;
  say("{}: {} of {} samples have no result, more than 1 %\n", report::plain(answer.scenario.file, shown),
      answer.failed.size(), answer.samples);
  return exit_run_failed;
}

int odds_of_file(const OddsArguments& arguments) {
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
  Files files{files_of(scenario), arguments.written()};
  if (dumped_to_a_file) files.written.emplace_back(arguments.output);
  if (const int code = check(files); code != exit_ok) return code;
  if (const int code = ready_pages(arguments.pages); code != exit_ok) return code;
  if (arguments.dump)
    return put(study::text_of_future(scenario, arguments.seed, *arguments.dump), arguments.output,
               arguments.force);
  if (arguments.sample) return show_replay(scenario, arguments, shown);

  auto asked = ask(scenario, question_of(arguments), arguments.progress);
  if (const auto* refusal = std::get_if<study::Refusal>(&asked)) return refuse(*refusal);
  auto& answer = std::get<study::OddsAnswer>(asked);
  if (!arguments.no_levers && (!(arguments.quiet || arguments.alone()) || arguments.pages.any()))
    answer.levers = study::try_levers_quickly(scenario);
  const report::document::Page page = report::pages::odds_page(answer);
  if (const int code = write_files(answer, page, arguments); code != exit_ok) return code;
  if (arguments.quiet) print(scenario.cautions, shown, "caution: ");
  return show(answer, page, arguments, shown);
}

// Without cautions for single runs, and on the pack of a raft that is drawn.
scenario::Diagnostics on_what_is_known(const scenario::ValidScenario& scenario) {
  scenario::Diagnostics out = scenario.cautions;
  const auto& inputs = scenario.scenario.uncertain->inputs.entries;
  const bool raft_drawn =
      std::any_of(inputs.begin(), inputs.end(), [](const auto& each) { return each.first == "/raft/kind"; });
  std::erase_if(out, [&](const scenario::Diagnostic& each) {
    return each.pointer == "/uncertain" || (raft_drawn && each.pointer == "/stores/pack");
  });
  return out;
}

// The first numbers come after 64 futures, on the error stream, and are refined there while the rest are run.
int odds_from_now(const OddsArguments& arguments) {
  const report::Letters shown = letters(arguments.ascii);
  const auto read = situation_of(arguments.night, arguments.now);
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&read)) {
    print(*wrong, shown);
    return exit_input_refused;
  }
  const auto made = scenario::scenario_of(std::get<scenario::Situation>(read));
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&made)) {
    print(*wrong, shown);
    return exit_input_refused;
  }
  const auto& [document, cautions] = std::get<scenario::SituationFile>(made);
  const std::string text = scenario::write_document(document);
  const auto validated = scenario::validate_text(text, "command line", {});
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&validated)) {
    print(*wrong, shown);
    return exit_input_refused;
  }
  const auto& scenario = std::get<scenario::ValidScenario>(validated);
  Files files{{}, arguments.written()};
  files.written.emplace_back(arguments.output);
  if (const int code = check(files); code != exit_ok) return code;
  if (const int code = ready_pages(arguments.pages); code != exit_ok) return code;
  if (!arguments.output.empty())
    if (const int code = put(text, arguments.output, arguments.force); code != exit_ok) return code;
  print(cautions, shown, "caution: ");
  print(on_what_is_known(scenario), shown, "caution: ");

  study::OddsQuestion question = question_of(arguments);
  const double now_h = scenario.scenario.uncertain->known->now_h.value();
  question.at_h = study::hours_from_now(now_h, scenario.scenario.duration_h);
  question.nested = false;
  question.so_far = [&](const study::Odds& odds) { say("{}\n", report::night_so_far(odds, now_h)); };
  auto asked = ask(scenario, question, arguments.progress);
  if (const auto* refusal = std::get_if<study::Refusal>(&asked)) return refuse(*refusal);
  const study::OddsAnswer answer = report::from_now(std::get<study::OddsAnswer>(std::move(asked)));
  const report::document::Page page = report::pages::odds_page(answer);
  if (const int code = write_files(answer, page, arguments); code != exit_ok) return code;
  return show(answer, page, arguments, shown);
}

// "--now" of a file: hours after its start.
int read_now(OddsArguments& arguments) {
  if (!arguments.now) return exit_ok;
  const char* const end = arguments.now->data() + arguments.now->size();
  double value{};
  const auto [stop, wrong] = std::from_chars(arguments.now->data(), end, value);
  if (wrong != std::errc() || stop != end || !(value >= 0 && value <= scenario::longest_h)) {
    say("--now: found \"{}\"; allowed 0 to {} with a scenario file\n", *arguments.now, scenario::longest_h);
    return exit_usage;
  }
  arguments.now_h = value;
  return exit_ok;
}

int odds(OddsArguments& arguments) {
  if (!arguments.scenario.empty()) {
    const int code = read_now(arguments);
    return code == exit_ok ? odds_of_file(arguments) : code;
  }
  if (arguments.night.any()) return odds_from_now(arguments);
  say("bide odds: give a scenario file, or what is known: --persons, --abandoned, --place\n");
  return exit_usage;
}

}  // namespace

void add_odds(Program& program) {
  auto arguments = std::make_shared<OddsArguments>();
  OddsArguments& a = *arguments;
  Command command =
      program.command("odds", "Many possible futures: the endurance window, given what is known so far");
  const Argument file = command.text("scenario", a.scenario, "Scenario file with `uncertain`");
  constexpr std::uint64_t most = 100'000'000;
  command.number("-n,--futures", a.samples, {1, most}, "Futures to draw");
  command.number("--seed", a.seed, any_seed, "Same seed, same futures");
  command.number("--threads", a.threads, any_threads,
                 "Threads; 0: one to a core. Results do not depend on it");
  constexpr Allowed<double> hours{0, scenario::longest_h};
  command.number("--alive-at", a.alive_at_h, hours, "All are known to be alive so many hours after the start")
      .needs(file);
  command.text("--now", a.now,
               "Time of asking, no help having come: with a file, hours after the start; else UTC, the clock "
               "if left out");
  const Argument csv = command.result("--csv", a.csv, "Write the shares against time as CSV");
  command.flag("--plain", a.plain, "The table's notice goes to a file beside it").needs(csv);
  command.result("--json", a.json, "Write everything as JSON");
  add_page_options(command, a.pages);
  command.flag("--no-levers", a.no_levers, "Do not try what would buy more time").needs(file);
  Argument sample = command.number("--sample", a.sample, {0, most}, "Run this one future alone");
  sample.needs(file);
  command.number("--dump", a.dump, {0, most}, "Write this one future as a plain scenario")
      .excludes(sample)
      .needs(file);
  command.text("-o,--output", a.output,
               "File that --dump writes to, standard output if left out; without a scenario file: where the "
               "scenario goes");
  command.flag("--force", a.force, "Let -o write over a file");
  command.flag("--full", a.full, "Shares against time, causes, help and all unknowns as well");
  add_night_flags(command, a.night, file);
  command.flag("--quiet", a.quiet, "One line only; cautions go to the error stream");
  command.flag("--ascii", a.ascii, "No letters beyond ASCII");
  command.flag("--progress", a.progress, "Report progress even when not on a terminal");
  command.footer(standing_notice);
  command.does([arguments] { return odds(*arguments); });
}

}  // namespace bide::tool
