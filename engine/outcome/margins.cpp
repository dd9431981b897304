#include "bide/outcome/margins.hpp"

#include <algorithm>

#include "bide/timeline/limits.hpp"

namespace bide::outcome {
namespace {

using timeline::Limit;
using timeline::PersonSeries;
using timeline::Timeline;

struct Held {
  Limit limit;
  std::optional<double> scenario::Limits::*level;
  std::vector<double> PersonSeries::*person;  // or, where null,
  std::vector<double> Timeline::*cabin;
  bool shifted;  // by what is said of the person's cold limits
};

constexpr Held held[] = {
    {Limit::able_core_low, &scenario::Limits::able_core_low_degC, &PersonSeries::core_degC, nullptr, true},
    {Limit::able_core_high, &scenario::Limits::able_core_high_degC, &PersonSeries::core_degC, nullptr, false},
    {Limit::able_water_deficit, &scenario::Limits::able_water_deficit_pct, &PersonSeries::water_deficit_pct,
     nullptr, false},
    {Limit::able_co2, &scenario::Limits::able_co2_ppm, nullptr, &Timeline::co2_ppm, false},
    {Limit::lethal_core_low, &scenario::Limits::lethal_core_low_degC, &PersonSeries::core_degC, nullptr,
     true},
    {Limit::lethal_core_high, &scenario::Limits::lethal_core_high_degC, &PersonSeries::core_degC, nullptr,
     false},
    {Limit::lethal_water_deficit, &scenario::Limits::lethal_water_deficit_pct,
     &PersonSeries::water_deficit_pct, nullptr, false},
    {Limit::lethal_osmolality, &scenario::Limits::lethal_osmolality_mOsm_kg,
     &PersonSeries::osmolality_mOsm_kg, nullptr, false},
    {Limit::lethal_co2, &scenario::Limits::lethal_co2_ppm, nullptr, &Timeline::co2_ppm, false},
};

}  // namespace

std::vector<Margin> margins(const Timeline& timeline, const Outcome& outcome,
                            const scenario::ValidScenario& scenario) {
  const scenario::Limits limits = scenario.scenario.limits.value_or(scenario::Limits{});
  std::vector<Margin> out;
  for (const Held& each : held) {
    const std::optional<double>& stated = limits.*each.level;
    if (!stated || (each.cabin && (timeline.*each.cabin).empty())) continue;
    const double normal = timeline::level_kinds[static_cast<std::size_t>(each.limit)].normal;
    Margin margin{timeline::name_of(each.limit), {}};
    for (std::size_t p = 0; p < outcome.persons.size(); ++p) {
      const double shift = each.shifted ? scenario.scenario.crew[p].core_limit_shift_K.value_or(0) : 0;
      const double limit = *stated + shift;
      const std::vector<double>& values =
          each.person ? timeline.persons[p].*each.person : timeline.*each.cabin;
      const double until_s = outcome.persons[p].alive.at_s.value_or(outcome.horizon_s);
      double most = 0;
      for (std::size_t i = 0; i < values.size() && timeline.time_s[i] <= until_s; ++i)
        most = std::max(most, (values[i] - normal) / (limit - normal));
      margin.used_fraction.push_back(most);
    }
    out.push_back(std::move(margin));
  }
  return out;
}

}  // namespace bide::outcome
