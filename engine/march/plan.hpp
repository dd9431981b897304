// Time events and the steps between them: fixed before the run, never adapted to the state.
//
// The march lands on a time event (a Stop) exactly. After a hard one (something jumped) the steps are graded
// 60, 120, then at most 200 s; after a soft one (a record is taken, a small change) they stay at most 200 s.
#pragma once

#include <vector>

namespace bide::march {

// A time event.
struct Stop {
  double time_s;  // since the scenario's start
  bool hard;      // the coefficients jump: short steps follow
};

struct StepPlan {
  std::vector<double> graded_s{60, 120};  // lengths of the first steps after a hard time event
  double longest_s = 200;                 // of every other step, above 0
};

// Sorts and merges time events and adds the end of the run. Those within a microsecond of one another become
// one, hard if either is; those outside (0, end_s] are dropped.
// @param stops in any order
// @param end_s end of the run, s since its start, above 0
std::vector<Stop> merge(std::vector<Stop> stops, double end_s);

// The steps between two time events.
// @param length_s length of the interval, s
// @param plan     longest and graded steps
// @param graded   graded steps taken since the last hard time event; updated
// @return s, in order; they sum to length_s
std::vector<double> steps(double length_s, const StepPlan& plan, std::size_t& graded);

}  // namespace bide::march
