#include "bide/body/seasickness.hpp"
#include "bide/core/units.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "body/lanes_agree.hpp"

using bide::hour_s;

using namespace bide::body;
using doctest::Approx;

namespace {

double dose_after(double a_w, double hours, double start = 0) {
  double dose = start;
  for (double t = 0; t < hours * hour_s; t += 10) dose += 10 * dose_rate_m2_s4(a_w, dose);
  return dose;
}

}  // namespace

TEST_CASE("ISO 2631-1 annex D within its range") {
  // K_m a_w sqrt(T), K_m = 1/3: 0.25, 0.5, 1.0 m/s2 for 6 h: 12, 25, 49 %; for 2 h: 7, 14, 28 %.
  CHECK(vomiting_by_dose(0.25 * 0.25 * 6 * hour_s) == Approx(0.12).epsilon(0.03));
  CHECK(vomiting_by_dose(0.5 * 0.5 * 6 * hour_s) == Approx(0.25).epsilon(0.03));
  CHECK(vomiting_by_dose(1.0 * 6 * hour_s) == Approx(0.49).epsilon(0.03));
  CHECK(vomiting_by_dose(0.25 * 0.25 * 2 * hour_s) == Approx(0.07).epsilon(0.03));
  CHECK(vomiting_by_dose(0.5 * 0.5 * 2 * hour_s) == Approx(0.14).epsilon(0.03));
  CHECK(vomiting_by_dose(1.0 * 2 * hour_s) == Approx(0.28).epsilon(0.03));
  CHECK(vomiting_by_dose(1e9) == 0.70);
  // The state gives the same within the range, ...
  CHECK(vomiting_by_dose(dose_after(0.5, 2)) == Approx(0.14).epsilon(0.03));
  CHECK(vomiting_by_dose(dose_after(0.5, 6)) == Approx(0.25).epsilon(0.03));
  // ... stops growing beyond it, ...
  CHECK(vomiting_by_dose(dose_after(0.5, 24)) == Approx(0.245).epsilon(0.01));
  // ... and fades in calm water.
  CHECK(dose_after(0, 6, 1000) == Approx(1000 * std::exp(-1.0)).epsilon(1e-3));
}

TEST_CASE("Lawther & Griffin 1986: up to 40 % vomit in ferries of up to 1.0 m/s2, voyages to 6 h") {
  // The worst of 17 voyages lies between two and six hours at the worst motion.
  const auto open_ferry = [](double hours) {
    return sickness_target(1.0, dose_after(1.0, hours), 3.0, 0.0, 1.0, 0.0, 0.0);
  };
  CHECK(open_ferry(2) < 0.40);
  CHECK(open_ferry(6) > 0.40);
  CHECK(open_ferry(6) < 0.55);
}

TEST_CASE("enclosed craft: 75 % or more sick even in 1 m waves (Landolt & Monaco 1989)") {
  const double dose = dose_after(0.2, 3);
  CHECK(sickness_target(0.2, dose, 1.0, 1.0, 1.0, 0.0, 0.0) >= 0.75 - 1e-12);
  CHECK(sickness_target(0.2, dose, 1.0, 0.0, 1.0, 0.0, 0.0) < 0.2);
  CHECK(sickness_target(0.2, dose, 4.0, 1.0, 1.0, 0.0, 0.0) > 0.9);
  CHECK(sickness_target(0.2, 0.0, 1.0, 1.0, 1.0, 0.0, 0.0) == 0);
  CHECK(sickness_target(0.0, 0.0, 0.0, 1.0, 1.0, 0.0, 0.0) == 0);
}

TEST_CASE("person, adaptation, medicine") {
  const auto sick = [](double susceptibility, double adaptation, double medicine) {
    return sickness_target(0.5, dose_after(0.5, 6), 1.0, 1.0, susceptibility, adaptation, medicine);
  };
  // Odds 3:1 at 75 %; half the odds are 60 %, twice the odds 86 %.
  CHECK(sick(0.5, 0, 0) == Approx(0.60));
  CHECK(sick(2.0, 0, 0) == Approx(6.0 / 7));
  CHECK(sick(1.0, 1, 0) == 0);
  // Hyoscine by mouth, 60 % protected: 30 % of 75 left.
  CHECK(sick(1.0, 0, 0.60) == Approx(0.30));
  // Adapted in 2 to 3 days: more than three quarters by then, less than half after the first.
  double adaptation = 0;
  for (int minute = 0; minute < 24 * 60; ++minute) adaptation += 60 * adaptation_rate_per_s(0.4, adaptation);
  CHECK(adaptation > 0.3);
  CHECK(adaptation < 0.6);
  for (int minute = 0; minute < 36 * 60; ++minute) adaptation += 60 * adaptation_rate_per_s(0.4, adaptation);
  CHECK(adaptation > 0.75);
  CHECK(adaptation < 1);
  CHECK(adaptation_rate_per_s(0.0, 0.0) == 0);
}

TEST_CASE("patch by day: 74, 73, 39 % (Attias 1987)") {
  CHECK(patch_protection(12) == 0.74);
  CHECK(patch_protection(36) == 0.73);
  CHECK(patch_protection(60) == 0.39);
  CHECK(patch_protection(48) == Approx(0.56));
  CHECK(patch_protection(80) == 0);
}

TEST_CASE("water lost: 0.5 to 2 L on a first day of repeated vomiting (from memory)") {
  CHECK(vomit_rate_kg_s(1.0) * 86400 >= 0.5);
  CHECK(vomit_rate_kg_s(1.0) * 86400 <= 2.0);
  CHECK(vomit_rate_kg_s(0.0) == 0);
}

TEST_CASE("seasickness in lanes agrees with double") {
  check_lanes(AS_LAMBDA(dose_rate_m2_s4), {{0.5, 0}, {0.5, 5390}, {0.1, 5000}, {0, 0}});
  check_lanes(AS_LAMBDA(adaptation_rate_per_s), {{0, 0}, {0.05, 0.2}, {0.5, 0.5}, {1, 1}});
  check_lanes(AS_LAMBDA(sickness_target), {{0.5, 1000, 1, 1, 1, 0, 0},
                                           {0.0, 0, 0, 1, 1, 0, 0},
                                           {1, 20000, 3, 0, 2, 0.3, 0.6},
                                           {0.2, 500, 0.5, 0.5, 0.5, 0.1, 0}});
  check_lanes(AS_LAMBDA(vomit_rate_kg_s), {{0}, {0.1}, {0.5}, {1}});
}
