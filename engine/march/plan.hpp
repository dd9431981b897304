// When to stop and how to step between stops: fixed before the run, never adapted to the state.
//
// A stop is a time the march lands on exactly. After a hard stop (something jumped) the steps are graded 60,
// 120, then at most 200 s; a soft stop (a record is taken, a small change) leaves them at most 200 s.
#pragma once

#include <vector>

namespace bide::march {

struct Stop {
  double time_s;
  bool hard;
};

struct StepPlan {
  std::vector<double> graded_s{60, 120};
  double longest_s = 200;
};

// Sorted, merged (times within a microsecond are one stop, hard if either is), cut to (0, end], with end
// added.
std::vector<Stop> merge(std::vector<Stop> stops, double end_s);

// The steps of one interval, in order; they sum to `length_s`. `graded` counts how many graded steps have
// been taken since the last hard stop and is updated.
std::vector<double> steps(double length_s, const StepPlan& plan, std::size_t& graded);

}  // namespace bide::march
