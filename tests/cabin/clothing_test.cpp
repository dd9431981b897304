#include "bide/cabin/clothing.hpp"

#include <doctest/doctest.h>

#include "support/lanes.hpp"

using namespace bide;
using namespace bide::cabin;
using doctest::Approx;

TEST_CASE("clothed over nude area (ISO 9920)") {
  CHECK(clothing_area_factor(0.155) == Approx(1.28));
}

TEST_CASE("wet clothing: a cubic in the water carried, from dry to soaked and no further") {
  const double soaked = 0.55;
  CHECK(wet_insulation_factor(0.0, soaked) == 1);
  CHECK(wet_insulation_factor(1.0, soaked) == Approx(0.55));
  CHECK(wet_insulation_factor(2.0, soaked) == wet_insulation_factor(1.0, soaked));
  // Half wet: (3 x 0.5 - 0.125) / 2 = 0.6875 of the loss of 0.45.
  CHECK(wet_insulation_factor(0.5, soaked) == Approx(0.690625));
}

TEST_CASE("evaporating share, draining, wicking, wringing") {
  CHECK(evaporating_share(0.0) == 0);
  CHECK(evaporating_share(0.3) == 1);
  CHECK(drain_kg_s(4.0, 4.0) == 0);
  CHECK(drain_kg_s(4.6, 4.0) == Approx(0.001));
  CHECK(wicking_kg_s(0.0, 1.0, 0.36) == Approx(0.36 / 1800));
  CHECK(wicking_kg_s(0.9, 1.0, 0.36) == 0);
  CHECK(wrung_water_kg(4.0, 4.0) == Approx(2.0));
  CHECK(wrung_water_kg(0.3, 4.0) == 0.3);
}

TEST_CASE("vapour resistance of one clo of ordinary clothing") {
  // R_e = 0.155 / (0.38 x 16.5) = 0.02472 m2 kPa/W (ISO 9920). At 20 degC: 0.4615 x 293.15 / (2.4536e6 x
  // 0.02472) = 2.2306e-3 m/s.
  CHECK(vapour_conductance_m_s(0.155, 0.38, 20.0) == Approx(2.2306e-3).epsilon(1e-3));
  CHECK(in_series(2.0, 2.0) == 1);
}

TEST_CASE("thermal protective aid: an air gap and a vapour barrier") {
  // At most 7,800 W/(m2 K) for the material (LSA Code 2.5.1): practically nothing; 60 % of 10 mm of air,
  // 0.15.
  CHECK(1 / constants::aid_material_m2K_W == Approx(7800).epsilon(0.02));
  CHECK(aid_resistance_m2K_W() == Approx(0.0901).epsilon(0.002));
}

TEST_CASE("immersed ensembles") {
  // Bare skin: the water film itself; 0.5 clo below it: 1 / (0.0775 + 0.005).
  CHECK(immersed_W_m2K(0.0, 200.0) == Approx(200));
  CHECK(immersed_W_m2K(0.0775, 200.0) == Approx(12.1212).epsilon(1e-4));
}

TEST_CASE("clothing in lanes") {
  using test::check_lanes;
  const test::Points r{0.02, 0.08, 0.155, 0.3}, wet{0, 0.2, 0.9, 1.3};
  check_lanes(
      "area", [](auto x) { return clothing_area_factor(x); }, r);
  check_lanes(
      "wet", [](auto w) { return wet_insulation_factor(w, decltype(w)(0.3)); }, wet);
  check_lanes(
      "share", [](auto w) { return evaporating_share(w); }, wet);
  check_lanes(
      "drain", [](auto w) { return drain_kg_s(w, decltype(w)(1)); }, wet);
  check_lanes(
      "wick", [](auto w) { return wicking_kg_s(w, decltype(w)(1), decltype(w)(0.5)); }, wet);
  check_lanes(
      "wring", [](auto w) { return wrung_water_kg(w, decltype(w)(1)); }, wet);
  check_lanes(
      "vapour", [](auto x) { return vapour_conductance_m_s(x, decltype(x)(0.38), decltype(x)(20)); }, r);
  check_lanes(
      "immersed", [](auto x) { return immersed_W_m2K(x, decltype(x)(200)); }, r);
}
