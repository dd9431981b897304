#include "bide/constants/routine.hpp"
#include "bide/core/units.hpp"
#include "validation/support/trial.hpp"
#include "validation/topics.hpp"

namespace bide::validation::rhythm {

namespace {

constexpr const char* topic = "rhythm";
constexpr int rectal = body::at::node(body::trunk, body::core);
constexpr int head_core = body::at::node(body::head, body::core);
constexpr double every_min = 10, day_min = 1440;

// From a clock time on, where the sun's time is the clock's; eight hours of sleep from bedtime, or none.
Trial from(const char* clock, Rest r, bool sleeps) {
  r.start = std::string("2031-12-15T") + clock + ":00Z";
  r.routine = std::string(R"({"opening_fraction_day": 1, "opening_fraction_night": 1, )") +
              R"("sleep_h_per_night": )" + (sleeps ? "8}" : "0}");
  return trial_of(r, every_min);
}

void cold_by_day_and_night(std::vector<Row>& out) {
  const char* study = "Circadian variations in response to cold";
  const Trial day = from("15:00", in_room({.age_years = 22}, 10, 2), false);
  const Trial night = from("03:00", in_room({.age_years = 22}, 10, 2), false);
  out.push_back(sign_row(topic, study, "rectal after 2 h at 10 degC, day less night", "K", 0.05, 1,
                         day.core_degC(120) - night.core_degC(120), "sign only: higher by day"));
  out.push_back(sign_row(topic, study, "heat made in 2 h at 10 degC, day less night", "W", 2, 60,
                         day.heat_W(60, 120) - night.heat_W(60, 120), "sign only: more by day"));
}

// Nearly nude, without bedding; bedtime is 23 h.
void nights_of_six(std::vector<Row>& out) {
  const char* study = "Haskell et al. 1981";
  const auto night = [](double air_degC) { return from("21:00", in_room({}, air_degC, 10), true); };
  const Trial cool = night(21), mild = night(24), warm = night(29);
  constexpr double awake_from = 60, awake_to = 120, asleep_from = 240, asleep_to = 600;
  const char* awake = "sign only: yes, up to a resting heat";
  out.push_back(sign_row(topic, study, "shivering awake at 21 degC, nearly nude", "W", 5, 100,
                         cool.shivering_W(awake_from, awake_to), awake));
  out.push_back(sign_row(topic, study, "shivering awake at 24 degC, nearly nude", "W", 5, 100,
                         mild.shivering_W(awake_from, awake_to), awake));
  out.push_back(make_row(topic, study, "shivering asleep at 21 degC, nearly nude", "W", 0, 0, 30,
                         cool.shivering_W(asleep_from, asleep_to),
                         "only now and then: a third of resting heat"));
  out.push_back(make_row(topic, study, "heat asleep, 21 over 29 degC, nearly nude", "-", 1.1, 1.02, 1.6,
                         cool.heat_W(asleep_from, asleep_to) / warm.heat_W(asleep_from, asleep_to),
                         "sign only: up on both sides of 29 degC"));
}

void nights_of_four(std::vector<Row>& out) {
  const char* study = "Palca, Walker & Berger 1986";
  const auto night = [](double air_degC) {
    return from("22:00", in_room({.clothing = "nude"}, air_degC, 9), true);
  };
  const Trial cool = night(21), warm = night(29);
  out.push_back(sign_row(topic, study, "fall of rectal in a night, nude, 21 less 29 degC", "K", 0.05, 1.5,
                         warm.change(rectal, 0, 540) - cool.change(rectal, 0, 540), "sign only: larger"));
  out.push_back(make_row(topic, study, "fall of tympanic in a night, nude, 21 less 29 degC", "K", 0, -0.2,
                         0.2, warm.change(head_core, 0, 540) - cool.change(head_core, 0, 540),
                         "no difference: 0.2 K"));
}

// A day and a night at home, warm by day and in bed.
void least_and_steepest(std::vector<Row>& out) {
  constexpr double noon_h = 12;
  const Trial t = from("12:00", in_room({.age_years = 22, .clothing = "indoor"}, 24, 24), true);
  double least_min = 8 * hour_min;
  for (double min = least_min; min < day_min; min += every_min)
    if (t.core_degC(min) < t.core_degC(least_min)) least_min = min;
  out.push_back(make_row(topic, "Baehr, Revelle & Eastman 2000", "clock time of the least core temperature",
                         "h", 5.03, 3.83, 6.02, least_min / hour_min + noon_h - 24,
                         "from morning to evening types"));
  out.back().calibrated = true;
  double steepest_min = 7 * hour_min;
  constexpr double to_min = 15 * hour_min;
  for (double min = steepest_min; min < to_min; min += every_min)
    if (t.change(rectal, min, min + every_min) < t.change(rectal, steepest_min, steepest_min + every_min))
      steepest_min = min;
  out.push_back(make_row(topic, "Murphy & Campbell 1997", "steepest fall of core, after falling asleep",
                         "min", -60, -120, -10,
                         steepest_min + every_min / 2 - (constants::bedtime_h - noon_h) * hour_min,
                         "before sleep, at most twice as early: no spread"));
}

void warm_sleep(std::vector<Row>& out) {
  const char* study = "Milan & Evonuk 1966";
  constexpr double bedtime_min = 60;
  const Trial t = from(
      "22:00",
      in_room({.age_years = 20.8, .height_m = 1.69, .mass_kg = 66.6, .fat_pct = 9.1, .clothing = "indoor"},
              26, 10),
      true);
  const char* why = "1 SD over 14 nights of six men";
  out.push_back(make_row(topic, study, "heat in the first hour of warm sleep", "W/m2", 58.2, 49.6, 66.7,
                         t.heat_W_m2(bedtime_min, bedtime_min + 60), why));
  out.back().calibrated = true;
  out.push_back(make_row(topic, study, "heat in the eighth hour of warm sleep", "W/m2", 45.4, 39.3, 51.5,
                         t.heat_W_m2(bedtime_min + 420, bedtime_min + 480), why));
  out.back().calibrated = true;
  out.push_back(make_row(topic, study, "fall of core in 7.5 h of warm sleep", "K", 1.6, 1.05, 2.15,
                         -t.change(rectal, bedtime_min, bedtime_min + 450), "1 SD of both ends, 0.39 each"));
  out.back().trivial = 0;
}

}  // namespace

std::vector<Row> rows() {
  std::vector<Row> out;
  cold_by_day_and_night(out);
  nights_of_six(out);
  nights_of_four(out);
  least_and_steepest(out);
  warm_sleep(out);
  const Trial awake = from("08:00", in_room({.age_years = 25, .clothing = "indoor"}, 25, 24), false);
  out.push_back(make_row(topic, "Stephenson et al. 1984", "resting core, 16 h less 4 h, awake", "K", 0.57,
                         0.37, 0.77, awake.core_degC(8 * hour_min) - awake.core_degC(20 * hour_min),
                         "0.2 K: no spread; said to move as the threshold of sweating does"));
  out.back().trivial = 0;
  out.back().calibrated = true;
  blame_named(
      out,
      {{"shivering asleep", "sleep leaves shivering as it is"},
       {"heat asleep", "sleep leaves shivering as it is"},
       {"clock time", "the core follows the clock late where its skin is warm"},
       {"steepest fall", "the core falls steepest after midnight: heat sinks from bedtime on, and no sooner"},
       {"heat in the first hour of warm sleep", "they went to bed with more heat than that of sitting still"},
       {"fall of core in 7.5 h",
        "the day of the core is that of people at home, 0.57 K; theirs was three times it"}});
  return out;
}

}  // namespace bide::validation::rhythm
