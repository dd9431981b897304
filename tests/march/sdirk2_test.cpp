#include "bide/march/sdirk2.hpp"

#include <doctest/doctest.h>

#include <boost/numeric/odeint.hpp>
#include <cmath>
#include <functional>

#include "bide/core/scalar.hpp"
#include "bide/march/reference.hpp"

using namespace bide;

namespace {

struct Block {
  std::size_t begin, implicit_end, felt_end, end;
};

// y' = -k(t, y) (y - s(t)) with a smooth nonlinear k, and z' = y: a quadrature, as the ledgers are.
template <class T>
struct Relaxation {
  double stiffness = 1;
  std::vector<Block> all{{0, 1, 1, 2}};
  T k{0}, s{0}, per_a{0};
  double a = 0;

  const std::vector<Block>& blocks() const { return all; }
  void freeze(double t, const std::vector<T>& x) {
    k = T(stiffness) * (T(1) + T(0.3) * x[0] * x[0]);
    s = T(std::cos(t));
  }
  void factor(double a_) { a = a_; }
  void stage(const std::vector<T>& y, std::vector<T>& u) { u[0] = (y[0] + T(a) * k * s) / (T(1) + T(a) * k); }
  void slow(const std::vector<T>& mean, std::vector<T>& slope) { slope[1] = mean[0]; }
  using Vector = std::vector<T>;
  void settle(double, const Vector&, Vector&, Vector&, Vector&) {}
  void slope(double t, const std::vector<T>& x, std::vector<T>& dxdt) {
    freeze(t, x);
    dxdt[0] = k * (s - x[0]);
    dxdt[1] = x[0];
  }
};

double error_at(double h, int component) {
  Relaxation<double> r;
  std::vector<double> x{2, 0}, reference{2, 0};
  march::Sdirk2<double> stepper(2);
  const int steps = static_cast<int>(std::lround(4 / h));
  for (int i = 0; i < steps; ++i) stepper.do_step(r, x, i * h, h);
  march::reference_advance(
      [&](double t, const std::vector<double>& y, std::vector<double>& d) { r.slope(t, y, d); }, reference, 0,
      4, 1e-12, 1e-12);
  return std::abs(x[component] - reference[component]);
}

}  // namespace

TEST_CASE("halving the step divides the error by four, in the state and in its quadrature") {
  for (const int component : {0, 1}) {
    const double coarse = error_at(0.04, component), middle = error_at(0.02, component),
                 fine = error_at(0.01, component);
    CAPTURE(component);
    CHECK(std::log2(coarse / middle) == doctest::Approx(2).epsilon(0.1));
    CHECK(std::log2(middle / fine) == doctest::Approx(2).epsilon(0.1));
  }
}

TEST_CASE("a stiff mode is damped, not rung") {
  // L-stability: one step of 1e6 time constants ends on the slow solution s = cos t.
  Relaxation<double> r;
  r.stiffness = 1e6;
  std::vector<double> x{100, 0};
  march::Sdirk2<double> stepper(2);
  stepper.do_step(r, x, 0, 1);
  CHECK(x[0] == doctest::Approx(std::cos(0.5)).epsilon(1e-3));
}

TEST_CASE("the linear constant problem: stability function of SDIRK2 at z = -1") {
  // R(z) = (1 + (1 - 2g) z) / (1 - g z)^2 with g = 1 - 1/sqrt 2 (Hairer & Wanner II, IV.6; from memory).
  // 0.350773...
  struct Decay : Relaxation<double> {
    void freeze(double, const std::vector<double>&) { k = 1, s = 0; }
  } r;
  std::vector<double> x{1, 0};
  march::Sdirk2<double> stepper(2);
  stepper.do_step(r, x, 0, 1);
  const double g = 1 - 1 / std::sqrt(2.0);
  CHECK(x[0] == doctest::Approx((1 - (1 - 2 * g)) / ((1 + g) * (1 + g))).epsilon(1e-14));
  // The quadrature carries the same weights: integral = 1 - x exactly, since y' = -y.
  CHECK(x[1] == doctest::Approx(1 - x[0]).epsilon(1e-14));
}

TEST_CASE("works as an Odeint stepper") {
  Relaxation<double> r;
  std::vector<double> direct{2, 0}, through{2, 0};
  march::Sdirk2<double> stepper(2);
  for (int i = 0; i < 10; ++i) stepper.do_step(r, direct, i * 0.1, 0.1);
  using Stepper = march::Sdirk2<double, boost::numeric::odeint::stepper_tag>;
  boost::numeric::odeint::integrate_n_steps(Stepper(2), std::ref(r), through, 0.0, 0.1, std::size_t{10});
  CHECK(through[0] == doctest::Approx(direct[0]).epsilon(1e-12));
  CHECK(through[1] == doctest::Approx(direct[1]).epsilon(1e-12));
}

TEST_CASE("lanes march as the scalar does") {
  Relaxation<double> r;
  Relaxation<Lanes<4>> wide;
  std::vector<double> x{2, 0};
  std::vector<Lanes<4>> w(2);
  w[0] = Lanes<4>(2.0);
  w[0].set(2, 0.5);
  march::Sdirk2<double> stepper(2);
  march::Sdirk2<Lanes<4>> wide_stepper(2);
  for (int i = 0; i < 20; ++i) {
    stepper.do_step(r, x, i * 0.1, 0.1);
    wide_stepper.do_step(wide, w, i * 0.1, 0.1);
  }
  CHECK(w[0][0] == doctest::Approx(x[0]).epsilon(1e-13));
  CHECK(w[0][0] == w[0][3]);
  CHECK(w[0][2] != w[0][0]);
}
