// Time events and the steps between them: fixed before the run, never adapted to the state.
//
// The march lands on a time event (a Stop) exactly. After a hard one (something jumped) the first steps are
// graded; after a soft one (a record is taken, a small change) they go on as they are. For an hour after the
// surroundings have changed as a whole all steps are short: hands, skin and shivering settle within minutes.
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
  double longest_s = 300;                 // of every other step, above 0
  double settling_s = 3600;               // for so long after a change of surroundings
  double longest_settling_s = 100;        // a step is at most this, above 0
};

// How far the march has got.
struct Since {
  std::size_t graded = 0;  // graded steps taken since the last hard time event
  double change_s = 0;     // time since the last change of surroundings
};

// Sorts and merges time events and adds the end of the run. Those within a microsecond of one another become
// one, hard if either is; those outside (0, end_s] are dropped.
// @param stops in any order
// @param end_s end of the run, s since its start, above 0
std::vector<Stop> merge(std::vector<Stop> stops, double end_s);

// The steps between two time events.
// @param length_s length of the interval, s
// @param plan     longest and graded steps
// @param since    at the beginning of the interval; that at its end on return
// @return s, in order; they sum to length_s
std::vector<double> steps(double length_s, const StepPlan& plan, Since& since);

}  // namespace bide::march
