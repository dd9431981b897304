// A small hand-made timeline and its scenario: straight lines, so that every figure can be worked out by
// hand.
#pragma once

#include <doctest/doctest.h>

#include <filesystem>
#include <nlohmann/json.hpp>
#include <string>
#include <variant>

#include "bide/report/run/columns.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/timeline/series.hpp"

namespace bide::test {

// 60 N, 30 W (ship's time UTC-2), start 2031-02-03T18:00:00Z, five days.
inline scenario::ValidScenario valid_scenario(int persons, bool in_raft = true) {
  using Json = nlohmann::json;
  Json json = {{"format", "bide scenario 1"},
               {"name", "Two adrift"},
               {"setting", "An invented crew on an invented sea."},
               {"start_time_utc", "2031-02-03T18:00:00Z"},
               {"duration_h", 120},
               {"position", {{"latitude_deg", 60}, {"longitude_deg", -30}}},
               {"weather",
                {{"kind", "constant"},
                 {"air_temperature_degC", 5},
                 {"water_temperature_degC", 7},
                 {"wind_speed_m_s", 8}}},
               {"crew", Json::array()},
               {"boarding", {{"kind", in_raft ? "dry" : "none"}}},
               {"stores", {{"pack", "none"}}}};
  for (int i = 0; i < persons; ++i) {
    json["crew"].push_back({{"sex", "male"},
                            {"age_years", 40},
                            {"height_m", 1.8},
                            {"mass_kg", 80},
                            {"clothing", "temperate_sailing"}});
  }
  if (in_raft) json["raft"] = {{"kind", "offshore_4"}};
  const auto result = scenario::validate_text(json.dump(), "two_adrift.json", ".");
  if (const auto* problems = std::get_if<scenario::Diagnostics>(&result)) {
    for (const auto& problem : *problems) MESSAGE(to_string(problem));
  }
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(result));
  return std::get<scenario::ValidScenario>(result);
}

// 721 output times, every 10 min for 120 h. Columns not named below hold 1.
//   inside air    10 C at the start, +0.1 K per h                       -> 22 C at the end
//   CO2           0 ppm, +500 ppm per h                                 -> above 5,000 from 10 h
//   condensate    0.05 L per h                                          -> 1.2 L a day
//   water store   12 L, -0.2 L per h, empty at 60 h; no food, no medicine
//   Person A      core 37 C, -0.1 K per h (33 C at 40 h, 31 C at 60 h); able to 40 h, alive to 60 h
//   others        core 37 C throughout, no limit reached
//   water deficit 0.1 % per h for Person A, 0.04 % per h for the others
//   hands         ability 1 - t/80 h: above one half for 40 h
inline timeline::Timeline synthetic_timeline(int persons, bool in_raft = true) {
  timeline::Timeline t;
  t.scenario_name = "Two adrift";
  t.start_unix_s = 1927908000;  // 2031-02-03T18:00:00Z
  t.horizon_s = 120 * 3600.0;
  t.in_raft = in_raft;
  t.persons.resize(static_cast<std::size_t>(persons));
  t.fates.resize(static_cast<std::size_t>(persons));
  for (int i = 0; i <= 720; ++i) {
    const double h = i / 6.0;
    t.time_s.push_back(i * 600.0);
    for (const auto& column : report::common_columns) (t.*column.values).push_back(1);
    t.inside_air_degC.back() = 10 + 0.1 * h;
    t.co2_ppm.back() = 500 * h;
    t.condensate_L_total.back() = 0.05 * h;
    t.water_L.back() = h < 60 ? 12 - 0.2 * h : 0;
    t.food_kJ.back() = 0;
    t.medicine_doses.back() = 0;
    t.flares.back() = 3;
    for (int p = 0; p < persons; ++p) {
      auto& person = t.persons[static_cast<std::size_t>(p)];
      for (const auto& column : report::person_columns) (person.*column.values).push_back(1);
      person.core_degC.back() = p == 0 ? 37 - 0.1 * h : 37;
      person.water_deficit_pct.back() = (p == 0 ? 0.1 : 0.04) * h;
      person.task_ability.back() = 1 - h / 80;
      person.finger_degC.back() = 20;
    }
  }
  t.fates[0].able_until_s = 40 * 3600.0;
  t.fates[0].able_cause = system::Limit::able_core_low;
  t.fates[0].alive_until_s = 60 * 3600.0;
  t.fates[0].alive_cause = system::Limit::lethal_core_low;
  for (std::size_t p = 1; p < t.fates.size(); ++p) {
    t.fates[p].nearest_margin_fraction = 0.38;
    t.fates[p].next_cause = system::Limit::able_water_deficit;
  }
  using Kind = system::NoteKind;
  t.events = {{0, -1, Kind::boarded, "Boarded dry.", 0, 0, ""},
              {3600, 0, Kind::water_issued, "Water for Person A.", 0.17, 0.17, "L"},
              {7200, 0, Kind::water_issued, "Water for Person A.", 0.17, 0.17, "L"},
              {10800, 0, Kind::water_issued, "Water for Person A.", 0.17, 0.17, "L"},
              {14400, 0, Kind::water_issued, "Water for Person A.", 0.17, 0.1, "L"},
              {40 * 3600.0, 0, Kind::unable, "Person A can no longer help themselves.", 0, 0, ""},
              {60 * 3600.0, 0, Kind::died, "Person A dies of cold.", 0, 0, ""}};
  t.ledgers = {{"heat", 1e-6, 1e7}, {"water", 1e-12, 20}};
  t.crossings = {{0, system::Limit::able_core_low, 40 * 3600.0, -0.1, false, false}};
  t.assumptions = {"canopy heat loss at the middle of its unmeasured range"};
  return t;
}

}  // namespace bide::test
