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

EnsembleOptions options_of(const OddsQuestion& question, OddsPart part, const ToldOddsProgress& progress) {
  EnsembleOptions options;
  options.threads = question.threads;
  if (progress) options.progress = [&progress, part](const Progress& p) { progress(part, p); };
  return options;
}

// Runs samples and hands on what came of each, in order.
void draw(const scenario::ValidScenario& scenario, const Sampler& sampler, const OddsQuestion& question,
          SampleRange range, const ToldOddsProgress& progress, const VisitFuture& take,
          const std::function<void(const SampleResult&)>& without_result) {
  const std::optional<scenario::Rescue>& rescue = scenario.scenario.uncertain->rescue;
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
  const auto sink = [&](const SampleResult& r) {
    if (!r.failure.empty())
      without_result(r);
    else
      take(future_of(r, help[r.index % help.size()], launch[r.index % launch.size()]));
  };
  run_ensemble(range, drawing(sampler, question.seed, made), sink, options);
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

// What keeps a question from being asked.
std::optional<Refusal> question_refused(const scenario::ValidScenario& scenario,
                                        const OddsQuestion& question) {
  const auto because = [&](const char* pointer, std::string message) {
    return Refusal{Refusal::Why::input, {{scenario.file, pointer, std::move(message)}}};
  };
  const std::optional<scenario::Uncertain>& uncertain = scenario.scenario.uncertain;
  if (!uncertain) return because("/uncertain", "missing; odds need something that is uncertain");
  if (question.futures == 0) return because("", "found 0 futures to draw; allowed 1 or more");
  if (auto wrong = wrong_with(known_of(*uncertain, question), scenario.file, scenario.scenario.duration_h);
      !wrong.empty())
    return Refusal{Refusal::Why::input, std::move(wrong)};
  return std::nullopt;
}

// Reads the odds off futures. @param drawn how many there are
std::variant<OddsAnswer, Refusal> answer_from(const scenario::ValidScenario& scenario, const Sampler& sampler,
                                              const OddsQuestion& question, const Futures& futures,
                                              std::size_t drawn, std::vector<FailedSample> failed,
                                              const ToldOddsProgress& progress) {
  const auto refused = [&](std::string message) {
    return Refusal{Refusal::Why::run, {{scenario.file, "", std::move(message)}}};
  };
  if (drawn == 0)
    return refused(failed.empty() ? "no futures were drawn"
                                  : "no sample has a result; the first: " + failed.front().reason);
  const scenario::Uncertain& uncertain = *scenario.scenario.uncertain;
  const double horizon_h = scenario.scenario.duration_h;
  const KnownSoFar known = known_of(uncertain, question);
  auto given =
      odds_given(futures, known, horizon_h, uncertain.rescue.has_value(), interval_confidence, question.at_h);
  if (!given)
    return refused(
        fmt::format("none of {} futures agrees with what is known; draw more, or look at the "
                    "scenario again",
                    drawn));
  const Futures those_left = [&](const VisitFuture& visit) {
    futures([&](const Future& f) {
      if (agrees(f, known)) visit(f);
    });
  };
  return OddsAnswer{scenario,
                    question.seed,
                    question.futures,
                    std::move(failed),
                    known,
                    std::move(*given),
                    unknowns(sampler, question.seed, futures, known, horizon_h),
                    nested(sampler, question, horizon_h, progress),
                    launch_odds(those_left, horizon_h, interval_confidence),
                    signals_left(those_left, interval_confidence),
                    as_written(scenario)};
}

}  // namespace

bool OddsAnswer::too_many_failed() const {
  return static_cast<double>(failed.size()) > bearable_failures * static_cast<double>(samples);
}

std::variant<OddsAnswer, Refusal> ask_odds(const scenario::ValidScenario& scenario,
                                           const OddsQuestion& question, const ToldOddsProgress& progress) {
  if (auto refusal = question_refused(scenario, question)) return std::move(*refusal);
  const Sampler sampler(scenario);
  const std::optional<scenario::Rescue>& rescue = scenario.scenario.uncertain->rescue;
  const KnownSoFar known = known_of(*scenario.scenario.uncertain, question);
  UnnamedFile<Future> kept;
  const Futures futures = [&kept](const VisitFuture& visit) { kept.each(visit); };
  std::vector<FailedSample> failed;
  constexpr std::uint64_t first_told = 64, next_told = 4;  // how many, and times how many
  std::uint64_t tell_at = first_told;
  const auto tell = [&] {
    const std::uint64_t run = kept.size() + failed.size();
    if (!question.so_far || run < tell_at || run == question.futures) return;
    tell_at *= next_told;
    if (const auto odds = odds_given(futures, known, scenario.scenario.duration_h, rescue.has_value(),
                                     interval_confidence, question.at_h))
      question.so_far(*odds);
  };
  const auto take = [&](const Future& future) {
    kept.add(future);
    if (question.each) question.each(future);
    tell();
  };
  const auto without_result = [&](const SampleResult& r) {
    failed.push_back({r.index, r.failure});
    tell();
  };
  draw(scenario, sampler, question, {0, question.futures}, progress, take, without_result);
  return answer_from(scenario, sampler, question, futures, kept.size(), std::move(failed), progress);
}

std::variant<SomeFutures, Refusal> draw_some(const scenario::ValidScenario& scenario,
                                             const OddsQuestion& question, SampleRange range) {
  if (auto refusal = question_refused(scenario, question)) return std::move(*refusal);
  const Sampler sampler(scenario);
  SomeFutures out;
  draw(
      scenario, sampler, question, range, {}, [&](const Future& future) { out.futures.push_back(future); },
      [&](const SampleResult& r) {
        out.failed.push_back({r.index, r.failure});
      });
  return out;
}

std::variant<OddsAnswer, Refusal> odds_from(const scenario::ValidScenario& scenario,
                                            const OddsQuestion& question, SomeFutures futures) {
  if (auto refusal = question_refused(scenario, question)) return std::move(*refusal);
  return answer_from(scenario, Sampler(scenario), question, all_of(futures.futures), futures.futures.size(),
                     std::move(futures.failed), {});
}

}  // namespace bide::study
