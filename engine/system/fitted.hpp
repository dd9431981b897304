// The fitted numbers of the engine as the march reads them, so that they can differ from run to run and from
// lane to lane.
//
// States: none. Inputs: none, the constants apply unless other values are set. Validity and source:
// constants/fitted.hpp.
#pragma once

#include "bide/constants/fitted.hpp"

namespace bide::system {

// Every member is a T: gathered lane by lane (core/scalar.hpp). Factors without unit, [0, 1].
template <class T>
struct Fitted {
  T soaked_insulation = T(constants::soaked_insulation.value);
  T wet_skin_withholds = T(constants::wet_skin_withholds.value);
};

}  // namespace bide::system
