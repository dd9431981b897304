#include "bide/body/tissue_water.hpp"

#include <doctest/doctest.h>

#include "body/lanes_agree.hpp"

using namespace bide::body;
using doctest::Approx;

TEST_CASE("water and salt that glycogen leaves behind") {
  // Kreitzman 1992: stored with three to four parts of water and 0.45 mmol of potassium a gram. 450 g, 7650
  // kJ: 1.35 to 1.8 kg; with an anion to each potassium 405 mOsm.
  const double water_kg = tissue_water_freed(0.0, 7650.0);
  CHECK(water_kg >= 1.35);
  CHECK(water_kg <= 1.80);
  CHECK(tissue_salt_freed(water_kg) == Approx(405).epsilon(0.05));
}

TEST_CASE("a gram of nitrogen is 25 to 30 g of wet lean tissue") {
  // 6.25 g of protein with its water; 25 is the cells with 3 g of water, 30 the textbook's muscle of 80 %.
  const double tissue_g = 1000 * (tissue_water_freed(6.25e-3, 0.0) + 6.25e-3);
  CHECK(tissue_g >= 25 - 1e-9);
  CHECK(tissue_g <= 30);
  // Elia 1992: a lean man who dies with 4.6 of 12.2 kg used has lost more than the protein: with water of
  // 0.73 in 61 kg he would lose at most 38 % of 44.5 kg.
  CHECK(tissue_water_freed(4.6, 0.0) > 9);
  CHECK(tissue_water_freed(4.6, 0.0) < 0.38 * 44.5);
}

TEST_CASE("stores that fill up again take their water back") {
  CHECK(tissue_water_freed(-0.1, -1700.0) == Approx(-(0.3 + 0.3)));
}

TEST_CASE("tissue water in lanes agrees with double") {
  check_lanes([](auto p, auto g) { return tissue_salt_freed(tissue_water_freed(p, g)); },
              {{0, 0}, {1, 500}, {4.6, 7650}, {-0.1, -900}});
}
