// The floor under people and beside them, and how people sit on it.
//
// States: none. Inputs: kind of floor, seat, wind at 10 m in m/s, resistances in m2 K/W. Validity: seated
// people; floor resistances are those measured under seated people on 5 degC water (DRDC 2001). Source: DRDC
// 2001 and Mak et al. 2009 for loaded floors, ISO 6946 for the unpressed air floor, plate flow for the sea
// below, our own estimates for contact areas.
#pragma once

#include <array>

#include "bide/cabin/range.hpp"
#include "bide/constants/air.hpp"
#include "bide/constants/boarding.hpp"
#include "bide/constants/cabin.hpp"
#include "bide/scenario/scenario.hpp"

namespace bide::cabin {

// Resistance of the floor itself, under a seated person and elsewhere.
struct FloorResistance {
  double seated_m2K_W = 0;
  double free_m2K_W = 0;
};

// Resistance of a kind of floor.
// @param kind     of floor
// @param inflated of an inflatable floor: a flat one is two cloths, pressed together by the sea
FloorResistance floor_resistance(scenario::FloorKind kind, bool inflated);

// A pad between the clothing and the floor.
struct SeatPad {
  double resistance_m2K_W = 0;
  double cover = 0;  // share of the contact area that it covers, [0, 1]
};
// The pad of a kind of seat; none: both numbers are 0.
SeatPad seat_pad(scenario::Seat seat);

// Film of the sea under the floor: turbulent flow along a plate at the drift speed, Nu = 0.037 Re^0.8
// Pr^(1/3) (Incropera et al. 2007) for water at 10 degC, at least 100 W/(m2 K). No measurement under a raft
// is known; values from 100 to 1,000 change the loss through an inflated floor by less than a tenth.
// @param wind_10m_m_s wind speed at 10 m, m/s, at least 0
// @return W/(m2 K)
template <class T>
inline T under_floor_film_W_m2K(T wind_10m_m_s) {
  using namespace constants;
  static const double per_speed = plate_flow_scale * water_conductivity_W_mK *
                                  std::cbrt(water_viscosity_m2_s * water_density_kg_m3 *
                                            water_heat_capacity_J_kgK / water_conductivity_W_mK) *
                                  std::pow(water_viscosity_m2_s.value, -plate_flow_power.value) *
                                  std::pow(under_floor_length_m.value, plate_flow_power.value - 1);
  return larger(T(under_floor_least_W_m2K),
                T(T(per_speed) * power(T(T(leeway_share) * wind_10m_m_s), plate_flow_power)));
}

// Coefficient from the free floor to the sea.
// @param free_m2K_W        resistance of the floor where nobody sits, m2 K/W
// @param under_floor_W_m2K film of the sea, W/(m2 K)
// @return W/(m2 K)
template <class T>
inline T floor_to_sea_W_m2K(T free_m2K_W, T under_floor_W_m2K) {
  return under_floor_W_m2K / (free_m2K_W * under_floor_W_m2K + T(1));
}

// Coefficient from skin to sea under a seated person: pressed clothing, pad, floor and film in series; the
// parts with and without the pad in parallel.
// @param pressed_clothing_m2K_W pressed clothing, m2 K/W
// @param seated_m2K_W           floor under a seated person, m2 K/W
// @param under_floor_W_m2K      film of the sea, W/(m2 K)
// @param pad_m2K_W              pad, m2 K/W; 0 without one
// @param pad_cover              share of the contact area that the pad covers, [0, 1]
// @return W/(m2 K) of contact area
template <class T>
inline T seat_to_sea_W_m2K(T pressed_clothing_m2K_W, T seated_m2K_W, T under_floor_W_m2K, T pad_m2K_W,
                           T pad_cover) {
  // c / (b + p) + (1 - c) / b with b = a + 1/h, for one division.
  const T bare = (pressed_clothing_m2K_W + seated_m2K_W) * under_floor_W_m2K + T(1);
  const T pad = pad_m2K_W * under_floor_W_m2K;
  return under_floor_W_m2K * (bare + (T(1) - pad_cover) * pad) / (bare * (bare + pad));
}

// Coefficient from skin to the water on the floor; the part on the pad is not in the water.
// @param clothing_m2K_W clothing, m2 K/W
// @param pad_cover      share of the contact area that the pad covers, [0, 1]
// @return W/(m2 K) of contact area
template <class T>
inline T skin_to_puddle_W_m2K(T clothing_m2K_W, T pad_cover) {
  return (T(1) - pad_cover) / (clothing_m2K_W + T(1 / constants::floor_water_film_W_m2K));
}

// Coefficient from the back to the sea through the tube wall and the air in it.
// @param pressed_clothing_m2K_W pressed clothing, m2 K/W
// @return W/(m2 K) of contact area
template <class T>
inline T back_to_tube_W_m2K(T pressed_clothing_m2K_W) {
  return T(1) / (pressed_clothing_m2K_W + T(constants::tube_resistance_m2K_W));
}

// Insulation of clothing that is pressed, under the seat or against the tube.
// @param insulation_m2K_W not pressed, m2 K/W
// @return m2 K/W
template <class T>
inline T pressed_insulation_m2K_W(T insulation_m2K_W) {
  return T(constants::seat_pressed_insulation) * insulation_m2K_W;
}

// Shares of each segment's skin that touch floor, tube and neighbours, in the order
// head, trunk, arms, hands, legs, feet. Our own estimates.
using SegmentShares = std::array<double, 6>;
inline constexpr SegmentShares seat_share{
    0, constants::seat_share_trunk.value, 0,
    0, constants::seat_share_legs.value,  constants::seat_share_feet.value};
inline constexpr SegmentShares back_share{
    0, constants::back_share_trunk.value, constants::back_share_arms.value, 0, 0, 0};
inline constexpr SegmentShares huddle_share{
    0, constants::huddle_share_trunk.value, constants::huddle_share_arms.value,
    0, constants::huddle_share_legs.value,  0};

// Factor on huddle_share: 0 for a single person, 0.5 for two, 1 from three on (both flanks touch). People who
// do not huddle still touch in a crowded raft.
// @param persons       number aboard, at least 1
// @param floor_area_m2 m2
// @param huddled       1 if they huddle, else 0
// @return [0, 1]
template <class T>
inline T neighbour_factor(T persons, T floor_area_m2, T huddled) {
  const T flanks = clamp(T(T(0.5) * (persons - T(1))), 0.0, 1.0);
  const T crowding = persons * T(constants::floor_per_person_m2) / floor_area_m2;
  return flanks * larger(huddled, ramp(crowding, constants::loose_crowding, 1));
}

}  // namespace bide::cabin
