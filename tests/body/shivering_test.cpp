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

TEST_CASE("drive in air of Fiala 2001, worked by hand from the published coefficients") {
  const auto W = [](double core, double skin, double fat) { return shivering_in_air_W_m2(core, skin, fat); };
  // Skin 10 K cold: x = -4.8 + 3.62 = -1.18, tanh x = -0.8275, 10 x 1.8275 x 10 = 182.75; less 28.6 is 154.15
  // W on 1.86 m2.
  CHECK(W(0, -10, 14) == Approx(82.88).epsilon(1e-3));
  // Core 0.5 K cold: 13.95 W more. Skin 8 K cold: x = -0.22, tanh = -0.2165, 97.32 - 28.6 = 68.72 W.
  CHECK(W(-0.5, -10, 14) == Approx(90.38).epsilon(1e-3));
  CHECK(W(0, -8, 14) == Approx(36.95).epsilon(1e-3));
  // A skin 5.5 K cold over a warm core, as two hours at 18 degC left it (Hardy & Stolwijk 1966): none, nor in
  // warmth.
  CHECK(W(0, -5.5, 14) == 0);
  CHECK(W(0.5, 2, 14) == 0);
  // A cold core alone: 27.9 x 2 - 28.6 = 27.2 W; a skin above neutral takes nothing from it.
  CHECK(W(-2, 0, 14) == Approx(14.62).epsilon(1e-3));
  CHECK(W(-2, 3, 14) == W(-2, 0, 14));
  // Four times the fatness, half the response (Tikuisis 1991).
  CHECK(W(0, -10, 56) == Approx(41.44).epsilon(1e-3));
  // By the core: all air at one spread above the mean of the other law's data, 35.92 (0.93), none at one
  // below, half at the mean.
  CHECK(shivering_air_share(36.85) == 1);
  CHECK(shivering_air_share(35.92) == Approx(0.5));
  CHECK(shivering_air_share(34.99) == Approx(0));
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

// Fatigue after `hours` of a demand met as far as fatigue allows, by small steps.
double fatigue_after(double demand, double hours, double start = 0) {
  double fatigue = start;
  const double step_s = 20;
  for (double t = 0; t < hours * 3600; t += step_s)
    fatigue += step_s * fatigue_rate_per_s(demand * fatigue_factor(fatigue), fatigue);
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
  const double left = 0.9 * fatigue_factor(spent);
  CHECK(left < 0.5);
  CHECK(left > 0.1);
  // Endurance at constant real intensity r = 0.63 is 2.5 x (0.74 / 0.37)^2 = 10 h.
  CHECK(1 / fatigue_rate_per_s(0.63, 0.0) == Approx(10 * 3600));
  // At rest fatigue falls to 1/e in 12 h.
  CHECK(fatigue_after(0.0, 12, 0.8) == Approx(0.8 * 0.36788).epsilon(2e-3));
  CHECK(fatigue_factor(0.0) == 1);
  CHECK(fatigue_factor(1.0) == 0);
}

TEST_CASE("lanes agree with double") {
  check_lanes(AS_LAMBDA(shivering_drive_W_m2), {{36, 25, 15}, {35, 10, 20}, {37.5, 34, 30}, {33, 22, 8}});
  check_lanes(AS_LAMBDA(shivering_in_air_W_m2), {{0, -10, 15}, {-1, -3, 20}, {0.4, 1, 30}, {-2, -20, 8}});
  check_lanes(AS_LAMBDA(shivering_air_share), {{37}, {36.5}, {36.2}, {35}});
  check_lanes(AS_LAMBDA(shivering_core_cutoff), {{29}, {30.5}, {31.7}, {36}});
  check_lanes(AS_LAMBDA(glucose_factor), {{2}, {2.6}, {2.9}, {5}});
  check_lanes(AS_LAMBDA(alcohol_factor), {{0}, {50}, {82}, {300}});
  check_lanes(AS_LAMBDA(fatigue_rate_per_s), {{0.1, 0.3}, {0.56, 0.2}, {1, 0.9}, {0.26, 0}});
  check_lanes(AS_LAMBDA(fatigue_factor), {{0}, {0.55}, {0.8}, {1}});
}
