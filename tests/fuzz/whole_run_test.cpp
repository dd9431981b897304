// Random scenarios inside the allowed ranges, most of them absurd: a run ends with a timeline whose ledgers
// close, or the input is refused. It never crashes, and never gives a number that is not one.
#include <doctest/doctest.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <random>
#include <variant>

#include "bide/outcome/outcome.hpp"
#include "bide/report/run/csv.hpp"
#include "bide/report/run/json.hpp"
#include "bide/report/run/terminal.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/timeline/simulate.hpp"
#include "bide/weather/weather.hpp"

using namespace bide;
using nlohmann::json;

namespace {

class Dice {
 public:
  explicit Dice(unsigned seed) : engine_(seed) {}
  double number(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(engine_);
  }
  int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(engine_); }
  bool coin(double chance) { return number(0, 1) < chance; }
  std::string one_of(std::initializer_list<const char*> words) {
    return *(words.begin() + whole(0, static_cast<int>(words.size()) - 1));
  }

 private:
  std::mt19937 engine_;
};

json random_person(Dice& d) {
  json person{{"sex", d.one_of({"female", "male"})},
              {"age_years", d.number(18, 80)},
              {"height_m", d.number(1.5, 1.95)},
              {"mass_kg", d.number(48, 120)},
              {"clothing", d.one_of({"tropical", "temperate_sailing", "offshore_cold"})},
              {"lifejacket", d.coin(0.7)},
              {"injured", d.coin(0.2)},
              {"seasick_susceptibility", d.number(0.2, 4)},
              {"hours_since_meal_h", d.number(0, 48)},
              {"hours_since_sleep_h", d.number(0, 60)},
              {"water_deficit_pct", d.number(0, 3)},
              {"exertion_met", d.number(1, 8)},
              {"blood_alcohol_mg_dL", d.number(0, 150)},
              {"already_seasick", d.coin(0.3)}};
  if (d.coin(0.2)) {
    person["injured"] = true;
    person["blood_loss_pct"] = d.number(0, 30);
    person["burned_pct"] = d.number(0, 20);
    person["fever_K"] = d.number(0, 3);
    person["hands"] = d.one_of({"sound", "no_fine_work", "useless"});
    person["fit_for_work"] = d.coin(0.5);
  }
  return person;
}

json random_scenario(Dice& d) {
  json s{{"format", "bide scenario 1"},
         {"start_time_utc", "2031-06-03T18:00:00Z"},
         {"duration_h", d.number(4, 30)},
         {"position", {{"latitude_deg", d.number(-70, 75)}, {"longitude_deg", d.number(-180, 180)}}},
         {"weather",
          {{"kind", "constant"},
           {"air_temperature_degC", d.number(-15, 40)},
           {"water_temperature_degC", d.number(-1.9, 33)},
           {"relative_humidity_pct", d.number(10, 100)},
           {"wind_speed_m_s", d.coin(0.2) ? 0.0 : d.number(0, 30)},
           {"cloud_cover_fraction", d.number(0, 1)},
           {"rain_mm_h", d.coin(0.7) ? 0.0 : d.number(0, 20)}}},
         {"crew", json::array()},
         {"stores", {{"pack", "none"}}}};
  const bool raft = d.coin(0.85);
  const int crew = d.whole(1, 6);
  for (int i = 0; i < crew; ++i) s["crew"].push_back(random_person(d));
  if (!raft) {
    s["boarding"] = {{"kind", "none"}};
    s.erase("stores");
    return s;
  }
  s["raft"] = {{"kind", d.one_of({"offshore_4", "offshore_8", "coastal_6", "solas_6", "solas_16"})},
               {"canopy_heat_loss_position", d.number(0, 1)},
               {"leakage_position", d.number(0, 1)}};
  s["boarding"] = {{"kind", d.one_of({"dry", "swim", "float_free"})}};
  s["stores"]["pack"] = d.one_of({"none", "solas_a", "iso_9650_more_than_24_h", "iso_9650_less_than_24_h"});
  s["rationing"] = {{"rule", d.one_of({"none_first_day", "fixed_per_day", "by_thirst"})}};
  s["routine"] = {{"opening_fraction_day", d.number(0, 1)},
                  {"opening_fraction_night", d.number(0, 1)},
                  {"minimum_opening_m2", d.coin(0.3) ? 0.0 : 0.01},
                  {"bail_every_h", d.number(0, 6)},
                  {"damp_clothes_in_heat", d.coin(0.5)},
                  {"huddle", d.coin(0.5)},
                  {"inflate_floor", d.coin(0.7)},
                  {"sleep_h_per_night", d.number(0, 10)}};
  if (d.coin(0.3))
    s["failures"] =
        json::array({{{"kind", d.one_of({"capsize", "canopy_torn", "tube_leaking", "closure_lost"})},
                      {"at_h", d.number(0, 4)}}});
  s["model"] = {{"shivering_endurance", d.one_of({"tires", "tires_late", "gives_out"})}};
  return s;
}

bool finite(const std::vector<double>& column) {
  for (const double x : column)
    if (!std::isfinite(x)) return false;
  return true;
}

}  // namespace

TEST_CASE("random scenarios run to a closed ledger or are refused") {
  int ran = 0;
  for (unsigned seed = 1; seed <= 400; ++seed) {
    Dice d(seed);
    const std::string text = random_scenario(d).dump();
    CAPTURE(seed);
    CAPTURE(text);
    auto validated = scenario::validate_text(text, "random", ".");
    if (const auto* wrong = std::get_if<scenario::Diagnostics>(&validated)) {
      CHECK_FALSE(wrong->empty());
      continue;
    }
    const auto& valid = std::get<scenario::ValidScenario>(validated);
    auto loaded = weather::load(valid);
    REQUIRE(std::holds_alternative<weather::Record>(loaded));
    auto simulated = timeline::simulate(valid, std::get<weather::Record>(loaded));
    if (std::holds_alternative<scenario::Diagnostics>(simulated))
      continue;  // refused: somebody is dead at the start
    if (const auto* failure = std::get_if<timeline::Failure>(&simulated)) {
      FAIL_CHECK("ledger " << failure->ledger << ": " << failure->message);
      continue;
    }
    ++ran;
    const auto& t = std::get<timeline::Timeline>(simulated);
    CHECK(finite(t.inside_air_degC));
    CHECK(finite(t.co2_ppm));
    CHECK(finite(t.floor_water_L));
    for (const double litres : t.floor_water_L) CHECK(litres > -0.05);
    for (const auto& p : t.persons) {
      CHECK(finite(p.core_degC));
      CHECK(finite(p.water_deficit_pct));
      CHECK(finite(p.clothing_water_kg));
      for (const double kg : p.clothing_water_kg) CHECK(kg > -0.05);
      for (const double degC : p.core_degC) CHECK((degC > -20 && degC < 46));
    }
    for (const auto& fate : t.fates)
      if (fate.able_until_s && fate.alive_until_s) CHECK(*fate.able_until_s <= *fate.alive_until_s);
    const outcome::Outcome o = outcome::read_outcome(t, valid);
    CHECK_FALSE(report::terminal_summary(o, t, valid, {}).empty());
    CHECK_FALSE(report::timeline_csv(t, valid).empty());
    CHECK_FALSE(report::result_json(o, t, valid, {}).empty());
  }
  CHECK(ran > 300);
}
