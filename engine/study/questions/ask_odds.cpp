#include "bide/study/questions/ask_odds.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "bide/core/random.hpp"
#include "bide/core/units.hpp"
#include "bide/study/ensemble/run_all.hpp"
#include "bide/study/questions/nested.hpp"
#include "bide/study/records/unnamed_file.hpp"
#include "bide/study/sampling/make_sample.hpp"

namespace bide::study {
namespace {

struct DrawnFutures {
  UnnamedFile<Future> futures;
  std::vector<FailedSample> failed;
};

EnsembleOptions options_of(const OddsQuestion& question, OddsPart part, const ToldOddsProgress& progress) {
  EnsembleOptions options;
  options.threads = question.threads;
  if (progress) options.progress = [&progress, part](const Progress& p) { progress(part, p); };
  return options;
}

DrawnFutures draw(const scenario::ValidScenario& scenario, const Sampler& sampler,
                  const OddsQuestion& question, const KnownSoFar& known, const ToldOddsProgress& progress) {
  const std::optional<scenario::Rescue>& rescue = scenario.scenario.uncertain->rescue;
  DrawnFutures out;
  const EnsembleOptions options = options_of(question, OddsPart::futures, progress);
  // Of the samples in memory.
  std::vector<Help> help(options.window);
  std::vector<std::optional<LaunchDrawn>> launch(options.window);
  const auto made = [&](std::uint64_t k, const Drawn& drawn, Sample& sample) {
    launch[k % launch.size()] = drawn.raft.launch;
    if (!rescue) return;
    Help& comes = help[k % help.size()];
    comes = help_of(*rescue, *drawn.rescue_h, sample.weather, scenario.scenario.duration_h);
    sample.signals_at_s = comes.at_h * hour_s;
  };
  constexpr std::uint64_t first_told = 64, next_told = 4;  // how many, and times how many
  std::uint64_t tell_at = first_told;
  const auto tell = [&](std::uint64_t run) {
    if (!question.so_far || run < tell_at || run == question.futures) return;
    tell_at *= next_told;
    const Futures futures = [&](const VisitFuture& visit) { out.futures.each(visit); };
    if (const auto odds = odds_given(futures, known, scenario.scenario.duration_h, rescue.has_value(),
                                     interval_confidence, question.at_h))
      question.so_far(*odds);
  };
  const auto sink = [&](const SampleResult& r) {
    if (!r.failure.empty())
      out.failed.push_back({r.index, r.failure});
    else
      out.futures.add(future_of(r, help[r.index % help.size()], launch[r.index % launch.size()]));
    tell(r.index + 1);
  };
  run_ensemble({0, question.futures}, drawing(sampler, question.seed, made), sink, options);
  return out;
}

// Of the futures that agree with what is known; the first so many, since the bootstrap takes every case.
std::vector<Unknown> unknowns(const Sampler& sampler, std::uint64_t seed, const Futures& futures,
                              const KnownSoFar& known, double horizon_h) {
  constexpr std::size_t most = 20000, replicates = 200;
  std::vector<double> until_h;
  std::vector<std::vector<double>> numbers(sampler.factors().size());
  futures([&](const Future& future) {
    if (until_h.size() == most || !agrees(future, known)) return;
    until_h.push_back(std::min(static_cast<double>(future.able_h[first_person]), horizon_h));
    const std::vector<double> point = sampler.point(seed, future.sample);
    for (std::size_t f = 0; f < point.size(); ++f) numbers[f].push_back(point[f]);
  });
  const Bootstrap bootstrap{[seed = ~seed](std::uint64_t sample, std::uint32_t factor, std::uint32_t each) {
                              return uniform(seed, sample, factor, each);
                            },
                            replicates, interval_confidence};
  std::vector<Unknown> out;
  for (std::size_t f = 0; f < numbers.size(); ++f)
    if (const auto reduction = expected_variance_reduction(numbers[f], until_h, bootstrap))
      out.push_back({sampler.factors()[f].name, sampler.factors()[f].kind, *reduction});
  std::stable_sort(out.begin(), out.end(), [](const Unknown& a, const Unknown& b) {
    return a.reduction.of_variance > b.reduction.of_variance;
  });
  return out;
}

// A square of truths and cases, as large as the futures asked for, but at most this many each way.
std::optional<NestedBands> nested(const Sampler& sampler, const OddsQuestion& question, double horizon_h,
                                  const ToldOddsProgress& progress) {
  constexpr std::uint64_t most = 32, fewest = 10;
  const auto side = std::min(most, static_cast<std::uint64_t>(std::sqrt(question.futures)));
  if (!question.nested || !is_nested(sampler) || side < fewest) return std::nullopt;
  std::vector<float> first_able_h;
  std::uint64_t failed = 0;
  run_ensemble(
      {0, side * side}, nested_drawing(sampler, question.seed, side),
      [&](const SampleResult& r) {
        const bool made = r.failure.empty();
        failed += made ? 0 : 1;
        first_able_h.push_back(made ? future_of(r).able_h[first_person]
                                    : std::numeric_limits<float>::quiet_NaN());
      },
      options_of(question, OddsPart::nested, progress));
  if (failed == side * side) return std::nullopt;
  return nested_bands(first_able_h, side, side, horizon_h);
}

std::optional<outcome::Figures> as_written(const scenario::ValidScenario& scenario) {
  const auto result = run_one(scenario);
  const auto* run = std::get_if<Run>(&result);
  return run ? std::optional(outcome::figures_of(run->outcome, run->timeline)) : std::nullopt;
}

// What is known with the scenario's own statement where the question has none.
KnownSoFar known_of(const scenario::Uncertain& uncertain, const OddsQuestion& question) {
  KnownSoFar known = question.known;
  if (!uncertain.known) return known;
  if (!known.alive_at_h) known.alive_at_h = uncertain.known->alive_at_h;
  if (!known.now_h) known.now_h = uncertain.known->now_h;
  return known;
}

scenario::Diagnostics wrong_with(const KnownSoFar& known, const std::string& file, double horizon_h) {
  scenario::Diagnostics wrong;
  const auto within = [&](const std::optional<double>& at_h, const char* pointer) {
    if (at_h && !(*at_h >= 0 && *at_h <= horizon_h))
      wrong.push_back(
          {file, pointer,
           fmt::format("found {}; allowed 0 to the {} h simulated (/duration_h)", *at_h, horizon_h)});
  };
  within(known.alive_at_h, "/uncertain/known/alive_at_h");
  within(known.now_h, "/uncertain/known/now_h");
  if (wrong.empty() && known.alive_at_h && known.now_h && *known.alive_at_h > *known.now_h)
    wrong.push_back({file, "/uncertain/known/alive_at_h",
                     fmt::format("found {}; allowed 0 to the time of asking, {} (/uncertain/known/now_h)",
                                 *known.alive_at_h, *known.now_h)});
  return wrong;
}

}  // namespace

bool OddsAnswer::too_many_failed() const {
  constexpr double bearable = 0.01;
  return static_cast<double>(failed.size()) > bearable * static_cast<double>(samples);
}

std::variant<OddsAnswer, Refusal> ask_odds(const scenario::ValidScenario& scenario,
                                           const OddsQuestion& question, const ToldOddsProgress& progress) {
  const auto refused = [&](Refusal::Why why, const char* pointer, std::string message) {
    return Refusal{why, {{scenario.file, pointer, std::move(message)}}};
  };
  const std::optional<scenario::Uncertain>& uncertain = scenario.scenario.uncertain;
  if (!uncertain)
    return refused(Refusal::Why::input, "/uncertain", "missing; odds need something that is uncertain");
  if (question.futures == 0)
    return refused(Refusal::Why::input, "", "found 0 futures to draw; allowed 1 or more");
  const double horizon_h = scenario.scenario.duration_h;
  const KnownSoFar known = known_of(*uncertain, question);
  if (auto wrong = wrong_with(known, scenario.file, horizon_h); !wrong.empty())
    return Refusal{Refusal::Why::input, std::move(wrong)};

  const Sampler sampler(scenario);
  DrawnFutures drawn = draw(scenario, sampler, question, known, progress);
  if (drawn.futures.size() == 0)
    return refused(Refusal::Why::run, "",
                   "no sample has a result; the first: " + drawn.failed.front().reason);
  const Futures futures = [&](const VisitFuture& visit) { drawn.futures.each(visit); };
  auto given = odds_given(futures, known, horizon_h, uncertain->rescue.has_value(), interval_confidence,
                          question.at_h);
  if (!given)
    return refused(Refusal::Why::run, "",
                   fmt::format("none of {} futures agrees with what is known; draw more, or look at the "
                               "scenario again",
                               drawn.futures.size()));
  const Futures those_left = [&](const VisitFuture& visit) {
    futures([&](const Future& f) {
      if (agrees(f, known)) visit(f);
    });
  };
  return OddsAnswer{scenario,
                    question.seed,
                    question.futures,
                    std::move(drawn.failed),
                    known,
                    std::move(*given),
                    unknowns(sampler, question.seed, futures, known, horizon_h),
                    nested(sampler, question, horizon_h, progress),
                    launch_odds(those_left, horizon_h, interval_confidence),
                    signals_left(those_left, interval_confidence),
                    as_written(scenario)};
}

}  // namespace bide::study
