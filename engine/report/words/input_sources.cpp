#include "bide/report/words/input_sources.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "bide/constants/boarding.hpp"
#include "bide/constants/cabin.hpp"
#include "bide/constants/climate.hpp"
#include "bide/constants/clothing.hpp"
#include "bide/constants/growth.hpp"
#include "bide/constants/injury.hpp"
#include "bide/constants/limits.hpp"
#include "bide/constants/people.hpp"
#include "bide/constants/readiness.hpp"
#include "bide/constants/routine.hpp"
#include "bide/constants/seasickness.hpp"
#include "bide/constants/shivering.hpp"
#include "bide/constants/starting.hpp"
#include "bide/constants/stores.hpp"
#include "bide/constants/swimming.hpp"
#include "bide/constants/weather.hpp"
#include "bide/report/words/units.hpp"
#include "bide/scenario/priors.hpp"

namespace bide::report {

namespace embedded {
extern const std::string_view references;
}

namespace {

namespace c = constants;

struct Row {
  std::string_view pointer;
  const Sourced* number;
};

// Numbers that stand in for an input that is left out, or that say what its values mean.
constexpr Row rows[] = {
    {"/crew/*/height_m", &c::height_male_m},
    {"/crew/*/height_m", &c::height_female_m},
    {"/crew/*/mass_kg", &c::bmi_male},
    {"/crew/*/mass_kg", &c::bmi_female},
    {"/crew/*/body_fat_pct", &c::body_fat_intercept_pct},
    {"/crew/*/body_fat_pct", &c::body_fat_rmse_pct},
    {"/crew/*/vo2max_mL_kg_min", &c::vo2max_male_25_mL_kg_min},
    {"/crew/*/vo2max_mL_kg_min", &c::vo2max_male_75_mL_kg_min},
    {"/crew/*/vo2max_mL_kg_min", &c::vo2max_female_25_mL_kg_min},
    {"/crew/*/vo2max_mL_kg_min", &c::vo2max_female_75_mL_kg_min},
    {"/crew/*/vo2max_mL_kg_min", &c::vo2max_boys_mL_kg_min},
    {"/crew/*/vo2max_mL_kg_min", &c::vo2max_girls_mL_kg_min},
    {"/crew/*/thermal_protective_aid", &c::aid_material_m2K_W},
    {"/crew/*/thermal_protective_aid", &c::aid_air_gap_mm},
    {"/crew/*/blood_loss_pct", &c::blood_class_three_pct},
    {"/crew/*/burned_pct", &c::burn_of_shock_pct},
    {"/crew/*/fever_K", &c::fever_heat_per_K},
    {"/crew/*/seasick_medicine", &c::tablet_protection},
    {"/crew/*/hours_since_meal_h", &c::last_meal_kJ},
    {"/crew/*/hours_since_drink_h", &c::last_drink_L},
    {"/crew/*/hours_since_sleep_h", &c::sleepless_shift_K},
    {"/crew/*/exertion_met", &c::core_rise_K_per_met},
    {"/crew/*/blood_alcohol_mg_dL", &c::shiver_alcohol_fall},
    {"/crew/*/shivering_drive_factor", &c::spread_shivering_drive},
    {"/crew/*/shivering_drive_factor", &c::spread_child_shivering_drive},
    {"/crew/*/shivering_ceiling_factor", &c::spread_shivering_ceiling},
    {"/crew/*/resting_metabolism_factor", &c::spread_resting_metabolism},
    {"/crew/*/sweat_factor", &c::spread_sweat},
    {"/crew/*/swim_endurance_factor", &c::spread_swim_endurance},
    {"/crew/*/core_limit_shift_K", &c::spread_core_limit_K},
    {"/raft/floor_area_m2", &c::floor_per_person_m2},
    {"/raft/leakage_position", &c::leakage_calm_L_s_m2},
    {"/raft/leakage_position", &c::leakage_per_wind_L_m2},
    {"/boarding/kind", &c::steps_across},
    {"/boarding/minutes_in_water", &c::swim_min},
    {"/boarding/minutes_in_water", &c::container_rise_m_s},
    {"/boarding/minutes_in_water", &c::inflation_min},
    {"/boarding/in_water", &c::swimming_met},
    {"/boarding/in_water", &c::knees_fold_trunk},
    {"/boarding/in_water", &c::huddle_folds_trunk},
    {"/boarding/release_depth_m", &c::release_depth_m},
    {"/boarding/water_shipped_L", &c::shipped_dry_L_per_person},
    {"/boarding/water_shipped_L", &c::shipped_swim_L_per_person},
    {"/weather/cloud_cover_fraction", &c::cloud_dimming},
    {"/weather/wind_spread_fraction", &c::no_prevailing_direction},
    {"/rationing/rule", &c::no_water_first_h},
    {"/routine/wring_clothes", &c::wring_after_h},
    {"/routine/inflate_floor", &c::floor_single_m2K_W},
    {"/routine/inflate_floor", &c::floor_inflated_m2K_W},
    {"/routine/huddle", &c::huddle_share_trunk},
    {"/routine/catch_rain", &c::rain_caught_share},
    {"/routine/damp_clothes_in_heat", &c::damp_above_degC},
    {"/routine/open_above_degC", &c::heat_rule_span_K},
    {"/routine/open_above_co2_ppm", &c::open_for_air_least_s},
    {"/limits/able_core_low_degC", &c::able_core_low_degC},
    {"/limits/able_core_high_degC", &c::able_core_high_degC},
    {"/limits/able_water_deficit_pct", &c::able_water_deficit_pct},
    {"/limits/able_co2_ppm", &c::able_co2_ppm},
    {"/limits/able_osmolality_low_mOsm_kg", &c::able_osmolality_low_mOsm_kg},
    {"/limits/unconscious_core_degC", &c::unconscious_core_degC},
    {"/limits/lethal_core_low_degC", &c::lethal_core_low_degC},
    {"/limits/lethal_core_high_degC", &c::lethal_core_high_degC},
    {"/limits/lethal_water_deficit_pct", &c::lethal_water_deficit_pct},
    {"/limits/lethal_osmolality_mOsm_kg", &c::lethal_osmolality_mOsm_kg},
    {"/limits/lethal_osmolality_low_mOsm_kg", &c::lethal_osmolality_low_mOsm_kg},
    {"/limits/lethal_co2_ppm", &c::lethal_co2_ppm},
    {"/model/shivering_endurance", &c::shiver_sustained_over_basal},
    {"/model/shivering_endurance", &c::shiver_sustained_late_over_basal},
};

const char* trust_words(Trust trust) {
  switch (trust) {
    case Trust::seen:
      return "read in the source";
    case Trust::second_hand:
      return "read at second hand";
    case Trust::derived:
      return "worked out from the source";
    case Trust::from_memory:
      return "from memory";
    case Trust::common_practice:
      return "common practice, no source";
    case Trust::judgement:
      return "our own estimate, no source";
    case Trust::fitted:
      return "fitted to measurements";
    case Trust::definition:
      return "by definition";
  }
  return "";
}

// Value of a field of a BibTeX entry, without the braces within it.
std::string bib_field(std::string_view entry, std::string_view name) {
  const std::string begins = fmt::format(" {}={{", name);
  std::size_t at = entry.find(begins);
  if (at == std::string_view::npos) return {};
  std::string out;
  int depth = 1;
  for (at += begins.size(); at < entry.size() && depth > 0; ++at) {
    if (entry[at] == '{')
      ++depth;
    else if (entry[at] == '}')
      --depth;
    else
      out += entry[at];
  }
  return out;
}

}  // namespace

std::string reference_words(std::string_view key) {
  const std::string_view all = embedded::references;
  const std::size_t at = all.find(fmt::format("{{{},", key));
  if (at == std::string_view::npos) return std::string(key);
  const std::string_view entry = all.substr(at, all.find("\n@", at) - at);
  std::string out;
  for (const char* name : {"author", "title", "year"})
    if (const std::string value = bib_field(entry, name); !value.empty())
      out += (out.empty() ? "" : ", ") + value;
  return out;
}

std::string source_words(const Sourced& number) {
  const std::string unit = std::string_view(number.unit) == "-" ? "" : " " + unit_signs(number.unit);
  std::string out = fmt::format("{:.4g}{}", number.value, unit);
  if (number.low < number.high) out += fmt::format(" ({:.4g} to {:.4g}{})", number.low, number.high, unit);
  if (*number.where != '\0') out += fmt::format(": {}", number.where);
  const std::string trust = trust_words(number.trust);
  if (*number.key != '\0')
    out += fmt::format("; {}: {}.", trust, reference_words(number.key));
  else
    out += fmt::format("; {}.", trust);
  return unit_signs(out);
}

std::vector<std::string> input_sources(std::string_view pointer) {
  std::vector<std::string> out;
  for (const Row& row : rows)
    if (row.pointer == pointer) out.push_back(source_words(*row.number));
  for (const scenario::Prior& prior : scenario::priors().priors)
    if (std::find(prior.inputs.begin(), prior.inputs.end(), pointer) != prior.inputs.end())
      out.push_back(fmt::format("Where nobody knows it: {}", prior.source));
  return out;
}

std::vector<std::string> inputs_with_sources() {
  std::vector<std::string> out;
  const auto add = [&out](std::string_view pointer) {
    if (pointer.starts_with('/') && std::find(out.begin(), out.end(), pointer) == out.end())
      out.emplace_back(pointer);
  };
  for (const Row& row : rows) add(row.pointer);
  for (const scenario::Prior& prior : scenario::priors().priors)
    for (const std::string& input : prior.inputs) add(input);
  return out;
}

}  // namespace bide::report
