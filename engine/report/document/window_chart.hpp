// The picture of an answer: until when, as a bar over the range and a dot for the central case.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bide/report/document/document.hpp"
#include "bide/study/questions/unmeasured.hpp"

namespace bide::report::pages {

// A time that is empty lies beyond the horizon.
struct WindowRow {
  std::string name;  // "able: first person"
  std::optional<study::TimeRange> range;
  std::optional<double> central_s;
};

// A time of a crew, with its range where there is one.
// @param central the scenario as it is
// @param members may be none
WindowRow window_row(std::string name, const outcome::CrewTimes& central, const study::RangeMembers& members,
                     study::CrewState state, study::CrewTime which);

// @param rows      at least one
// @param horizon_s end of the runs, s
document::Chart window_chart(const std::vector<WindowRow>& rows, double horizon_s);

// Time since the start, in days where the run is long.
document::Axis time_axis(double horizon_s);

}  // namespace bide::report::pages
