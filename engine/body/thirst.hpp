// Thirst, and what of a ration is drunk.
//
// States: none. Inputs: osmolality of body water in mOsm/kg on the scale of water.hpp, water deficit in % of
// body mass. Validity: awake people who can swallow. Sources: each function's own; numbers in
// constants/water.hpp and constants/drinking.hpp.
#pragma once

#include "bide/constants/drinking.hpp"
#include "bide/constants/water.hpp"
#include "bide/core/scalar.hpp"

namespace bide::body {

// Thirst is the larger of two parts: one grows with osmolality, one with the water deficit. Dilute plasma
// weakens the second: between the normal osmolality and that at which vasopressin is gone (3 mOsm/kg lower)
// it takes away full thirst, and in proportion beyond. So people who have lost salt with water stop drinking
// before the water is back: after 2.3 % of mass by sweat six people drank 68 % of it in 3 h and kept 51 %
// (Nose 1988; by how much dilution weakens thirst is a judgement). Not without end: what is felt of dilution
// is less the more extracellular water has gone (felt_osmolality_mOsm_kg). In the old the first part begins
// later and the second is weaker (Kenney & Chiu 2001).
// @param osmolality_mOsm_kg of body water as it is felt, mOsm/kg
// @param deficit_pct        water deficit that is felt, % of body mass
// @param old                0 under 55 years to 1 from 65 on
// @return 0 none to 1 full
template <class T>
inline T thirst(T osmolality_mOsm_kg, T deficit_pct, T old) {
  using namespace constants;
  const T by_osmolality =
      (osmolality_mOsm_kg - T(thirst_from_mOsm_kg) - T(old_age_thirst_mOsm_kg.value) * old) /
      T(thirst_full_mOsm_kg - thirst_from_mOsm_kg);
  constexpr double span_pct = thirst_full_pct - thirst_from_pct;
  const T diluted = positive_part(T((T(normal_osmolality_mOsm_kg) - osmolality_mOsm_kg) /
                                    T(normal_osmolality_mOsm_kg - vasopressin_threshold_mOsm_kg)));
  const T by_deficit = ((deficit_pct - T(thirst_from_pct)) / T(span_pct) - diluted) *
                       (T(1) - T(1 - old_age_thirst_by_deficit) * old);
  return clamp(T(larger(by_osmolality, by_deficit)), 0.0, 1.0);
}

// What is drunk of a ration: what thirst asks for, or, if that is more, what brings body water down to the
// osmolality at which people cannot drink on. The rest is left.
// @param offered_L  the ration, L, at least 0
// @param asked_L    what thirst asks for, L, at least 0
// @param osmoles    effective, of body water, mOsm
// @param water_kg   body water and what the gut holds, kg
// @return L, [0, offered_L]
template <class T>
inline T ration_drunk_L(T offered_L, T asked_L, T osmoles, T water_kg) {
  const T room = osmoles * T(1 / constants::overdrunk_mOsm_kg) - water_kg;
  return smaller(offered_L, larger(room, asked_L));
}

}  // namespace bide::body
