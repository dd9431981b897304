#include "validation/judge/whole_runs.hpp"

#include <algorithm>

#include "validation/support/rest.hpp"
#include "validation/support/trial.hpp"

namespace bide::validation {

namespace {

constexpr const char* topic = "whole_runs";

Row rule(const char* quantity, const char* unit, double published, double low, double high, double model,
         const char* why) {
  Row out = make_row(topic, quantity, quantity, unit, published, low, high, model, why);
  out.kind = Kind::rule;
  return out;
}

constexpr Who indoors{.clothing = "indoor"};

double core_after_a_day_degC(double air_degC) {
  return trial_of(in_room(indoors, air_degC, 24), 60).core_degC(24 * 60);
}

// The largest move of the core within half an hour, first three hours.
double largest_move_K(const Trial& t) {
  constexpr double step_min = 10, window_min = 30, end_min = 180;
  double most_K = 0;
  for (double from = 0; from + window_min <= end_min; from += step_min)
    for (double to = from; to <= from + window_min; to += step_min)
      most_K = std::max(most_K, std::abs(t.core_degC(to) - t.core_degC(from)));
  return most_K;
}

double rise_on_leaving_K() {
  Rest r = in_room(indoors, 20, 3);
  r.sea_degC = 15;
  r.boarding = R"({"kind": "swim", "in_water": "still", "minutes_in_water": 60, "water_shipped_L": 0})";
  const Trial t = trial_of(r, 10);
  return std::max(t.core_degC(70), t.core_degC(80)) - t.core_degC(60);
}

}  // namespace

std::vector<Row> whole_run_rows() {
  const double office_degC = core_after_a_day_degC(21), cabin_degC = core_after_a_day_degC(5);
  const Trial fat = trial_of(in_room({.mass_kg = 100, .fat_pct = 35, .clothing = "indoor"}, 5, 6), 60);
  std::vector<Row> rows{
      rule("core after a day at 21 less at 5 degC, indoor clothes", "K", 0.5, 0, 1.5,
           office_degC - cabin_degC, "colder air never ends warmer; mild cold costs a kelvin or so"),
      rule("core after a day at 21 degC, indoor clothes", "degC", 36.9, 36.6, 37.2, office_degC,
           "people keep their core in an office"),
      rule("largest move of the core in half an hour, 10 degC in indoor clothes", "K", 0, 0, 0.2,
           largest_move_K(trial_of(in_room(indoors, 10, 3), 10)), "no sudden fall as shivering begins"),
      rule("rise of the core in 20 min out of 15 degC water", "K", 0, -0.5, 0.1, rise_on_leaving_K(),
           "it falls first or stays"),
      rule("core of a fat man who shivers at 5 degC", "degC", 37, 36, 37.3, fat.core_degC(6 * 60),
           "nobody shivers himself warm")};
  // Why two stand outside.
  blame_named(
      rows,
      {{"core after a day at 21 degC",
        "read at 8 in the morning after a night, near the low of the clock: over the day it is 36.4 to 37.1"},
       {"largest move of the core",
        "as shivering begins, blood goes through trunk muscle that is colder than the core"}});
  return rows;
}

}  // namespace bide::validation
