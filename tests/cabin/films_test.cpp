#include "bide/cabin/films.hpp"

#include <doctest/doctest.h>

#include "support/lanes.hpp"

using namespace bide;
using namespace bide::cabin;
using doctest::Approx;

TEST_CASE("natural convection inside follows Glueck's laws at 10 K") {
  // 10^0.31 = 2.0417, 10^0.3 = 1.9953 by logarithm table.
  CHECK(canopy_film_W_m2K(20.0, 10.0) == Approx(2.0 * 2.0417).epsilon(0.002));   // warm air under a cold roof
  CHECK(canopy_film_W_m2K(10.0, 20.0) == Approx(0.54 * 2.0417).epsilon(0.002));  // roof heated by the sun
  CHECK(floor_film_W_m2K(20.0, 10.0) == Approx(0.54 * 2.0417).epsilon(0.002));   // cold floor
  CHECK(floor_film_W_m2K(10.0, 20.0) == Approx(2.0 * 2.0417).epsilon(0.002));
  CHECK(tube_film_W_m2K(20.0, 10.0) == Approx(1.6 * 1.9953).epsilon(0.002));
  CHECK(tube_film_W_m2K(10.0, 20.0) == tube_film_W_m2K(20.0, 10.0));
}

TEST_CASE("the films never vanish and cross smoothly") {
  CHECK(canopy_film_W_m2K(15.0, 15.0) > 0.9);
  const double step = 1e-2;
  for (double d = -2; d < 2; d += step)
    CHECK(std::abs(level_film_W_m2K(d + step) - level_film_W_m2K(d)) < 5 * step);
}

TEST_CASE("wind outside: the ISO 6946 surface resistance of 0.04 at 4 m/s") {
  CHECK(outer_film_W_m2K(4.0) == Approx(20));
  // Emissivity 0.9 and 5.1 W/(m2 K) at 10 degC, standard's annex (from memory): 1 / (20 + 4.6) = 0.0407.
  CHECK(1 / (outer_film_W_m2K(4.0) + radiation_W_m2K(0.9, 10.0, 10.0)) == Approx(0.04).epsilon(0.03));
}

TEST_CASE("radiation coefficient: the black-body values of ISO 6946 (from memory)") {
  CHECK(radiation_W_m2K(1.0, 0.0, 0.0) == Approx(4.6).epsilon(0.01));
  CHECK(radiation_W_m2K(1.0, 10.0, 10.0) == Approx(5.1).epsilon(0.01));
  CHECK(radiation_W_m2K(1.0, 20.0, 20.0) == Approx(5.7).epsilon(0.01));
  // The secant is exact: 303.15^4 - 273.15^4 = 2.87881e9 K4, times sigma 163.239 W/m2, over 30 K.
  CHECK(radiation_W_m2K(1.0, 30.0, 0.0) == Approx(5.4413).epsilon(1e-4));
}

TEST_CASE("mass transfer agrees with the Lewis relation of clothing standards") {
  // 16.5 K/kPa at 30 degC: 16.5 x 0.4615 x 303.15 / 2.430e6 = 9.50e-4 m/s per W/(m2 K); rho = 1.164 kg/m3.
  CHECK(mass_transfer_m_s(1.0, 1.164) == Approx(9.50e-4).epsilon(0.02));
}

TEST_CASE("people in air") {
  CHECK(seated_film_W_m2K(0.1) == 3.0);
  CHECK(seated_film_W_m2K(0.2) == Approx(8.6 * 0.42613).epsilon(1e-4));  // 0.2^0.53 by hand
  CHECK(seated_film_W_m2K(1.0) == Approx(8.6));
  CHECK(wind_film_W_m2K(0.5) == Approx(6.1));  // 3.5 + 2.6
  CHECK(wind_film_W_m2K(1.0) == Approx(8.7));
  // ASHRAE's textbook law for seated people, 8.3 v^0.6, ends at 4 m/s with 8.3 x 2.2974 = 19.07.
  CHECK(wind_film_W_m2K(4.0) == Approx(19.07).epsilon(0.06));
  // A quarter of the wind behind the tubes: 8.7 x 4^0.6 = 19.987, 8.7 at 1 m/s.
  CHECK(sheltered_film_W_m2K(4.0, 0.0) == wind_film_W_m2K(4.0));
  CHECK(sheltered_film_W_m2K(4.0, 1.0) == Approx(8.7));
  CHECK(sheltered_film_W_m2K(4.0, 0.5) == Approx(14.344).epsilon(1e-3));
  // 10 L/s through a cabin of 1 m3.
  CHECK(cabin_air_speed_m_s(0.01, 1.0) == Approx(0.11));
}

TEST_CASE("people in water: still, moving, swimming (Nadel, Boutelier, from memory)") {
  CHECK(water_film_W_m2K(0.0) >= 43);
  CHECK(water_film_W_m2K(0.0) <= 230);
  CHECK(water_film_W_m2K(0.5) == Approx(460));
  CHECK(water_film_W_m2K(3.0) == 580);
  // Waves of 2 m and 6 s: orbital speed pi x 2 / 6 = 1.0472 m/s, a fifth of it.
  CHECK(passing_water_m_s(2.0, 6.0) == Approx(0.20944).epsilon(1e-4));
}

TEST_CASE("closed air gaps: ISO 6946 table, straight between its points, held above") {
  CHECK(air_gap_m2K_W(25, HeatFlow::up) == Approx(0.16));
  CHECK(air_gap_m2K_W(25, HeatFlow::down) == Approx(0.19));
  CHECK(air_gap_m2K_W(300, HeatFlow::level) == Approx(0.18));
  CHECK(air_gap_m2K_W(20, HeatFlow::down) == Approx(0.18));
  CHECK(air_gap_m2K_W(2.5, HeatFlow::up) == Approx(0.055));
  CHECK(air_gap_m2K_W(0, HeatFlow::up) == 0);
  CHECK(air_gap_m2K_W(1000, HeatFlow::down) == Approx(0.23));
}

TEST_CASE("films in lanes") {
  using test::check_lanes;
  const test::Points inside{21, 15, 10, 30}, outside{5, 15.2, 12, -3}, speed{0.05, 0.9, 1.1, 12};
  check_lanes(
      "canopy", [](auto a, auto b) { return canopy_film_W_m2K(a, b); }, inside, outside);
  check_lanes(
      "floor", [](auto a, auto b) { return floor_film_W_m2K(a, b); }, inside, outside);
  check_lanes(
      "tube", [](auto a, auto b) { return tube_film_W_m2K(a, b); }, inside, outside);
  check_lanes(
      "outer", [](auto v) { return outer_film_W_m2K(v); }, speed);
  check_lanes(
      "radiation", [](auto a, auto b) { return radiation_W_m2K(decltype(a)(0.9), a, b); }, inside, outside);
  check_lanes(
      "mass", [](auto h) { return mass_transfer_m_s(h, decltype(h)(1.2)); }, speed);
  check_lanes(
      "seated", [](auto v) { return seated_film_W_m2K(v); }, speed);
  check_lanes(
      "wind", [](auto v) { return wind_film_W_m2K(v); }, speed);
  check_lanes(
      "sheltered", [](auto v) { return sheltered_film_W_m2K(v, decltype(v)(0.5)); }, speed);
  check_lanes(
      "speed", [](auto v) { return cabin_air_speed_m_s(v, decltype(v)(1.5)); }, speed);
  check_lanes(
      "passing", [](auto h) { return passing_water_m_s(h, decltype(h)(5)); }, speed);
  check_lanes(
      "water", [](auto v) { return water_film_W_m2K(v); }, speed);
}
