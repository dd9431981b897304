// Names of the columns of a timeline: every table is made from this list.
#pragma once

#include <vector>

#include "bide/timeline/series.hpp"

namespace bide::report {

template <class Owner>
struct Column {
  const char* name;  // ends in its unit
  std::vector<double> Owner::*values;
};

inline constexpr Column<timeline::Timeline> common_columns[] = {
    {"inside_air_degC", &timeline::Timeline::inside_air_degC},
    {"canopy_degC", &timeline::Timeline::canopy_degC},
    {"floor_water_degC", &timeline::Timeline::floor_water_degC},
    {"outside_air_degC", &timeline::Timeline::outside_air_degC},
    {"sea_degC", &timeline::Timeline::sea_degC},
    {"wind_m_s", &timeline::Timeline::wind_m_s},
    {"inside_vapour_density_kg_m3", &timeline::Timeline::inside_vapour_density_kg_m3},
    {"inside_relative_humidity_pct", &timeline::Timeline::inside_relative_humidity_pct},
    {"co2_ppm", &timeline::Timeline::co2_ppm},
    {"floor_water_L", &timeline::Timeline::floor_water_L},
    {"condensate_total_L", &timeline::Timeline::condensate_L_total},
    {"ventilation_L_s", &timeline::Timeline::ventilation_L_s},
    {"opening_m2", &timeline::Timeline::opening_m2},
    {"wave_height_m", &timeline::Timeline::wave_height_m},
    {"irradiance_W_m2", &timeline::Timeline::irradiance_W_m2},
    {"rain_mm_h", &timeline::Timeline::rain_mm_h},
    {"store_water_L", &timeline::Timeline::water_L},
    {"store_food_kJ", &timeline::Timeline::food_kJ},
    {"store_medicine_doses", &timeline::Timeline::medicine_doses},
    {"store_flares_count", &timeline::Timeline::flares},
    {"store_lamp_h", &timeline::Timeline::lamp_h},
    {"store_beacon_h", &timeline::Timeline::beacon_h},
    {"cabin_from_bodies_W", &timeline::Timeline::cabin_from_bodies_W},
    {"cabin_from_sun_W", &timeline::Timeline::cabin_from_sun_W},
    {"cabin_to_outside_through_canopy_W", &timeline::Timeline::cabin_to_outside_through_canopy_W},
    {"cabin_to_sea_W", &timeline::Timeline::cabin_to_sea_W},
    {"cabin_to_outside_by_air_W", &timeline::Timeline::cabin_to_outside_by_air_W},
};

inline constexpr Column<timeline::PersonSeries> person_columns[] = {
    {"core_degC", &timeline::PersonSeries::core_degC},
    {"head_core_degC", &timeline::PersonSeries::head_core_degC},
    {"mean_skin_degC", &timeline::PersonSeries::mean_skin_degC},
    {"finger_degC", &timeline::PersonSeries::finger_degC},
    {"hand_skin_degC", &timeline::PersonSeries::hand_skin_degC},
    {"foot_skin_degC", &timeline::PersonSeries::foot_skin_degC},
    {"metabolic_W", &timeline::PersonSeries::metabolic_W},
    {"shivering_W", &timeline::PersonSeries::shivering_W},
    {"sweat_kg_h", &timeline::PersonSeries::sweat_kg_h},
    {"clothing_water_kg", &timeline::PersonSeries::clothing_water_kg},
    {"water_deficit_pct", &timeline::PersonSeries::water_deficit_pct},
    {"osmolality_mOsm_kg", &timeline::PersonSeries::osmolality_mOsm_kg},
    {"urine_total_kg", &timeline::PersonSeries::urine_kg_total},
    {"glycogen_kJ", &timeline::PersonSeries::glycogen_kJ},
    {"fat_kg", &timeline::PersonSeries::fat_kg},
    {"protein_kg", &timeline::PersonSeries::protein_kg},
    {"sickness_fraction", &timeline::PersonSeries::sickness},
    {"heat_loss_air_W", &timeline::PersonSeries::heat_loss_air_W},
    {"heat_loss_canopy_W", &timeline::PersonSeries::heat_loss_canopy_W},
    {"heat_loss_floor_W", &timeline::PersonSeries::heat_loss_floor_W},
    {"heat_loss_water_W", &timeline::PersonSeries::heat_loss_water_W},
    {"heat_loss_evaporation_W", &timeline::PersonSeries::heat_loss_evaporation_W},
    {"heat_loss_breath_W", &timeline::PersonSeries::heat_loss_breath_W},
    {"task_ability_fraction", &timeline::PersonSeries::task_ability},
    {"fine_work_possible", &timeline::PersonSeries::fine_work},
    {"grip_possible", &timeline::PersonSeries::grip},
};

}  // namespace bide::report
