// Builds a Record from the state of the air and the sea at any instant of the run.
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
  double raft_length_m;  // above 0; decides which waves move the raft

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

// Position of the sun at the regular knots: the same for all weather of a place and time.
struct SunTrack {
  double start_unix_s, duration_s, latitude_deg, longitude_deg;
  std::vector<SunPosition> at_knots;
};
// Computes the sun's positions for a site.
SunTrack sun_track(const Site& site);
// Whether the positions are those of this site and run.
bool fits(const SunTrack& sun, const Site& site);

struct RecordBuilder {
  // Evaluates the atmosphere at every knot. Throws std::invalid_argument for the sun of another site.
  // @param site           place, start, duration and raft length
  // @param sun            of this site
  // @param sample_times_s further knots, s since the start, any order; those within the run become
  //                       Record::knots_s()
  // @param atmosphere     the air and the sea at t_s, s since the start
  // @param notes          passed on to Record::notes()
  static Record build(const Site& site, const SunTrack& sun, std::vector<double> sample_times_s,
                      const std::function<Atmosphere(double t_s, const SunPosition&)>& atmosphere,
                      std::vector<std::string> notes);
};

}  // namespace bide::weather
