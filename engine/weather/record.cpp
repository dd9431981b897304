#include "bide/weather/record.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <stdexcept>

#include "bide/constants/weather.hpp"
#include "bide/core/bit_cast.hpp"
#include "bide/core/moist_air.hpp"
#include "bide/weather/sky.hpp"
#include "bide/weather/sun.hpp"

namespace bide::weather {
namespace {

constexpr double knot_spacing_s = 600;
constexpr double same_time_s = 1e-3;

// What is stored at a knot; every member is interpolated on a straight line.
struct Knot {
  Forcing<double> forcing;
  double sun_elevation_deg;
  double equation_of_time_min;
};
constexpr std::size_t numbers_in_knot = sizeof(Knot) / sizeof(double);
using Numbers = std::array<double, numbers_in_knot>;

// Motion of one raft in waves. Computed again only when the sea has changed: it is half the work at a knot.
class Motion {
 public:
  explicit Motion(const Site& site)
      : cut_off_rad_s_(cut_off_rad_s(site.raft_length_m)), band_(motion_band(cut_off_rad_s_)) {}

  struct Accelerations {
    double vertical_m_s2, weighted_m_s2;
  };
  const Accelerations& in(const SeaState& sea) {
    if (sea_ != sea) {
      sea_ = sea;
      now_ = {vertical_acceleration_m_s2(sea, cut_off_rad_s_), weighted_acceleration_m_s2(sea, band_)};
    }
    return now_;
  }

 private:
  double cut_off_rad_s_;
  MotionBand band_;
  SeaState sea_{0, 0};  // a calm moves nothing
  Accelerations now_{0, 0};
};

Knot knot_at(Motion& motion, const SunPosition& sun, const Atmosphere& air) {
  using namespace constants;
  Knot knot;
  Forcing<double>& f = knot.forcing;
  f.air_temperature_degC = air.air_temperature_degC;
  f.water_temperature_degC = air.water_temperature_degC;
  f.vapour_density_kg_m3 = vapour_density_kg_m3(air.vapour_pressure_Pa, air.air_temperature_degC);
  f.wind_10m_m_s = air.wind_10m_m_s;
  f.wind_raft_m_s = wind_at_height_m_s(air.wind_10m_m_s, wind_reference_height_m, raft_wind_height_m);
  f.global_irradiance_W_m2 =
      clear_sky_irradiance_W_m2(sun.apparent_elevation_deg) * cloud_transmission(air.cloud_cover_fraction);
  f.seated_irradiance_W_m2 =
      seated_irradiance_W_m2(sun.apparent_elevation_deg, sun.distance_AU, f.global_irradiance_W_m2);
  f.sky_temperature_degC = sky_temperature_degC(
      air.air_temperature_degC,
      sky_emissivity(air.air_temperature_degC, air.vapour_pressure_Pa, air.cloud_cover_fraction));
  f.rain_kg_m2_s = air.rain_kg_m2_s;
  f.wave_height_m = air.sea.wave_height_m;
  f.wave_period_s = air.sea.wave_period_s;
  const Motion::Accelerations& moved = motion.in(air.sea);
  f.vertical_acceleration_m_s2 = moved.vertical_m_s2;
  f.weighted_acceleration_m_s2 = moved.weighted_m_s2;
  f.pressure_Pa = air.pressure_Pa;
  f.is_day = 0;  // decided from the interpolated elevation, where it is read
  knot.sun_elevation_deg = sun.elevation_deg;
  knot.equation_of_time_min = sun.equation_of_time_min;
  return knot;
}

std::size_t intervals(double duration_s) {
  return std::max(std::size_t{1}, static_cast<std::size_t>(std::ceil(duration_s / knot_spacing_s)));
}

SunPosition sun_at(const Site& site, double t_s) {
  return sun_position(site.start_unix_s + t_s, site.latitude_deg, site.longitude_deg);
}

}  // namespace

SunTrack sun_track(const Site& site) {
  SunTrack sun{site.start_unix_s, site.duration_s, site.latitude_deg, site.longitude_deg, {}};
  for (std::size_t k = 0; k <= intervals(site.duration_s); ++k)
    sun.at_knots.push_back(sun_at(site, knot_spacing_s * static_cast<double>(k)));
  return sun;
}

bool fits(const SunTrack& sun, const Site& site) {
  return sun.start_unix_s == site.start_unix_s && sun.duration_s == site.duration_s &&
         sun.latitude_deg == site.latitude_deg && sun.longitude_deg == site.longitude_deg;
}

// Knots ascending from 0 to the first regular knot at or past the end; `first[k]` is the last knot at or
// before k times the regular spacing, so a time needs one division and a search among the few knots of its
// interval.
struct Record::Series {
  struct Row {
    double t_s;
    Numbers numbers;
  };
  std::vector<Row> rows;
  std::vector<std::uint32_t> first;
  double end_s = 0, start_unix_s = 0, longitude_deg = 0;

