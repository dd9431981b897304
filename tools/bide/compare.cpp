// bide compare A.json B.json..., or S.json --vary POINTER=value,value...: scenarios beside each other.
#include <fmt/core.h>

#include <algorithm>
#include <cstdint>
#include <memory>

#include "bide/core/notice.hpp"
#include "bide/report/compare/compare.hpp"
#include "bide/report/compare/compare_page.hpp"
#include "bide/scenario/variations.hpp"
#include "bide/study/questions/compare.hpp"
#include "bide/study/questions/quick_levers.hpp"
#include "commands.hpp"
#include "csv_file.hpp"
#include "files.hpp"
#include "interrupt.hpp"
#include "output.hpp"
#include "pages.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

using scenario::Diagnostics;
using scenario::ValidScenario;

struct CompareArguments {
  std::vector<std::string> scenarios, vary;
  std::string json, csv;
  PageFiles pages;
  std::uint64_t futures = 200, seed = 1;
  bool full = false, plain = false, ascii = false, progress = false;
};

// What to compare; empty when something was refused, and then said.
struct Chosen {
  std::vector<scenario::Version> scenarios;
  int exit_code = exit_ok;
};

Chosen stop_with(const Diagnostics& wrong, int exit_code) {
  complain(wrong);
  return {{}, exit_code};
}

Chosen choose(const CompareArguments& arguments) {
  Chosen chosen;
  Diagnostics wrong;
  for (const std::string& path : arguments.scenarios) {
    const scenario::Validated validated = scenario::validate_file(path);
    if (const auto* refused = std::get_if<Diagnostics>(&validated))
      wrong.insert(wrong.end(), refused->begin(), refused->end());
    else
      chosen.scenarios.push_back({std::get<ValidScenario>(validated), {}});
  }
  if (!wrong.empty()) return stop_with(wrong, exit_input_refused);
  if (arguments.vary.empty()) return chosen;
  std::vector<scenario::Variation> variations;
  for (const std::string& text : arguments.vary) {
    auto read = scenario::read_variation(text, "--vary");
    if (const auto* refused = std::get_if<scenario::Diagnostic>(&read))
      wrong.push_back(*refused);
    else
      variations.push_back(std::get<scenario::Variation>(read));
  }
  if (!wrong.empty()) return stop_with(wrong, exit_usage);
  auto versions = scenario::versions(chosen.scenarios.front(), variations);
  if (const auto* refused = std::get_if<Diagnostics>(&versions))
    return stop_with(*refused, exit_input_refused);
  chosen.scenarios = std::move(std::get<std::vector<scenario::Version>>(versions));
  return chosen;
}

// Levers take a second or two for each option.
constexpr std::size_t most_with_levers = 3;

int compare(const CompareArguments& arguments) {
  if (arguments.vary.empty() ? arguments.scenarios.size() < 2 : arguments.scenarios.size() != 1) {
    say("bide compare: give two scenarios or more, or one and --vary\n");
    return exit_usage;
  }
  if (arguments.scenarios.size() > scenario::most_versions) {
    say("bide compare: found {} scenarios; allowed at most {}\n", arguments.scenarios.size(),
        scenario::most_versions);
    return exit_usage;
  }
  Chosen chosen = choose(arguments);
  if (chosen.scenarios.empty()) return chosen.exit_code;
  Files files;
  for (const std::string& path : arguments.scenarios) files.read.emplace_back(path);
  for (const ValidScenario& each : chosen.scenarios)
    for (std::filesystem::path& file : files_of(each)) files.read.push_back(std::move(file));
  files.written = {arguments.json, arguments.csv, notice_of(arguments.csv, arguments.plain),
                   arguments.pages.report};
  if (const int code = check(files); code != exit_ok) return code;
  if (const int code = ready_pages(arguments.pages); code != exit_ok) return code;

  when_interrupted("Nothing is kept of a comparison that is not finished; the same command begins anew.");
  ProgressLine progress(arguments.progress);
  auto answer = study::compare(std::move(chosen.scenarios), {arguments.futures, arguments.seed},
                               [&](double fraction) { progress(fraction); });
  progress.finish();
  if (const auto* refusal = std::get_if<study::Refusal>(&answer)) return refuse(*refusal);
  auto& comparison = std::get<study::Comparison>(answer);
  const bool alone = is_output(arguments.json) || is_output(arguments.csv);
  if (arguments.pages.any() || !alone)
    for (std::size_t i = 0; i < std::min(comparison.options.size(), most_with_levers); ++i)
      comparison.options[i].levers = study::try_levers_quickly(*comparison.options[i].own.scenario);
  const report::document::Page page = report::pages::compare_page(comparison);
  if (arguments.pages.any()) {
    files.read.insert(files.read.end(), files.written.begin(), files.written.end());
    if (const int code = write_pages(page, arguments.pages, files.read); code != exit_ok) return code;
  }
  if (!arguments.json.empty())
    if (const int code = put_result(report::comparison_json(comparison), arguments.json); code != exit_ok)
      return code;
  if (!arguments.csv.empty())
    if (const int code = write_csv(arguments.csv, report::comparison_csv(comparison), arguments.plain);
        code != exit_ok)
      return code;
  if (alone) return exit_ok;
  return print_page(page, arguments.ascii, arguments.full);
}

}  // namespace

void add_compare(Program& program) {
  auto arguments = std::make_shared<CompareArguments>();
  Command command =
      program.command("compare", "Scenarios beside each other: what differs, and why one is ahead");
  command.texts("scenarios", arguments->scenarios, "Scenario files").required();
  command.texts("--vary", arguments->vary,
                "POINTER=value,value...: the one scenario with each of these values; several make every "
                "combination");
  constexpr std::uint64_t most = 1'000'000;
  command.number("-n,--futures", arguments->futures, {0, most},
                 "Common futures to draw where every option has `uncertain`; 0 for none");
  command.number("--seed", arguments->seed, any_seed, "Same seed, same futures");
  command.flag("--progress", arguments->progress, "Report progress even when not on a terminal");
  add_page_options(command, arguments->pages);
  command.flag("--full", arguments->full,
               "Inputs that differ, equal stores, water, air and cautions as well");
  command.result("--json", arguments->json, "Write everything as JSON");
  const Argument csv = command.result("--csv", arguments->csv, "Write a row for each option as CSV");
  command.flag("--plain", arguments->plain, "The table's notice goes to a file beside it").needs(csv);
  command.flag("--ascii", arguments->ascii, "No letters beyond ASCII");
  command.footer(standing_notice);
  command.does([arguments] { return compare(*arguments); });
}

}  // namespace bide::tool
