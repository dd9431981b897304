#include "bide/body/anthropometry.hpp"

#include <algorithm>
#include <cmath>

#include "bide/body/gas_exchange.hpp"
#include "bide/constants/body.hpp"
#include "bide/constants/control.hpp"
#include "bide/constants/fuel.hpp"
#include "bide/constants/growth.hpp"
#include "bide/constants/shivering.hpp"
#include "bide/core/interpolate.hpp"
#include "bide/core/scalar.hpp"
#include "bide/core/units.hpp"

namespace bide::body {

using namespace constants;

namespace {

constexpr double cm_per_m = 100;
constexpr double mL_per_L = 1000;

double uptake_W(double mass_kg, double uptake_mL_kg_min, double rq) {
  return uptake_mL_kg_min * mass_kg / mL_per_L / minute_s * energy_per_oxygen_J_L(rq);
}

double past_sixty(double age_years, double old) {
  return 1 + old_share(age_years) * (old - 1);
}

}  // namespace

double dubois_area_m2(double mass_kg, double height_m) {
  return dubois_scale * std::pow(mass_kg, dubois_mass_power) * std::pow(height_m, dubois_height_power);
}

double basal_heat_W(scenario::Sex sex, double age_years, double mass_kg, double height_m) {
  if (age_years < grown_years) {
    const int girl = sex == scenario::Sex::male ? 0 : 1;
    const int group = age_years < toddler_until_years ? 0 : age_years < child_until_years ? 1 : 2;
    return (schofield_per_kg[girl][group] * mass_kg + schofield_fixed[girl][group]) * kcal_J / day_s;
  }
  const double kcal_day = mifflin_per_kg * mass_kg + mifflin_per_cm * cm_per_m * height_m -
                          mifflin_per_year * age_years +
                          (sex == scenario::Sex::male ? mifflin_male : mifflin_female);
  return kcal_day * kcal_J / day_s;
}

double body_water_kg(scenario::Sex sex, double age_years, double mass_kg, double height_m) {
  const double height_cm = cm_per_m * height_m;
  if (age_years < grown_years) {
    const int girl = sex == scenario::Sex::male ? 0 : 1;
    const int tall = height_cm > (girl == 1 ? water_girls_up_to_cm : water_boys_up_to_cm) ? 1 : 0;
    const double* k = mellits[girl][tall];
    return k[0] + k[1] * mass_kg + k[2] * height_cm;
  }
  if (sex == scenario::Sex::male)
    return watson_male - watson_male_per_year * age_years + watson_male_per_cm * height_cm +
           watson_male_per_kg * mass_kg;
  return watson_female + watson_female_per_cm * height_cm + watson_female_per_kg * mass_kg;
}

double fat_mass_kg(double mass_kg, double body_fat_pct) {
  return mass_kg * body_fat_pct / pct;
}

double lean_mass_kg(double mass_kg, double body_fat_pct) {
  return mass_kg - fat_mass_kg(mass_kg, body_fat_pct);
}

double greatest_aerobic_heat_W(double mass_kg, double vo2max_mL_kg_min, double rq) {
  return uptake_W(mass_kg, vo2max_mL_kg_min, rq);
}

double shivering_ceiling_W(double mass_kg, double height_m, double age_years, double vo2max_mL_kg_min,
                           double rq) {
  const double square = height_m * height_m;
  const double bmi = clamp(mass_kg / square, shiver_peak_lightest_bmi.value, shiver_peak_heaviest_bmi.value);
  const double age = clamp(age_years, shiver_peak_youngest_years.value, shiver_peak_oldest_years.value);
  // Mass above the heaviest of the group neither shivers nor lowers the shivering of the rest.
  const double shivering_kg = std::min(mass_kg, bmi * square);
  const double vo2max = vo2max_mL_kg_min * mass_kg / shivering_kg;
  const double regression =
      shiver_peak + shiver_peak_per_vo2max * vo2max - shiver_peak_per_bmi * bmi - shiver_peak_per_year * age;
  const double spread = 2 * shiver_peak_share_spread;
  const double bounded =
      clamp(regression, (shiver_peak_share - spread) * vo2max, (shiver_peak_share + spread) * vo2max);
  const double floored = std::max(bounded, shiver_least_peak_over_rest * shiver_rest_mL_kg_min);
  const double peak = std::min(floored, vo2max);
  return uptake_W(shivering_kg, std::max(peak - shiver_rest_mL_kg_min, 0.0), rq);
}

double sustained_shivering_W(double basal_W, double ceiling_W) {
  return std::min((shiver_sustained_over_basal - awake_rest_factor) * basal_W,
                  shiver_held_intensity * ceiling_W);
}

bool beyond_shivering_peak_trial(double mass_kg, double height_m, double age_years) {
  const double bmi = mass_kg / (height_m * height_m);
  return bmi < shiver_peak_lightest_bmi || bmi > shiver_peak_heaviest_bmi ||
         age_years < shiver_peak_youngest_years || age_years > shiver_peak_oldest_years;
}

double old_share(double age_years) {
  return bide::clamp((age_years - old_age_years + old_age_spread_years) / (2 * old_age_spread_years), 0.0,
                     1.0);
}

double shivering_age_factor(double age_years) {
  return interpolate_linear(ageing_years, ageing_shivering, age_years);
}

double sweat_age_factor(double age_years) {
  const double grown =
      bide::clamp((age_years - child_sweat_until_years) / (grown_years - child_sweat_until_years), 0.0, 1.0);
  return (child_sweat + (1 - child_sweat) * grown) * past_sixty(age_years, old_age_sweat);
}

double size_of(double age_years, double lean_kg) {
  return age_years < grown_years ? std::min(1.0, lean_kg / nitrogen_lean_mass_kg) : 1.0;
}

double command_size(double age_years, double area_m2) {
  return age_years < grown_years ? std::min(1.0, area_m2 / standard_area_m2) : 1.0;
}

double dilatation_age_factor(double age_years) {
  return past_sixty(age_years, old_age_dilatation);
}

double constriction_age_factor(double age_years) {
  return past_sixty(age_years, old_age_constriction);
}

}  // namespace bide::body
