// The forcing at time t: air, sea, wind, sun, sky, waves, rain.
//
// States: none. Inputs: the scenario's weather and position. Outputs: SI (temperatures in degC as everywhere
// in the engine's interfaces). Time is seconds since the scenario's start. Validity: each function's own
// header; between knots ten minutes apart (and the file's own times) every quantity is a straight line, which
// for the sun is wrong by at most 6 W/m2 (3 found), around sunrise and sunset; outside the run the value at
// the nearest end is returned. In a calm without swell wave height and period are 0.
#pragma once

#include <memory>
#include <string>
#include <variant>
#include <vector>

#include "bide/scenario/validate.hpp"

namespace bide::weather {

// The forcing at one time.
template <class T>
struct Forcing {
  T air_temperature_degC, water_temperature_degC;
  T vapour_density_kg_m3;         // outdoor
  T wind_10m_m_s, wind_raft_m_s;  // raft: log profile at 1 m
  T global_irradiance_W_m2;       // on the horizontal, below the clouds
  T seated_irradiance_W_m2;       // of sun and sky, mean over what a seated person in the open turns outward
  T sky_temperature_degC;         // of the black body that radiates as much as the sky
  T rain_kg_m2_s;
  T wave_height_m, wave_period_s;  // significant; mean zero-crossing
  T vertical_acceleration_m_s2;    // root mean square, of a raft that follows the surface
  T weighted_acceleration_m_s2;    // the same, weighted for seasickness (W_f)
  T pressure_Pa;
  T is_day;  // 1 with the sun above the horizon, else 0: a T, so that lanes may differ
};

// The weather of a run. Built once, then read only, by any number of threads; only load() and load_weather()
// make a usable one.
class Record {
 public:
  // The forcing at a time; takes about 10 ns.
  // @param t_s s since the scenario's start; outside the run the value at the nearest end is returned
  Forcing<double> at(double t_s) const;
  // Times of the file's rows within the run, where a series may have a kink: the march lands on them. The
  // regular knots, every ten minutes from the start, are not listed.
  const std::vector<double>& knots_s() const { return knots_s_; }
  // 0, every knot within the run, regular or of the file, and the run's end, s: between neighbours every
  // quantity is one straight line.
  std::vector<double> line_ends_s() const;
  // What was interpolated or filled, as sentences.
  const std::vector<std::string>& notes() const { return notes_; }
  bool is_day(double t_s) const;              // upper limb of the sun above the horizon
  double local_solar_hour(double t_s) const;  // [0, 24)

  // Copies of one record share what they hold.
  bool same_as(const Record& other) const { return series_ == other.series_; }

  struct Series;  // columns of the record on its own time axis, with the derived sea state

 private:
  std::shared_ptr<const Series> series_;
  std::vector<double> knots_s_;
  std::vector<std::string> notes_;
  friend struct RecordBuilder;
};

// Makes the weather of a scenario, from its file if there is one.
// @return the record, or every problem found (missing file, gaps by name and time...)
std::variant<Record, scenario::Diagnostics> load(const scenario::ValidScenario&);

}  // namespace bide::weather
