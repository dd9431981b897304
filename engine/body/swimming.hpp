// Swimming: for how long cold arms, and the glycogen left, keep a person moving and afloat.
//
// States: the share of the arms' endurance in cold water that is used, an entry of the person's block.
// Inputs: temperature of the water at the arms, glycogen, the person's factor on the minutes. Validity:
// adults in water of 5 to 25 degC, in clothes or swimsuits; held below 0 degC; from 25 degC on the cold
// counts less and less, above 27 only the glycogen does. Nothing but the factor differs from person to
// person, neither age nor size: no trial had children. Without the cold shock of the first minutes. Sources:
// constants/swimming.hpp.
#pragma once

#include "bide/constants/fuel.hpp"
#include "bide/constants/swimming.hpp"
#include "bide/core/scalar.hpp"
#include "bide/core/units.hpp"

namespace bide::body {

// Time until arms in the water can no longer swim: 47 min at 12 degC, longer by a factor e for every 6 K
// (Ducharme & Lounsbury 2007; Tipton 1999).
// @param arms_degC     water at the arms, or their skin in a suit, degC; held outside [0, 27]
// @return s, of an average person
template <class T>
inline T swim_failure_s(T arms_degC) {
  using namespace constants;
  constexpr double coldest_degC = 0;
  return T(swim_failure_min * minute_s) *
         exp((clamp(arms_degC, coldest_degC, swim_no_cold_degC.value) - T(swim_failure_at_degC)) /
             T(swim_failure_scale_K));
}

// How fast that time runs out. Beyond the warmest water of the trials it slows, and stands still where the
// water no longer takes strength from muscle.
// @param arms_degC        as above
// @param endurance_factor on the minutes, of this person, above 0
// @return share of the arms' endurance used a second, 1/s, at least 0
template <class T>
inline T arms_used_per_s(T arms_degC, T endurance_factor) {
  using namespace constants;
  return (T(1) - smoothstep(arms_degC, swim_warmest_degC, swim_no_cold_degC)) /
         (swim_failure_s(arms_degC) * endurance_factor);
}

// What a person can swim with: what the cold has left of the arms, whole until half of the time to failure,
// as strokes shorten and quicken long before they fail (Tipton 1999), and what glycogen is left, falling from
// half of the store on, as the blood's sugar does.
// @param arms_used    share of the arms' endurance used, at least 0
// @param glycogen_kJ, normal_glycogen_kJ store now and normal, kJ
// @return [0, 1]; at 0 nobody swims
template <class T>
inline T swimming_power(T arms_used, T glycogen_kJ, T normal_glycogen_kJ) {
  using namespace constants;
  return (T(1) - smoothstep(arms_used, swim_weakens_from, 1.0)) *
         smoothstep(T(glycogen_kJ / normal_glycogen_kJ), glucose_glycogen_empty, glucose_glycogen_enough);
}

}  // namespace bide::body
