#include "bide/body/shivering.hpp"

#include <doctest/doctest.h>

#include "body/lanes_agree.hpp"

using namespace bide::body;
using doctest::Approx;

TEST_CASE("drive of Tikuisis and Giesbrecht 1999, worked by hand from the published coefficients") {
  const auto W = [](double core, double skin, double fat) { return shivering_drive_W_m2(core, skin, fat); };
  // 37/25: (0 + 47 x 8 - 1.57 x 64) / sqrt 15 = 275.52 / 3.873 = 71.1
  CHECK(W(37, 25, 15) == Approx(71.1).epsilon(1e-3));
  CHECK(W(36, 25, 15) == Approx(111.3).epsilon(1e-3));
  CHECK(W(36, 18, 15) == Approx(131.0).epsilon(1e-3));
  CHECK(W(35, 25, 15) == Approx(151.4).epsilon(1e-3));
  CHECK(W(35, 22, 20) == Approx(142.7).epsilon(1e-3));
  // Below 18.0 degC the skin term stays at 351.8: (311 + 351.8) / 3.873 = 171.1. The formula itself would
  // fall to 167.4 at 15 and 145.0 at 10.
  CHECK(W(35, 18.03, 15) == Approx(171.1).epsilon(1e-3));
  CHECK(W(35, 15, 15) == Approx(171.1).epsilon(1e-3));
  CHECK(W(35, 10, 15) == W(35, 15, 15));
  CHECK(W(35, 0, 15) == W(35, 15, 15));
  // Warm: nothing.
  CHECK(W(37.5, 34, 15) == 0);
  CHECK(W(37, 33, 15) == 0);
}

TEST_CASE("drive by skin and core, worked by hand from the published coefficients") {
  const auto W = [](double core, double skin, double cold) {
    return detail::by_skin_and_core_W_m2(core, skin, cold) / std::sqrt(15.0);
  };
  // Skin alone: 5.01 x (31.4 - 25) = 32.064 W/m2; none above 31.4 degC.
  CHECK(W(37, 25, 8) == Approx(32.064).epsilon(1e-4));
  CHECK(W(37, 31.4, 2) == Approx(0));
  CHECK(W(37, 33, 1) == 0);
  // A core 1 K low: 24.4 / 1.8877 x 1 x 8 = 103.406 W/m2 more.
  CHECK(W(36, 25, 8) == Approx(135.470).epsilon(1e-4));
  // A warm core takes nothing from what the skin asks for.
  CHECK(W(38, 25, 8) == W(37, 25, 8));
}

TEST_CASE("the smaller of two laws, and none over a warm core") {
  const auto W = [](double core, double skin, double cold, double fat) {
    return shivering_W_m2(core, skin, cold, fat);
  };
  // 37/25: 71.1 by the law of 1999, 32.064 by skin and core; 36/25: 111.3 and 135.5.
  CHECK(W(37, 25, 8, 15) == Approx(32.064).epsilon(1e-4));
  CHECK(W(36, 25, 8, 15) == Approx(111.3).epsilon(1e-3));
  // Four times the fatness, half the response (Tikuisis 1991).
  CHECK(W(37, 25, 8, 60) == Approx(16.032).epsilon(1e-4));
  // Skin at 12 degC, core not yet fallen, as in the first minutes in 10 degC water: 5.01 x 19.4 = 97.2 and
  // 351.8 / 3.873 = 90.8.
  CHECK(W(37, 12, 20, 15) == Approx(90.8).epsilon(1e-3));
  // Half way to 37.3: half of 32.064; none from there on.
  CHECK(W(37.15, 25, 8, 15) == Approx(16.032).epsilon(1e-4));
  CHECK(W(37.3, 10, 20, 15) == 0);
  CHECK(W(38, 5, 25, 4) == 0);
}

TEST_CASE("what stops shivering") {
  CHECK(shivering_core_cutoff(33.0) == 1);
  CHECK(shivering_core_cutoff(32.0) == 1);
  CHECK(shivering_core_cutoff(31.0) == Approx(0.5));
  CHECK(shivering_core_cutoff(30.0) == 0);
  // Gale 1981: none below 2.5 mmol/L. Tikuisis 2002: undiminished at 3.44. Haight & Keatinge 1973: none
  // at 2.17.
  CHECK(glucose_factor(2.17) == 0);
  CHECK(glucose_factor(2.5) == 0);
  CHECK(glucose_factor(3.44) == 1);
  // Passias 1996: at 2.8 shivering is late, not gone.
  CHECK(glucose_factor(2.8) > 0);
  CHECK(glucose_factor(2.8) < 1);
  // Fox, Hayward & Hobson 1979.
  CHECK(alcohol_factor(0.0) == 1);
  CHECK(alcohol_factor(82.0) == Approx(0.87));
  CHECK(alcohol_factor(41.0) == Approx(0.935));
  CHECK(alcohol_factor(400.0) == Approx(0.80));
}

