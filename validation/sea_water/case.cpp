#include <algorithm>

#include "bide/body/water.hpp"
#include "bide/core/units.hpp"
#include "bide/system/readings.hpp"
#include "validation/support/rest.hpp"
#include "validation/topics.hpp"

namespace bide::validation::sea_water {

namespace {

constexpr const char* topic = "sea_water";
constexpr double sea_mOsm_kg = 1000;

Run without_food(double days, double fresh_L_day, double sea_L_day) {
  Rest r;
  r.duration_h = days * 24;
  r.crew = R"([{"sex": "male", "age_years": 25, "height_m": 1.75, "mass_kg": 70, "clothing": "indoor",
                "lifejacket": false}])";
  r.stores = R"({"extra": [{"kind": "water_L", "quantity": )" + std::to_string(fresh_L_day * days) + "}]}";
  r.rationing = R"({"rule": "fixed_per_day", "water_L_per_day": )" + std::to_string(fresh_L_day) + "}";
  const double share = sea_L_day / 24;
  return run_case(scenario_of(r, 60), hour_s, {}, {hour_s, share, share * sea_mOsm_kg});
}

double osmolality_on_day_3(const Run& run) {
  return system::osmolality_mOsm_kg(run.compiled.persons[0], person(run.samples.at(72)));
}

double days_alive(const Run& run) {
  const body::Build<double>& b = run.compiled.persons[0];
  const auto& limits = run.compiled.limits;
  return std::min(time_reached_s(
                      run, [&b](const double* x) { return system::water_deficit_pct(b, x); },
                      limits[system::Limit::lethal_water_deficit], true),
                  time_reached_s(
                      run, [&b](const double* x) { return system::osmolality_mOsm_kg(b, x); },
                      limits[system::Limit::lethal_osmolality], true)) /
         day_s;
}

double mass_change_kg(const Run& run) {
  return weighed_kg(person(run.samples.back())) - weighed_kg(person(run.samples.front()));
}

}  // namespace

std::vector<Row> rows() {
  const char *text = "balance of salt in urine", *whillans = "Whillans & Smith 1948";
  constexpr double litre_mOsm = 1200, fresh_L = 0.455, sea_L = 0.284, six_days = 6, harmful_L = 0.5,
                   long_days = 25;
  Row balance = make_row(topic, text, "water left of a litre of sea water", "L", -1, -1.05, -0.95,
                         1 - body::urine_without_urea_kg_s(litre_mOsm / day_s) * day_s, "set the model: 5 %");
  balance.calibrated = true;
  const Run nothing = without_food(long_days, 0, 0), sea = without_food(long_days, 0, harmful_L);
  constexpr double hair = 0.01, no_bound = 1000;
  std::vector<Row> out{
      balance,
      make_row(topic, text, "osmolality on day 3, sea water less nothing", "mOsm/kg", hair, hair, no_bound,
               osmolality_on_day_3(sea) - osmolality_on_day_3(nothing), "sign only: it rises"),
      make_row(topic, text, "days alive, sea water less nothing", "d", -hair, -no_bound, -hair,
               days_alive(sea) - days_alive(nothing), "sign only: fewer days"),
      make_row(topic, whillans, "mass kept in 6 d by 284 mL of sea water a day", "kg", 1.02, 0.51, 1.53,
               mass_change_kg(without_food(six_days, fresh_L, sea_L)) -
                   mass_change_kg(without_food(six_days, fresh_L, 0)),
               "50 %: no spread known")};
  blame(
      out[3],
      "the salt beyond the normal content leaves within a day, water with it; their men kept it for longer");
  return out;
}

}  // namespace bide::validation::sea_water
