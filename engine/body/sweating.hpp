// How much of the skin sweat wets, and so how much of it evaporates.
//
// States: none. Inputs: sweat, and what a wholly wet skin would lose. Validity: people at rest or at light
// work in air that takes up vapour. Source: ISO 7933, by its public transcriptions; numbers in
// constants/control.hpp.
#pragma once

#include "bide/core/scalar.hpp"

namespace bide::body {

// Share of the skin that evaporates like water. Sweat comes in drops and unevenly, and what gathers runs off:
// of the sweat made at wettedness w, 1 - w^2 / 2 evaporates. So w = (sweat / most) (1 - w^2 / 2), solved for
// w. It reaches the greatest wettedness only with more sweat than the air could take up.
// @param sweat    made, kg/s, at least 0
// @param most     that a wholly wet skin would evaporate, kg/s, at least 0
// @param greatest wettedness that this person reaches, (0, 1]
// @return [0, greatest]
template <class T>
inline T sweat_wettedness(T sweat, T most, T greatest) {
  constexpr double tiny_kg_s = 1e-15;
  return smaller(T(T(2) * sweat / (most + sqrt(T(most * most + T(2) * sweat * sweat)) + T(tiny_kg_s))),
                 greatest);
}

}  // namespace bide::body
