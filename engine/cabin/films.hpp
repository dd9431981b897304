// Coefficients of heat and mass transfer at surfaces: W/(m2 K) and m/s, times a difference gives the flux.
//
// States: none. Inputs: temperatures in degC, differences in K, speeds in m/s. Validity: said at each
// function; outside it the law is extrapolated unless a bound is stated. Source: Glueck 2008 (natural
// convection inside), ISO 6946 (wind, air gaps), the two-node model of Gagge et al. 1971 and ISO 7933
// (people), Nadel 1974 (water, from memory).
#pragma once

#include "bide/constants/air.hpp"
#include "bide/core/moist_air.hpp"
#include "bide/core/scalar.hpp"

namespace bide::cabin {

// Natural convection, scale (dT^2 + stirring^2)^(power / 2): the published scale |dT|^power, kept smooth and
// above zero by the stirring of cabin air; within 1 % of the published law from |dT| = 2 K on.
// @param scale        of the law, W/(m2 K) at 1 K
// @param power_of_dT  exponent of the temperature difference
// @param difference_K of air and surface, K
// @return W/(m2 K)
template <class T>
inline T natural_film_W_m2K(const Sourced& scale, const Sourced& power_of_dT, T difference_K) {
  const double still = constants::stirring_K * constants::stirring_K;
  return T(scale) * power(T(difference_K * difference_K + T(still)), 0.5 * power_of_dT);
}

// Film at a level surface (Glueck 2008, eq. 1.27 and 1.28), with a smooth change between the laws for heat
// flowing up and down within the stirring difference.
// @param rising_K temperature below less temperature above, K, [-10, 30]; positive when heat flows up
// @return W/(m2 K)
template <class T>
inline T level_film_W_m2K(T rising_K) {
  using namespace constants;
  const T up = natural_film_W_m2K(film_up_scale, film_level_power, rising_K);
  const T down = natural_film_W_m2K(film_down_scale, film_level_power, rising_K);
  return down + (up - down) * smoothstep(rising_K, -stirring_K.value, stirring_K.value);
}

// Film between cabin air and the canopy above it.
// @param air_degC, canopy_degC temperatures, degC
// @return W/(m2 K)
template <class T>
inline T canopy_film_W_m2K(T air_degC, T canopy_degC) {
  return level_film_W_m2K(T(air_degC - canopy_degC));
}

// Film between cabin air and the floor below it.
// @param air_degC, floor_degC temperatures, degC
// @return W/(m2 K)
template <class T>
inline T floor_film_W_m2K(T air_degC, T floor_degC) {
  return level_film_W_m2K(T(floor_degC - air_degC));
}

// Film between cabin air and the inner side of the tubes (Glueck 2008, eq. 1.26).
// @param air_degC, tube_degC temperatures, degC
// @return W/(m2 K)
template <class T>
inline T tube_film_W_m2K(T air_degC, T tube_degC) {
  return natural_film_W_m2K(constants::film_upright_scale, constants::film_upright_power,
                            T(air_degC - tube_degC));
}

// Film outside the canopy, convection only: h = 4 + 4 v (ISO 6946).
// @param wind_m_s v, at raft height, m/s, at least 0
// @return W/(m2 K)
template <class T>
inline T outer_film_W_m2K(T wind_m_s) {
  return T(constants::outer_film_still_W_m2K) + T(constants::outer_film_per_wind) * wind_m_s;
}

// Radiation between two surfaces as a coefficient: eps sigma (Ta^2 + Tb^2)(Ta + Tb), the exact secant of the
// fourth-power law, equal to 4 eps sigma Tm^3 to second order in the difference.
// @param emissivity     eps, effective, [0, 1]
// @param a_degC, b_degC temperatures, degC
// @return W/(m2 K)
template <class T>
inline T radiation_W_m2K(T emissivity, T a_degC, T b_degC) {
  const T a = a_degC + T(constants::zero_celsius_K), b = b_degC + T(constants::zero_celsius_K);
  return emissivity * T(constants::stefan_boltzmann_W_m2K4) * (a * a + b * b) * (a + b);
}

// Vapour transfer coefficient that belongs to a convective film: h_m = h / (rho c_p Le^(2/3)) (ASHRAE 2017
// ch. 6).
// @param film_W_m2K        h, convection only, W/(m2 K)
// @param air_density_kg_m3 rho, kg/m3
// @return m/s, times a difference of vapour density
template <class T>
inline T mass_transfer_m_s(T film_W_m2K, T air_density_kg_m3) {
  static const double lewis = std::pow(constants::lewis_number.value, constants::lewis_power.value);
  return film_W_m2K / (T(constants::air_heat_capacity_J_kgK * lewis) * air_density_kg_m3);
}

// Speed of cabin air past people: ventilation over the cabin's mean cross-section V^(2/3), on top of the
// 0.1 m/s of still air.
// @param ventilation_m3_s air exchange, m3/s, at most a few air changes a minute
// @param volume_m3        V, m3, above 0
// @return m/s
template <class T>
inline T cabin_air_speed_m_s(T ventilation_m3_s, T volume_m3) {
  constexpr double two_thirds = 2.0 / 3.0;
  return T(constants::still_air_speed_m_s) + ventilation_m3_s / power(volume_m3, two_thirds);
}

// Convective film of a seated person under a canopy: the larger of 3.0 and 8.6 v^0.53 (Gagge et al. 1971).
// @param air_speed_m_s v, m/s, [0, 1]
// @return W/(m2 K)
template <class T>
inline T seated_film_W_m2K(T air_speed_m_s) {
  return larger(T(constants::seated_film_still_W_m2K),
                T(T(constants::seated_film_scale) * power(air_speed_m_s, constants::seated_film_power)));
}

// Convective film of a person in the open: 3.5 + 5.2 v to 1 m/s, 8.7 v^0.6 above (ISO 7933; the laws meet at
// 8.7). The standard is for winds of a few m/s; above 5 m/s this is an extrapolation.
// @param wind_m_s v, m/s, at least 0
// @return W/(m2 K)
template <class T>
inline T wind_film_W_m2K(T wind_m_s) {
  using namespace constants;
  return select(wind_m_s < T(1), T(T(wind_film_still_W_m2K) + T(wind_film_per_speed) * wind_m_s),
                T(T(wind_film_scale) * power(wind_m_s, wind_film_power)));
}

// The same for somebody who sits behind the tubes of a raft, as the mean over body heights: in the lee of a
// solid wall a quarter of the wind is left.
// @param wind_m_s     at the height of the tubes' top and above, m/s, at least 0
// @param behind_tubes share of the body that is lower, [0, 1]
// @return W/(m2 K)
template <class T>
inline T sheltered_film_W_m2K(T wind_m_s, T behind_tubes) {
  const T above = wind_film_W_m2K(wind_m_s);
  return above + (wind_film_W_m2K(T(T(constants::wind_in_lee) * wind_m_s)) - above) * behind_tubes;
}

// Speed of the water past a person floating in waves: a share of the orbital speed pi H / T at the surface.
// @param wave_height_m H, significant, m, at least 0
// @param wave_period_s T, mean zero-crossing, s, above 0
// @return m/s
template <class T>
inline T passing_water_m_s(T wave_height_m, T wave_period_s) {
  constexpr double pi = 3.14159265358979323846;
  return T(constants::orbital_slip * pi) * wave_height_m / wave_period_s;
}

// Film of skin or suit in the water: from 100 W/(m2 K) at rest to 460 at 0.5 m/s, at most 580 (Nadel 1974 and
// Boutelier 1977, all from memory; at rest the literature spans 43 to 230).
// @param passing_m_s speed of the water past the body, m/s, at least 0
// @return W/(m2 K), [100, 580]
template <class T>
inline T water_film_W_m2K(T passing_m_s) {
  using namespace constants;
  constexpr double rise = water_film_moving_W_m2K.value - water_film_still_W_m2K.value;
  const T moving = T(water_film_still_W_m2K) +
                   T(rise) * power(T(passing_m_s * T(1 / water_film_speed_m_s)), water_film_power);
  return smaller(moving, T(water_film_swimming_W_m2K));
}

enum class HeatFlow { up, level, down };

// Resistance of a closed air gap between surfaces of high emissivity, linear between the points of the ISO
// 6946 table. A low-emissivity or an open gap is not covered.
// @param gap_mm    width of the gap, mm, [0, 300]; a wider one counts as 300
// @param direction of the heat flow
// @return m2 K/W
double air_gap_m2K_W(double gap_mm, HeatFlow direction);

}  // namespace bide::cabin
