// A trial with one person, in a room or in the water, read by the minute.
#pragma once

#include <functional>
#include <string>

#include "validation/support/rest.hpp"

namespace bide::validation {

// Who took part. What a source leaves out is a judgement of the topic's README.
struct Who {
  const char* sex = "male";
  double age_years = 25, height_m = 1.75, mass_kg = 72, fat_pct = 15;
  const char* clothing = "shorts";
  const char* more = "";  // further members of the scenario's person, each with a comma before it
};

// Seated in still air and walls of `air_degC`.
Rest in_room(const Who& who, double air_degC, double hours);

// To the neck, without a raft; everybody wears a lifejacket, in place of the bath or of those who watch.
// `in_water` is the scenario's word for what is done there.
Rest in_water(const Who& who, double water_degC, double hours, const char* in_water = "still");

// Times are minutes from the start and must be multiples of `every_min`.
struct Trial {
  Run run;
  double every_min;

  const double* at(double min) const;  // state of the person
  const body::Build<double>& build() const { return run.compiled.persons[0]; }
  double core_degC(double min) const;  // rectal
  double skin_degC(double min) const;  // mean
  double change(int entry, double from_min, double to_min) const;
  double mean_W(int total, double from_min, double to_min) const;  // of a running total in J
  double heat_W(double from_min, double to_min) const;             // all heat made
  double heat_W_m2(double from_min, double to_min) const;
  double shivering_W(double from_min, double to_min) const;
};
Trial trial_of(const Rest& rest, double every_min,
               const std::function<void(system::Compiled<double>&)>& prepare = {});

// Oxygen uptake that so much heat means, mL/(kg min): 20.3 kJ/L at a respiratory quotient of 0.85 (ISO 8996,
// from memory).
double oxygen_mL_kg_min(double heat_W, double mass_kg);

// A finding of which only the direction is told: it holds from `least` to `most`.
Row sign_row(const char* topic, const char* study, const std::string& quantity, const char* unit,
             double least, double most, double model, const char* why);

}  // namespace bide::validation
