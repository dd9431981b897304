// What to do in the first hour: common practice, no source. Items that are not aboard are left out.
#pragma once

#include <string>
#include <vector>

#include "bide/scenario/validate.hpp"

namespace bide::report {

struct Task {
  const char* name;  // in a few words
  const char* sentence;
};
std::vector<Task> first_hour_tasks(const scenario::ValidScenario& scenario);

// The first tasks by name, on one line.
std::string first_hour_line(const scenario::ValidScenario& scenario);

}  // namespace bide::report
