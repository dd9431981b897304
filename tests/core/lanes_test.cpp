// Functions of a lane against the C library's of a double.
#include <doctest/doctest.h>

#include <cmath>
#include <limits>

#include "bide/core/scalar.hpp"

using namespace bide;

namespace {

// The rest of the lanes as the first.
template <class T>
T four(double a, double b, double c, double d) {
  T out(a);
  out.set(1, b), out.set(2, c), out.set(3, d);
  return out;
}

constexpr double few_units = 8 * std::numeric_limits<double>::epsilon();

}  // namespace

TEST_CASE_TEMPLATE("exponential and logarithm are the C library's within a few units in the last place", T,
                   Lanes<4>, BlockLanes) {
  for (double x = -700; x < 700; x += 0.737) {
    const T e = exp(four<T>(x, 0.5 * x, -x, 0.01 * x)),
            l = log(four<T>(std::exp(x), 2.5, std::exp(-x), 1e-300));
    CAPTURE(x);
    CHECK(std::abs(e[0] / std::exp(x) - 1) < few_units);
    CHECK(std::abs(e[1] / std::exp(0.5 * x) - 1) < few_units);
    CHECK(std::abs(e[2] / std::exp(-x) - 1) < few_units);
    CHECK(std::abs(e[3] / std::exp(0.01 * x) - 1) < few_units);
    CHECK(std::abs(l[0] - std::log(std::exp(x))) <= few_units * std::abs(x));
    CHECK(std::abs(l[1] / std::log(2.5) - 1) < few_units);
    CHECK(std::abs(l[3] / std::log(1e-300) - 1) < few_units);
  }
  CHECK(exp(T(0.0))[0] == 1);
  CHECK(log(T(1.0))[2] == 0);
}

TEST_CASE_TEMPLATE("what has no ordinary answer does not touch its neighbours", T, Lanes<4>, BlockLanes) {
  constexpr double infinite = std::numeric_limits<double>::infinity();
  const T alone = exp(four<T>(1.25, 1.25, 1.25, 1.25));
  const T mixed = exp(four<T>(-2000, 1.25, 2000, std::nan("")));
  CHECK(mixed[0] < 1e-307);  // Eigen stops a little above 0
  CHECK(mixed[1] == alone[1]);
  CHECK(mixed[2] == infinite);
  CHECK(std::isnan(mixed[3]));
  const T logs = log(four<T>(0, 1.25, -1, infinite));
  CHECK(logs[0] == -infinite);
  CHECK(logs[1] == log(T(1.25))[0]);
  CHECK(std::isnan(logs[2]));
}

TEST_CASE_TEMPLATE("the absolute value of a lane", T, Lanes<4>, BlockLanes) {
  const T a = abs(four<T>(-2.5, 2.5, -0.0, -1e-310));
  CHECK(a[0] == 2.5);
  CHECK(a[1] == 2.5);
  CHECK(!std::signbit(a[2]));
  CHECK(a[3] == 1e-310);
}
