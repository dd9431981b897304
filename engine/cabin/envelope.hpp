// The canopy: its geometry, its heat loss within its unmeasured range, and the sun on it.
//
// States: none. Inputs: the raft's sizes; wind at raft height, m/s; position in the range, 0 to 1. Validity:
// round rafts; heat loss interpolated between the winds of the table, constant outside 0.5 to 10 m/s. Source:
// geometry; reference values for similar shelters (Mihara & Hayashi 1979 and design values), no raft was
// measured.
#pragma once

#include "bide/cabin/films.hpp"
#include "bide/cabin/range.hpp"
#include "bide/constants/cabin.hpp"
#include "bide/scenario/scenario.hpp"

namespace bide::cabin {

// A circular floor, two stacked tubes around it, and over them half an ellipsoid of revolution.
struct Geometry {
  double plan_area_m2 = 0;  // floor, inside the tubes
  double perimeter_m = 0;
  double canopy_area_m2 = 0;     // one skin; 0 without a canopy
  double volume_m3 = 0;          // under the canopy; 0 without one
  double tube_side_area_m2 = 0;  // inner half of both tubes
  double sky_view = 1;           // of the canopy's outside: the share of its surroundings that is sky
};

// Areas and volume from the raft's sizes.
// @param floor_area_m2   inside the tubes, m2, above 0
// @param canopy_height_m floor to canopy in the middle, m; 0 without a canopy; below the top of the tubes the
//                        canopy is a flat cover at that height
// @param tube_diameter_m of one tube, m, above 0
Geometry raft_geometry(double floor_area_m2, double canopy_height_m, double tube_diameter_m);

// Volume that bodies take of the air in the cabin (density 1,000 kg/m3 within 5 %).
// @param mass_kg of all people together, kg, at least 0
// @return m3
double body_volume_m3(double mass_kg);

namespace detail {
inline constexpr double second_wind_m_s = 2, third_wind_m_s = 5, last_wind_m_s = 10;  // columns of the table

// A row of the table with four winds, each at a position in its range: linear between, constant outside.
template <class T>
inline T along_wind(const Sourced& calm, const Sourced& second, const Sourced& third, const Sourced& last,
                    T position, T wind_m_s) {
  const T at_calm = along_range(calm, position), at_second = along_range(second, position);
  const T at_third = along_range(third, position), at_last = along_range(last, position);
  return at_calm + (at_second - at_calm) * ramp(wind_m_s, constants::canopy_calm_m_s, second_wind_m_s) +
         (at_third - at_second) * ramp(wind_m_s, second_wind_m_s, third_wind_m_s) +
         (at_last - at_third) * ramp(wind_m_s, third_wind_m_s, last_wind_m_s);
}
}  // namespace detail

// Factor on both air films of the canopy with which the layers of the model give the heat loss of the table
// (constants/cabin.hpp); the gap's conductance is multiplied by canopy_gap_factor. Derivation: with inner
// film 5 f, outer film (4 + 4 v) f, radiation 4.7 W/(m2 K) on either side and cloth 0.002 m2 K/W, the series
//   1/U = 1/(4.7 + 5 f) + 0.002 + 1/(4.7 + (4 + 4 v) f)
// was solved for f at each wind and end of the single-skin row. f is near 1 in the middle of the range: the
// published films already explain the similar shelters. The double-skin row then needs the gap's 0.16 m2 K/W
// divided by 1.0 to 1.4 (skins touch, sag, are stitched through). Reproduces the single-skin row within 1 %
// and the double-skin row within 7 % at the winds of the table.
// @param position in the unmeasured range, 0 low to 1 high; clamped
// @param wind_m_s at raft height, m/s; constant outside [0.5, 10]
template <class T>
inline T canopy_film_factor(T position, T wind_m_s) {
  using namespace constants;
  return detail::along_wind(canopy_film_factor_calm, canopy_film_factor_2_m_s, canopy_film_factor_5_m_s,
                            canopy_film_factor_10_m_s, position, wind_m_s);
}
template <class T>
inline T canopy_gap_factor(T position) {
  return along_range(constants::canopy_gap_factor, position);
}

// Conductance from the inner to the outer skin: one cloth and the gap.
// @param gap_m2K_W from air_gap_m2K_W(), m2 K/W; 0 for a single skin, whose two faces are the two nodes
// @param position  in the unmeasured range, 0 low to 1 high; clamped
// @return W/(m2 K)
template <class T>
inline T canopy_gap_W_m2K(T gap_m2K_W, T position) {
  return T(1) / (T(constants::cloth_resistance_m2K_W) + gap_m2K_W / canopy_gap_factor(position));
}

// Heat loss coefficient of the layers in series with the reference films, as matched to the table.
// @param wind_m_s at raft height, m/s, at least 0
// @param skins    one or two skins
// @param position in the unmeasured range, 0 low to 1 high; clamped
// @return W/(m2 K)
template <class T>
inline T layered_u_W_m2K(T wind_m_s, scenario::CanopyKind skins, T position) {
  using namespace constants;
  const T factor = canopy_film_factor(position, wind_m_s);
  const T radiation(layer_radiation_W_m2K);
  const T films = T(1) / (radiation + T(layer_inner_film_W_m2K) * factor) +
                  T(1) / (radiation + outer_film_W_m2K(wind_m_s) * factor) + T(cloth_resistance_m2K_W);
  if (skins != scenario::CanopyKind::two_skins) return T(1) / films;
  const double gap = air_gap_m2K_W(canopy_gap_mm, HeatFlow::up);
  return T(1) / (films + T(1) / canopy_gap_W_m2K(T(gap), position));
}

// Shares of the sun on the plan area of the canopy; the rest is reflected.
struct CanopySun {
  double outer_absorbed = 0;  // in the outer (or only) skin
  double inner_absorbed = 0;  // in the inner of two skins
  double transmitted = 0;     // to the people and the floor, where all of it is taken as absorbed
  bool operator==(const CanopySun&) const = default;
};

// Sun through the canopy. Two equal skins exchange reflections: a geometric series of ratio (reflectance)^2.
// Diffuse light; the low sun on the sides of a dome is not added to the plan area. Without a canopy all is
// transmitted.
// @param skins             none, one or two
// @param cloth_transmitted share that one cloth transmits, [0, 1]
// @param cloth_absorbed    share that one cloth absorbs, [0, 1]; both together at most 1, else throws
//                          std::invalid_argument
CanopySun canopy_sun(scenario::CanopyKind skins, double cloth_transmitted, double cloth_absorbed);

// The same with the cloth of constants/cabin.hpp.
CanopySun canopy_sun(scenario::CanopyKind skins);

}  // namespace bide::cabin
