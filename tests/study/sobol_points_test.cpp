#include "bide/study/sampling/sobol_points.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <stdexcept>

#include "study/chance.hpp"

using namespace bide::study;
using bide::test::chance;

namespace {

constexpr double half_digit = 0x1p-33;  // plain points are moved by it

// Number of the slice of 2^digits in which x lies.
std::size_t slice(double x, int digits) {
  return static_cast<std::size_t>(std::ldexp(x, digits));
}

}  // namespace

TEST_CASE("direction numbers are those of Joe and Kuo") {
  // The file new-joe-kuo-6 (from memory) begins, for dimensions 2 to 7 (degree, coefficients, m_1 ...):
  //   1 0 1 | 2 1 1 3 | 3 1 1 3 1 | 3 2 1 1 1 | 4 1 1 1 3 3 | 4 4 1 3 5 13
  // Point 2^(i-1) is m_i / 2^i. The next m by the recurrence of their equation (2), by hand:
  //   dimension 3: m_3 = 2*1*3 xor 4*1 xor 1 = 3;  dimension 4: m_4 = 8*1 xor 4*1*3 xor 1 = 5.
  const SobolPoints sobol(7);
  std::vector<double> x(7);
  sobol.point(0, x);
  for (const double v : x) CHECK(v == half_digit);
  sobol.point(1, x);
  for (const double v : x) CHECK(v == 0.5 + half_digit);
  sobol.point(2, x);
  const std::vector<double> second{1, 3, 3, 3, 1, 1, 3};  // quarters; dimension 1 is the mirrored number: 1/4
  for (std::size_t j = 0; j < 7; ++j) CHECK(x[j] == second[j] / 4 + half_digit);
  sobol.point(4, x);
  CHECK(x[0] == 1.0 / 8 + half_digit);
  CHECK(x[2] == 3.0 / 8 + half_digit);
  CHECK(x[3] == 1.0 / 8 + half_digit);
  CHECK(x[6] == 5.0 / 8 + half_digit);
  sobol.point(8, x);
  CHECK(x[3] == 5.0 / 16 + half_digit);
  CHECK(x[5] == 3.0 / 16 + half_digit);
  CHECK(x[6] == 13.0 / 16 + half_digit);
  // Any other point is the exclusive or of these: point 3 of dimension 3 is 1/2 xor 3/4 = 1/4.
  sobol.point(3, x);
  CHECK(x[2] == 0.25 + half_digit);
}

TEST_CASE("scrambled or not, 2^m points fill every slice once, and the first two columns every box") {
  for (const bool scramble : {false, true}) {
    CAPTURE(scramble);
    const SobolPoints sobol(64, scramble ? chance(5) : UniformAt{});
    const Points points = sobol.first(256);
    for (Eigen::Index j = 0; j < 64; ++j) {
      std::vector<int> seen(256);
      for (Eigen::Index k = 0; k < 256; ++k) ++seen.at(slice(points(k, j), 8));
      CHECK(seen == std::vector<int>(256, 1));
    }
    for (int digits = 1; digits < 8; ++digits) {  // boxes of 2^-digits by 2^-(8 - digits)
      std::vector<int> seen(256);
      for (Eigen::Index k = 0; k < 256; ++k) {
        ++seen.at((slice(points(k, 0), digits) << (8 - digits)) + slice(points(k, 1), 8 - digits));
      }
      CHECK(seen == std::vector<int>(256, 1));
    }
  }
}

TEST_CASE("a scrambled point is uniform, and one point is the same alone as among others") {
  double mean = 0, square = 0;
  constexpr int repeats = 4000;
  std::vector<double> x(3);
  for (int r = 0; r < repeats; ++r) {
    SobolPoints(3, chance(static_cast<std::uint64_t>(r))).point(0, x);
    mean += x[2] / repeats;
    square += x[2] * x[2] / repeats;
  }
  // Mean 1/2 (standard error 0.0046), mean square 1/3 (0.0047).
  CHECK(std::abs(mean - 0.5) < 0.015);
  CHECK(std::abs(square - 1.0 / 3) < 0.015);
  // Coins belong to the digits before them: the sixth digit is flipped behind some of the 32 beginnings, not
  // all. Point k of the first column has the digits of k mirrored.
  const SobolPoints column(1, chance(6)), plain(1);
  std::vector<double> one(1), before(1);
  int flipped = 0;
  for (std::uint64_t k = 0; k < 32; ++k) {
    column.point(k, one);
    plain.point(k, before);
    flipped += slice(one[0], 6) % 2 != slice(before[0], 6) % 2;
  }
  CHECK(flipped > 4);
  CHECK(flipped < 28);
  const SobolPoints sobol(3, chance(8));
  sobol.point(77, x);
  const Points many = sobol.first(100);
  for (std::size_t j = 0; j < 3; ++j) CHECK(x[j] == many(77, static_cast<Eigen::Index>(j)));
}

TEST_CASE("means over scrambled points scatter far less than over random ones") {
  // f = product of (1 + x - 1/2) over four columns: mean 1, variance (1 + 1/12)^4 - 1 = 0.377. Random, 1024
  // points: standard deviation sqrt(0.377 / 1024) = 0.0192. Owen (1997): of order n^(-3/2) for a smooth
  // function.
  double scatter = 0;
  constexpr int repeats = 100;
  for (int r = 0; r < repeats; ++r) {
    const Points points = SobolPoints(4, chance(static_cast<std::uint64_t>(900 + r))).first(1024);
    const double mean = (points.array() + 0.5).rowwise().prod().mean();
    scatter += (mean - 1) * (mean - 1) / repeats;
  }
  CHECK(std::sqrt(scatter) < 0.0192 / 20);
  CHECK(std::sqrt(scatter) > 0);
}

TEST_CASE("what there is no point for is refused") {
  CHECK_THROWS_AS(SobolPoints(0), std::invalid_argument);
  CHECK_THROWS_AS(SobolPoints(3668), std::invalid_argument);
  const SobolPoints sobol(2);
  std::vector<double> x(2), wrong(3);
  sobol.point(0xffffffffU, x);  // the last one
  CHECK_THROWS_AS(sobol.point(0x100000000U, x), std::invalid_argument);
  CHECK_THROWS_AS(sobol.point(0, wrong), std::invalid_argument);
}
