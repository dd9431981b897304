#include "bide/march/crossing.hpp"

namespace bide::march {

double hermite(double t0, double y0, double s0, double t1, double y1, double s1, double t) {
  const double h = t1 - t0, s = (t - t0) / h, r = 1 - s;
  return y0 * (1 + 2 * s) * r * r + y1 * s * s * (3 - 2 * s) + h * s * r * (s0 * r - s1 * s);
}

double crossing_time(double t0, double y0, double s0, double t1, double y1, double s1, double level) {
  double low = t0, high = t1;
  const bool starts_above = y0 > level;
  for (int i = 0; i < 30; ++i) {
    const double mid = 0.5 * (low + high);
    const bool above = hermite(t0, y0, s0, t1, y1, s1, mid) > level;
    (above == starts_above ? low : high) = mid;
  }
  return 0.5 * (low + high);
}

}  // namespace bide::march
