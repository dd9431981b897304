// A march through steps and events to the end, nobody watching.
#pragma once

#include <vector>

#include "bide/march/sdirk2.hpp"
#include "bide/timeline/drive.hpp"

namespace bide::test {

template <class T>
struct Stepper {
  march::Sdirk2<T> sdirk;
  void step(system::System<T>& s, std::vector<T>& x, double t, double h) { sdirk.do_step(s, x, t, h); }
  void restart() { sdirk.restart(); }
};

struct NobodyWatches {
  static system::Notes notes() { return nullptr; }
  template <class T, class Advance>
  void after_step(double, double, const std::vector<T>&, const Advance&) {}
  template <class T>
  void at_stop(double, const std::vector<T>&) {}
};

// The state at the end.
template <class T>
std::vector<T> march_through(system::System<T>& system) {
  std::vector<T> x = system.start();
  Stepper<T> stepper{march::Sdirk2<T>(x.size())};
  NobodyWatches observer;
  timeline::drive(system, x, march::StepPlan{}, stepper, observer);
  return x;
}

}  // namespace bide::test
