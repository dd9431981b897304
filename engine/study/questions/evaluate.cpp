#include "bide/study/questions/evaluate.hpp"

#include <fmt/format.h>

#include <utility>

#include "bide/study/ensemble/ensemble.hpp"
#include "bide/study/sampling/make_sample.hpp"
#include "bide/study/sampling/own_points.hpp"

namespace bide::study {
namespace {

using Row = Eigen::Index;

scenario::Diagnostics settle(Points& points, const std::vector<Factor>& factors, scenario::PointScale scale) {
  if (points.cols() != static_cast<Row>(factors.size()))
    return {{"points", "",
             fmt::format("found {} columns; allowed {}, one for each input", points.cols(), factors.size())}};
  scenario::Diagnostics wrong;
  for (Row row = 0; row < points.rows(); ++row)
    for (Row column = 0; column < points.cols(); ++column)
      if (auto why = settle_number(points(row, column), factors[static_cast<std::size_t>(column)], scale);
          why && wrong.size() < most_wrong_numbers)
        wrong.push_back({"points", fmt::format("/{}/{}", row, column), std::move(*why)});
  return wrong;
}

}  // namespace

std::variant<Evaluated, Refusal> evaluate(const scenario::ValidScenario& scenario, PointsQuestion question,
                                          const ToldProgress& progress) {
  const Sampler sampler(scenario);
  if (sampler.factors().empty())
    return Refusal{Refusal::Why::input,
                   {{scenario.file, "/uncertain", "missing; points need inputs that vary"}}};
  const int persons = static_cast<int>(scenario.scenario.crew.size());
  auto named = named_outputs(persons, question.outputs, "arguments");
  if (auto* wrong = std::get_if<scenario::Diagnostics>(&named))
    return Refusal{Refusal::Why::input, std::move(*wrong)};
  if (auto wrong = settle(question.points, sampler.factors(), question.scale); !wrong.empty())
    return Refusal{Refusal::Why::input, std::move(wrong)};

  Evaluated out;
  out.outputs = question.outputs.empty() ? outputs(persons) : std::get<std::vector<Output>>(std::move(named));
  const auto rows = question.points.rows();
  out.values.resize(rows, static_cast<Row>(out.outputs.size()));
  weather::Cache cache;
  EnsembleOptions options;
  options.threads = question.threads;
  options.progress = progress;
  run_ensemble(
      {0, static_cast<std::uint64_t>(rows)},
      [&](std::uint64_t k) {
        const auto row = question.points.row(static_cast<Row>(k));
        return make_sample(sampler.scenario_of(sampler.at({row.begin(), row.end()}, question.scale)), cache);
      },
      [&](const SampleResult& result) {
        const bool made = result.failure.empty();
        out.failures.push_back(made ? std::nullopt : std::optional(result.failure));
        for (std::size_t i = 0; i < out.outputs.size(); ++i)
          out.values(static_cast<Row>(result.index), static_cast<Row>(i)) =
              made ? out.outputs[i].of(result) : not_there;
      },
      options);
  return out;
}

}  // namespace bide::study
