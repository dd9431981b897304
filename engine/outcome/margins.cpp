#include "bide/outcome/margins.hpp"

#include <algorithm>

#include "bide/body/build.hpp"
#include "bide/system/levels.hpp"

namespace bide::outcome {
namespace {

using timeline::PersonSeries;
using timeline::Timeline;
namespace quantity = system::quantity;

// A quantity against time, in its own unit; empty where the timeline has none.
std::vector<double> course_of(quantity::Id of, const Timeline& timeline, const PersonSeries& person) {
  std::vector<double> out;
  switch (of) {
    case quantity::core:
      return person.core_degC;
    case quantity::deficit:
      return person.water_deficit_pct;
    case quantity::osmolality:
      return person.osmolality_mOsm_kg;
    case quantity::co2:
      for (const double co2 : timeline.co2_ppm) out.push_back(co2 * system::quantities[of].per_stated);
      return out;
    case quantity::fat:
      return person.fat_kg;
    case quantity::protein_used:
      for (const double kg : person.protein_kg) out.push_back(1 - kg / person.protein_kg.front());
      return out;
    case quantity::swimming:
    case quantity::cold_feet:
    case quantity::frozen:
    case quantity::face:
    case quantity::count:
      break;
  }
  return out;
}

}  // namespace

std::vector<Margin> margins(const Timeline& timeline, const Outcome& outcome,
                            const scenario::ValidScenario& scenario) {
  const system::Levels<double> common = system::common_levels(scenario.scenario.limits);
  std::vector<system::Levels<double>> levels;
  for (std::size_t p = 0; p < outcome.persons.size(); ++p)
    levels.push_back(
        system::levels_of(common, body::make_build(scenario.scenario.crew[p], *scenario.ensembles[p])));
  std::vector<Margin> out;
  for (std::size_t row = 0; row < system::level_count; ++row) {
    const system::LimitRow& limit = system::limits[row];
    if (limit.meaning == system::Meaning::unconscious || !system::ends(limit.meaning)) continue;
    Margin margin{limit.id, {}};
    for (std::size_t p = 0; p < levels.size(); ++p) {
      const std::vector<double> course = course_of(limit.of, timeline, timeline.persons[p]);
      if (course.empty()) break;
      const double level = levels[p].by_limit[row];
      const double until_s = outcome.persons[p].alive.at_s.value_or(outcome.horizon_s);
      double most = 0;
      for (std::size_t i = 0; i < course.size() && timeline.time_s[i] <= until_s; ++i)
        most = std::max(most, 1 - system::margin_left(limit, level, course.front(), course[i]));
      margin.used_fraction.push_back(most);
    }
    if (!margin.used_fraction.empty()) out.push_back(std::move(margin));
  }
  return out;
}

}  // namespace bide::outcome
