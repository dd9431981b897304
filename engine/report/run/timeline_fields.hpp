// The columns of a run, for every table made of it.
#pragma once

#include <string>
#include <vector>

#include "bide/timeline/series.hpp"

namespace bide::report {

struct TimelineField {
  std::string name;  // ends in its unit; a person's begins with person_a_, person_b_...
  const std::vector<double>* values = nullptr;
};

// Those that the run has, each as long as its time axis. Points into the timeline.
std::vector<TimelineField> timeline_fields(const timeline::Timeline& timeline);

}  // namespace bide::report
