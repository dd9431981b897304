// Swimming: for how long cold arms, and the glycogen left, keep a person moving and afloat.
//
// States: the share of the arms' endurance in cold water that is used, an entry of the person's block.
// Inputs: temperature of the water at the arms, glycogen. Validity: trials in water of 5 to 25 degC, in
// clothes or swimsuits; held below 0 and above 30. Means of people, without the cold shock of the first
// minutes. Sources: constants/swimming.hpp.
#pragma once

#include "bide/constants/fuel.hpp"
#include "bide/constants/swimming.hpp"
#include "bide/core/scalar.hpp"
#include "bide/core/units.hpp"

namespace bide::body {

// Time until arms in the water can no longer swim: 47 min at 12 degC, longer by a factor e for every 6 K
// (Ducharme & Lounsbury 2007; Tipton 1999).
// @param arms_degC     water at the arms, or their skin in a suit, degC; held outside [0, 30]
// @return s
template <class T>
inline T swim_failure_s(T arms_degC) {
  using namespace constants;
  constexpr double coldest_degC = 0, warmest_degC = 30;
  return T(swim_failure_min * minute_s) *
         exp((clamp(arms_degC, coldest_degC, warmest_degC) - T(swim_failure_at_degC)) /
             T(swim_failure_scale_K));
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
