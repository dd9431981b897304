// The march from start to end: steps between time events, discrete changes at time events, an observer of
// both.
//
// States: owned by the caller. Inputs: a system, its starting state and how to advance it. The observer is
// called after every step and after every time event; it must not change the state. Source: none.
#pragma once

#include <cmath>
#include <vector>

#include "bide/march/plan.hpp"
#include "bide/system/events.hpp"
#include "bide/system/system.hpp"

namespace bide::timeline {

// Every time event of the run: those of the schedule and the output times.
inline std::vector<march::Stop> all_stops(const system::Structure& s) {
  std::vector<march::Stop> stops;
  for (const system::ScheduledStop& stop : s.stops) stops.push_back({stop.time_s, stop.hard});
  for (double i = 1; i * s.output_interval_s <= s.end_s; i += 1)
    stops.push_back({i * s.output_interval_s, false});
  return march::merge(std::move(stops), s.end_s);
}

// Whether a time is an output time: a multiple of the output interval within a microsecond, or the end.
// @param t s since the scenario's start
inline bool is_output_time(double t, const system::Structure& s) {
  constexpr double same_s = 1e-6;
  const double rows = t / s.output_interval_s;
  return std::abs(rows - std::round(rows)) * s.output_interval_s < same_s || t >= s.end_s;
}

// Runs the march.
// @param system   the model; its discrete states change
// @param x        state at the start; that at the end on return
// @param plan     lengths of the steps
// @param advance  advance.step(system, x, t, h) takes one step; advance.restart() is called when the
//                 coefficients have jumped
// @param observer observer.after_step(t0, t1, x, advance), observer.at_stop(t, x) and observer.notes(); where
//                 it has a done(), the march ends at the first time event at which that is true
template <class T, class Advance, class Observer>
void drive(system::System<T>& system, std::vector<T>& x, const march::StepPlan& plan, Advance& advance,
           Observer& observer) {
  const system::Structure& structure = system.compiled().structure;
  std::size_t next = 0;
  march::Since since;
  // Whether the coefficients have jumped.
  const auto apply_until = [&](double t) {
    bool hard = false;
    constexpr double same_s = 1e-6;
    while (next < structure.stops.size() && structure.stops[next].time_s <= t + same_s) {
      const system::ScheduledStop& stop = structure.stops[next++];
      system::apply(stop, system, x, observer.notes());
      hard = hard || stop.hard;
      if (system::changes_surroundings(stop.kind)) since.change_s = 0;
    }
    return hard;
  };
  apply_until(0);
  observer.at_stop(0.0, x);
  double t = 0;
  for (const march::Stop& stop : all_stops(structure)) {
    for (const double h : march::steps(stop.time_s - t, plan, since)) {
      advance.step(system, x, t, h);
      observer.after_step(t, t + h, x, advance);
      t += h;
    }
    t = stop.time_s;
    if (apply_until(t)) {
      advance.restart();
      since.graded = 0;
    }
    observer.at_stop(t, x);
    if constexpr (requires { observer.done(); })
      if (observer.done()) return;
  }
}

}  // namespace bide::timeline
