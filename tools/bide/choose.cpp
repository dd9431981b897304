// bide choose [S.json]: which raft and which pack, by the chance that all are able when help comes. Without a
// file: for people and waters given by flags.
#include "bide/study/questions/choose.hpp"

#include <fmt/format.h>

#include <memory>
#include <optional>
#include <utility>

#include "bide/core/notice.hpp"
#include "bide/core/text.hpp"
#include "bide/report/choose/choose.hpp"
#include "bide/report/choose/choose_page.hpp"
#include "bide/scenario/moment.hpp"
#include "bide/scenario/nearest.hpp"
#include "bide/scenario/patch.hpp"
#include "commands.hpp"
#include "csv_file.hpp"
#include "files.hpp"
#include "interrupt.hpp"
#include "night.hpp"
#include "output.hpp"
#include "pages.hpp"
#include "place.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

using scenario::Diagnostics;
using scenario::ValidScenario;

constexpr const char* command_line = "command line";

struct ChooseArguments {
  std::string scenario, rafts, packs, help_after, csv;
  PageFiles pages;
  std::vector<std::string> places;
  NightFlags setting;
  study::ChooseQuestion question;
  bool full = false, ascii = false, progress = false, plain = false;
};

// Fills the question; says what is wrong with a flag.
Diagnostics read_question(const ChooseArguments& a, study::ChooseQuestion& q) {
  Diagnostics wrong;
  constexpr std::string_view two = "2x";
  for (const std::string& word : split(a.rafts, ',')) {
    const bool one_of_two = word.starts_with(two);
    q.rafts.push_back({one_of_two ? word.substr(two.size()) : word, one_of_two});
  }
  if (!a.packs.empty()) q.packs = split(a.packs, ',');
  constexpr std::size_t most_hours = 6;
  for (const std::string& word : split(a.help_after, ',')) {
    const auto h = scenario::parse_hours(word);
    const bool later = q.help_h.empty() || (h && *h > q.help_h.back());
    if (h && *h >= 1 && *h <= scenario::longest_h && later && q.help_h.size() < most_hours) {
      q.help_h.push_back(*h);
      continue;
    }
    wrong.push_back({command_line, "--help-after",
                     fmt::format("found {}; allowed up to {} times from 1h to 60d, each later than the one "
                                 "before it, as 24h,3d,8d",
                                 scenario::in_quotes(a.help_after), most_hours)});
    break;
  }
  return wrong;
}

// One water, from its place and the flags.
std::variant<ValidScenario, Diagnostics> water_of(const ChooseArguments& a, const study::ChooseQuestion& q,
                                                  const std::string& place) {
  NightFlags flags = a.setting;
  flags.place = place;
  if (const auto month = take_month(*flags.place)) {
    if (flags.month) return Diagnostics{{command_line, "--month", "given twice: with the place as well"}};
    flags.month = month;
  }
  if (!flags.month)
    return Diagnostics{{command_line, "--place",
                        fmt::format("found {}, without a month; allowed as \"Biscay in February\", or with "
                                    "--month",
                                    scenario::in_quotes(place))}};
  flags.name = a.setting.month ? fmt::format("{}, month {}", place, *flags.month) : place;
  flags.abandoned = "0h";
  flags.ahead = fmt::format("{:g}h", q.help_h.back());
  flags.raft = q.rafts.front().kind;
  auto read = situation_of(flags, fmt::format("2031-{:02}-15T12:00Z", *flags.month));
  if (auto* wrong = std::get_if<Diagnostics>(&read)) return std::move(*wrong);
  auto made = scenario::scenario_of(std::get<scenario::Situation>(read));
  if (auto* wrong = std::get_if<Diagnostics>(&made)) return std::move(*wrong);
  scenario::Node& document = std::get<scenario::SituationFile>(made).document;
  scenario::put(document, "/uncertain/known", {});  // the choice comes before anything has happened
  return scenario::validate_document(std::move(document), command_line, {});
}

