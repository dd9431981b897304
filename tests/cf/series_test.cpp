#include "cf/series.hpp"

#include <doctest/doctest.h>

#include <numbers>

using namespace bide::tool::cf;

namespace {

Variable grid(std::vector<double> latitude_deg, std::vector<double> longitude_deg) {
  Variable out{};
  out.latitude_deg = std::move(latitude_deg);
  out.longitude_deg = std::move(longitude_deg);
  return out;
}

}  // namespace

TEST_CASE("distances on a sphere of 6371 km") {
  const double degree_km = 6371 * std::numbers::pi / 180;
  CHECK(distance_km({0, 0}, {1, 0}) == doctest::Approx(degree_km));
  CHECK(distance_km({0, 359.5}, {0, 0.5}) == doctest::Approx(degree_km));
  CHECK(distance_km({60, -1}, {60, 0}) == doctest::Approx(degree_km / 2).epsilon(1e-4));
  CHECK(distance_km({90, 0}, {90, 123}) == doctest::Approx(0).scale(1));
  CHECK(distance_km({0, 0}, {0, 180}) == doctest::Approx(180 * degree_km));
}

TEST_CASE("the nearest cell, whatever way latitude runs and longitude counts") {
  for (const Variable& v :
       {grid({12, 11, 10, 9}, {328, 329, 330, 331}), grid({9, 10, 11, 12}, {-32, -31, -30, -29})}) {
    const std::vector<Cell> cells = cells_near(v, {10.2, -30.1}, 150);
    REQUIRE_FALSE(cells.empty());
    CHECK(cells.front().centre.latitude_deg == 10);
    CHECK(distance_km(cells.front().centre, {10, -30}) < 1e-6);
    for (std::size_t i = 1; i < cells.size(); ++i) CHECK(cells[i].distance_km >= cells[i - 1].distance_km);
  }
  // Across the meridian where longitude begins anew, and the date line.
  CHECK(cells_near(grid({50}, {0, 1, 2, 357, 358, 359}), {50, -0.9}, 100).front().column == 5);
  CHECK(cells_near(grid({-20}, {-179.5, 0, 179.5}), {-20, 179.9}, 100).front().column == 2);
  CHECK(cells_near(grid({0}, {0}), {0, 10}, 100).empty());
  // One degree is 111.2 km: within a reach of 112, not of 111, to the north as to the east.
  for (const Place& place : {Place{1, 0}, Place{0, 1}}) {
    CHECK(cells_near(grid({0}, {0}), place, 112).size() == 1);
    CHECK(cells_near(grid({0}, {0}), place, 111).empty());
  }
}

TEST_CASE("times for a span reach to the values on either side") {
  const std::vector<double> t{0, 10, 20, 30};
  const auto check = [&](Span span, std::size_t first, std::size_t count) {
    const Times times = times_for(t, span);
    CHECK(times.first == first);
    CHECK(times.count == count);
  };
  check({10, 20}, 1, 2);
  check({11, 19}, 1, 2);
  check({9, 21}, 0, 4);
  check({-5, 5}, 0, 2);
  check({25, 35}, 2, 2);
  check({-9, -1}, 0, 0);
  check({31, 40}, 0, 0);
}
