// The coupled problem as the stepper uses it: freeze, factor, solve, book.
//
// States: the integrated vector (cabin block, then one block per person) and the discrete states in `held`.
// Inputs: a compiled scenario and the forcing. Validity and source: those of the components; this file
// couples them.
#pragma once

#include <vector>

#include "bide/system/coefficients.hpp"
#include "bide/system/compiled.hpp"
#include "bide/system/forcings.hpp"
#include "bide/system/held.hpp"
#include "bide/system/solve.hpp"

namespace bide::system {

// Consecutive entries of the state: implicit ones, then non-stiff states that coefficients depend on, then
// running totals.
struct Block {
  std::size_t begin, implicit_end, felt_end, end;
};

template <class T>
class System {
 public:
  // Both must outlive the system.
  System(const Compiled<T>& compiled, const Forcings<T>& forcings);

  Held<T> held;  // the discrete states

  const Compiled<T>& compiled() const { return *compiled_; }
  const Forcings<T>& forcings() const { return *forcings_; }
  const Coefficients<T>& coefficients() const { return coefficients_; }
  std::size_t size() const { return static_cast<std::size_t>(state_size(compiled_->structure.persons)); }

  // The initial state, before the first time event.
  std::vector<T> start();

  // For the stepper (march/sdirk2.hpp); none of these allocates.
  const std::vector<Block>& blocks() const { return blocks_; }
  // Freezes the coefficients.
  // @param t_s s since the scenario's start
  // @param x   state
  void freeze(double t_s, const std::vector<T>& x);
  // Prepares (I - a J) of the frozen problem.
  // @param a_s s, above 0
  void factor(double a_s);
  // Solves u = y + a f(u) for the implicit entries.
  void stage(const std::vector<T>& y, std::vector<T>& u);
  // Slopes of all other entries, per s.
  // @param mean weighted mean stage
  // @param k    filled; holds the slopes of the implicit entries
  void slow(const std::vector<T>& mean, std::vector<T>& k);
  // At the end of a step of `length_s`: settle.hpp.
  void settle(double length_s, const std::vector<T>& mean_slopes, std::vector<T>& x,
              std::vector<T>& end_slopes, std::vector<T>& ahead);

  // Slope of the whole state without freezing: for reference integrators.
  // @param t_s s since the scenario's start
  // @param x   state
  // @param k   filled with dx/dt, per s
  void slope(double t_s, const std::vector<T>& x, std::vector<T>& k);

  // Working space with one number per person, for events that hand out stores.
  std::vector<T>& scratch_asked() { return asked_; }
  std::vector<T>& scratch_given() { return given_; }
  std::vector<T>& scratch_injured() { return injured_; }

 private:
  const Compiled<T>* compiled_;
  const Forcings<T>* forcings_;
  Coefficients<T> coefficients_;
  Factor<T> factor_;
  std::vector<Block> blocks_;
  std::vector<T> asked_, given_, injured_;
};

extern template class System<double>;
extern template class System<BlockLanes>;

}  // namespace bide::system
