#include "bide/system/conditions.hpp"

#include <algorithm>

#include "bide/core/units.hpp"

namespace bide::system {

constants::Dress dress_of(const scenario::Ensemble& worn) {
  if (worn.waterproof) return constants::Dress::suit;
  double whole_m2K_W = 0;
  const double segments = static_cast<double>(worn.covered_fraction.size());
  for (std::size_t s = 0; s < worn.covered_fraction.size(); ++s)
    whole_m2K_W += worn.covered_fraction[s] * worn.insulation_m2K_W[s] / segments;
  return whole_m2K_W < constants::bare_below_m2K_W ? constants::Dress::bare : constants::Dress::clothed;
}

constants::Conditions conditions_of(const scenario::ValidScenario& v, const weather::Record& weather,
                                    std::size_t person) {
  const scenario::Person& who = v.scenario.crew[person];
  constants::Conditions out;
  out.medium = v.scenario.raft ? constants::Medium::air : constants::Medium::water;
  out.dress = dress_of(*v.ensembles[person]);
  out.fat_pct = who.body_fat_pct;
  out.age_years = who.age_years;
  constexpr int looks = 24;
  const double over_s = std::min(v.scenario.duration_h * hour_s, day_s);
  double sum_degC = 0;
  for (int i = 0; i < looks; ++i) {
    const auto now = weather.at((i + 0.5) / looks * over_s);
    sum_degC += out.medium == constants::Medium::air ? now.air_temperature_degC : now.water_temperature_degC;
  }
  out.degC = sum_degC / looks;
  return out;
}

}  // namespace bide::system
