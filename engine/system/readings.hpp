// Quantities computed from a person's state for limits and reports.
//
// States: none. Inputs: b, the person's parameters, and x, the person's block of the state vector. Source:
// definitions; deficits are relative to the body without them, and count only water that the tissue left
// needs.
#pragma once

#include "bide/body/build.hpp"
#include "bide/body/layout.hpp"
#include "bide/body/swimming.hpp"
#include "bide/body/tissue_water.hpp"
#include "bide/body/water.hpp"
#include "bide/core/scalar.hpp"

namespace bide::system {

// Core temperature: that of the trunk core.
template <class T>
inline T core_degC(const T* x) {
  return x[body::at::node(body::trunk, body::core)];
}

// Mean skin temperature by area, fingers included.
template <class T>
inline T mean_skin_degC(const body::Build<T>& b, const T* x) {
  T sum = b.finger_area_m2 * x[body::at::finger];
  for (int s = 0; s < body::segment_count; ++s) sum += b.area_m2[s] * x[body::at::node(s, body::skin)];
  return sum / b.area_total_m2;
}

// Water set free so far by the use of protein and glycogen.
// @return kg; negative with more of them than at the start
template <class T>
inline T tissue_water_freed_kg(const body::Build<T>& b, const T* x) {
  return body::tissue_water_freed(T(b.protein_kg - x[body::at::protein_mass]),
                                  T(b.glycogen_kJ - x[body::at::glycogen]));
}

// Water deficit. A body with less tissue needs less water, and bears less of a deficit: the water of tissue
// that was used is not missing, and what is missing is missing from the body that is left.
// @return % of body mass without the deficit; negative after overdrinking
template <class T>
inline T water_deficit_pct(const body::Build<T>& b, const T* x) {
  using namespace constants;
  const T freed = tissue_water_freed_kg(b, x);
  const T glycogen_used = (b.glycogen_kJ - x[body::at::glycogen]) * T(1 / (carbohydrate_kJ_g * g_kg));
  const T mass = b.mass_kg - freed - glycogen_used - (b.fat_kg - x[body::at::fat_mass]) -
                 (b.protein_kg - x[body::at::protein_mass]);
  return body::water_deficit_pct(x[body::at::body_water], T(b.body_water_kg - freed), mass);
}

// The part of it that thirst and sweating answer to: extracellular water that left with its salt is not felt,
// up to a tenth. So fasting people, whose salt goes in the first week, do not drink to put it back.
// @return % of body mass without the deficit
template <class T>
inline T felt_deficit_pct(const body::Build<T>& b, const T* x) {
  using namespace constants;
  const T salt_gone = positive_part(T(b.extracellular_osmoles_mOsm - x[body::at::extracellular_osmoles]));
  const T unfelt = smaller(salt_gone, T(T(volume_thirst_from.value) * b.extracellular_osmoles_mOsm)) *
                   T(1 / normal_osmolality_mOsm_kg);
  return water_deficit_pct(b, x) - T(pct) * unfelt / b.mass_kg;
}

// Effective osmoles in the cells.
// @return mOsm
template <class T>
inline T intracellular_mOsm(const body::Build<T>& b, const T* x) {
  return b.intracellular_osmoles_mOsm - body::tissue_salt_freed(tissue_water_freed_kg(b, x));
}

// Effective osmolality of body water; cells and surroundings are in osmotic balance.
// @return mOsm/kg
template <class T>
inline T osmolality_mOsm_kg(const body::Build<T>& b, const T* x) {
  return body::osmolality_mOsm_kg(x[body::at::extracellular_osmoles], intracellular_mOsm(b, x),
                                  x[body::at::body_water]);
}

// The same as thirst and vasopressin answer to it.
// @return mOsm/kg
template <class T>
inline T felt_osmolality_mOsm_kg(const body::Build<T>& b, const T* x) {
  const T osmolality = osmolality_mOsm_kg(b, x);
  return body::felt_osmolality_mOsm_kg(
      osmolality, T(x[body::at::extracellular_osmoles] / osmolality),
      T(b.extracellular_osmoles_mOsm * T(1 / constants::normal_osmolality_mOsm_kg)));
}

// What a person can swim with.
// @return [0, 1]; at 0 nobody swims
template <class T>
inline T swimming_power(const body::Build<T>& b, const T* x) {
  return body::swimming_power(x[body::at::arms_used], x[body::at::glycogen], b.glycogen_kJ);
}

// Water in all clothing.
// @return kg
template <class T>
inline T clothing_water_kg(const T* x) {
  T sum(0);
  for (int s = 0; s < body::segment_count; ++s) sum += x[body::at::clothing_water + s];
  return sum;
}

}  // namespace bide::system
