// Water on the floor: sources, depth, bailing.
//
// States: none here (mass and temperature are the caller's). Inputs: wind in m/s, areas in m2, water in L.
// Validity: spray and rain into a canopied raft have not been measured; the laws carry only the shape of
// their drivers, their size is our own estimate with a wide range. Source: Monahan & O'Muircheartaigh 1980
// for whitecaps (from memory), geometry for driven rain and depths.
#pragma once

#include <array>

#include "bide/constants/cabin.hpp"
#include "bide/core/scalar.hpp"
#include "bide/core/units.hpp"

namespace bide::cabin {

// Share of the sea covered by whitecaps, 3.84e-6 U10^3.41, limited to 0.3.
// @param wind_10m_m_s wind speed U10 at 10 m, m/s, at least 0
// @return [0, 0.3]
template <class T>
inline T whitecap_fraction(T wind_10m_m_s) {
  using namespace constants;
  return smaller(T(T(whitecap_scale) * power(wind_10m_m_s, whitecap_power)), T(whitecap_most));
}

// Spray and wave tops through the openings and seams.
// @param wind_10m_m_s wind speed at 10 m, m/s, at least 0
// @param opening_m2   open area of the entrances, m2, at least 0
// @param soft_tube    1 while a tube leaks, else 0
// @return kg/s
template <class T>
inline T spray_kg_s(T wind_10m_m_s, T opening_m2, T soft_tube) {
  using namespace constants;
  const T lower_freeboard = T(1) + T(tube_leak_spray_factor - 1) * soft_tube;
  return T(spray_kg_s_m2) * whitecap_fraction(wind_10m_m_s) * (opening_m2 + T(seep_area_m2)) *
         lower_freeboard;
}

// Rain that reaches the inside. Under a canopy it is driven through upright openings, in the ratio of wind
// speed to fall speed (the driving-rain ratio of horizontal to vertical flux); without one it falls on the
// whole floor.
// @param rain_kg_m2_s  rain rate on the horizontal, kg/(m2 s), at least 0
// @param wind_raft_m_s wind speed at raft height, m/s, at least 0
// @param opening_m2    open area of the entrances, m2, at least 0
// @param floor_area_m2 m2
// @param enclosed      1 under a canopy, 0 without one
// @return kg/s
template <class T>
inline T rain_inside_kg_s(T rain_kg_m2_s, T wind_raft_m_s, T opening_m2, T floor_area_m2, T enclosed) {
  using namespace constants;
  const T driven =
      T(rain_facing_share) * (opening_m2 + T(seep_area_m2)) * wind_raft_m_s * T(1 / rain_fall_speed_m_s);
  return rain_kg_m2_s * (enclosed * driven + (T(1) - enclosed) * floor_area_m2);
}

// Water left inside after a capsize and righting.
// @param floor_area_m2 m2
// @return L
template <class T>
inline T capsize_water_L(T floor_area_m2) {
  return T(constants::capsize_water_L_m2) * floor_area_m2;
}

// Share of the seat that is in water. Water gathers under bodies, so the litres per person matter, not the
// mean depth.
// @param litres_per_person water on the floor over the number aboard, L, at least 0
// @param firm              1 for an inflated or foam floor, 0 for one that sags
// @return [0, 1]
template <class T>
inline T pooled_share(T litres_per_person, T firm) {
  using namespace constants;
  const T e_fold = T(pool_slack_L) + T(pool_firm_L - pool_slack_L) * firm;
  return T(1) - exp(-litres_per_person / e_fold);
}

// Depth of the water around seated people, who displace it from part of the floor.
// @param water_L       water on the floor, L, at least 0
// @param floor_area_m2 m2
// @param persons       number aboard
// @return m
template <class T>
inline T standing_depth_m(T water_L, T floor_area_m2, T persons) {
  using namespace constants;
  const T reached =
      larger(T(floor_area_m2 - persons * T(seated_displaced_m2)), T(T(least_free_floor) * floor_area_m2));
  return water_L * T(1 / m3_L) / reached;
}

// Share of each segment of a seated person that is under water. Segments are upright boxes between two
// heights.
// @param depth_m of the water, m, at least 0
// @return [0, 1] for head, trunk, arms, hands, legs, feet
template <class T>
inline std::array<T, 6> submerged_share(T depth_m) {
  using namespace constants;
  const auto between = [&](double bottom_m, double height_m) {
    return clamp(T((depth_m - T(bottom_m)) * T(1 / height_m)), 0.0, 1.0);
  };
  return {between(seated_head_bottom_m, seated_head_height_m),
          between(0, seated_trunk_height_m),
          between(seated_arm_bottom_m, seated_arm_height_m),
          between(seated_hand_bottom_m, seated_hand_height_m),
          between(0, seated_leg_height_m),
          between(0, seated_foot_height_m)};
}

// Result of a turn at bailing and mopping.
template <class T>
struct Bailed {
  T left_L;   // on the floor afterwards
  T minutes;  // time taken
};

// Bails and mops: bailer first, down to what it cannot scoop, then the sponge, down to a film.
// @param water_L            water on the floor, L, at least 0
// @param floor_area_m2      m2
// @param bailer_L, sponge_L in a stroke, L; 0 without one
// @param minutes            time allowed for both together, min, at least 0
template <class T>
inline Bailed<T> bail(T water_L, T floor_area_m2, T bailer_L, T sponge_L, T minutes) {
  using namespace constants;
  constexpr double tiny = 1e-12;
  const T bailer_rate = T(bail_strokes_per_min) * bailer_L,
          sponge_rate = T(sponge_strokes_per_min) * sponge_L;
  const T scooped =
      smaller(positive_part(T(water_L - T(bailer_leaves_L_m2) * floor_area_m2)), T(bailer_rate * minutes));
  const T scooping = scooped / larger(bailer_rate, T(tiny));
  const T mopped = smaller(positive_part(T(water_L - scooped - T(sponge_leaves_L_m2) * floor_area_m2)),
                           T(sponge_rate * (minutes - scooping)));
  const T mopping = mopped / larger(sponge_rate, T(tiny));
  return {water_L - scooped - mopped, scooping + mopping};
}

}  // namespace bide::cabin
