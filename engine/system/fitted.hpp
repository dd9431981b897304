// The fitted numbers of the engine as the march reads them, so that they can differ from run to run and from
// lane to lane without compiling again.
//
// States: none. Inputs: none, the constants stand unless somebody sets others. Validity and source:
// constants/fitted.hpp.
#pragma once

#include "bide/constants/fitted.hpp"

namespace bide::system {

// Holds nothing but T.
template <class T>
struct Fitted {
  T soaked_insulation = T(constants::soaked_insulation.value);
  T wet_skin_withholds = T(constants::wet_skin_withholds.value);
};

}  // namespace bide::system
