// The reference integrator: the full nonlinear problem by Odeint's Dormand-Prince at tight tolerance. For
// tests and checks.
#pragma once

#include <boost/numeric/odeint.hpp>
#include <vector>

namespace bide::march {

// Integrates from t0 to t1 by dopri5 with step control. The method is explicit, so a stiff system takes many
// steps.
// @param slope    slope(t, x, dxdt) fills dxdt, per s
// @param x        state; that at t1 on return
// @param t0, t1   s
// @param relative relative tolerance of a step, above 0
// @param absolute absolute tolerance of a step, in the unit of each entry, above 0
template <class Slope>
void reference_advance(Slope&& slope, std::vector<double>& x, double t0, double t1, double relative,
                       double absolute) {
  namespace odeint = boost::numeric::odeint;
  auto stepper = odeint::make_controlled<odeint::runge_kutta_dopri5<std::vector<double>>>(absolute, relative);
  const auto rhs = [&](const std::vector<double>& y, std::vector<double>& dydt, double t) {
    slope(t, y, dydt);
  };
  odeint::integrate_adaptive(stepper, rhs, x, t0, t1, 1.0);
}

}  // namespace bide::march
