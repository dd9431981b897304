// Where a watched quantity passes a level inside a step.
#pragma once

namespace bide::march {

// Time at which the cubic Hermite interpolant through (t0, y0, slope s0) and (t1, y1, slope s1) equals
// `level`, found by bisection to 1e-9 of the step. With several crossings it is one of them.
// @param t0, t1 ends of the step, s, t0 < t1
// @param y0, y1 the quantity at both ends, in any unit; on different sides of the level, or y1 on it
// @param s0, s1 its slopes at both ends, per s
// @param level  in the unit of y0
// @return s, in [t0, t1]
double crossing_time(double t0, double y0, double s0, double t1, double y1, double s1, double level);

// The interpolant itself.
// @param t0, t1 ends of the step, s, t0 < t1
// @param y0, y1 the quantity at both ends, in any unit
// @param s0, s1 its slopes at both ends, per s
// @param t      where to evaluate it, s; outside [t0, t1] the cubic is extrapolated
// @return in the unit of y0
double hermite(double t0, double y0, double s0, double t1, double y1, double s1, double t);

}  // namespace bide::march
