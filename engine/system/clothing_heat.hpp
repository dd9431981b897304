// Heat capacity of the clothing on a segment: cloth and the water in it.
#pragma once

#include "bide/body/build.hpp"
#include "bide/constants/air.hpp"
#include "bide/constants/cabin.hpp"

namespace bide::system {

// J/K. A segment without clothing still has a node: it is coupled to nothing and keeps a nominal capacity.
template <class T>
inline T clothing_capacity_J_K(const body::Build<T>& b, int segment, T water_kg) {
  constexpr double nominal_J_K = 1;
  return T(nominal_J_K) + b.clothing_mass_kg[segment] * T(constants::cloth_heat_J_kgK.value) +
         positive_part(water_kg) * T(constants::water_heat_capacity_J_kgK.value);
}

}  // namespace bide::system
