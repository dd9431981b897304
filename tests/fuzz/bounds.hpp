// What no run may leave, column by column. A column without an entry here is an error, so that a new one gets
// its bounds.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "bide/core/moist_air.hpp"
#include "bide/report/run/columns.hpp"
#include "bide/weather/weather.hpp"

namespace bide::test {

inline constexpr double no_bound = std::numeric_limits<double>::infinity();

// The coldest that was around until now, degC, and the coldest that evaporation can bring a wet surface to.
struct Coldest {
  double around = no_bound, wet = no_bound;
};

// Where a wet surface in air settles (Lewis relation): c_p rho (air - wet) = L (saturation(wet) - vapour);
// 1,200 J/(m3 K) over 2.5 MJ/kg. By bisection.
inline double wet_bulb_degC(double air_degC, double vapour_kg_m3) {
  constexpr double density_per_K = 1200 / 2.5e6;
  double low = -100, high = air_degC;
  for (int i = 0; i < 50; ++i) {
    const double t = 0.5 * (low + high);
    const bool too_warm = saturation_density_kg_m3(t) - vapour_kg_m3 > density_per_K * (air_degC - t);
    (too_warm ? high : low) = t;
  }
  return low;
}

struct Bounds {
  double low, high;
};

// Of a column at a row, by its name.
inline std::optional<Bounds> bounds_of(const std::string& name, const Coldest& coldest,
                                       double start_co2_ppm) {
  // Steps of second order overshoot by a little.
  constexpr double rounding = -1e-9, a_little_K = 0.2;
  const auto is = [&](std::initializer_list<const char*> names) {
    return std::find(names.begin(), names.end(), name) != names.end();
  };
  const auto starts = [&](const char* with) { return name.rfind(with, 0) == 0; };
  if (name == "co2_ppm") return Bounds{start_co2_ppm * (1 - 1e-9), 1e6};
  if (name == "inside_relative_humidity_pct") return Bounds{rounding, 101.01};
  if (is({"sickness_fraction", "task_ability_fraction"})) return Bounds{0, 1};
  if (is({"outside_air_degC", "sea_degC"})) return Bounds{-100, 100};
  // Wet floors and clothes that dry cool the air of an open raft below the air outside.
  if (is({"inside_air_degC", "canopy_degC"})) return Bounds{coldest.wet - a_little_K, 120};
  if (is({"core_degC", "head_core_degC"})) return Bounds{coldest.wet - a_little_K, 50};
  if (name.size() > 5 && name.substr(name.size() - 5) == "_degC")
    return Bounds{coldest.wet - a_little_K, 120};
  // Heat may go either way, and those who drink lack no water.
  if (starts("cabin_") || starts("heat_loss_")) return Bounds{-no_bound, no_bound};
  if (name == "water_deficit_pct") return Bounds{-15, 60};
  if (name == "osmolality_mOsm_kg") return Bounds{150, 1000};
  if (is({"inside_vapour_density_kg_m3", "floor_water_L", "condensate_total_L", "ventilation_L_s",
          "opening_m2", "wave_height_m", "irradiance_W_m2", "wind_m_s", "metabolic_W", "shivering_W",
          "sweat_kg_h", "clothing_water_kg", "urine_total_kg", "glycogen_kJ", "fat_kg", "protein_kg"}) ||
      starts("store_"))
    return Bounds{rounding, no_bound};
  return std::nullopt;
}

// Sentences; empty where all is well.
// @param amounts_only leaves temperatures, heat made and the body's water aside
inline std::vector<std::string> out_of_bounds(const timeline::Timeline& t, const weather::Record& weather,
                                              bool amounts_only = false) {
  std::vector<std::string> out;
  Coldest coldest;
  for (const auto& p : t.persons)
    coldest.wet = std::min({coldest.wet, p.mean_skin_degC.front(), p.finger_degC.front(),
                            p.foot_skin_degC.front(), p.core_degC.front(), p.head_core_degC.front()});
  const auto look = [&](const std::string& name, const std::vector<double>& values, std::size_t i) {
    if (values.empty()) return;  // of the cabin, where there is none
    if (amounts_only && (name == "water_deficit_pct" || name == "osmolality_mOsm_kg" ||
                         (name.size() > 5 && name.substr(name.size() - 5) == "_degC")))
      return;
    const auto bounds = bounds_of(name, coldest, t.co2_ppm.empty() ? 0 : t.co2_ppm.front());
    if (!bounds)
      out.push_back("no bounds are known for the column " + name);
    else if (!(values[i] >= bounds->low && values[i] <= bounds->high))
      out.push_back(name + " is " + std::to_string(values[i]) + ", allowed " + std::to_string(bounds->low) +
                    " to " + std::to_string(bounds->high) + ", at " + std::to_string(t.time_s[i]) + " s");
  };
  double before_s = 0;
  for (std::size_t i = 0; i < t.time_s.size(); ++i) {
    // Weather has its knots every ten minutes; it is a straight line between.
    constexpr double knots_s = 600;
    for (double s = before_s; s < t.time_s[i] + knots_s; s += knots_s) {
      const auto w = weather.at(std::min(s, t.time_s[i]));
      coldest.around = std::min(
          {coldest.around, w.air_temperature_degC, w.water_temperature_degC, w.sky_temperature_degC});
      coldest.wet = std::min(
          {coldest.wet, coldest.around, wet_bulb_degC(w.air_temperature_degC, w.vapour_density_kg_m3)});
    }
    before_s = t.time_s[i];
    if (t.in_raft)
      coldest.wet =
          std::min(coldest.wet, wet_bulb_degC(t.inside_air_degC[i], t.inside_vapour_density_kg_m3[i]));
    for (const auto& column : report::common_columns) look(column.name, t.*(column.values), i);
    for (std::size_t p = 0; p < t.persons.size(); ++p) {
      for (const auto& column : report::person_columns) look(column.name, t.persons[p].*(column.values), i);
      const bool alive = !t.fates[p].alive_until_s || t.time_s[i] < *t.fates[p].alive_until_s;
      if (!amounts_only && alive && !(t.persons[p].metabolic_W[i] > 0))
        out.push_back("somebody alive makes no heat");
    }
    if (out.size() > 5) return out;
  }
  return out;
}

}  // namespace bide::test
