#include <sstream>

#include "bide/constants/boarding.hpp"
#include "bide/constants/control.hpp"
#include "bide/core/units.hpp"
#include "validation/support/trial.hpp"
#include "validation/topics.hpp"

namespace bide::validation::effort {

namespace {

constexpr const char* topic = "effort";
constexpr int rectal = body::at::node(body::trunk, body::core);

// Swimming in the measure that brings `work_W` beyond rest: heat of the limbs and film of the water alike.
Trial working(const Who& who, double water_degC, double hours, double work_W) {
  return trial_of(in_water(who, water_degC, hours, "swimming"), 10, [=](system::Compiled<double>& compiled) {
    using namespace constants;
    compiled.raft.swims =
        work_W / ((swimming_met - resting_met) * compiled.persons[0].basal_total_W * awake_rest_factor.value);
  });
}

Trial resting(const Who& who, double water_degC, double hours) {
  return trial_of(in_water(who, water_degC, hours), 10);
}

Trial swimming(const Who& who, double water_degC, double hours) {
  return trial_of(in_water(who, water_degC, hours, "swimming"), 10);
}

// Swimsuits, legs at work (70 W/m2 more), one hour: 3.434 - 0.110 Tw K/h.
void legs(std::vector<Row>& out) {
  constexpr double area_m2 = 1.76, more_W_m2 = 70;
  for (const double water_degC : {15.0, 20.0, 25.0}) {
    const double K_h = 3.434 - 0.110 * water_degC;
    const Trial t =
        working({.age_years = 22, .height_m = 1.71, .mass_kg = 65}, water_degC, 1, more_W_m2 * area_m2);
    std::ostringstream name;
    name << "cooling in swimsuits, legs at work, " << water_degC << " degC";
    out.push_back(make_row(topic, "Thermal balance of man in water, 1996", name.str(), "K/h", K_h, 0.75 * K_h,
                           1.25 * K_h, -t.change(rectal, 0, 60), "25 %: no spread"));
    out.back().trivial = 0;
  }
}

// At 1.7 L of oxygen a minute, an hour.
void hard_work(std::vector<Row>& out) {
  const Who man{.height_m = 1.78, .mass_kg = 76, .fat_pct = 16.8};
  constexpr double oxygen_W = 1.7 * 20300 / 60, rest_W = 110;
  for (const double water_degC : {20.0, 28.0}) {
    const Trial work = working(man, water_degC, 1, oxygen_W - rest_W), rest = resting(man, water_degC, 1);
    std::ostringstream name;
    name << "core of workers less that of the still after 1 h, " << water_degC << " degC";
    out.push_back(sign_row(topic, "McArdle et al. 1984", name.str(), "K", -0.05, 3,
                           work.core_degC(60) - rest.core_degC(60),
                           "sign only: no case faster than rest; 0.05 K of measuring"));
  }
}

// To a rectal temperature of 34 degC in 10 degC water, light clothes and lifejacket.
void to_34_degC(std::vector<Row>& out) {
  const char* study = "Lounsbury 2004";
  const Who who{.clothing = "indoor"};
  constexpr double longest_h = 12, limit_degC = 34;
  const Trial swims = swimming(who, 10, longest_h), floats = resting(who, 10, longest_h);
  const auto cooling_K_s = [&](const Trial& t) {
    return (t.core_degC(0) - limit_degC) /
           time_reached_s(
               t.run, [](const double* x) { return x[rectal]; }, limit_degC, false);
  };
  const auto lost_W = [](const Trial& t) {
    constexpr double float_min = 60;
    return t.heat_W(0, float_min) - t.mean_W(body::at::total_stored, 0, float_min);
  };
  out.push_back(make_row(topic, study, "cooling to 34 degC, swimming over floating, 10 degC", "-", 1.17, 0.99,
                         1.35, cooling_K_s(swims) / cooling_K_s(floats), "15 %: no spread"));
  out.back().trivial = 1;
  out.push_back(make_row(topic, study, "heat lost in an hour, swimming over floating, 10 degC", "-", 1.15,
                         0.98, 1.32, lost_W(swims) / lost_W(floats), "15 %: no spread"));
  out.back().trivial = 1;
}

// Ninety minutes of breaststroke in a swimsuit.
void breaststroke(std::vector<Row>& out) {
  const char* study = "Tipton et al. 1999";
  const Who who{.fat_pct = 18};
  const auto core_degC = [&](double water_degC) { return swimming(who, water_degC, 1.5).core_degC(90); };
  out.push_back(make_row(topic, study, "core after 90 min of breaststroke at 25 degC", "degC", 37, 35.5, 38.5,
                         core_degC(25), "all ten finished: half a degree above the limit"));
  out.push_back(make_row(topic, study, "core after 90 min of breaststroke at 18 degC", "degC", 36, 35, 38,
                         core_degC(18), "eight of ten finished: above the limit"));
  out.push_back(make_row(topic, study, "core after 90 min of breaststroke at 10 degC", "degC", 35, 34, 36,
                         core_degC(10), "five of ten finished, four out at 35 degC: 1 K"));
}

}  // namespace

std::vector<Row> rows() {
  std::vector<Row> out;
  legs(out);
  hard_work(out);
  to_34_degC(out);
  breaststroke(out);
  const Who clothed{.mass_kg = 75, .clothing = "indoor"};
  const auto fall_K = [](const Trial& t) { return -t.change(rectal, 0, 120); };
  out.push_back(make_row(topic, "Man in cold water, University of Victoria",
                         "fall of core in 2 h, swimming over floating, 10 degC", "-", 1.35, 1.0, 1.7,
                         fall_K(swimming(clothed, 10, 2)) / fall_K(resting(clothed, 10, 2)),
                         "at least no slower, at most twice as much faster"));
  out.back().trivial = 1;
  out.back().seen_before = true;
  blame_named(
      out,
      {{"cooling in swimsuits, legs",
        "the film of a swimmer, and the flow that work brings to the limbs, carry too much heat away"},
       {"cooling to 34", "the floater cools too slowly, and the swimmer's limbs carry too much heat away"},
       {"heat lost in an hour", "the swimmer's limbs carry too much heat away"},
       {"fall of core in 2 h", "the swimmer's limbs carry too much heat away"},
       {"core after 90 min of breaststroke at 10", "the swimmer's limbs carry too much heat away"}});
  return out;
}

}  // namespace bide::validation::effort
