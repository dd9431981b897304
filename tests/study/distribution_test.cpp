// Quantiles and moments in closed form, worked out by hand beside each check.
#include "bide/study/sampling/distribution.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

using namespace bide;
using doctest::Approx;
using scenario::Distribution;
using Kind = scenario::DistributionKind;

namespace {

double number(const Distribution& d, double u) {
  return std::get<double>(study::quantile(d, u));
}
Distribution of(Kind kind) {
  Distribution d;
  d.kind = kind;
  return d;
}

struct Moments {
  double mean, sd;
};
// By the midpoint rule over the quantiles, n = 20,000.
Moments moments(const Distribution& d) {
  constexpr int n = 20000;
  double sum = 0, square = 0;
  for (int i = 0; i < n; ++i) {
    const double x = number(d, (i + 0.5) / n);
    sum += x / n, square += x * x / n;
  }
  return {sum, std::sqrt(square - sum * sum)};
}

}  // namespace

TEST_CASE("uniform") {
  Distribution d = of(Kind::uniform);
  d.low = 2, d.high = 6;
  CHECK(number(d, 0.25) == Approx(3));
  CHECK(moments(d).mean == Approx(4));
  CHECK(moments(d).sd == Approx(4 / std::sqrt(12.0)));
  CHECK(study::share_below(d, 3) == Approx(0.25));
}

// z(0.975) = 1.959964, z(0.95) = 1.644854 (any table of the normal distribution).
TEST_CASE("normal and lognormal") {
  Distribution d = of(Kind::normal);
  d.mean = 10, d.sd = 2;
  CHECK(number(d, 0.975) == Approx(13.919928));
  CHECK(moments(d).sd == Approx(2).epsilon(1e-3));
  Distribution l = of(Kind::lognormal);
  l.median = 3, l.geometric_sd = 2;
  CHECK(number(l, 0.5) == Approx(3));
  CHECK(number(l, 0.95) == Approx(3 * std::pow(2.0, 1.644854)));
  // Mean of a lognormal: median x exp(ln(gsd)^2 / 2).
  CHECK(moments(l).mean == Approx(3 * std::exp(std::log(2.0) * std::log(2.0) / 2)).epsilon(2e-3));
  CHECK(study::share_below(l, 0) == 0);
}

// A standard normal cut at 0 on the left (half-normal): mean sqrt(2 / pi), median z(0.75) = 0.674490.
TEST_CASE("truncated normal") {
  Distribution d = of(Kind::truncated_normal);
  d.mean = 0, d.sd = 1, d.low = 0, d.high = 50;
  CHECK(moments(d).mean == Approx(std::sqrt(2 / 3.14159265358979)).epsilon(1e-3));
  CHECK(number(d, 0.5) == Approx(0.674490));
  CHECK(study::share_below(d, 0.674490) == Approx(0.5));
  CHECK(number(d, 1 - 0x1p-53) <= 50);
}

// low 0, mode 1, high 4: F(1) = 1/4, mean 5/3, variance (0 + 1 + 16 - 0 - 0 - 4) / 18 = 13/18.
TEST_CASE("triangular") {
  Distribution d = of(Kind::triangular);
  d.low = 0, d.mode = 1, d.high = 4;
  CHECK(number(d, 0.25) == Approx(1));
  CHECK(moments(d).mean == Approx(5.0 / 3));
  CHECK(moments(d).sd == Approx(std::sqrt(13.0 / 18)).epsilon(1e-4));
  // F(2) = 1 - (4 - 2)^2 / (4 x 3) = 2/3.
  CHECK(study::share_below(d, 2) == Approx(2.0 / 3));
  CHECK(number(d, 2.0 / 3) == Approx(2));
}

TEST_CASE("discrete values by weight, words too; a value of no weight never comes") {
  Distribution d = of(Kind::discrete);
  d.values = {std::string("a"), std::string("b"), std::string("c")};
  d.weights = {3, 1, 0};
  CHECK(std::get<std::string>(study::quantile(d, 0.74)) == "a");
  CHECK(std::get<std::string>(study::quantile(d, 0.76)) == "b");
  CHECK(std::get<std::string>(study::quantile(d, 1 - 0x1p-53)) == "b");
}

// Hyndman & Fan's type 7 of 1, 2, 4: u = 0.75 is at 1.5 steps, half-way from 2 to 4.
TEST_CASE("empirical numbers are interpolated") {
  Distribution d = of(Kind::empirical);
  d.values = {4.0, 1.0, 2.0};
  CHECK(number(d, 0.75) == Approx(3));
  CHECK(study::share_below(d, 3) == Approx(0.75));
}

// Weibull: F(scale) = 1 - 1/e; with shape 2 the median is scale x sqrt(ln 2).
TEST_CASE("time of rescue") {
  scenario::Rescue r;
  r.kind = scenario::RescueKind::weibull;
  r.scale_h = 10, r.shape = 2;
  CHECK(study::rescue_h(r, 1 - std::exp(-1.0)) == Approx(10));
  CHECK(study::rescue_h(r, 0.5) == Approx(10 * std::sqrt(std::log(2.0))));
  r.kind = scenario::RescueKind::none;
  CHECK(study::rescue_h(r, 0.5) == std::numeric_limits<double>::infinity());
}

// Cut at median and at exp(sd): z from 0 to 1, of which tables have 0.5 to 0.841345; half way is 0.670672, z
// = 0.441786.
TEST_CASE("a lognormal distribution of which both ends are cut off") {
  const double sd = 0.5, high = std::exp(sd);
  CHECK(study::lognormal_within(1, sd, 1, high, 0.5) == Approx(std::exp(sd * 0.441786)).epsilon(1e-5));
  CHECK(study::lognormal_within(1, sd, 1, high, 1e-12) == Approx(1));
  CHECK(study::lognormal_within(1, sd, 1, high, 1 - 1e-12) == Approx(high));
  // Cut off far away it is the whole: z(0.975) = 1.959964.
  CHECK(study::lognormal_within(2, sd, 1e-9, 1e9, 0.975) == Approx(2 * std::exp(sd * 1.959964)));
}
