#include "validation/support/two_node.hpp"

#include <doctest/doctest.h>

using namespace bide::validation;

// No printed run of this form was at hand: what is checked follows from its equations alone.

TEST_CASE("two nodes: at the neutral state in a mild room nothing much happens") {
  // 58.2 W/m2 at rest; 23 degC under 0.6 clo is the middle of comfort (ASHRAE 55, from memory).
  TwoNodePlace place;
  place.around_degC = 24;
  place.clothing_m2K_W = 0.6 * 0.155;
  const TwoNodeEnd end = two_node(place, {}, 3600);
  CHECK(end.core_degC == doctest::Approx(36.8).epsilon(0.005));
  CHECK(end.skin_degC == doctest::Approx(33.7).epsilon(0.02));
}

TEST_CASE("two nodes: a settled state balances the books") {
  // Cold and settled: vessels shut, blood 0.5 L/(m2 h), so tissue carries 5.28 + 1.163 x 0.5 = 5.8615 W/(m2
  // K). Heat to the skin = metabolic rate less breath; shivering = 19.4 x (33.7 - skin) x (36.8 - core).
  TwoNodePlace place;
  place.around_degC = 0;
  place.vapour_pressure_Pa = 0;
  place.film_W_m2K = 100;
  place.radiation_W_m2K = 0;
  place.in_water = true;
  const TwoNodePerson person;
  const TwoNodeEnd end = two_node(place, person, 48 * 3600, 47 * 3600);
  const double made_W_m2 = end.metabolic_W / person.area_m2;
  const double breath_W_m2 = made_W_m2 * (0.0023 * 44 + 0.0014 * 34);
  CHECK(made_W_m2 - breath_W_m2 == doctest::Approx(5.8615 * (end.core_degC - end.skin_degC)).epsilon(0.001));
  CHECK(made_W_m2 - 58.2 ==
        doctest::Approx(19.4 * (33.7 - end.skin_degC) * (36.8 - end.core_degC)).epsilon(0.001));
  // All of it leaves through the film.
  CHECK(made_W_m2 - breath_W_m2 == doctest::Approx(100 * end.skin_degC).epsilon(0.001));
}

TEST_CASE("two nodes: heat that cannot be sweated away stays") {
  TwoNodePlace wet, dry;
  wet.around_degC = dry.around_degC = 35;
  wet.vapour_pressure_Pa = 5600;  // about saturated at 35 degC (steam tables, from memory)
  dry.vapour_pressure_Pa = 1100;
  CHECK(two_node(wet, {}, 8 * 3600).core_degC > two_node(dry, {}, 8 * 3600).core_degC + 0.3);
}
