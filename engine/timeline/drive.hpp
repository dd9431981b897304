// The march from start to end: steps between stops, events at stops, an observer at both.
//
// States: owned by the caller. Inputs: a system, its starting state and how to advance it. The observer is
// told after every step and after every stop; it must not change the state. Source: none.
#pragma once

#include <cmath>
#include <vector>

#include "bide/march/plan.hpp"
#include "bide/system/events.hpp"
#include "bide/system/system.hpp"

namespace bide::timeline {

// Every stop of the run: the schedule's and the output grid's.
inline std::vector<march::Stop> all_stops(const system::Structure& s) {
  std::vector<march::Stop> stops;
  for (const system::ScheduledStop& stop : s.stops)
    stops.push_back({stop.time_s, system::is_hard(stop.kind)});
  for (double i = 1; i * s.output_interval_s <= s.end_s; i += 1)
    stops.push_back({i * s.output_interval_s, false});
  return march::merge(std::move(stops), s.end_s);
}

// Whether a row of the record belongs to a stop: the output grid, and the end.
inline bool is_output_time(double t, const system::Structure& s) {
  constexpr double same_s = 1e-6;
  const double rows = t / s.output_interval_s;
  return std::abs(rows - std::round(rows)) * s.output_interval_s < same_s || t >= s.end_s;
}

// `advance(system, x, t, h)` carries x over one step; `restart()` is called when the coefficients have
// jumped. An observer that has a `done()` ends the march at a stop by answering true.
template <class T, class Advance, class Observer>
void drive(system::System<T>& system, std::vector<T>& x, const march::StepPlan& plan, Advance& advance,
           Observer& observer) {
  const system::Structure& structure = system.compiled().structure;
  std::size_t next = 0, graded = 0;
  const auto apply_until = [&](double t) {
    bool hard = false;
    constexpr double same_s = 1e-6;
    while (next < structure.stops.size() && structure.stops[next].time_s <= t + same_s) {
      const system::ScheduledStop& stop = structure.stops[next++];
      system::apply(stop, system, x, observer.notes());
      hard = hard || system::is_hard(stop.kind);
    }
    return hard;
  };
  apply_until(0);
  observer.at_stop(0.0, x);
  double t = 0;
  for (const march::Stop& stop : all_stops(structure)) {
    for (const double h : march::steps(stop.time_s - t, plan, graded)) {
      advance.step(system, x, t, h);
      observer.after_step(t, t + h, x, advance);
      t += h;
    }
    t = stop.time_s;
    if (apply_until(t)) {
      advance.restart();
      graded = 0;
    }
    observer.at_stop(t, x);
    if constexpr (requires { observer.done(); })
      if (observer.done()) return;
  }
}

}  // namespace bide::timeline
