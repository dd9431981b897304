// bide compare A.json B.json..., or S.json --vary POINTER=value,value...: scenarios beside each other.
#include <fmt/core.h>

#include <algorithm>
#include <cstdint>
#include <memory>

#include "bide/core/notice.hpp"
#include "bide/report/compare/compare.hpp"
#include "bide/report/compare/compare_page.hpp"
#include "bide/report/words/file.hpp"
#include "bide/scenario/differences.hpp"
#include "bide/scenario/document.hpp"
#include "bide/scenario/variations.hpp"
#include "bide/study/ensemble/run_all.hpp"
#include "bide/study/questions/common_futures.hpp"
#include "commands.hpp"
#include "output.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

using scenario::Diagnostics;
using scenario::ValidScenario;

struct CompareArguments {
  std::vector<std::string> scenarios, vary;
  std::string report_html;
  std::uint64_t futures = 200, seed = 1;
  bool json = false, csv = false, ascii = false, progress = false;
};

// What to compare; empty when something was refused, and then said.
struct Chosen {
  std::vector<ValidScenario> scenarios;
  int exit_code = exit_ok;
};

Chosen refuse(const Diagnostics& wrong, int exit_code) {
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
      chosen.scenarios.push_back(std::get<ValidScenario>(validated));
  }
  if (!wrong.empty()) return refuse(wrong, exit_input_refused);
  if (arguments.vary.empty()) return chosen;
  std::vector<scenario::Variation> variations;
  for (const std::string& text : arguments.vary) {
    auto read = scenario::read_variation(text, "--vary");
    if (const auto* refused = std::get_if<scenario::Diagnostic>(&read))
      wrong.push_back(*refused);
    else
      variations.push_back(std::get<scenario::Variation>(read));
  }
  if (!wrong.empty()) return refuse(wrong, exit_usage);
  auto versions = scenario::versions(chosen.scenarios.front(), variations);
  if (const auto* refused = std::get_if<Diagnostics>(&versions)) return refuse(*refused, exit_input_refused);
  chosen.scenarios = std::move(std::get<std::vector<ValidScenario>>(versions));
  return chosen;
}

// Every run of a comparison, and which of them belongs to what.
struct Plan {
  std::vector<const ValidScenario*> runs;
  struct Places {
    std::size_t own = 0;
    std::optional<std::size_t> equal;
    std::vector<std::size_t> ends;
  };
  std::vector<Places> options;
  std::vector<std::unique_ptr<ValidScenario>> made;

  std::size_t add(const ValidScenario& scenario) {
    runs.push_back(&scenario);
    return runs.size() - 1;
  }
  std::size_t keep(ValidScenario scenario) {
    made.push_back(std::make_unique<ValidScenario>(std::move(scenario)));
    return add(*made.back());
  }
};

// Fills `comparison` with what can be said before anything has run.
Plan plan(const std::vector<ValidScenario>& scenarios, report::Comparison& comparison) {
  Plan out;
  std::vector<const ValidScenario*> all;
  for (const ValidScenario& each : scenarios) all.push_back(&each);
  comparison.same_stores = scenario::differences_aboard(all).empty();
  constexpr double lowest_loss = 0, highest_loss = 1;
  for (const ValidScenario& each : scenarios) {
    report::Option option;
    option.label = each.file;
    Plan::Places places;
    places.own = out.add(each);
    if (each.scenario.raft)
      for (const double position : {lowest_loss, highest_loss}) {
        scenario::Validated end = scenario::at_end_of_ranges(each, position);
        places.ends.push_back(out.keep(std::move(std::get<ValidScenario>(end))));
      }
    if (!comparison.same_stores && &each != &scenarios.front()) {
      scenario::Validated equal = scenario::with_stores_of(scenarios.front(), each);
      if (const auto* refused = std::get_if<Diagnostics>(&equal))
        option.equal_refused = refused->front().pointer + ": " + refused->front().message;
      else
        places.equal = out.keep(std::move(std::get<ValidScenario>(equal)));
    }
    comparison.options.push_back(std::move(option));
    out.options.push_back(std::move(places));
  }
  return out;
}

