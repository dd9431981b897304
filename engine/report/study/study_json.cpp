#include <cmath>
#include <nlohmann/json.hpp>

#include "bide/core/notice.hpp"
#include "bide/report/run/json_parts.hpp"
#include "bide/report/study/study_text.hpp"
#include "bide/report/study/study_words.hpp"
#include "bide/scenario/words.hpp"

namespace bide::report {
namespace {

using Json = nlohmann::ordered_json;
using study::Dependence;
using study::Spread;

Json number(double value) {
  return std::isfinite(value) ? Json(value) : Json(nullptr);
}
Json number(const std::optional<double>& value) {
  return value ? number(*value) : Json(nullptr);
}
Json interval(const study::Interval& both) {
  return {both.low, both.high};
}

Json spread_json(const Spread& spread) {
  Json out = {{"name", spread.name},
              {"unit", spread.unit},
              {"samples", spread.cases},
              {"samples_without", spread.not_there},
              {spread.is_time ? "mean_within_horizon" : "mean", number(spread.mean)}};
  out["quantiles"] = Json::array();
  for (const Spread::Quantile& q : spread.quantiles) {
    Json one = {{"share", q.share}, {"value", number(q.value)}};
    if (spread.is_time) one["beyond_horizon"] = !q.value.has_value();
    if (q.low_known) one["low"] = number(q.low);
    if (q.high_known) one["high"] = number(q.high);
    out["quantiles"].push_back(one);
  }
  for (const Spread::Later& later : spread.later)
    out["later"].push_back({{"than_h", later.than_h},
                            {"share", static_cast<double>(later.cases) / static_cast<double>(spread.cases)},
                            {"interval", interval(later.share)}});
  return out;
}

Json dependence_json(const study::Summary& summary, const Dependence& d) {
  Json out = {{"name", d.name}, {"unit", d.unit}, {"samples", d.cases}, {"mean", number(d.mean)}};
  Json inputs = Json::array();
  for (std::size_t i = 0; i < summary.inputs.size(); ++i) {
    Json one = {{"input", summary.inputs[i]}};
    if (d.indices) {
      const auto& [first, total] = d.indices->groups[i];
      one["first"] = first.value, one["first_interval"] = interval(first.interval);
      one["total"] = total.value, one["total_interval"] = interval(total.interval);
    } else if (d.effects) {
      const study::MorrisEffect& effect = d.effects->factors[i];
      one["mu_star"] = effect.mean_absolute, one["mu"] = effect.mean, one["sigma"] = effect.sigma;
    } else if (!d.level_means.empty()) {
      for (const auto& [value, mean] : d.level_means[i])
        one["means"].push_back({{"value", value}, {"mean", number(mean)}});
    } else if (!d.correlations.empty() && d.correlations[i]) {
      one["rank_correlation"] = d.correlations[i]->value;
      one["interval"] = interval(d.correlations[i]->interval);
    } else {
      one["note"] = no_dependence(d);
    }
    inputs.push_back(one);
  }
  out["inputs"] = inputs;
  if (d.indices) out["base_samples_left_out"] = d.indices->left_out;
  if (d.effects) out["trajectories_left_out"] = d.effects->left_out;
  return out;
}

}  // namespace

std::string study_json(const study::Study& study, const study::Summary& summary) {
  const scenario::Design& design = study.file().design;
  Json out = {{"format", "bide study summary 1"},
              {"notice", standing_notice},
              {"advice", standing_advice},
              {"made_by", made_by()},
              {"name", study.file().name},
              {"setting", study.file().setting},
              {"scenario", study.scenario().scenario.name},
              {"design", {{"kind", scenario::word(design.kind)}, {"seed", design.seed}}},
              {"runs", summary.samples},
              {"horizon_h", summary.horizon_h},
              {"confidence", study::interval_confidence},
              {"failed", summary.failed},
              {"first_failures", Json::array()}};
  if (design.samples) out["design"]["samples"] = *design.samples;
  if (study.points_file()) out["design"]["scale"] = scenario::word(study.plan().scale());
  for (const auto& [what, how] : estimators(design.kind)) out["estimators"][what] = how;
  if (scenario::has_levels(design.kind)) out["design"]["levels"] = design.levels;
  for (const auto& [index, reason] : summary.first_failures)
    out["first_failures"].push_back({{"sample", index}, {"reason", reason}});
  out["what_may_happen"] = {{"samples", summary.futures}, {"figures", Json::array()}};
  for (const Spread& each : summary.spreads) out["what_may_happen"]["figures"].push_back(spread_json(each));
  out["what_it_depends_on"] = Json::array();
  for (const Dependence& each : summary.dependences)
    out["what_it_depends_on"].push_back(dependence_json(summary, each));
  return out.dump(2, ' ', true, Json::error_handler_t::replace) + "\n";
}

}  // namespace bide::report