std::variant<std::vector<ValidScenario>, Diagnostics> waters_of(const ChooseArguments& a,
                                                                const study::ChooseQuestion& q) {
  std::vector<ValidScenario> out;
  if (!a.scenario.empty()) {
    auto validated = scenario::validate_file(a.scenario);
    if (auto* wrong = std::get_if<Diagnostics>(&validated)) return std::move(*wrong);
    out.push_back(std::get<ValidScenario>(std::move(validated)));
    return out;
  }
  if (a.places.empty())
    return Diagnostics{{command_line, "--place", "missing; give a scenario file, or people and waters"}};
  for (const std::string& place : a.places) {
    auto water = water_of(a, q, place);
    if (auto* wrong = std::get_if<Diagnostics>(&water)) return std::move(*wrong);
    out.push_back(std::get<ValidScenario>(std::move(water)));
  }
  return out;
}

int show_choice(const ChooseArguments& a) {
  const report::Letters shown = letters(a.ascii);
  study::ChooseQuestion question = a.question;
  if (const Diagnostics wrong = read_question(a, question); !wrong.empty()) {
    print(wrong, shown);
    return exit_input_refused;
  }
  const auto read = waters_of(a, question);
  if (const auto* wrong = std::get_if<Diagnostics>(&read)) {
    print(*wrong, shown);
    return exit_input_refused;
  }
  const auto& waters = std::get<std::vector<ValidScenario>>(read);
  Files files{a.scenario.empty() ? std::vector<std::filesystem::path>{} : files_of(waters.front()),
              {a.csv, notice_of(a.csv, a.plain), a.pages.report}};
  if (const int code = check(files); code != exit_ok) return code;
  if (const int code = ready_pages(a.pages); code != exit_ok) return code;

  when_interrupted("Nothing is kept of a table that is not finished; the same command begins anew.");
  ProgressLine line(a.progress);
  const auto answer = study::choose(waters, question, [&](double fraction) { line(fraction); });
  line.finish();
  if (const auto* refusal = std::get_if<study::Refusal>(&answer)) return refuse(*refusal);
  const auto& chosen = std::get<study::Chosen>(answer);
  if (!a.csv.empty())
    if (const int code = write_csv(a.csv, report::choose_csv(chosen), a.plain); code != exit_ok) return code;
  const report::document::Page page = report::pages::choose_page(chosen);
  if (a.pages.any()) {
    files.read.insert(files.read.end(), files.written.begin(), files.written.end());
    if (const int code = write_pages(page, a.pages, files.read); code != exit_ok) return code;
  }
  return is_output(a.csv) ? exit_ok : print_page(page, a.ascii, a.full);
}

}  // namespace

void add_choose(Program& program) {
  auto arguments = std::make_shared<ChooseArguments>();
  ChooseArguments& a = *arguments;
  Command command = program.command("choose", "Raft and pack: the chance that all are able when help comes");
  const Argument file = command.text("scenario", a.scenario, "Scenario file; its own raft and pack give way");
  command
      .text("--rafts", a.rafts,
            "Rafts, as offshore_4,offshore_8 (bide catalogue rafts); 2xoffshore_4: two, of which one is lost")
      .required();
  command.text("--packs", a.packs, "Packs for each raft (bide catalogue packs); left out: each raft's own");
  command.text("--help-after", a.help_after, "When help comes, as 24h,3d,8d").required();
  command
      .texts("--place", a.places,
             "Without a file: \"Biscay in February\" or a place with --month; repeat for more")
      .excludes(file);
  add_setting_flags(command, a.setting, file);
  constexpr std::uint64_t most = 1'000'000;
  command.number("-n,--futures", a.question.futures, {2, most}, "Futures to draw for each choice");
  command.number("--seed", a.question.seed, any_seed, "Same seed, same futures");
  command.number("--threads", a.question.threads, any_threads,
                 "Threads; 0: one to a core. Results do not depend on it");
  const Argument csv = command.result("--csv", a.csv, "Write the table as CSV");
  command.flag("--plain", a.plain, "The table's notice goes to a file beside it").needs(csv);
  add_page_options(command, a.pages);
  command.flag("--full", a.full, "Each choice against the first, future by future, as well");
  command.flag("--ascii", a.ascii, "No letters beyond ASCII");
  command.flag("--progress", a.progress, "Report progress even when not on a terminal");
  command.footer(standing_notice);
  command.does([arguments] { return show_choice(*arguments); });
}

}  // namespace bide::tool
