// The production stepper: SDIRK2 with coefficients frozen once per step at the midpoint.
//
// gamma = 1 - 1/sqrt(2), stiffly accurate, L-stable, order 2 (Alexander 1977, SIAM J. Numer. Anal. 14:1006).
// The midpoint state is extrapolated with slopes of the previous step (a fifth of the mean slope plus four
// fifths of the slope at its end) or, right after a hard time event or a much shorter step, by a
// backward-Euler half-step. A system gives its frozen linear problem as:
//
//   freeze(t, x)      coefficients at a state
//   factor(a)         prepare (I - a J)
//   stage(y, u)       solve u = y + a f(u) for the implicit entries
//   slow(mean, k)     slopes of the non-stiff states and totals at the weighted mean stage; k holds the
//                     implicit slopes
//   blocks()          the state in ascending blocks: implicit entries [begin, implicit_end), non-stiff states
//                     that coefficients depend on [implicit_end, felt_end), running totals [felt_end, end)
//
// Every frozen flux is affine in the implicit entries, so its integral over the step, with the method's
// weights h[(1-gamma) phi(U1) + gamma phi(U2)], is h phi(mean): non-stiff states and ledgers take it from one
// evaluation.
#pragma once

#include <cstddef>
#include <functional>
#include <utility>
#include <vector>

namespace bide::march {

namespace detail {
template <class S>
S& unwrap(S& system) {
  return system;
}
template <class S>
S& unwrap(std::reference_wrapper<S> system) {
  return system.get();
}
}  // namespace detail

// Meets Odeint's stepper concept: do_step(system, x, t, dt) with x a vector of T.
template <class T, class Category = void>
class Sdirk2 {
 public:
  using state_type = std::vector<T>;
  using deriv_type = std::vector<T>;
  using value_type = double;
  using time_type = double;
  using order_type = unsigned short;
  using stepper_category = Category;
  static constexpr order_type order() { return 2; }
  static constexpr double gamma = 0.29289321881345247560;  // 1 - 1/sqrt(2)
  // Share of the mean slope in the extrapolation, chosen by trial: with the slope at the end alone long steps
  // overshoot where vessels open.
  static constexpr double damping = 0.3;

  // A step may be so many times as long as the one before and still be extrapolated from it: the steps of a
  // plan double. After the odd short step to a time event the slope of a fast entry says nothing of a long
  // one.
  static constexpr double greatest_growth = 2.5;

  // @param size number of state entries
  explicit Sdirk2(std::size_t size = 0) { resize(size); }

  void resize(std::size_t size) {
    mid_.resize(size);
    first_.resize(size);
    from_.resize(size);
    mean_.resize(size);
    ahead_.resize(size);
    slope_.assign(size, T(0));
    has_slope_ = false;
  }

  // Forgets the slope of the previous step: call after a hard time event.
  void restart() { has_slope_ = false; }

  // Slopes at the end of the last step, per s; valid for the implicit entries alone.
  const deriv_type& end_slopes() const { return mid_; }

  // Takes one step.
  // @param wrapped the system, or a std::reference_wrapper of it
  // @param x       state at t; that at t + h on return
  // @param t       s since the scenario's start
  // @param h       length of the step, s, above 0
  template <class Wrapped>
  void do_step(Wrapped&& wrapped, state_type& x, double t, double h) {
    auto& system = detail::unwrap(wrapped);
    if (mid_.size() != x.size()) resize(x.size());
    has_slope_ = has_slope_ && h <= greatest_growth * last_s_;
    last_s_ = h;
    midpoint(system, x, t, h);
    system.freeze(t + 0.5 * h, mid_);
    const double a = gamma * h;
    system.factor(a);
    system.stage(x, first_);
    const T ahead((1 - gamma) / gamma), keep(1 - (1 - gamma) / gamma);
    for (const auto& b : system.blocks())
      for (std::size_t i = b.begin; i < b.implicit_end; ++i) from_[i] = keep * x[i] + ahead * first_[i];
    system.stage(from_, mean_);  // the second stage, for now
    const T per_a(1 / a), per_h(1 / h), first_weight(1 - gamma), second_weight(gamma);
    const T end(1 - damping), over_the_step(damping);
    for (const auto& b : system.blocks())
      for (std::size_t i = b.begin; i < b.implicit_end; ++i) {
        const T second = mean_[i];
        const T end_slope = (second - from_[i]) * per_a, mean_slope = (second - x[i]) * per_h;
        mid_[i] = end_slope;  // the midpoint is done with
        slope_[i] = mean_slope;
        ahead_[i] = end * end_slope + over_the_step * mean_slope;
        mean_[i] = first_weight * first_[i] + second_weight * second;
        x[i] = second;
      }
    system.slow(mean_, slope_);
    const T step(h);
    for (const auto& b : system.blocks())
      for (std::size_t i = b.implicit_end; i < b.end; ++i) x[i] += step * slope_[i];
    system.settle(h, slope_, x, mid_, ahead_);
    has_slope_ = true;
  }

 private:
  std::vector<T> mid_;  // the midpoint, then slopes at the end
  std::vector<T> first_, from_, mean_;
  std::vector<T> slope_;  // mean over the step
  std::vector<T> ahead_;  // the slope that implicit entries are extrapolated with
  bool has_slope_ = false;
  double last_s_ = 0;  // length of the step before

  // Running totals have no midpoint: nothing depends on them.
  template <class System>
  void midpoint(System& system, const state_type& x, double t, double h) {
    const T half(0.5 * h);
    if (has_slope_) {
      for (const auto& b : system.blocks())
        for (std::size_t i = b.begin; i < b.implicit_end; ++i) mid_[i] = x[i] + half * ahead_[i];
    } else {
      system.freeze(t, x);
      system.factor(0.5 * h);
      system.stage(x, mid_);
      const T per_half(2 / h);
      for (const auto& b : system.blocks())
        for (std::size_t i = b.begin; i < b.implicit_end; ++i) slope_[i] = (mid_[i] - x[i]) * per_half;
      system.slow(mid_, slope_);
    }
    for (const auto& b : system.blocks())
      for (std::size_t i = b.implicit_end; i < b.felt_end; ++i) mid_[i] = x[i] + half * slope_[i];
  }
};

}  // namespace bide::march
