// From how far a light is seen.
//
// States: none. Inputs: luminous intensity in cd, meteorological visibility and distance in nautical miles,
// illuminance in lux, heights in m. Validity: a fixed light and a watcher who looks at it, so the most there
// can be; nothing is said of a watcher who searches. Sources: the rule of the collision regulations (Allard
// 1876 with a threshold), constants/signals.hpp.
#pragma once

namespace bide::stores {

// Distance at which a light just reaches the threshold: I = f T D^2 K^-D, with K = 0.05^(1/V).
// @param light_cd      luminous intensity, cd, at least 0
// @param visibility_nm meteorological visibility, nautical miles, above 0
// @param threshold_lux least illuminance that is seen, lux, above 0
// @return nautical miles, within 1e-9 of the solution
double luminous_range_nm(double light_cd, double visibility_nm, double threshold_lux);

// Distance at which the horizon hides a light.
// @param eye_m, light_m heights above the sea, m, at least 0
// @return nautical miles
double horizon_range_nm(double eye_m, double light_m);

}  // namespace bide::stores
