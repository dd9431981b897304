// Numbers of the sun's apparent place: Meeus 1998, low-precision theory, as spread by the NOAA solar
// calculator. Angles in degrees, `_century` per Julian century from J2000.0, `_century2` per century squared.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

#define BIDE_SUN(name, value, unit, where)              \
  inline constexpr Sourced name {                       \
    value, unit, "meeus1998", where, Trust::from_memory \
  }
BIDE_SUN(sun_mean_longitude_deg, 280.46646, "deg", "eq. 25.2");
BIDE_SUN(sun_mean_longitude_deg_century, 36000.76983, "deg/century", "eq. 25.2");
BIDE_SUN(sun_mean_longitude_deg_century2, 3.032e-4, "deg/century2", "eq. 25.2");
BIDE_SUN(sun_mean_anomaly_deg, 357.52911, "deg", "eq. 25.3");
BIDE_SUN(sun_mean_anomaly_deg_century, 35999.05029, "deg/century", "eq. 25.3");
BIDE_SUN(sun_mean_anomaly_deg_century2, -1.537e-4, "deg/century2", "eq. 25.3");
BIDE_SUN(earth_eccentricity, 0.016708634, "-", "eq. 25.4");
BIDE_SUN(earth_eccentricity_century, -4.2037e-5, "1/century", "eq. 25.4");
BIDE_SUN(earth_eccentricity_century2, -1.267e-7, "1/century2", "eq. 25.4");
BIDE_SUN(sun_centre_1_deg, 1.914602, "deg", "ch. 25, equation of the centre, sin M");
BIDE_SUN(sun_centre_1_deg_century, -4.817e-3, "deg/century", "ch. 25, equation of the centre, sin M");
BIDE_SUN(sun_centre_1_deg_century2, -1.4e-5, "deg/century2", "ch. 25, equation of the centre, sin M");
BIDE_SUN(sun_centre_2_deg, 0.019993, "deg", "ch. 25, equation of the centre, sin 2M");
BIDE_SUN(sun_centre_2_deg_century, -1.01e-4, "deg/century", "ch. 25, equation of the centre, sin 2M");
BIDE_SUN(sun_centre_3_deg, 2.89e-4, "deg", "ch. 25, equation of the centre, sin 3M");
BIDE_SUN(earth_orbit_axis_AU, 1.000001018, "AU", "eq. 25.5");
BIDE_SUN(moon_node_deg, 125.04, "deg", "ch. 25, apparent longitude");
BIDE_SUN(moon_node_deg_century, -1934.136, "deg/century", "ch. 25, apparent longitude");
BIDE_SUN(sun_aberration_deg, -0.00569, "deg", "ch. 25, apparent longitude");
BIDE_SUN(sun_nutation_deg, -0.00478, "deg", "ch. 25, apparent longitude, sin of the moon's node");
BIDE_SUN(obliquity_deg, 23.4392911, "deg", "eq. 22.2");
BIDE_SUN(obliquity_deg_century, -0.0130042, "deg/century", "eq. 22.2");
BIDE_SUN(obliquity_nutation_deg, 0.00256, "deg", "eq. 25.8, cos of the moon's node");
BIDE_SUN(sun_time_constant_deg, -0.0057183, "deg", "eq. 28.1");
BIDE_SUN(refraction_scale_arcmin, 1.02, "arcmin", "eq. 16.4 (Saemundsson), 1010 hPa and 10 degC");
BIDE_SUN(refraction_offset_deg2, 10.3, "deg2", "eq. 16.4 (Saemundsson)");
BIDE_SUN(refraction_shift_deg, 5.11, "deg", "eq. 16.4 (Saemundsson)");
#undef BIDE_SUN

inline constexpr Sourced horizon_refraction_deg{0.5667, "deg", "reda2004",
                                                "refraction at rise and set, table A5.1", Trust::second_hand};
inline constexpr Sourced sun_radius_deg{0.26667, "deg", "reda2004", "A.2: apparent semi-diameter",
                                        Trust::from_memory};
inline constexpr Sourced j2000_unix_s{946728000, "s", "", "2000-01-01T12:00:00Z", Trust::definition};
inline constexpr Sourced julian_century_s{3155760000, "s", "", "36525 days", Trust::definition};

}  // namespace bide::constants