// Every option under the same futures, each paired with the first.
void add_futures(const std::vector<ValidScenario>& scenarios, const CompareArguments& arguments,
                 report::Comparison& comparison) {
  constexpr double confidence = 0.95;
  const bool uncertain = std::all_of(scenarios.begin(), scenarios.end(), [](const ValidScenario& each) {
    return each.scenario.uncertain.has_value();
  });
  if (!uncertain) {
    comparison.no_futures =
        "None: that needs a part \"uncertain\" in every option. How likely the order is, is not said.";
    return;
  }
  if (arguments.futures == 0) {
    comparison.no_futures = "None: not asked for (--futures 0).";
    return;
  }
  ProgressLine progress(arguments.progress);
  study::FuturesOfOption first;
  const double all = static_cast<double>(scenarios.size());
  for (std::size_t i = 0; i < scenarios.size(); ++i) {
    auto drawn = study::draw_futures(scenarios[i], arguments.seed, arguments.futures, [&](double fraction) {
      progress((static_cast<double>(i) + fraction) / all);
    });
    if (i == 0)
      first = std::move(drawn);
    else
      comparison.options[i].futures = study::pair_futures(first, drawn, confidence);
  }
  progress.finish();
}

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
  const Chosen chosen = choose(arguments);
  if (chosen.scenarios.empty()) return chosen.exit_code;

  const report::Letters shown = letters(arguments.ascii);
  if (!arguments.report_html.empty())
    if (const auto why = report::why_not_writable(arguments.report_html))
      return cannot_write(arguments.report_html, *why, shown);

  report::Comparison comparison;
  const Plan planned = plan(chosen.scenarios, comparison);
  const std::vector<study::RunResult> results = study::run_all(planned.runs);
  for (std::size_t i = 0; i < results.size(); ++i) {
    if (const auto* wrong = std::get_if<Diagnostics>(&results[i])) {
      complain(*wrong);
      return exit_input_refused;
    }
    if (const auto* failure = std::get_if<timeline::Failure>(&results[i])) {
      say("{}: the run failed ({}): {}\n", planned.runs[i]->file, failure->ledger, failure->message);
      return exit_run_failed;
    }
  }
  const auto figures = [&](std::size_t place) {
    const auto& run = std::get<study::Run>(results[place]);
    return outcome::figures_of(run.outcome, run.timeline);
  };
  const auto compared = [&](std::size_t place) {
    return report::Compared{planned.runs[place], &std::get<study::Run>(results[place]).timeline,
                            figures(place)};
  };
  for (std::size_t i = 0; i < comparison.options.size(); ++i) {
    const Plan::Places& places = planned.options[i];
    report::Option& option = comparison.options[i];
    option.own = compared(places.own);
    if (places.equal) option.equal = compared(*places.equal);
    for (const std::size_t place : places.ends) option.ends.push_back(figures(place));
  }
  add_futures(chosen.scenarios, arguments, comparison);
  if (!arguments.report_html.empty()) {
    const std::string page = report::html::to_html(report::pages::compare_page(comparison));
    if (const auto why = report::write_whole(arguments.report_html, page))
      return cannot_write(arguments.report_html, *why, shown);
  }
  if (arguments.json) return put(report::comparison_json(comparison), "", false);
  if (arguments.csv) return put(report::comparison_csv(comparison), "", false);
  return put(report::comparison_text(comparison, shown, terminal_width()), "", false);
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
  command.text("--report", arguments->report_html, "Write a page for a browser or for print, as HTML");
  const Argument json = command.flag("--json", arguments->json, "As JSON");
  command.flag("--csv", arguments->csv, "As CSV, a row for each option").excludes(json);
  command.flag("--ascii", arguments->ascii, "No letters beyond ASCII");
  command.footer(standing_notice);
  command.does([arguments] { return compare(*arguments); });
}

}  // namespace bide::tool
