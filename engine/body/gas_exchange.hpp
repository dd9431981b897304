// Oxygen, carbon dioxide and respiratory quotient of a mix of fuels.
//
// States: none. Inputs: heat made, W; the shares of it by fuel. Validity: steady breathing, aerobic; ketone
// bodies kept or passed in urine would lower the quotient further. Source: ISO 8996 (energy per oxygen).
#pragma once

#include "bide/constants/fuel.hpp"
#include "bide/core/moist_air.hpp"
#include "bide/core/scalar.hpp"

namespace bide::body {

// Shares of the heat made, sum 1.
template <class T>
struct FuelMix {
  T carbohydrate, fat, protein;
};

// Heat per litre of oxygen (0 degC, 101.325 kPa): (0.23 RQ + 0.77) x 21168 (ISO 8996).
// @param rq respiratory quotient, [0.7, 1.0]
// @return J/L
template <class T>
inline T energy_per_oxygen_J_L(T rq) {
  return T(constants::oxygen_energy_J_L) *
         (T(constants::oxygen_energy_slope) * rq + T(constants::oxygen_energy_offset));
}

// Respiratory quotient of a mix: carbon dioxide over oxygen, each summed over the fuels.
// @param mix shares of the heat made, sum 1
// @return [0.7, 1.0]
template <class T>
inline T respiratory_quotient(const FuelMix<T>& mix) {
  const auto oxygen = [](double rq) { return T(1 / energy_per_oxygen_J_L(rq)); };
  const T by_carbohydrate = mix.carbohydrate * oxygen(constants::carbohydrate_rq);
  const T by_fat = mix.fat * oxygen(constants::fat_rq);
  const T by_protein = mix.protein * oxygen(constants::protein_rq);
  return (T(constants::carbohydrate_rq) * by_carbohydrate + T(constants::fat_rq) * by_fat +
          T(constants::protein_rq) * by_protein) /
         (by_carbohydrate + by_fat + by_protein);
}

// Carbon dioxide breathed out, as a volume at 0 degC and 101.325 kPa.
// @param heat_W heat made, W, at least 0
// @param rq     respiratory quotient, [0.7, 1.0]
// @return m3/s, positive out of the body
template <class T>
inline T co2_standard_m3_s(T heat_W, T rq) {
  return rq * heat_W / (energy_per_oxygen_J_L(rq) * T(constants::litres_m3));
}

// The same amount as a volume at the temperature and pressure of the cabin air (ideal gas).
// @param heat_W      heat made, W, at least 0
// @param rq          respiratory quotient, [0.7, 1.0]
// @param air_degC    cabin air, degC
// @param pressure_Pa Pa
// @return m3/s, positive out of the body
template <class T>
inline T co2_m3_s(T heat_W, T rq, T air_degC, T pressure_Pa) {
  return co2_standard_m3_s(heat_W, rq) * (T(1) + air_degC * T(1 / constants::zero_celsius_K)) *
         T(constants::standard_pressure_Pa) / pressure_Pa;
}

}  // namespace bide::body
