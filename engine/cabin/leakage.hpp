// Air exchange of the cabin, m3/s: leakage with everything shut, and entrances.
//
// States: none. Inputs: wind in m/s, temperature difference inside to outside in K, areas in m2. Validity:
// single-sided law to 15 m/s; leakage has not been measured on any raft, its position in a wide range is an
// input. Source: de Gids & Phaff 1982, ASHRAE 2009 (both by public transcriptions); ranges of similar
// shelters.
#pragma once

#include "bide/cabin/range.hpp"
#include "bide/constants/air.hpp"
#include "bide/constants/cabin.hpp"
#include "bide/constants/weather.hpp"
#include "bide/core/moist_air.hpp"
#include "bide/core/scalar.hpp"
#include "bide/core/units.hpp"

namespace bide::cabin {

// Leakage with everything shut: the larger of a law for calm and one for wind, each per m2 of floor.
// @param floor_area_m2 m2
// @param wind_10m_m_s  wind speed at 10 m, as measured for the similar shelters, m/s, at least 0
// @param position      in the unmeasured range, 0 tight to 1 leaky, logarithmic (the ends differ by a factor
//                      of 25); clamped
// @return m3/s
template <class T>
inline T leakage_m3_s(T floor_area_m2, T wind_10m_m_s, T position) {
  using namespace constants;
  const T per_m2_L_s = larger(along_range_log(leakage_calm_L_s_m2, position),
                              T(along_range_log(leakage_per_wind_L_m2, position) * wind_10m_m_s));
  return floor_area_m2 * per_m2_L_s * T(1 / m3_L);
}

// Air exchange through openings on one side: Q = A/2 sqrt(0.001 U10^2 + 0.0035 H |dT| + 0.01) (de Gids &
// Phaff 1982).
// @param open_area_m2 A, m2, at least 0
// @param height_m     H, of the opening, m, at least 0
// @param wind_10m_m_s U10, wind speed at 10 m, m/s, [0, 15]
// @param difference_K dT, inside less outside, K
// @return m3/s
template <class T>
inline T one_sided_m3_s(T open_area_m2, T height_m, T wind_10m_m_s, T difference_K) {
  using namespace constants;
  return T(0.5) * open_area_m2 *
         sqrt(T(T(de_gids_wind) * wind_10m_m_s * wind_10m_m_s +
                T(de_gids_stack) * height_m * abs(difference_K) + T(de_gids_turbulence)));
}

// Air exchange through openings on two opposite sides: wind C_w A U in on one and out on the other, stack
// C_d A sqrt(2 g (H/2) |dT| / T), combined as sqrt(Qw^2 + Qs^2) (ASHRAE 2009). C_w is the mean over
// directions, 0.425.
// @param open_area_m2  of both sides together (2 A), m2, at least 0
// @param height_m      H, of an opening, m, at least 0
// @param wind_raft_m_s U, wind speed at the openings, m/s, at least 0
// @param difference_K  dT, inside less outside, K
// @param outside_degC  T, degC
// @return m3/s
template <class T>
inline T two_sided_m3_s(T open_area_m2, T height_m, T wind_raft_m_s, T difference_K, T outside_degC) {
  using namespace constants;
  constexpr double any_direction = cross_wind_facing.value - 0.5 * cross_wind_turned.value;
  const T inlet_m2 = T(0.5) * open_area_m2;
  const T warmer_K = abs(difference_K);
  const T wind = T(any_direction) * wind_raft_m_s;
  const T discharge = T(cross_discharge) + T(cross_discharge_per_K) * warmer_K;
  const T stack_squared =
      discharge * discharge * T(gravity_m_s2) * height_m * warmer_K / (outside_degC + T(zero_celsius_K));
  return inlet_m2 * sqrt(T(wind * wind + stack_squared));
}

// Leakage and openings together. Opposite entrances never pass less than the same area on one side. An
// entrance opens from the top: the height of the opening goes with the square root of the share that is open.
// @param floor_area_m2    m2
// @param open_area_m2     open area of all entrances, m2, at least 0
// @param entrance_area_m2 area of all entrances when fully open, m2, above 0
// @param two_entrances    1 where entrances are opposite each other (rafts for more than 8, LSA Code
//                         4.1.1.5.3), else 0
// @param wind_10m_m_s     wind speed at 10 m, m/s, at least 0
// @param wind_raft_m_s    wind speed at raft height, m/s, at least 0
// @param inside_degC      cabin air, degC
// @param outside_degC     outdoor air, degC
// @param leakage_position in the unmeasured range, 0 tight to 1 leaky; clamped
// @return m3/s
template <class T>
inline T ventilation_m3_s(T floor_area_m2, T open_area_m2, T entrance_area_m2, T two_entrances,
                          T wind_10m_m_s, T wind_raft_m_s, T inside_degC, T outside_degC,
                          T leakage_position) {
  const T difference = inside_degC - outside_degC;
  const T share = clamp(T(open_area_m2 / entrance_area_m2), 0.0, 1.0);
  const T height = T(constants::entrance_height_m) * sqrt(share);
  const T one = one_sided_m3_s(open_area_m2, height, wind_10m_m_s, difference);
  const T two = two_sided_m3_s(open_area_m2, height, wind_raft_m_s, difference, outside_degC);
  return leakage_m3_s(floor_area_m2, wind_10m_m_s, leakage_position) + one +
         two_entrances * positive_part(T(two - one));
}

// Heat carried by the exchanged air, per kelvin of difference.
// @param ventilation_m3_s  air exchange, m3/s
// @param air_density_kg_m3 kg/m3
// @return W/K
template <class T>
inline T air_exchange_W_K(T ventilation_m3_s, T air_density_kg_m3) {
  return ventilation_m3_s * air_density_kg_m3 * T(constants::air_heat_capacity_J_kgK);
}

}  // namespace bide::cabin
