// What no run may leave, column by column. A column without an entry here is an error, so that a new one gets
// its bounds.
//
// Temperatures are held to what has been around until now. Nothing is colder than the coldest around, or than
// the wet bulb of the air there. Nothing is warmer than the warmest around, with the sun on it, or than
// living people, whose core is held to the lethal limit: past it they are dead.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "bide/cabin/bilge.hpp"
#include "bide/cabin/moisture.hpp"
#include "bide/constants/clothing.hpp"
#include "bide/constants/routine.hpp"
#include "bide/core/moist_air.hpp"
#include "bide/core/units.hpp"
#include "bide/report/run/columns.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/weather/weather.hpp"

namespace bide::test {

inline constexpr double no_bound = std::numeric_limits<double>::infinity();

// Where a wet surface in air settles (Lewis relation): c_p rho Le^(2/3) (air - wet) = L (saturation(wet) -
// vapour), by bisection. Least of the left side: 1,070 J/(m3 K) at 60 degC times 0.91 (Le = 0.87, from
// memory), over 2.5 MJ/kg.
inline double wet_bulb_degC(double air_degC, double vapour_kg_m3) {
  constexpr double density_per_K = 1070 * 0.91 / 2.5e6;
  double low = -100, high = air_degC;
  for (int i = 0; i < 50; ++i) {
    const double t = 0.5 * (low + high);
    const bool too_warm = saturation_density_kg_m3(t) - vapour_kg_m3 > density_per_K * (air_degC - t);
    (too_warm ? high : low) = t;
  }
  return low;
}

// The extremes that were around until now, degC: the coldest, wet surfaces included, and the warmest, living
// people and the sun included.
struct Around {
  double coldest = no_bound, warmest = -no_bound;

