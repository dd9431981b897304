// Scenario text for people at rest: one raft, steady or daily air, few stores. What a case does not set is
// stated here, so that a case reads as its differences.
#pragma once

#include <initializer_list>
#include <string>
#include <vector>

#include "validation/row.hpp"
#include "validation/support/march.hpp"

namespace bide::validation {

// JSON fragments are the scenario's own objects. Polar night by default: no sun whatever the clock says. The
// default raft is a room: a large canopy of two skins, wide open, so that air and walls are as outside.
struct Rest {
  double duration_h = 24;
  std::string start = "2031-12-15T08:00:00Z";
  double latitude_deg = 89;
  double air_degC = 22, sea_degC = 22, swing_K = 0, humidity_pct = 45, wind_m_s = 0.2, cloud = 1;
  std::string weather_file;  // CSV in place of the steady or daily air
  bool wind_sea = false;     // waves as the wind raises them; else flat
  std::string raft = R"({"kind": "solas_20", "opening_area_m2": 10})";  // empty: nobody reaches one
  std::string crew;                                                     // the array, with its brackets
  std::string boarding = R"({"kind": "dry", "water_shipped_L": 0})";
  std::string endurance = "tires";  // word of the scenario's model
  std::string stores = "{}";
  std::string rationing = R"({"rule": "by_thirst", "food_only_with_water": false})";
  std::string routine = R"({"opening_fraction_day": 1, "opening_fraction_night": 1})";
};

std::string scenario_of(const Rest& rest, double output_interval_min);

// One person's block of a sample, person 0 unless said.
inline const double* person(const Sample& s, int p = 0) {
  return s.x.data() + system::person_offset(p);
}

// Mass as a scale reads it, kg: water, fat, protein, glycogen and food in the gut. Bone and the like do not
// change and are left out, so only differences mean anything.
double weighed_kg(const double* person);

// First time, s, at which `value(person)` is at or beyond `limit` (above it where `rising`), straight between
// samples; the end of the run if never.
double time_reached_s(const Run& run, const std::function<double(const double*)>& value, double limit,
                      bool rising);

Row make_row(const char* topic, const char* study, const std::string& quantity, const char* unit,
             double published, double low, double high, double model, const char* why);

// Adds what is thought to be wrong, if the row misses.
void blame(Row& row, const char* cause);

// The same for every row whose quantity starts so.
struct Cause {
  const char *start, *cause;
};
void blame_named(std::vector<Row>& rows, std::initializer_list<Cause> causes);

}  // namespace bide::validation