namespace {

// What a young man keeps up: 0.26 of his ceiling.
constexpr double keeps = 0.26;
// At the peak: 2.5 h.
constexpr double tiring_per_s = 1 / (2.5 * 3600);

// Fatigue after `hours` of a demand met as far as fatigue allows, by small steps.
double fatigue_after(double demand, double hours, double start = 0, double sustained = keeps) {
  double fatigue = start;
  const double step_s = 20;
  for (double t = 0; t < hours * 3600; t += step_s)
    fatigue += step_s *
               fatigue_rate_per_s(shivering_left_W(demand, fatigue, sustained), fatigue, keeps, tiring_per_s);
  return fatigue;
}

}  // namespace

TEST_CASE("endurance against what was measured") {
  // Tikuisis 2002: 65 % of the peak, that is r = (0.65 x 4.9 - 1) / 3.9 = 0.56, without a fall in 388 min.
  CHECK(fatigue_factor(fatigue_after(0.56, 388.0 / 60)) == 1);
  // 69 % in the second series: r = 0.61, on average 199 min.
  CHECK(fatigue_factor(fatigue_after(0.61, 199.0 / 60)) == 1);
  // Adolph & Molnar 1946: muscular fatigue after 2-3 h at up to five times rest: r = 1.
  CHECK(fatigue_factor(fatigue_after(1.0, 1.0)) == 1);
  CHECK(fatigue_factor(fatigue_after(1.0, 3.0)) < 0.7);
  // Twice the resting rate for nine days (1962): r = 1 / 3.9.
  CHECK(fatigue_factor(fatigue_after(1 / 3.9, 9 * 24)) == 1);
}

TEST_CASE("fatigue stays within its range, heals at rest, and leaves what can be sustained") {
  const double spent = fatigue_after(0.9, 72);
  CHECK(spent > 0.8);
  CHECK(spent < 1);
  // After three days what is left is what can be kept up, and a little: no cliff.
  const double left = shivering_left_W(0.9, spent, keeps);
  CHECK(left > keeps);
  CHECK(left < keeps + 0.1);
  CHECK(shivering_left_W(0.9, 1.0, keeps) == Approx(keeps));
  CHECK(shivering_left_W(0.9, 0.4, keeps) == Approx(0.9));
  CHECK(shivering_left_W(0.2, 1.0, keeps) == Approx(0.2));
  // Half of the endurance weakens nothing, three quarters half of what is above: 0.26 + 0.5 x 0.64.
  CHECK(shivering_left_W(0.9, 0.75, keeps) == Approx(0.58));
  // Where exhaustion takes all, less is left than can be kept up, and fatigue begins to heal.
  CHECK(shivering_left_W(0.9, 1.0, 0.0) == 0);
  const double given_out = fatigue_after(0.9, 72, 0, 0);
  CHECK(shivering_left_W(0.9, given_out, 0.0) < left);
  // Endurance at constant real intensity r = 0.63 is 2.5 x (0.74 / 0.37)^2 = 10 h.
  CHECK(1 / fatigue_rate_per_s(0.63, 0.0, keeps, tiring_per_s) == Approx(10 * 3600));
  // Of somebody who keeps up half of the ceiling: r = 0.75 for 2.5 x (0.5 / 0.25)^2 = 10 h.
  CHECK(1 / fatigue_rate_per_s(0.75, 0.0, 0.5, tiring_per_s) == Approx(10 * 3600));
  // The same by the kindest law, 6.5 h at the peak: 6.5 x 4 = 26 h.
  CHECK(1 / fatigue_rate_per_s(0.75, 0.0, 0.5, 1 / (6.5 * 3600)) == Approx(26 * 3600));
  // At rest fatigue falls to 1/e in 12 h.
  CHECK(fatigue_after(0.0, 12, 0.8) == Approx(0.8 * 0.36788).epsilon(2e-3));
  CHECK(fatigue_factor(0.0) == 1);
  CHECK(fatigue_factor(1.0) == 0);
}

TEST_CASE("lanes agree with double") {
  check_lanes(AS_LAMBDA(shivering_drive_W_m2), {{36, 25, 15}, {35, 10, 20}, {37.5, 34, 30}, {33, 22, 8}});
  check_lanes(AS_LAMBDA(detail::by_skin_and_core_W_m2),
              {{36, 25, 8}, {37.5, 29, 4}, {35, 12, 20}, {37, 34, 0}});
  check_lanes(AS_LAMBDA(shivering_W_m2),
              {{36, 25, 8, 15}, {37.2, 29, 4, 30}, {35, 12, 20, 8}, {38, 20, 9, 20}});
  check_lanes(AS_LAMBDA(shivering_core_cutoff), {{29}, {30.5}, {31.7}, {36}});
  check_lanes(AS_LAMBDA(glucose_factor), {{2}, {2.6}, {2.9}, {5}});
  check_lanes(AS_LAMBDA(alcohol_factor), {{0}, {50}, {82}, {300}});
  check_lanes(AS_LAMBDA(fatigue_rate_per_s),
              {{0.1, 0.3, 0.26, 1e-4}, {0.56, 0.2, 0.26, 1e-4}, {1, 0.9, 0.5, 4e-5}, {0.26, 0, 0.26, 1e-4}});
  check_lanes(AS_LAMBDA(fatigue_factor), {{0}, {0.55}, {0.8}, {1}});
  check_lanes(AS_LAMBDA(shivering_left_W), {{300, 0, 90}, {300, 0.7, 90}, {60, 1, 90}, {300, 1, 0}});
}
