// What must hold of children and families whatever the numbers.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "bide/core/units.hpp"
#include "bide/system/readings.hpp"
#include "validation/support/outlook.hpp"
#include "validation/support/trial.hpp"

using namespace bide;
using namespace bide::validation;

// The most that a core moves within two hours while a routine day goes on, K.
TEST_CASE("nobody of a family swings in six cool days aboard") {
  Rest r;
  r.duration_h = 144;
  r.air_degC = 12, r.sea_degC = 12, r.swing_K = 3;
  r.wind_m_s = 6, r.wind_sea = true;
  r.raft = R"({"kind": "offshore_4"})";
  r.routine = "{}";
  r.stores = R"({"extra": [{"kind": "water_L", "quantity": 40}]})";
  r.crew = R"([{"sex": "male", "age_years": 38, "height_m": 1.80, "mass_kg": 82, "clothing": "offshore_cold"},
               {"sex": "female", "age_years": 36, "height_m": 1.67, "mass_kg": 65, "clothing": "offshore_cold"},
               {"sex": "female", "age_years": 8, "height_m": 1.28, "mass_kg": 26, "clothing": "offshore_cold"},
               {"sex": "female", "age_years": 70, "height_m": 1.60, "mass_kg": 66, "clothing": "offshore_cold"}])";
  const timeline::Timeline run = timeline_of(scenario_of(r, 30));
  constexpr std::size_t two_hours = 4;
  for (std::size_t p = 0; p < run.persons.size(); ++p) {
    CAPTURE(p);
    CHECK(!run.fates[p].alive_until_s);
    const std::vector<double>& core = run.persons[p].core_degC;
    double most = 0, low = 40, high = 30;
    for (std::size_t i = 48; i + two_hours < core.size(); ++i) {
      most = std::max(most, std::abs(core[i + two_hours] - core[i]));
      low = std::min(low, core[i]), high = std::max(high, core[i]);
    }
    CHECK(most < 0.5);        // as over one of the hours above
    CHECK(high - low < 1.3);  // the day's rhythm is 0.57 K
  }
}

// Shivering that opened the flow of cold muscle took the core of a small child down by up to 2.4 K, again and
// again. The day's rhythm is 0.57 K; the rest is the first hours, and a raft that is opened and closed.
TEST_CASE("no child swings in cool or cold air") {
  struct Child {
    int age_years;
    double height_m, mass_kg;
  };
  for (const Child& child : {Child{2, 0.87, 12.5}, Child{4, 1.03, 16.5}, Child{6, 1.16, 21},
                             Child{8, 1.28, 26}, Child{11, 1.45, 37}})
    for (const double air : {2.0, 5.0, 8.0, 12.0}) {
      CAPTURE(child.age_years);
      CAPTURE(air);
      Rest r;
      r.duration_h = 60;
      r.air_degC = air, r.sea_degC = air + 1;
      r.wind_m_s = 6, r.wind_sea = true;
      r.raft = R"({"kind": "offshore_foam_4"})";
      r.routine = "{}";
      r.stores = R"({"extra": [{"kind": "water_L", "quantity": 30}]})";
      r.crew =
          R"([{"sex": "male", "age_years": 38, "height_m": 1.78, "mass_kg": 80, "clothing": "temperate_sailing"},
                   {"sex": "female", "age_years": 36, "height_m": 1.66, "mass_kg": 62, "clothing": "temperate_sailing"},
                   {"sex": "female", "clothing": "temperate_sailing", "age_years": )" +
          std::to_string(child.age_years) + R"(, "height_m": )" + std::to_string(child.height_m) +
          R"(, "mass_kg": )" + std::to_string(child.mass_kg) + "}]";
      const timeline::Timeline run = timeline_of(scenario_of(r, 20));
      const std::vector<double>& core = run.persons.at(2).core_degC;
      constexpr std::size_t day = 72, from = day / 2;
      for (std::size_t i = from; i + day < core.size(); i += 3) {
        const auto [low, high] = std::minmax_element(core.begin() + static_cast<std::ptrdiff_t>(i),
                                                     core.begin() + static_cast<std::ptrdiff_t>(i + day));
        REQUIRE(*high - *low < 1.3);
      }
    }
}
