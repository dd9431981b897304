#include "bide/march/plan.hpp"

#include <algorithm>
#include <cmath>

namespace bide::march {

std::vector<Stop> merge(std::vector<Stop> stops, double end_s) {
  constexpr double same_s = 1e-6;
  stops.push_back({end_s, false});
  std::sort(stops.begin(), stops.end(), [](const Stop& a, const Stop& b) { return a.time_s < b.time_s; });
  std::vector<Stop> out;
  for (const Stop& s : stops) {
    if (s.time_s <= same_s || s.time_s > end_s + same_s) continue;
    if (!out.empty() && s.time_s - out.back().time_s <= same_s)
      out.back().hard = out.back().hard || s.hard;
    else
      out.push_back(s);
  }
  return out;
}

std::vector<double> steps(double length_s, const StepPlan& plan, Since& since) {
  std::vector<double> out;
  const bool settling = since.change_s < plan.settling_s;
  since.change_s += length_s;
  double left = length_s;
  while (left > 0 && since.graded < plan.graded_s.size()) {
    const double step = plan.graded_s[since.graded];
    if (step > left) break;  // a whole graded step does not fit: the rest is shorter than it anyway
    out.push_back(step);
    left -= step;
    ++since.graded;
  }
  if (left <= 0) return out;
  const double longest = since.graded < plan.graded_s.size() ? plan.graded_s[since.graded]
                         : settling                          ? plan.longest_settling_s
                                                             : plan.longest_s;
  const double count = std::ceil(left / longest - 1e-9);
  for (double i = 0; i < count; i += 1) out.push_back(left / count);
  return out;
}

}  // namespace bide::march
