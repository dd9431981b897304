// Water vapour and air: saturation, vapour density, dew point, humidity ratio, latent heat, air density.
//
// States: none. Inputs: temperatures in degC, pressures in Pa. Validity: each function's own comment; nothing
// is clamped, so a value outside the range is an extrapolation. Source: Hyland & Wexler 1983 as printed in
// the ASHRAE Handbook of Fundamentals 2017, chapter 1; Buck 1996 for the form of the inner loops; COARE 3.6
// for the latent heat. Vapour and dry air are ideal gases.
#pragma once

#include <cmath>

#include "bide/core/scalar.hpp"
#include "bide/core/sourced.hpp"

namespace bide {
namespace constants {

inline constexpr Sourced zero_celsius_K{273.15, "K", "", "the Celsius scale", Trust::definition};
inline constexpr Sourced standard_pressure_Pa{101325, "Pa", "", "standard atmosphere", Trust::definition};
inline constexpr Sourced vapour_gas_constant_J_kgK{461.5, "J/(kg K)", "ashrae2017",
                                                   "8.314 J/(mol K) over 18.015 g/mol", Trust::derived};
inline constexpr Sourced dry_air_gas_constant_J_kgK{287.1, "J/(kg K)", "coare36", "R_d = 287.1", Trust::seen};
inline constexpr Sourced humidity_ratio_factor{0.621945, "kg/kg", "ashrae2017",
                                               "ch. 1 eq. 20: ratio of the molar masses", Trust::from_memory};
inline constexpr Sourced latent_heat_at_zero_J_kg{2.501e6, "J/kg", "coare36", "L_v = (2.501 - 0.00237 t) 1e6",
                                                  Trust::seen};
inline constexpr Sourced latent_heat_fall_J_kgK{2370, "J/(kg K)", "coare36", "L_v = (2.501 - 0.00237 t) 1e6",
                                                Trust::seen};
// p = a exp((b - t / d) t / (c + t)), t in degC, over liquid (also supercooled) water.
inline constexpr Sourced buck_a_Pa{611.21, "Pa", "buck1996", "model CR-1A manual, e_w", Trust::from_memory};
inline constexpr Sourced buck_b{18.678, "-", "buck1996", "model CR-1A manual, e_w", Trust::from_memory};
inline constexpr Sourced buck_c_K{257.14, "K", "buck1996", "model CR-1A manual, e_w", Trust::from_memory};
inline constexpr Sourced buck_d_K{234.5, "K", "buck1996", "model CR-1A manual, e_w", Trust::from_memory};

// ln p = a[0] / T + a[1] + a[2] T + a[3] T^2 + a[4] T^3 + a[5] T^4 + a[6] ln T, T in K, p in Pa.
#define BIDE_HYLAND_WEXLER(name, value, equation)                 \
  inline constexpr Sourced name {                                 \
    value, "ln Pa, K", "hyland1983", equation, Trust::second_hand \
  }
BIDE_HYLAND_WEXLER(hyland_wexler_water_0, -5.8002206e3, "ASHRAE 2017 ch. 1 eq. 6");
BIDE_HYLAND_WEXLER(hyland_wexler_water_1, 1.3914993, "ASHRAE 2017 ch. 1 eq. 6");
BIDE_HYLAND_WEXLER(hyland_wexler_water_2, -4.8640239e-2, "ASHRAE 2017 ch. 1 eq. 6");
BIDE_HYLAND_WEXLER(hyland_wexler_water_3, 4.1764768e-5, "ASHRAE 2017 ch. 1 eq. 6");
BIDE_HYLAND_WEXLER(hyland_wexler_water_4, -1.4452093e-8, "ASHRAE 2017 ch. 1 eq. 6");
BIDE_HYLAND_WEXLER(hyland_wexler_water_6, 6.5459673, "ASHRAE 2017 ch. 1 eq. 6");
BIDE_HYLAND_WEXLER(hyland_wexler_ice_0, -5.6745359e3, "ASHRAE 2017 ch. 1 eq. 5");
BIDE_HYLAND_WEXLER(hyland_wexler_ice_1, 6.3925247, "ASHRAE 2017 ch. 1 eq. 5");
BIDE_HYLAND_WEXLER(hyland_wexler_ice_2, -9.677843e-3, "ASHRAE 2017 ch. 1 eq. 5");
BIDE_HYLAND_WEXLER(hyland_wexler_ice_3, 6.2215701e-7, "ASHRAE 2017 ch. 1 eq. 5");
BIDE_HYLAND_WEXLER(hyland_wexler_ice_4, 2.0747825e-9, "ASHRAE 2017 ch. 1 eq. 5");
BIDE_HYLAND_WEXLER(hyland_wexler_ice_5, -9.484024e-13, "ASHRAE 2017 ch. 1 eq. 5");
BIDE_HYLAND_WEXLER(hyland_wexler_ice_6, 4.1635019, "ASHRAE 2017 ch. 1 eq. 5");
#undef BIDE_HYLAND_WEXLER
inline constexpr Sourced triple_point_degC{0.01, "degC", "", "water; ice below it", Trust::definition};

}  // namespace constants

// Saturation pressure after Hyland & Wexler 1983: over ice up to 0.01 degC, over liquid water above. The
// reference that the inner-loop form is checked against; it has a kink at the triple point.
// @param t_degC temperature, degC, [-100, 200]
// @return Pa
inline double saturation_pressure_hyland_wexler_Pa(double t_degC) {
  using namespace constants;
  const double T = t_degC + zero_celsius_K;
  if (t_degC <= triple_point_degC) {
    return std::exp(hyland_wexler_ice_0 / T + hyland_wexler_ice_1 +
                    T * (hyland_wexler_ice_2 +
                         T * (hyland_wexler_ice_3 + T * (hyland_wexler_ice_4 + T * hyland_wexler_ice_5))) +
                    hyland_wexler_ice_6 * std::log(T));
  }
  return std::exp(hyland_wexler_water_0 / T + hyland_wexler_water_1 +
                  T * (hyland_wexler_water_2 + T * (hyland_wexler_water_3 + T * hyland_wexler_water_4)) +
                  hyland_wexler_water_6 * std::log(T));
}

// Saturation pressure over liquid water after Buck 1996: one exp, smooth. Within 0.03 % of Hyland & Wexler
// from 0 to 60 degC. Below 0 degC it is the pressure over supercooled water, to which dew points and relative
// humidities in weather reports also refer; over ice it is lower (9 % at -10 degC).
// @param t_degC temperature, degC, [-30, 60]
// @return Pa
template <class T>
inline T saturation_pressure_Pa(T t_degC) {
  using namespace constants;
  const T over = T(1) / (T(buck_c_K) + t_degC);
  return T(buck_a_Pa) * exp((T(buck_b) - t_degC * T(1 / buck_d_K)) * t_degC * over);
}

// Vapour density from vapour pressure, ideal gas.
// @param vapour_pressure_Pa partial pressure of the vapour, Pa
// @param t_degC             air temperature, degC, above -273.15
// @return kg/m3
template <class T>
inline T vapour_density_kg_m3(T vapour_pressure_Pa, T t_degC) {
  return vapour_pressure_Pa /
         (T(constants::vapour_gas_constant_J_kgK) * (t_degC + T(constants::zero_celsius_K)));
}
// Vapour pressure from vapour density, ideal gas: the inverse of vapour_density_kg_m3.
// @param vapour_density_kg_m3 kg of vapour in a m3 of air
// @param t_degC               air temperature, degC, above -273.15
// @return Pa
template <class T>
inline T vapour_pressure_Pa(T vapour_density_kg_m3, T t_degC) {
  return vapour_density_kg_m3 * T(constants::vapour_gas_constant_J_kgK) *
         (t_degC + T(constants::zero_celsius_K));
}

// Saturated vapour density over liquid water, as accurate as saturation_pressure_Pa.
// @param t_degC temperature, degC, [-30, 60]
// @return kg/m3
template <class T>
inline T saturation_density_kg_m3(T t_degC) {
  return vapour_density_kg_m3(saturation_pressure_Pa(t_degC), t_degC);
}

// Saturated vapour density and its derivative with temperature, for one exp.
template <class T>
struct SaturationDensity {
  T density_kg_m3, slope_kg_m3_K;
};
// @param t_degC  temperature, degC, [-30, 60]
// @param other   a number that is divided by as well, above 0
// @param inverse of it: one division for all denominators
template <class T>
inline SaturationDensity<T> saturation_density_and_slope(T t_degC, T other, T& inverse) {
  using namespace constants;
  const T shifted = T(buck_c_K) + t_degC, kelvin = t_degC + T(zero_celsius_K);
  const T both = shifted * kelvin;
  const T over_all = T(1) / (both * other);
  inverse = both * over_all;
  const T over_both = other * over_all;
  const T over = kelvin * over_both, per_K = shifted * over_both;
  const T rise = T(buck_b) - t_degC * T(1 / buck_d_K);
  const T density = T(buck_a_Pa / vapour_gas_constant_J_kgK) * exp(T(rise * t_degC * over)) * per_K;
  // d/dt of (b - t/d) t / (c + t), by the quotient rule.
  const T exponent_slope = (T(buck_b) - t_degC * T(2 / buck_d_K) - rise * t_degC * over) * over;
  return {density, density * (exponent_slope - per_K)};
}
// @param t_degC temperature, degC, [-30, 60]
template <class T>
inline SaturationDensity<T> saturation_density_and_slope(T t_degC) {
  T one;
  return saturation_density_and_slope(t_degC, T(1), one);
}

// Dew point over liquid water: the exact inverse of saturation_pressure_Pa (a quadratic in t).
// @param vapour_pressure_Pa Pa, above 0
// @return degC
template <class T>
inline T dew_point_degC(T vapour_pressure_Pa) {
  using namespace constants;
  const T exponent = log(vapour_pressure_Pa * T(1 / buck_a_Pa));
  const T b = T(buck_b) - exponent;
  constexpr double four = 4;
  return T(0.5 * buck_d_K) * (b - sqrt(b * b - T(four * buck_c_K / buck_d_K) * exponent));
}

// Temperature at which a vapour density is that of saturation: where a surface neither gains nor loses
// vapour. The dew point, but for the expansion of the vapour between the two temperatures, which is taken in
// one step (within 0.3 K from -20 to 80 degC in air up to 60 K warmer).
// @param vapour_density_kg_m3 kg of vapour in a m3 of air, above 0
// @param t_degC               air temperature, degC
// @return degC
template <class T>
inline T saturation_at_degC(T vapour_density_kg_m3, T t_degC) {
  const T dew = dew_point_degC(vapour_pressure_Pa(vapour_density_kg_m3, t_degC));
  return dew_point_degC(vapour_pressure_Pa(vapour_density_kg_m3, dew));
}

// Mass of vapour over mass of dry air (ASHRAE 2017 ch. 1 eq. 20).
// @param vapour_pressure_Pa partial pressure of the vapour, Pa, below pressure_Pa
// @param pressure_Pa        total pressure, Pa
// @return kg/kg
template <class T>
inline T humidity_ratio_kg_kg(T vapour_pressure_Pa, T pressure_Pa) {
  return T(constants::humidity_ratio_factor) * vapour_pressure_Pa / (pressure_Pa - vapour_pressure_Pa);
}

// Heat to evaporate a kg of liquid water (COARE 3.6); within 0.2 % of TEOS-10 from 0 to 40 degC.
// @param t_degC temperature of the water, degC
// @return J/kg
template <class T>
inline T latent_heat_J_kg(T t_degC) {
  return T(constants::latent_heat_at_zero_J_kg) - T(constants::latent_heat_fall_J_kgK) * t_degC;
}

// Density of moist air: dry air and vapour, each an ideal gas at its partial pressure.
// @param t_degC             air temperature, degC, above -273.15
// @param pressure_Pa        total pressure, Pa
// @param vapour_pressure_Pa partial pressure of the vapour, Pa
// @return kg/m3
template <class T>
inline T air_density_kg_m3(T t_degC, T pressure_Pa, T vapour_pressure_Pa) {
  return (pressure_Pa - vapour_pressure_Pa) /
             (T(constants::dry_air_gas_constant_J_kgK) * (t_degC + T(constants::zero_celsius_K))) +
         vapour_density_kg_m3(vapour_pressure_Pa, t_degC);
}

}  // namespace bide
