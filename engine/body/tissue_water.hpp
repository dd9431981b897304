// Water and salt of the cells that glycogen and protein leave behind when they are used.
//
// States: protein kg and glycogen kJ, both of fuel.hpp; no state of its own. Inputs: the amounts used.
// Glycogen is stored with water and potassium at the osmolality of the cell (King 2018: all but a tenth or
// two of that water behaves as other water), and so is protein. The water set free stays in the body, which
// can lose it; its salt goes to the extracellular side and leaves by the kidney. Both are linear in the
// amounts used, so they are reversed when a store fills up again. Validity: rest and fasting, losses of up to
// some 40 % of protein; extracellular water does not shrink with the cells but with its own salt. Sources:
// numbers in constants/water.hpp.
#pragma once

#include "bide/constants/fuel.hpp"
#include "bide/constants/water.hpp"
#include "bide/core/scalar.hpp"

namespace bide::body {

// Water set free: 3 g with each gram of protein and of glycogen used. Linear, so it also takes rates.
// @param protein_used_kg  protein used, kg, or its rate, kg/s; negative when the store grows
// @param glycogen_used_kJ glycogen used, kJ, or its rate, kJ/s; negative when the store grows
// @return kg, or kg/s
template <class T>
inline T tissue_water_freed(T protein_used_kg, T glycogen_used_kJ) {
  using namespace constants;
  return T(tissue_water_per_g_protein) * protein_used_kg +
         T(tissue_water_per_g_glycogen / (carbohydrate_kJ_g * g_kg)) * glycogen_used_kJ;
}

// Salt dissolved in that water.
// @param water_freed_kg water set free, kg, or its rate, kg/s
// @return mOsm, or mOsm/s
template <class T>
inline T tissue_salt_freed(T water_freed_kg) {
  return T(constants::normal_osmolality_mOsm_kg) * water_freed_kg;
}

}  // namespace bide::body
