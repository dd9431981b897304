#include "bide/body/layout.hpp"

namespace bide::body {

const std::array<Entry, at::count>& entries() {
  static const std::array<Entry, at::count> list = [] {
    std::array<Entry, at::count> e{};
    static constexpr std::array<std::array<const char*, layer_count>, segment_count> nodes{{
        {"head_core", "head_muscle", "head_fat", "head_skin", "head_clothing"},
        {"trunk_core", "trunk_muscle", "trunk_fat", "trunk_skin", "trunk_clothing"},
        {"arms_core", "arms_muscle", "arms_fat", "arms_skin", "arms_clothing"},
        {"hands_core", "hands_muscle", "hands_fat", "hands_skin", "hands_clothing"},
        {"legs_core", "legs_muscle", "legs_fat", "legs_skin", "legs_clothing"},
        {"feet_core", "feet_muscle", "feet_fat", "feet_skin", "feet_clothing"},
    }};
    static constexpr std::array<const char*, segment_count> wet{"head_clothing_water", "trunk_clothing_water",
                                                                "arms_clothing_water", "hands_clothing_water",
                                                                "legs_clothing_water", "feet_clothing_water"};
    for (int s = 0; s < segment_count; ++s) {
      for (int l = 0; l < layer_count; ++l) e[at::node(s, l)] = {nodes[s][l], "degC"};
      e[at::clothing_water + s] = {wet[s], "kg"};
    }
    e[at::blood] = {"blood", "degC"};
    e[at::finger] = {"finger", "degC"};
    e[at::body_water] = {"body_water", "kg"};
    e[at::gut_water] = {"gut_water", "kg"};
    e[at::extracellular_osmoles] = {"extracellular_osmoles", "mOsm"};
    e[at::urea] = {"urea", "mOsm"};
    e[at::fluid_shift] = {"fluid_shift", "L"};
    e[at::glycogen] = {"glycogen", "kJ"};
    e[at::fat_mass] = {"fat_mass", "kg"};
    e[at::protein_mass] = {"protein_mass", "kg"};
    e[at::gut_carbohydrate] = {"gut_carbohydrate", "kJ"};
    e[at::gut_fat] = {"gut_fat", "kJ"};
    e[at::gut_protein] = {"gut_protein", "kJ"};
    e[at::fatigue] = {"fatigue", "-"};
    e[at::motion_dose] = {"motion_dose", "m2/s3"};
    e[at::adaptation] = {"adaptation", "-"};
    e[at::alcohol] = {"alcohol", "mg/dL"};
    e[at::arms_used] = {"arms_used", "-"};
    e[at::sweat] = {"sweat", "W"};
    e[at::fasted] = {"fasted", "s"};
    for (const auto& [i, name] : {std::pair<int, const char*>{at::total_metabolic, "total_metabolic"},
                                  {at::total_to_air, "total_to_air"},
                                  {at::total_to_canopy, "total_to_canopy"},
                                  {at::total_to_floor, "total_to_floor"},
                                  {at::total_to_floor_water, "total_to_floor_water"},
                                  {at::total_to_sea, "total_to_sea"},
                                  {at::total_to_tube, "total_to_tube"},
                                  {at::total_evaporation, "total_evaporation"},
                                  {at::total_breath, "total_breath"},
                                  {at::total_sun, "total_sun"},
                                  {at::total_stored, "total_stored"},
                                  {at::total_absolute_heat, "total_absolute_heat"},
                                  {at::total_shivering, "total_shivering"}})
      e[i] = {name, "J"};
    for (const auto& [i, name] : {std::pair<int, const char*>{at::total_urine, "total_urine"},
                                  {at::total_breath_water, "total_breath_water"},
                                  {at::total_skin_water, "total_skin_water"},
                                  {at::total_sweat_drip, "total_sweat_drip"},
                                  {at::total_overboard, "total_overboard"},
                                  {at::total_vomit, "total_vomit"},
                                  {at::total_metabolic_water, "total_metabolic_water"},
                                  {at::total_clothing_evaporation, "total_clothing_evaporation"},
                                  {at::total_distilled, "total_distilled"},
                                  {at::total_wetting, "total_wetting"},
                                  {at::total_clothing_drain, "total_clothing_drain"}})
      e[i] = {name, "kg"};
    e[at::total_salt_lost] = {"total_salt_lost", "mOsm"};
    e[at::total_oxidised] = {"total_oxidised", "kJ"};
    e[at::total_nitrogen] = {"total_nitrogen", "g"};
    e[at::total_cold_feet] = {"total_cold_feet", "s"};
    e[at::total_frozen] = {"total_frozen", "s"};
    return e;
  }();
  return list;
}

}  // namespace bide::body
