// From the state of the air and the sea at any instant of the run to a Record.
//
// States: none. Inputs: a function that gives the atmosphere at t under a sun, evaluated once per knot.
// Validity: 0 to the run's end. Source: sun.hpp, sky.hpp, sea.hpp, core/moist_air.hpp.
#pragma once

#include <functional>

#include "bide/weather/sea.hpp"
#include "bide/weather/sun.hpp"
#include "bide/weather/weather.hpp"

namespace bide::weather {

struct Site {
  double start_unix_s, duration_s;
  double latitude_deg, longitude_deg;
  double raft_length_m;  // decides which waves move it

  bool operator==(const Site&) const = default;
};

struct Atmosphere {
  double air_temperature_degC, water_temperature_degC;
  double vapour_pressure_Pa;
  double wind_10m_m_s;
  double pressure_Pa;
  double cloud_cover_fraction;
  double rain_kg_m2_s;
  SeaState sea;
};

// Where the sun stands at the regular knots: the same for all weather of a place and time.
struct SunTrack {
  double start_unix_s, duration_s, latitude_deg, longitude_deg;
  std::vector<SunPosition> at_knots;
};
SunTrack sun_track(const Site& site);
bool fits(const SunTrack& sun, const Site& site);

struct RecordBuilder {
  // `sample_times_s`: further knots, any order; those within the run become Record::knots_s(). Throws
  // std::invalid_argument for the sun of another site.
  static Record build(const Site& site, const SunTrack& sun, std::vector<double> sample_times_s,
                      const std::function<Atmosphere(double t_s, const SunPosition&)>& atmosphere,
                      std::vector<std::string> notes);
};

}  // namespace bide::weather
