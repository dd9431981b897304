// Water and salt of the cells that glycogen and protein leave behind when they are used.
//
// States: protein kg and glycogen kJ, both of fuel.hpp; no state of its own. Inputs: how much of each is
// gone. Glycogen lies in water with its potassium, at the osmolality of the cell (King 2018: all but a tenth
// or two of it behaves as other water), and so does protein. What is freed is water the body still holds and
// can lose; its salt goes to the extracellular side and leaves by the kidney. Both are linear in what was
// used, so they follow the stores exactly and both turn round when a store fills up again. Validity: rest and
// fasting, losses of up to some 40 % of protein; extracellular water as such is not taken to shrink with the
// cells. Sources: numbers in constants/water.hpp.
#pragma once

#include "bide/constants/fuel.hpp"
#include "bide/constants/water.hpp"
#include "bide/core/scalar.hpp"

namespace bide::body {

// Water set free, kg: 3 g with each gram of protein and of glycogen used. Linear: takes losses in kg and kJ,
// or their rates in kg/s and kJ/s. Negative when stores grow.
template <class T>
inline T tissue_water_freed(T protein_used_kg, T glycogen_used_kJ) {
  using namespace constants;
  return T(tissue_water_per_g_protein) * protein_used_kg +
         T(tissue_water_per_g_glycogen / (carbohydrate_kJ_g * g_kg)) * glycogen_used_kJ;
}

// Salt that lay in that water, mOsm, or its rate in mOsm/s.
template <class T>
inline T tissue_salt_freed(T water_freed_kg) {
  return T(constants::normal_osmolality_mOsm_kg) * water_freed_kg;
}

}  // namespace bide::body
