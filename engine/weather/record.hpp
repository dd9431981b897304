// From the state of the air and the sea at any instant of the run to a Record.
//
// States: none. Inputs: a function that gives the atmosphere at t, evaluated once per knot. Validity: 0 to
// the run's end. Source: sun.hpp, sky.hpp, sea.hpp, core/moist_air.hpp.
#pragma once

#include <functional>

#include "weather/sea.hpp"
#include "weather/weather.hpp"

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

struct RecordBuilder {
  // `sample_times_s`: further knots, any order; those within the run become Record::knots_s().
  static Record build(const Site& site, std::vector<double> sample_times_s,
                      const std::function<Atmosphere(double t_s)>& atmosphere,
                      std::vector<std::string> notes);
};

}  // namespace bide::weather
