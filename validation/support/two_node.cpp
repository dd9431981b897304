#include "validation/support/two_node.hpp"

#include <algorithm>
#include <cmath>

#include "bide/core/moist_air.hpp"

namespace bide::validation {

namespace {

constexpr double skin_neutral_degC = 33.7, core_neutral_degC = two_node_start_degC, share_neutral = 0.1;
constexpr double tissue_J_kgK = 0.97 * 3600, step_s = 60;

double above(double value, double limit) {
  return std::max(value - limit, 0.0);
}

// Share of the mass that belongs to the skin, by its blood flow, L/(m2 h).
double skin_share(double blood) {
  return 0.0417737 + 0.7451833 / (blood + 0.585417);
}

double skin_blood_L_m2h(double skin_degC, double core_degC) {
  const double blood =
      (6.3 + 120 * above(core_degC, core_neutral_degC)) / (1 + 0.5 * above(skin_neutral_degC, skin_degC));
  return std::clamp(blood, 0.5, 90.0);
}

double sweat_g_m2h(double skin_degC, double core_degC, double share) {
  const double body_degC = share * skin_degC + (1 - share) * core_degC;
  const double neutral_degC = share_neutral * skin_neutral_degC + (1 - share_neutral) * core_neutral_degC;
  return std::min(170 * above(body_degC, neutral_degC) * std::exp(above(skin_degC, skin_neutral_degC) / 10.7),
                  500.0);
}

// Vapour through still clothing and film, W/m2: Lewis relation 16.5 K/kPa, clothing's efficiency 0.45.
double evaporation_W_m2(const TwoNodePlace& place, double skin_degC, double sweat_W_m2) {
  if (place.in_water) return 0;
  constexpr double lewis_K_Pa = 16.5e-3, vapour_efficiency = 0.45;
  const double resistance =
      1 / (lewis_K_Pa * place.film_W_m2K) + place.clothing_m2K_W / (lewis_K_Pa * vapour_efficiency);
  const double most = above(saturation_pressure_Pa(skin_degC), place.vapour_pressure_Pa) / resistance;
  const double wetness = most > 0 ? std::min(0.06 + 0.94 * sweat_W_m2 / most, 1.0) : 1.0;
  return wetness * most;
}

}  // namespace

TwoNodeEnd two_node(const TwoNodePlace& place, const TwoNodePerson& person, double to_s, double from_s) {
  constexpr double mmHg_Pa = 133.322, sweat_Wh_g = 0.68, blood_Wh_LK = 1.163, tissue_W_m2K = 5.28;
  double skin_degC = skin_neutral_degC, core_degC = core_neutral_degC, made_J = 0;
  for (double t = 0; t < to_s; t += step_s) {
    const double blood = skin_blood_L_m2h(skin_degC, core_degC);
    const double share = skin_share(blood);
    const double shivering_W_m2 =
        19.4 * above(skin_neutral_degC, skin_degC) * above(core_neutral_degC, core_degC);
    const double metabolic_W_m2 = place.metabolic_W_m2 + shivering_W_m2;
    const double breath_W_m2 = metabolic_W_m2 * (0.0023 * (44 - place.vapour_pressure_Pa / mmHg_Pa) +
                                                 0.0014 * (34 - place.around_degC));
    const double outward_W_m2 = (tissue_W_m2K + blood_Wh_LK * blood) * (core_degC - skin_degC);
    const double dry_W_m2 = (skin_degC - place.around_degC) /
                            (place.clothing_m2K_W + 1 / (place.film_W_m2K + place.radiation_W_m2K));
    const double vapour_W_m2 =
        evaporation_W_m2(place, skin_degC, sweat_Wh_g * sweat_g_m2h(skin_degC, core_degC, share));
    const double capacity_J_m2K = tissue_J_kgK * person.mass_kg / person.area_m2;
    core_degC += step_s * (metabolic_W_m2 - breath_W_m2 - outward_W_m2) / ((1 - share) * capacity_J_m2K);
    // The thin skin follows its surroundings at once where a step would carry it past them.
    const double conductance = tissue_W_m2K + blood_Wh_LK * blood +
                               1 / (place.clothing_m2K_W + 1 / (place.film_W_m2K + place.radiation_W_m2K));
    const double ease = share * capacity_J_m2K / step_s;
    skin_degC += (outward_W_m2 - dry_W_m2 - vapour_W_m2) / (ease + conductance);
    if (t >= from_s) made_J += step_s * metabolic_W_m2 * person.area_m2;
  }
  return {core_degC, skin_degC, made_J / (to_s - from_s)};
}

}  // namespace bide::validation
