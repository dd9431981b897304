// Labour: how hard somebody can work for how long.
//
// States: none. Inputs: the time that a work takes, s. Validity: whole-body work of four minutes to eight
// hours; a longer one is held at the share for eight hours. Source: Bonjer 1968, from memory; numbers in
// constants/routine.hpp.
#pragma once

#include <cmath>

#include "bide/constants/routine.hpp"
#include "bide/core/scalar.hpp"
#include "bide/core/units.hpp"

namespace bide::body {

// Share of the greatest oxygen uptake that can be kept up for so long: (log 5700 - log t) / 3.1, t in
// minutes.
// @param time_s of the work, s, above 0
// @return (0, 1]; 1 below some 4.5 min, 0.35 from eight hours on
template <class T>
inline T sustainable_share(T time_s) {
  using namespace constants;
  constexpr double ln10 = 2.302585092994046;
  const double longest = std::log(sustained_none_min * minute_s);
  const T held_s = smaller(time_s, T(sustained_longest_h * hour_s));
  return smaller(T((T(longest) - log(held_s)) * T(1 / (sustained_decades * ln10))), T(1));
}

}  // namespace bide::body
