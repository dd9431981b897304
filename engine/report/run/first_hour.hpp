// What to do in the first hour: common practice, no source. The distress call comes first, whatever is
// aboard. Items that are not aboard are left out, and a protective aid where the air is warmer than it is
// made for, or where it was tried and costs time.
#pragma once

#include <string>
#include <vector>

#include "bide/scenario/validate.hpp"
#include "bide/study/questions/levers.hpp"

namespace bide::report {

struct Task {
  const char* name;  // in a few words
  const char* sentence;
};
// @param levers as they were tried on the scenario; null: they were not
std::vector<Task> first_hour_tasks(const scenario::ValidScenario& scenario,
                                   const study::LeversTried* levers = nullptr);

// The first tasks by name, on one line.
std::string first_hour_line(const scenario::ValidScenario& scenario);

}  // namespace bide::report
