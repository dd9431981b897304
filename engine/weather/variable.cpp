#include "bide/weather/variable.hpp"

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/special_functions/pow.hpp>
#include <cmath>

#include "bide/climate/month.hpp"
#include "bide/constants/climate.hpp"
#include "bide/constants/weather.hpp"
#include "bide/core/random.hpp"
#include "bide/core/units.hpp"

namespace bide::weather {
namespace {

using namespace constants;
using boost::math::pow;

// In plain doubles: the library's default is extended precision, at five times the cost.
using Precision = boost::math::policies::policy<boost::math::policies::promote_double<false>>;
const boost::math::normal_distribution<double, Precision> unit_normal;

double probability(double z) {
  return boost::math::cdf(unit_normal, z);
}
double normal_at(double p) {
  return boost::math::quantile(unit_normal, p);
}

// A normal quantity of mean 0 and spread 1 that forgets exponentially, hour by hour.
class Memory {
 public:
  Memory(const char* name, double memory_h) : stream_(stream_of(name)), kept_(std::exp(-1 / memory_h)) {}

  double next(std::uint32_t seed) {
    const double fresh = normal_at(uniform(seed, hours_, stream_, 0));
    now_ = hours_++ == 0 ? fresh : kept_ * now_ + std::sqrt(1 - pow<2>(kept_)) * fresh;
    return now_;
  }

 private:
  std::uint32_t stream_;
  double kept_;
  std::uint64_t hours_ = 0;
  double now_ = 0;
};

struct Latent {
  Memory along{"wind along its mean", wind_memory_h}, across{"wind across its mean", wind_memory_h};
  Memory front{"front", front_memory_h}, air{"air temperature", air_memory_h}, damp{"humidity", air_memory_h};
  double behind = 0;  // what the front was, forgetting as fast
};

// Where the front's normal quantity has the month's mean cloud above it.
double cloud_middle(double mean) {
  constexpr double least = 1e-3;  // a mean of 0 or 1 has no spread
  return normal_at(std::clamp(mean, least, 1 - least)) * std::hypot(1.0, cloud_sharpness.value);
}

// Exponential rates in the rainy part of the front's range, with the mean that was asked for.
double rain_of(double front, const scenario::VariableWeather& c) {
  if (!(c.rain_mm_h > 0)) return 0;
  const double above = probability(-front);
  return above >= c.rain_hours_fraction
             ? 0
             : -c.rain_mm_h / c.rain_hours_fraction * std::log(above / c.rain_hours_fraction);
}

double humidity_of(double front, double damp, double mean_pct) {
  const double part =
      front_share_of_humidity * front + std::sqrt(1 - pow<2>(double{front_share_of_humidity})) * damp;
  return std::clamp(mean_pct + humidity_spread_pct * part, 0.0, 100.0);
}

// Height that waves of a wind have for one of the law's unit of fetch to the half, m.
double growth_scale_m(double wind_10m_m_s) {
  return wave_growth_height * pow<2>(wind_10m_m_s) / gravity_m_s2;
}

// Zero-crossing period of waves that this wind has raised to a height: a young sea is steep.
double wind_sea_period_s(double height_m, double wind_10m_m_s) {
  constexpr double power = 2.0 / 3;  // of period with height: (1/3) / (1/2)
  const double growing = zero_crossing_over_peak * wave_growth_period * wind_10m_m_s / gravity_m_s2 *
                         std::pow(height_m / growth_scale_m(wind_10m_m_s), power);
  return std::min(growing, fully_developed_sea(wind_10m_m_s).wave_period_s);
}

}  // namespace

SeaState Waves::together(double wind_10m_m_s) const {
  const double height = std::hypot(wind_sea_m, swell_m);
  if (!(height > 0)) return {0, 0};
  // Zero-crossing period of two spectra together: from the sums of their zeroth and second moments.
  double second = 0;
  if (wind_sea_m > 0) second += pow<2>(wind_sea_m / wind_sea_period_s(wind_sea_m, wind_10m_m_s));
  if (swell_m > 0) second += pow<2>(swell_m / swell_period_s);
  return {height, height / std::sqrt(second)};
}

Waves blown(Waves w, double wind_10m_m_s, double hours) {
  const double swell_energy = pow<2>(w.swell_m) * std::exp(-hours / swell_memory_h);
  const SeaState full = fully_developed_sea(wind_10m_m_s);
  w.swell_m = std::sqrt(swell_energy);
  if (w.wind_sea_m > full.wave_height_m) {
    // The wind can no longer hold these waves: they run on as swell.
    const double passed = pow<2>(w.wind_sea_m) - pow<2>(full.wave_height_m);
    const double period = period_of_height_s(w.wind_sea_m);
    w.swell_period_s = (w.swell_period_s * swell_energy + period * passed) / (swell_energy + passed);
    w.swell_m = std::sqrt(swell_energy + passed);
    w.wind_sea_m = full.wave_height_m;
    return w;
  }
  constexpr double height_power = 0.75;  // of height with time: (1/2) / (2/3)
  const double scale_m = growth_scale_m(wind_10m_m_s);
  if (!(scale_m > 0)) return w;
  const double blown_for = wave_growth_time * std::pow(w.wind_sea_m / scale_m, 1 / height_power) +
                           gravity_m_s2 * hours * hour_s / wind_10m_m_s;
  w.wind_sea_m = std::min(full.wave_height_m, scale_m * std::pow(blown_for / wave_growth_time, height_power));
  return w;
}

std::vector<Hour> variable_hours(const scenario::VariableWeather& c, double duration_s) {
  constexpr int before_h = 96;  // the sea and the fronts have a past
  const int last = static_cast<int>(std::ceil(duration_s / hour_s));
  const double spread_m_s = c.wind_spread_fraction * c.wind_speed_m_s;
  const double vector_m_s = climate::vector_speed_m_s(c.wind_speed_m_s, spread_m_s);
  const double clouded = cloud_middle(c.cloud_cover_fraction);
  const auto seed = static_cast<std::uint32_t>(c.seed);
  const double front_kept = std::exp(-1 / front_memory_h.value);
  Latent latent;
  Waves waves;
  std::vector<Hour> out;
  for (int hour = -before_h; hour <= last; ++hour) {
    const double along = vector_m_s + spread_m_s * latent.along.next(seed);
    const double wind = std::hypot(along, spread_m_s * latent.across.next(seed));
    const double front = latent.front.next(seed);
    latent.behind = front_kept * latent.behind + (1 - front_kept) * front;
    const double air = latent.air.next(seed), damp = latent.damp.next(seed);
    waves = blown(waves, wind, 1);
    if (hour < 0) continue;
    // Half of the variance is the front's; the difference from what it was has half of its own.
    const double anomaly = std::sqrt(0.5) * air + (front - latent.behind);
    out.push_back({c.air_temperature_degC + c.air_temperature_spread_K * anomaly,
                   humidity_of(front, damp, c.relative_humidity_pct), wind,
                   probability(clouded + cloud_sharpness * front), rain_of(front, c), waves.together(wind)});
  }
  return out;
}

}  // namespace bide::weather
