// bide odds S.json: the endurance window of a crew over many possible futures, given what is known so far.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <memory>
#include <string>
#include <variant>
#include <vector>

#include "bide/core/notice.hpp"
#include "bide/core/random.hpp"
#include "bide/outcome/outcome.hpp"
#include "bide/report/odds/odds.hpp"
#include "bide/report/odds/odds_page.hpp"
#include "bide/report/run/terminal.hpp"
#include "bide/report/words/file.hpp"
#include "bide/study/questions/nested.hpp"
#include "bide/study/records/unnamed_file.hpp"
#include "bide/study/sampling/make_sample.hpp"
#include "bide/timeline/simulate.hpp"
#include "commands.hpp"
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
  bool quiet = false, ascii = false, progress = false, force = false;
};

constexpr double confidence = 0.95;
// More than this share without a result, and the command fails.
constexpr double bearable_failures = 0.01;

struct Drawn {
  study::UnnamedFile<study::Future> futures;
  std::vector<report::FailedSample> failed;
};

Drawn draw(const scenario::ValidScenario& scenario, const study::Sampler& sampler,
           const OddsArguments& arguments, ProgressLine& progress) {
  const std::optional<scenario::Rescue>& rescue = scenario.scenario.uncertain->rescue;
  Drawn out;
  study::EnsembleOptions options;
  options.threads = arguments.threads;
  options.progress = [&](const study::Progress& p) {
    progress(static_cast<double>(p.done) / static_cast<double>(p.total),
             fmt::format(", {:.0f} futures/s", p.per_s));
  };
  std::vector<study::Help> help(options.window);  // of the samples in memory
  const auto made = [&](std::uint64_t k, const study::Drawn& drawn, const study::Sample& sample) {
    if (rescue)
      help[k % help.size()] =
          study::help_of(*rescue, *drawn.rescue_h, sample.weather, scenario.scenario.duration_h);
  };
  const auto sink = [&](const study::SampleResult& r) {
    if (!r.failure.empty()) {
      out.failed.push_back({r.index, r.failure});
      return;
    }
    out.futures.add(study::future_of(r, help[r.index % help.size()]));
  };
  study::run_ensemble({0, arguments.samples}, study::drawing(sampler, arguments.seed, made), sink, options);
  return out;
}

// Of the futures that agree with what is known; the first so many, since the bootstrap takes every case.
std::vector<report::Unknown> unknowns(const study::Sampler& sampler, const OddsArguments& arguments,
                                      const study::Futures& futures, const study::KnownSoFar& known,
                                      double horizon_h) {
  constexpr std::size_t most = 20000, replicates = 200;
  std::vector<double> until_h;
  std::vector<std::vector<double>> numbers(sampler.factors().size());
  futures([&](const study::Future& future) {
    if (until_h.size() == most || !study::agrees(future, known)) return;
    until_h.push_back(std::min(static_cast<double>(future.able_h[study::first_person]), horizon_h));
    const std::vector<double> point = sampler.point(arguments.seed, future.sample);
    for (std::size_t f = 0; f < point.size(); ++f) numbers[f].push_back(point[f]);
  });
  const study::Bootstrap bootstrap{
      [seed = ~arguments.seed](std::uint64_t sample, std::uint32_t factor, std::uint32_t each) {
        return uniform(seed, sample, factor, each);
      },
      replicates, confidence};
  std::vector<report::Unknown> out;
  for (std::size_t f = 0; f < numbers.size(); ++f)
    if (const auto narrowing = study::expected_narrowing(numbers[f], until_h, bootstrap))
      out.push_back({sampler.factors()[f].name, sampler.factors()[f].kind, *narrowing});
  std::stable_sort(out.begin(), out.end(), [](const report::Unknown& a, const report::Unknown& b) {
    return a.narrowing.of_variance > b.narrowing.of_variance;
  });
  return out;
}

// A square of truths and cases, as large as the futures asked for, but at most this many each way.
std::optional<study::NestedBands> nested(const study::Sampler& sampler, const OddsArguments& arguments,
                                         double horizon_h, ProgressLine& progress) {
  constexpr std::uint64_t most = 32, fewest = 10;
  const auto side = std::min(most, static_cast<std::uint64_t>(std::sqrt(arguments.samples)));
  if (!study::is_nested(sampler) || side < fewest) return std::nullopt;
  std::vector<float> first_able_h;
  study::EnsembleOptions options;
  options.threads = arguments.threads;
  options.progress = [&](const study::Progress& p) {
    progress(static_cast<double>(p.done) / static_cast<double>(p.total), " of the cases under one truth");
  };
  std::uint64_t failed = 0;
  study::run_ensemble(
      {0, side * side}, study::nested_drawing(sampler, arguments.seed, side),
      [&](const study::SampleResult& r) {
        const bool made = r.failure.empty();
        failed += made ? 0 : 1;
        first_able_h.push_back(made ? study::future_of(r).able_h[study::first_person]
                                    : std::numeric_limits<float>::quiet_NaN());
      },
      options);
  if (failed == side * side) return std::nullopt;
  return study::nested_bands(first_able_h, side, side, horizon_h);
}

std::optional<scenario::ValidScenario> load(const OddsArguments& arguments, report::Letters shown) {
  auto validated = scenario::validate_file(arguments.scenario);
  if (const auto* errors = std::get_if<scenario::Diagnostics>(&validated)) {
    print(*errors, shown);
    return std::nullopt;
  }
  auto& scenario = std::get<scenario::ValidScenario>(validated);
  if (!scenario.scenario.uncertain) {
    print({{arguments.scenario, "/uncertain",
            "missing; odds need something that is uncertain (bide run takes the scenario as it is)"}},
          shown);
    return std::nullopt;
  }
  return std::move(scenario);
}

