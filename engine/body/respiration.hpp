// Heat and water lost with the breath.
//
// States: none. Inputs: metabolic rate, cabin air temperature and vapour pressure. Validity: breathing in
// proportion to metabolic rate, air -20 to 40 degC; reproduces the measured loss table of Freund & Sawka
// (1996) within 5 % from -20 to 25 degC and 100 to 600 W. Source: Fanger 1970.
#pragma once

#include "bide/constants/body.hpp"
#include "bide/core/moist_air.hpp"
#include "bide/core/scalar.hpp"

namespace bide::body {

// Dry heat from the body to the air.
// @param metabolic_W heat made, W, above 0
// @param air_degC    air breathed in, degC, [-20, 40]
// @return W; negative in air above 34 degC
template <class T>
inline T breath_dry_W(T metabolic_W, T air_degC) {
  return T(constants::breath_dry_per_K) * metabolic_W * (T(constants::breath_temperature_degC) - air_degC);
}

// Heat of the evaporated water, from the body.
// @param metabolic_W        heat made, W, above 0
// @param vapour_pressure_Pa of the air breathed in, Pa, at least 0
// @return W; 0 in air that holds more vapour than breath (none condenses)
template <class T>
inline T breath_latent_W(T metabolic_W, T vapour_pressure_Pa) {
  return T(constants::breath_latent_per_kPa) * metabolic_W *
         positive_part(T(constants::breath_vapour_kPa) - vapour_pressure_Pa * T(1 / constants::kPa_Pa));
}

// The water itself: the heat above over the latent heat at the temperature of expired air.
// @param latent_W heat of the evaporated water, W
// @return kg/s
template <class T>
inline T breath_water_kg_s(T latent_W) {
  return latent_W * T(1 / latent_heat_J_kg(constants::breath_temperature_degC.value));
}

}  // namespace bide::body
