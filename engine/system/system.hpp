// The coupled problem as the stepper sees it: freeze, factor, solve, book.
//
// States: the integrated vector (cabin block, then one block per person) and `held`. Inputs: a compiled
// scenario and the forcing. Validity: see the components. Source: see the components; this file couples them.
#pragma once

#include <vector>

#include "bide/system/coefficients.hpp"
#include "bide/system/compiled.hpp"
#include "bide/system/forcings.hpp"
#include "bide/system/held.hpp"
#include "bide/system/solve.hpp"

namespace bide::system {

// A run of entries of the state: solved implicitly, then others that coefficients depend on, then totals.
struct Block {
  std::size_t begin, implicit_end, felt_end, end;
};

template <class T>
class System {
 public:
  // Keeps references to both.
  System(const Compiled<T>& compiled, const Forcings<T>& forcings);

  Held<T> held;

  const Compiled<T>& compiled() const { return *compiled_; }
  const Forcings<T>& forcings() const { return *forcings_; }
  const Coefficients<T>& coefficients() const { return coefficients_; }
  std::size_t size() const { return static_cast<std::size_t>(state_size(compiled_->structure.persons)); }

  // The starting state, before the first stop.
  std::vector<T> start();

  // What the stepper calls; no allocation in any of these.
  const std::vector<Block>& blocks() const { return blocks_; }
  void freeze(double t_s, const std::vector<T>& x);
  void factor(double a_s);
  void stage(const std::vector<T>& y, std::vector<T>& u);
  void slow(const std::vector<T>& mean, std::vector<T>& k);

  // dx/dt at (t, x), unfrozen: for reference integrators.
  void slope(double t_s, const std::vector<T>& x, std::vector<T>& k);

  // One number per person, for events that share out stores.
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
