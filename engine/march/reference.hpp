// The reference: the full nonlinear problem by Odeint's Dormand-Prince at tight tolerance. For tests and
// checks.
#pragma once

#include <boost/numeric/odeint.hpp>
#include <vector>

namespace bide::march {

// Carries x from t0 to t1 by controlled dopri5 on slope(t, x, dxdt). Explicit: the tolerance, not stability,
// is what a caller chooses; stiff systems just take many steps.
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
