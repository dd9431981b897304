// Where a watched quantity passes a level inside a step.
#pragma once

namespace bide::march {

// Time in [t0, t1] at which the cubic Hermite interpolant through (t0, y0, slope s0) and (t1, y1, s1) equals
// `level`. Needs y0 and y1 on different sides (or y1 on the level). Bisection to 1e-9 of the step.
double crossing_time(double t0, double y0, double s0, double t1, double y1, double s1, double level);

// The interpolant itself.
double hermite(double t0, double y0, double s0, double t1, double y1, double s1, double t);

}  // namespace bide::march