  void see(const timeline::Timeline& t, std::size_t row, const weather::Forcing<double>& w) {
    coldest = std::min({coldest, w.air_temperature_degC, w.water_temperature_degC, w.sky_temperature_degC,
                        wet_bulb_degC(w.air_temperature_degC, w.vapour_density_kg_m3)});
    // Two covers one over the other in all the sun there is, each cooled in still air: a black surface loses
    // 4 sigma T^3 = 4.6 W/(m2 K) at 0 degC by radiation, and 3.1 by convection (seated in still air, from
    // memory).
    constexpr double still_air_W_m2K = 4.6 + 3.1, covers = 2;
    const double sun_K = covers * w.global_irradiance_W_m2 / still_air_W_m2K;
    warmest = std::max({warmest, w.air_temperature_degC + sun_K, w.water_temperature_degC + sun_K});
    if (!t.in_raft) return;
    // Fog begins within 1 % of saturation (cabin/moisture.hpp), and gives its heat to the air: 2.4 MJ/kg over
    // 1,070 J/(m3 K).
    constexpr double fog_corner = 0.01, K_per_density = 2.4e6 / 1070;
    warmest =
        std::max(warmest, w.air_temperature_degC + sun_K +
                              fog_corner * K_per_density * saturation_density_kg_m3(w.air_temperature_degC));
    coldest = std::min(coldest, wet_bulb_degC(t.inside_air_degC[row], t.inside_vapour_density_kg_m3[row]));
  }
};

struct Bounds {
  double low, high;
};

inline bool is_temperature(const std::string& name) {
  return name.size() > 5 && name.substr(name.size() - 5) == "_degC";
}

// By how much a step may overshoot: by a little always; on the way from where it was to a bound, by a share
// of the way. The stability function of the stepper, (1 - (1 - 2 g) x) / (1 + g x)^2 with g = 1 - 1/sqrt(2),
// is least at x = 8.24: -0.207.
inline void widen(Bounds& bounds, double before, double a_little_K) {
  constexpr double of_the_way = 0.207;
  bounds.low -= a_little_K + of_the_way * std::max(before - bounds.low, 0.0);
  bounds.high += a_little_K + of_the_way * std::max(bounds.high - before, 0.0);
}

// Of a column at a row, by its name.
inline std::optional<Bounds> bounds_of(const std::string& name, const Around& around, double start_co2_ppm) {
  constexpr double rounding = -1e-9;
  const auto is = [&](std::initializer_list<const char*> names) {
    return std::find(names.begin(), names.end(), name) != names.end();
  };
  const auto starts = [&](const char* with) { return name.rfind(with, 0) == 0; };
  if (name == "co2_ppm") return Bounds{start_co2_ppm * (1 - 1e-9), 1e6};
  if (name == "inside_relative_humidity_pct") return Bounds{rounding, 101.01};
  if (is({"sickness_fraction", "task_ability_fraction", "fine_work_possible", "grip_possible"}))
    return Bounds{0, 1};
  if (is_temperature(name)) return Bounds{around.coldest, around.warmest};
  // Heat may go either way.
  if (starts("cabin_") || starts("heat_loss_")) return Bounds{-no_bound, no_bound};
  // Of the living see wrong_with(); the dead dry out, down to the fat and bone that hold no water. An infant
  // who is given an adult's ration holds a quarter of their mass: no limit to drinking is modelled.
  if (name == "water_deficit_pct") return Bounds{-25, 75};
  if (name == "osmolality_mOsm_kg") return Bounds{200, no_bound};
  if (is({"inside_vapour_density_kg_m3", "floor_water_L", "condensate_total_L", "ventilation_L_s",
          "opening_m2", "wave_height_m", "irradiance_W_m2", "rain_mm_h", "wind_m_s", "metabolic_W",
          "shivering_W", "sweat_kg_h", "clothing_water_kg", "urine_total_kg", "glycogen_kJ", "fat_kg",
          "protein_kg"}) ||
      starts("store_"))
    return Bounds{rounding, no_bound};
  return std::nullopt;
}

// What clothes hold when soaked and drained, and what comes in on them in the ten minutes that the rest takes
// to run off: spray in the strongest wind and the heaviest rain of the run through the widest opening, and a
// litre of sweat and drip (judgement).
inline double most_clothing_water_kg(const timeline::Timeline& t, std::size_t person,
                                     const scenario::ValidScenario& valid) {
  constexpr double sweat_and_drip_kg = 1;
  double out = sweat_and_drip_kg;
  for (const double drained_kg : valid.ensembles[person]->water_capacity_kg) out += drained_kg;
  if (!valid.scenario.raft || t.opening_m2.empty()) return out;
  const auto greatest = [](const std::vector<double>& column) {
    return *std::max_element(column.begin(), column.end());
  };
  const scenario::Raft& raft = *valid.scenario.raft;
  const double rain_kg_m2_s = greatest(t.rain_mm_h) / hour_s, wind_m_s = greatest(t.wind_m_s);
  const double opening_m2 = std::max(greatest(t.opening_m2), raft.opening_area_m2);
  const double in_kg_s =
      cabin::spray_kg_s(wind_m_s, opening_m2, 1.0) +
      cabin::rain_inside_kg_s(rain_kg_m2_s, wind_m_s, opening_m2, raft.floor_area_m2, 1.0) +
      rain_kg_m2_s * raft.floor_area_m2;
  return out + constants::drain_time_s * in_kg_s * cabin::drip_on_people_share(1.0, raft.floor_area_m2);
}

// What is wrong with one person at a row: the living are within the lethal limits and make heat, the dead
// make none and use nothing.
inline std::vector<std::string> wrong_with(const timeline::Timeline& t, std::size_t person, std::size_t row,
                                           const scenario::ValidScenario& valid) {
  std::vector<std::string> out;
  const timeline::PersonSeries& p = t.persons[person];
  const double died_s = t.fates[person].alive_until_s.value_or(no_bound);
  const auto within = [&](const char* what, double value, double low, double high) {
    if (!(value >= low && value <= high))
      out.push_back(std::string(what) + " of somebody alive is " + std::to_string(value) + ", allowed " +
                    std::to_string(low) + " to " + std::to_string(high));
  };
  if (const double most_kg = most_clothing_water_kg(t, person, valid); !(p.clothing_water_kg[row] <= most_kg))
    out.push_back("clothes hold " + std::to_string(p.clothing_water_kg[row]) + " kg of water, allowed " +
                  std::to_string(most_kg));
  if (t.time_s[row] < died_s) {
    const scenario::Limits& limits = valid.scenario.limits;
    // A limit that is passed and left again between two checks kills nobody.
    constexpr double between_checks_K = 1, between_checks_pct = 0.5, between_checks_mOsm_kg = 5;
    within("the core", p.core_degC[row],
           limits.lethal_core_low_degC + valid.scenario.crew[person].core_limit_shift_K - between_checks_K,
           limits.lethal_core_high_degC + between_checks_K);
    within("the water deficit", p.water_deficit_pct[row], -no_bound,
           limits.lethal_water_deficit_pct + between_checks_pct);
    within("the osmolality", p.osmolality_mOsm_kg[row],
           limits.lethal_osmolality_low_mOsm_kg - between_checks_mOsm_kg,
           limits.lethal_osmolality_mOsm_kg + between_checks_mOsm_kg);
    if (!(p.metabolic_W[row] > 0)) out.push_back("somebody alive makes no heat");
  }
  // The check that finds them dead comes at most so long after. Rates are means since the row before.
  if (row == 0 || !(t.time_s[row - 1] >= died_s + constants::check_interval_s)) return out;
  if (p.metabolic_W[row] != 0 || p.shivering_W[row] != 0) out.push_back("a dead person makes heat");
  for (const auto column : {&timeline::PersonSeries::urine_kg_total, &timeline::PersonSeries::glycogen_kJ,
                            &timeline::PersonSeries::fat_kg, &timeline::PersonSeries::protein_kg})
    if ((p.*column)[row] != (p.*column)[row - 1]) out.push_back("a dead person uses water or fuel");
  return out;
}

// Sentences; empty where all is well.
// @param a_little_K by which a step may overshoot, beside what widen() says
inline std::vector<std::string> out_of_bounds(const timeline::Timeline& t, const weather::Record& weather,
                                              const scenario::ValidScenario& valid, double a_little_K) {
  std::vector<std::string> out;
  Around around;
  for (const auto& p : t.persons) {
    around.coldest = std::min({around.coldest, p.mean_skin_degC.front(), p.finger_degC.front(),
                               p.foot_skin_degC.front(), p.core_degC.front(), p.head_core_degC.front()});
  }
  const auto say = [&](const std::string& what, std::size_t row) {
    out.push_back(what + ", at " + std::to_string(t.time_s[row]) + " s");
  };
  const auto look = [&](const std::string& name, const std::vector<double>& values, std::size_t i) {
    if (values.empty()) return;  // of the cabin, where there is none
    auto bounds = bounds_of(name, around, t.co2_ppm.empty() ? 0 : t.co2_ppm.front());
    if (bounds && is_temperature(name)) widen(*bounds, values[i > 0 ? i - 1 : 0], a_little_K);
    if (!bounds)
      out.push_back("no bounds are known for the column " + name);
    else if (!(values[i] >= bounds->low && values[i] <= bounds->high))
      say(name + " is " + std::to_string(values[i]) + ", allowed " + std::to_string(bounds->low) + " to " +
              std::to_string(bounds->high),
          i);
  };
  double before_s = 0;
  for (std::size_t i = 0; i < t.time_s.size(); ++i) {
    // Weather has its knots every ten minutes; it is a straight line between.
    constexpr double knots_s = 600;
    for (double s = before_s; s < t.time_s[i] + knots_s; s += knots_s)
      around.see(t, i, weather.at(std::min(s, t.time_s[i])));
    before_s = t.time_s[i];
    // Working muscle and the brain are warmer than the core of the trunk by a kelvin or so; a fever warms
    // from one record to the next.
    constexpr double warmer_than_core_K = 1.5;
    for (std::size_t p = 0; p < t.persons.size(); ++p)
      if (t.time_s[i] < t.fates[p].alive_until_s.value_or(no_bound) + constants::check_interval_s)
        around.warmest = std::max(
            around.warmest, t.persons[p].core_degC[i] + warmer_than_core_K + valid.scenario.crew[p].fever_K);
    for (const auto& column : report::common_columns) look(column.name, t.*(column.values), i);
    for (std::size_t p = 0; p < t.persons.size(); ++p) {
      for (const auto& column : report::person_columns) look(column.name, t.persons[p].*(column.values), i);
      for (const std::string& wrong : wrong_with(t, p, i, valid)) say(wrong, i);
    }
    if (out.size() > 5) return out;
  }
  return out;
}

}  // namespace bide::test
