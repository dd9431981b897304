#include "bide/outcome/margins.hpp"

#include <algorithm>

namespace bide::outcome {
namespace {

using timeline::PersonSeries;
using timeline::Timeline;

// The column that holds a quantity, in the unit in which its limits are stated; none where there is none.
const std::vector<double>* column_of(system::quantity::Id quantity, const Timeline& timeline, std::size_t p) {
  const PersonSeries& person = timeline.persons[p];
  switch (quantity) {
    case system::quantity::core:
      return &person.core_degC;
    case system::quantity::deficit:
      return &person.water_deficit_pct;
    case system::quantity::osmolality:
      return &person.osmolality_mOsm_kg;
    case system::quantity::co2:
      return timeline.co2_ppm.empty() ? nullptr : &timeline.co2_ppm;
    default:
      return nullptr;
  }
}

}  // namespace

std::vector<Margin> margins(const Timeline& timeline, const Outcome& outcome,
                            const scenario::ValidScenario& scenario) {
  const scenario::Limits& stated = scenario.scenario.limits;
  std::vector<Margin> out;
  for (const system::LimitRow& row : system::limits) {
    if (row.stated == nullptr || row.meaning == system::Meaning::unconscious) continue;
    const double normal = system::quantities[row.of].normal;
    Margin margin{row.id, {}};
    for (std::size_t p = 0; p < outcome.persons.size(); ++p) {
      const std::vector<double>* values = column_of(row.of, timeline, p);
      if (values == nullptr) break;
      const bool shifted = row.by_person == system::ByPerson::cold_shifted;
      const double limit = stated.*row.stated + (shifted ? scenario.scenario.crew[p].core_limit_shift_K : 0);
      const double until_s = outcome.persons[p].alive.at_s.value_or(outcome.horizon_s);
      double most = 0;
      for (std::size_t i = 0; i < values->size() && timeline.time_s[i] <= until_s; ++i)
        most = std::max(most, ((*values)[i] - normal) / (limit - normal));
      margin.used_fraction.push_back(most);
    }
    if (!margin.used_fraction.empty()) out.push_back(std::move(margin));
  }
  return out;
}

}  // namespace bide::outcome