  Knot at(double t) const {
    const double held = std::clamp(t, 0.0, end_s);
    const auto bucket = std::min(static_cast<std::size_t>(held * (1 / knot_spacing_s)), first.size() - 2);
    const Row* a = &rows[first[bucket]];
    for (const Row* last = &rows[first[bucket + 1] - 1]; a != last && a[1].t_s <= held; ++a) continue;
    const Row& b = a[1];
    const double s = (held - a->t_s) / (b.t_s - a->t_s);
    Numbers between;
    for (std::size_t k = 0; k < numbers_in_knot; ++k)
      between[k] = a->numbers[k] + s * (b.numbers[k] - a->numbers[k]);
    return bit_cast<Knot>(between);
  }
};

Record RecordBuilder::build(const Site& site, const SunTrack& sun, std::vector<double> sample_times_s,
                            const std::function<Atmosphere(double t_s, const SunPosition&)>& atmosphere,
                            std::vector<std::string> notes) {
  if (!fits(sun, site)) throw std::invalid_argument("RecordBuilder: the sun of another place or time");
  Record record;
  std::sort(sample_times_s.begin(), sample_times_s.end());
  for (double t : sample_times_s)
    if (t > same_time_s && t < site.duration_s - same_time_s &&
        (record.knots_s_.empty() || t > record.knots_s_.back() + same_time_s))
      record.knots_s_.push_back(t);

  auto series = std::make_shared<Record::Series>();
  series->end_s = site.duration_s;
  series->start_unix_s = site.start_unix_s;
  series->longitude_deg = site.longitude_deg;
  series->rows.reserve(sun.at_knots.size() + record.knots_s_.size());
  Motion motion(site);
  auto sample = record.knots_s_.begin();
  const auto add = [&](double t, const SunPosition& position) {
    series->rows.push_back({t, bit_cast<Numbers>(knot_at(motion, position, atmosphere(t, position)))});
  };
  for (std::size_t k = 0; k < sun.at_knots.size(); ++k) {
    const double regular_s = knot_spacing_s * static_cast<double>(k);
    for (; sample != record.knots_s_.end() && *sample < regular_s - same_time_s; ++sample)
      add(*sample, sun_at(site, *sample));
    for (; sample != record.knots_s_.end() && *sample < regular_s + same_time_s; ++sample) continue;
    add(regular_s, sun.at_knots[k]);
    series->first.push_back(static_cast<std::uint32_t>(series->rows.size() - 1));
  }
  record.series_ = std::move(series);
  record.notes_ = std::move(notes);
  return record;
}

Forcing<double> Record::at(double t_s) const {
  Knot knot = series_->at(t_s);
  knot.forcing.is_day = knot.sun_elevation_deg > horizon_elevation_deg() ? 1 : 0;
  return knot.forcing;
}

std::vector<double> Record::line_ends_s() const {
  std::vector<double> out;
  for (const Series::Row& row : series_->rows)
    if (row.t_s < series_->end_s) out.push_back(row.t_s);
  out.push_back(series_->end_s);
  return out;
}

bool Record::is_day(double t_s) const {
  return at(t_s).is_day > 0;
}

double Record::local_solar_hour(double t_s) const {
  const double unix_s = series_->start_unix_s + t_s;
  return solar_hour(unix_s, series_->longitude_deg, series_->at(t_s).equation_of_time_min);
}

}  // namespace bide::weather
