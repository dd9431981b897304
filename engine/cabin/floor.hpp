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

// Resistance of the floor itself, m2 K/W, where somebody sits and where nobody does.
struct FloorResistance {
  double seated_m2K_W = 0;
  double free_m2K_W = 0;
};

// @param inflated matters for an inflatable floor only; a flat one is two cloths, pressed together by the
// sea.
FloorResistance floor_resistance(scenario::FloorKind kind, bool inflated);

// What lies between the clothing and the floor: on `cover` of the contact area, nothing on the rest.
struct SeatPad {
  double resistance_m2K_W = 0;
  double cover = 0;
};
SeatPad seat_pad(scenario::Seat seat);

// Film of the sea under the floor: turbulent flow along a plate at the drift speed, Nu = 0.037 Re^0.8
// Pr^(1/3) (Incropera et al. 2007) for water at 10 degC, never less than 100 W/(m2 K). No measurement under a
// raft is known; any 100 to 1,000 changes an inflated floor by less than a tenth.
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

// Free floor to the sea, W/(m2 K).
template <class T>
inline T floor_to_sea_W_m2K(T free_m2K_W, T under_floor_W_m2K) {
  return T(1) / (free_m2K_W + T(1) / under_floor_W_m2K);
}

// Skin to the sea under a seated person, W/(m2 K) of contact: pressed clothing, pad where there is one, floor
// and film in series; with and without the pad side by side.
template <class T>
inline T seat_to_sea_W_m2K(T pressed_clothing_m2K_W, T seated_m2K_W, T under_floor_W_m2K, T pad_m2K_W,
                           T pad_cover) {
  const T bare = pressed_clothing_m2K_W + seated_m2K_W + T(1) / under_floor_W_m2K;
  return pad_cover / (bare + pad_m2K_W) + (T(1) - pad_cover) / bare;
}

// Skin to water on the floor, W/(m2 K) of contact; the pad keeps its share out of the water.
template <class T>
inline T skin_to_puddle_W_m2K(T clothing_m2K_W, T pad_cover) {
  return (T(1) - pad_cover) / (clothing_m2K_W + T(1) / T(constants::floor_water_film_W_m2K));
}

// Back to the sea through the tube wall and the air in it, W/(m2 K) of contact.
template <class T>
inline T back_to_tube_W_m2K(T pressed_clothing_m2K_W) {
  return T(1) / (pressed_clothing_m2K_W + T(constants::tube_resistance_m2K_W));
}

// Clothing under the seat or against the tube, m2 K/W.
template <class T>
inline T pressed_insulation_m2K_W(T insulation_m2K_W) {
  return T(constants::seat_pressed_insulation) * insulation_m2K_W;
}

// Shares of each segment's skin that touch floor, tube and neighbours, in the order of
// scenario::ensemble_segments: head, trunk, arms, hands, legs, feet. Our own estimates.
using SegmentShares = std::array<double, 6>;
inline constexpr SegmentShares seat_share{
    0, constants::seat_share_trunk.value, 0,
    0, constants::seat_share_legs.value,  constants::seat_share_feet.value};
inline constexpr SegmentShares back_share{
    0, constants::back_share_trunk.value, constants::back_share_arms.value, 0, 0, 0};
inline constexpr SegmentShares huddle_share{
    0, constants::huddle_share_trunk.value, constants::huddle_share_arms.value,
    0, constants::huddle_share_legs.value,  0};

// Factor on huddle_share: 0 for a single person, half for two, whole from three on (both flanks touch).
// `huddled` 1 or 0; those who do not huddle still touch in a crowded raft.
template <class T>
inline T neighbour_factor(T persons, T floor_area_m2, T huddled) {
  const T flanks = clamp(T(T(0.5) * (persons - T(1))), 0.0, 1.0);
  const T crowding = persons * T(constants::floor_per_person_m2) / floor_area_m2;
  return flanks * larger(huddled, ramp(crowding, constants::loose_crowding, 1));
}

}  // namespace bide::cabin
