// The record of a simulation: columns against time, dated events, ledgers, crossings and fates.
//
// States: none, this is a record. Inputs: filled by simulate(). Units: in every name; times are seconds since
// the scenario's start. Every vector of a Timeline and of its persons is as long as `time_s`, except the
// lists at the end and, where nobody boards a raft, the columns of the cabin, which are empty. Positive heat
// flows leave the body (persons) or enter the cabin from bodies and sun, and leave it by canopy, sea and air
// (the cabin's ledger).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bide/system/limits.hpp"
#include "bide/system/notes.hpp"

namespace bide::timeline {

// One person, one value per output time. Fine work and grip are 1 while able with hands that can, else 0;
// task ability is the pace at fine work, a share of warm hands'.
struct PersonSeries {
  std::vector<double> core_degC, head_core_degC, mean_skin_degC, finger_degC, hand_skin_degC, foot_skin_degC,
      metabolic_W, shivering_W, sweat_kg_h, clothing_water_kg, water_deficit_pct, osmolality_mOsm_kg,
      urine_kg_total, glycogen_kJ, fat_kg, protein_kg, sickness, heat_loss_air_W, heat_loss_canopy_W,
      heat_loss_floor_W, heat_loss_water_W, heat_loss_evaporation_W, heat_loss_breath_W, task_ability,
      fine_work, grip;
};

// Something that happened at a stop time; `text` is a sentence for people.
struct Event {
  double time_s = 0;
  int person = -1;  // -1: nobody in particular
  system::NoteKind kind = system::NoteKind::failure;
  std::string text;
  double asked = 0, given = 0;
  std::string unit;
};

// A balance over the run, in its own unit: "heat" J, "water" kg, "co2" m3, "food_energy" kJ, "salt" mOsm.
struct Ledger {
  std::string name;
  double residual = 0;    // change of what is stored, less what came in, plus what went out
  double throughput = 0;  // sum of absolute fluxes
  double relative() const { return throughput > 0 ? residual / throughput : residual; }
};

// A quantity passing a limit, inside a step or at a stop.
struct Crossing {
  int person = -1;
  system::Limit limit = system::Limit::none;
  double time_s = 0;
  double slope_per_h = 0;
  bool grazing = false;  // so flat that the time is poorly determined
  bool upward = false;
};

// An injury that is possible from a time on.
struct Injury {
  system::Limit limit = system::Limit::none;
  double time_s = 0;
};

// What becomes of one person. Empty optionals: not reached within the horizon.
struct Fate {
  std::optional<double> able_until_s, alive_until_s, unconscious_s;
  system::Limit able_cause = system::Limit::none, alive_cause = system::Limit::none;
  double nearest_margin_fraction = 0;  // of the way from the normal value to the next limit, still left
  system::Limit next_cause = system::Limit::none;
  std::vector<Injury> injuries;  // in time order
};

struct Timeline {
  std::string scenario_name;
  double start_unix_s = 0;
  std::vector<double> time_s;

  // Inside and outside.
  std::vector<double> inside_air_degC, canopy_degC, floor_water_degC, outside_air_degC, sea_degC, wind_m_s,
      inside_vapour_density_kg_m3, inside_relative_humidity_pct, co2_ppm, floor_water_L, condensate_L_total,
      ventilation_L_s, opening_m2, wave_height_m, irradiance_W_m2, rain_mm_h;
  // Stores.
  std::vector<double> water_L, food_kJ, medicine_doses, flares, lamp_h, beacon_h;
  // Heat ledger of the cabin, W.
  std::vector<double> cabin_from_bodies_W, cabin_from_sun_W, cabin_to_outside_through_canopy_W,
      cabin_to_sea_W, cabin_to_outside_by_air_W;

  std::vector<PersonSeries> persons;
  std::vector<Event> events;  // in time order
  std::vector<Ledger> ledgers;
  std::vector<Crossing> crossings;       // in time order, every entry and exit
  std::vector<Fate> fates;               // one per person
  std::vector<std::string> flags;        // sticky: correlations used outside their published range
  std::vector<std::string> assumptions;  // e.g. "canopy heat loss at the middle of its unmeasured range"
  double horizon_s = 0;
  double boarded_s = 0;  // 0: aboard from the start, or never
  bool in_raft = true;
};

}  // namespace bide::timeline