int replay(const scenario::ValidScenario& uncertain, const study::Sampler& sampler,
           const OddsArguments& arguments, report::Letters shown) {
  const study::Drawn drawn = sampler.draw(arguments.seed, *arguments.sample);
  const auto validated = sampler.scenario_of(drawn);
  if (const auto* errors = std::get_if<scenario::Diagnostics>(&validated)) {
    print(*errors, shown, fmt::format("sample {}: ", *arguments.sample).c_str());
    return exit_input_refused;
  }
  const auto& scenario = std::get<scenario::ValidScenario>(validated);
  const auto loaded = weather::load(scenario);
  if (const auto* errors = std::get_if<scenario::Diagnostics>(&loaded)) {
    print(*errors, shown);
    return exit_input_refused;
  }
  const auto& weather = std::get<weather::Record>(loaded);
  const auto simulated = timeline::simulate(scenario, weather);
  if (const auto* failure = std::get_if<timeline::Failure>(&simulated)) {
    say("sample {}: the run failed ({}): {}\n", *arguments.sample, failure->ledger, failure->message);
    return exit_run_failed;
  }
  const auto& timeline = std::get<timeline::Timeline>(simulated);
  report::TerminalOptions options;
  options.utf8 = shown == report::Letters::utf8;
  options.width = terminal_width();
  std::string text =
      report::terminal_summary(outcome::read_outcome(timeline, scenario), timeline, scenario, options);
  if (const auto& rescue = uncertain.scenario.uncertain->rescue) {
    const double horizon_h = uncertain.scenario.duration_h;
    text +=
        report::help_text({*rescue, *drawn.rescue_h, horizon_h},
                          study::help_of(*rescue, *drawn.rescue_h, weather, horizon_h), options.width, shown);
  }
  return put(text, "", false);
}

int odds(const OddsArguments& arguments) {
  const report::Letters shown = letters(arguments.ascii);
  const auto scenario = load(arguments, shown);
  if (!scenario) return exit_input_refused;
  const study::Sampler sampler(*scenario);
  if (arguments.dump)
    return put(sampler.text_of(sampler.draw(arguments.seed, *arguments.dump)), arguments.output,
               arguments.force);
  if (arguments.sample) return replay(*scenario, sampler, arguments, shown);
  for (const std::string& path : {arguments.csv, arguments.json, arguments.report_html})
    if (!path.empty())
      if (const auto why = report::why_not_writable(path)) return cannot_write(path, *why, shown);

  study::KnownSoFar known;
  if (const auto& stated = scenario->scenario.uncertain->known) known = {stated->alive_at_h, stated->now_h};
  if (arguments.alive_at_h) known.alive_at_h = arguments.alive_at_h;
  if (arguments.now_h) known.now_h = arguments.now_h;

  const double horizon_h = scenario->scenario.duration_h;
  ProgressLine progress(arguments.progress);

  Drawn drawn = draw(*scenario, sampler, arguments, progress);
  if (drawn.futures.size() == 0) {
    progress.finish();
    say("{}: no sample has a result; the first: {}\n", report::plain(arguments.scenario, shown),
        report::plain(drawn.failed.front().reason, shown));
    return exit_run_failed;
  }
  const study::Futures futures = [&](const study::VisitFuture& visit) { drawn.futures.each(visit); };
  auto given = study::odds_given(futures, known, horizon_h, scenario->scenario.uncertain->rescue.has_value(),
                                 confidence);
  if (!given) {
    progress.finish();
    say("{}: none of {} futures agrees with what is known; draw more (-n), or look at the scenario again\n",
        report::plain(arguments.scenario, shown), drawn.futures.size());
    return exit_run_failed;
  }
  report::OddsMaterial material{*scenario,
                                arguments.seed,
                                arguments.samples,
                                std::move(drawn.failed),
                                known,
                                std::move(*given),
                                unknowns(sampler, arguments, futures, known, horizon_h),
                                nested(sampler, arguments, horizon_h, progress)};
  progress.finish();
  if (!arguments.csv.empty())
    if (const auto why = report::write_whole(arguments.csv, report::odds_csv(material)))
      return cannot_write(arguments.csv, *why, shown);
  if (!arguments.json.empty())
    if (const auto why = report::write_whole(arguments.json, report::odds_json(material)))
      return cannot_write(arguments.json, *why, shown);
  if (!arguments.report_html.empty()) {
    const std::string page = report::html::to_html(report::pages::odds_page(material));
    if (const auto why = report::write_whole(arguments.report_html, page))
      return cannot_write(arguments.report_html, *why, shown);
  }
  if (arguments.quiet) print(scenario->cautions, shown, "caution: ");
  const int written = put(arguments.quiet ? report::odds_line(material, shown)
                                          : report::odds_text(material, terminal_width(), shown),
                          "", false);
  const bool too_many = static_cast<double>(material.failed.size()) >
                        bearable_failures * static_cast<double>(arguments.samples);
  if (too_many)
    say("{}: {} of {} samples have no result, more than {:.0f} %\n", report::plain(arguments.scenario, shown),
        material.failed.size(), arguments.samples, 100 * bearable_failures);
  return written != exit_ok ? written : too_many ? exit_run_failed : exit_ok;
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
  command.flag("--quiet", a.quiet, "One line only; cautions go to the error stream");
  command.flag("--ascii", a.ascii, "No letters beyond ASCII");
  command.flag("--progress", a.progress, "Report progress even when not on a terminal");
  command.footer(standing_notice);
  command.does([arguments] { return odds(*arguments); });
}

}  // namespace bide::tool
