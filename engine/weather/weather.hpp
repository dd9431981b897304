// The forcing at time t: air, sea, wind, sun, sky, waves, rain.
//
// States: none. Inputs: the scenario's weather and position. Outputs: SI (temperatures in degC as everywhere in
// the engine's interfaces). Validity: each function's own header. Time is seconds since the scenario's start.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "scenario/validate.hpp"

namespace bide::weather {

template <class T>
struct Forcing {
  T air_temperature_degC, water_temperature_degC;
  T vapour_density_kg_m3;         // outdoor
  T wind_10m_m_s, wind_raft_m_s;  // raft: log profile at 1 m
  T global_irradiance_W_m2;       // on the horizontal, after cloud
  T sky_temperature_degC;         // black-body equivalent of the long-wave from the sky
  T rain_kg_m2_s;
  T wave_height_m, wave_period_s;
  T vertical_acceleration_m_s2;   // rms, of a raft that follows the surface
  T pressure_Pa;
};

// Built once, then read only. `gaps` and `notes` say what was interpolated or filled.
class Record {
 public:
  Forcing<double> at(double t_s) const;
  // Times at which a series has a kink or a jump within (0, end_s): the march lands on them.
  const std::vector<double>& knots_s() const { return knots_s_; }
  const std::vector<std::string>& notes() const { return notes_; }
  bool is_day(double t_s) const;              // sun above the horizon
  double local_solar_hour(double t_s) const;  // [0, 24)

  struct Series;  // columns of the record on its own time axis, with the derived sea state

 private:
  std::shared_ptr<const Series> series_;
  std::vector<double> knots_s_;
  std::vector<std::string> notes_;
  friend struct RecordBuilder;
};

// Loads the file if there is one. Every problem found is in the list (missing file, gaps by name and time...).
std::variant<Record, scenario::Diagnostics> load(const scenario::ValidScenario&);

}  // namespace bide::weather
