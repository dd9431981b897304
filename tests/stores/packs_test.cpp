// The packs of the catalogue as stock: quantities of the SOLAS long-voyage pack (LSA Code 4.1.5, second
// hand).
#include <doctest/doctest.h>

#include <string>
#include <variant>

#include "bide/stores/inventory.hpp"

using namespace bide;
using doctest::Approx;

namespace {

scenario::ValidScenario with_stores(const std::string& raft, const std::string& stores) {
  const std::string text = R"({"format": "bide scenario 1", "start_time_utc": "2031-02-03T18:00:00Z",
    "duration_h": 24, "position": {"latitude_deg": 49, "longitude_deg": -21},
    "weather": {"kind": "constant", "air_temperature_degC": 10, "water_temperature_degC": 11,
    "wind_speed_m_s": 8}, "crew": [{"sex": "male", "age_years": 35, "height_m": 1.75, "mass_kg": 75}],
    "boarding": {"kind": "dry"}, "raft": {"kind": ")" +
                           raft + R"("}, "stores": )" + stores + "}";
  auto result = scenario::validate_text(text, "test.json", ".");
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(result));
  return std::get<scenario::ValidScenario>(std::move(result));
}

}  // namespace

TEST_CASE("the long-voyage pack of a 12-person raft") {
  const auto valid = with_stores("solas_12", R"({"pack": "solas_a"})");
  const stores::Stock<double> s = stores::opening_stock(valid);
  CHECK(s.water_L == Approx(1.5 * 12));
  CHECK(s.food_kJ == Approx(10000.0 * 12));
  CHECK(s.medicine_doses == Approx(6 * 12));
  CHECK(s.rockets == 4);
  CHECK(s.hand_flares == 6);
  const stores::Gear g = stores::gear_of(valid);
  CHECK(g.sponges == 2);
  CHECK(g.bailers == 1);
  CHECK(g.pump);
  CHECK_FALSE(g.desalinator);
  // Ration of 15 % protein, 52 % carbohydrate, 33 % fat by heat (WADC).
  CHECK(g.food.carbohydrate == Approx(0.52).epsilon(0.002));
  CHECK(g.food.protein == Approx(0.15).epsilon(0.002));
  CHECK(g.food.fat == Approx(0.33).epsilon(0.002));
}

TEST_CASE("the short-voyage pack holds no water and no food") {
  const stores::Stock<double> s = stores::opening_stock(with_stores("solas_12", R"({"pack": "solas_b"})"));
  CHECK(s.water_L == 0);
  CHECK(s.food_kJ == 0);
  CHECK(s.rockets == 2);
  CHECK(s.hand_flares == 3);
}

TEST_CASE("expired items count as absent, extras add up") {
  const auto valid = with_stores("solas_12", R"({"pack": "none", "extra": [{"kind": "water_L", "quantity": 4},
    {"kind": "water_L", "quantity": 3, "expired": true}, {"kind": "hand_desalinator_small"},
    {"kind": "beacon_406"}, {"kind": "hand_flare", "quantity": 2, "expired": true}]})");
  const stores::Stock<double> s = stores::opening_stock(valid);
  CHECK(s.water_L == Approx(4));
  CHECK(s.hand_flares == 0);
  CHECK(s.beacon_h == 48);
  CHECK(stores::gear_of(valid).desalinator_L_h == 1);
}
