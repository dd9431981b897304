#include "bide/climate/month.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <boost/math/special_functions/bessel.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <numbers>

#include "bide/constants/climate.hpp"
#include "bide/core/interpolate.hpp"
#include "bide/core/units.hpp"

namespace bide::climate {
namespace {

const double no_prevailing = std::sqrt(std::numbers::pi / 2);  // mean speed over spread, Rayleigh law

double between(double low, double high, const auto& f) {
  constexpr std::uintmax_t most_steps = 100;
  std::uintmax_t steps = most_steps;
  const auto [a, b] =
      boost::math::tools::toms748_solve(f, low, high, boost::math::tools::eps_tolerance<double>(40), steps);
  return (a + b) / 2;
}

constexpr std::array<std::string_view, 7> names{"sea temperature", "air temperature", "humidity", "wind",
                                                "prevailing wind", "cloud",           "pressure"};

}  // namespace

double by_latitude(Sourced constants::Zone::*number, double latitude_deg) {
  std::array<double, constants::zones.size()> at{}, values{};
  for (std::size_t i = 0; i < at.size(); ++i) {
    at[i] = constants::zones[i].middle_deg;
    values[i] = (constants::zones[i].*number).value;
  }
  return interpolate_linear(at, values, latitude_deg);
}

double mean_speed_m_s(double spread_m_s, double vector_speed_m_s) {
  if (!(spread_m_s > 0)) return vector_speed_m_s;
  const double half = vector_speed_m_s * vector_speed_m_s / (4 * spread_m_s * spread_m_s);
  constexpr double steady = 300;  // beyond it the Bessel functions overflow, and the next term is 1e-6
  if (half > steady) return vector_speed_m_s + spread_m_s * spread_m_s / (2 * vector_speed_m_s);
  using boost::math::cyl_bessel_i;
  return spread_m_s * no_prevailing * std::exp(-half) *
         ((1 + 2 * half) * cyl_bessel_i(0, half) + 2 * half * cyl_bessel_i(1, half));
}

double component_spread_m_s(double mean_m_s, double vector_speed) {
  if (mean_m_s <= vector_speed) return 0;
  return between(0, mean_m_s, [&](double s) { return mean_speed_m_s(s, vector_speed) - mean_m_s; });
}

double vector_speed_m_s(double mean_m_s, double spread_m_s) {
  if (mean_m_s <= no_prevailing * spread_m_s) return 0;
  return between(0, mean_m_s * (1 + 1e-9),
                 [&](double v) { return mean_speed_m_s(spread_m_s, v) - mean_m_s; });
}

std::variant<Month, std::string> month_at(const Point& place, int month) {
  // Beyond this a mean says little about the place. The atlas of clouds has wide gaps, and a cloudy sky far
  // off tells more than none.
  constexpr double reach_km = 1000, cloud_reach_km = 3000;
  if (is_land(place)) {
    const Point sea = nearest_sea(place);
    return fmt::format("is land; the nearest sea is at {:.1f},{:.1f}, {:.0f} km away", sea.latitude_deg,
                       sea.longitude_deg, distance_km(place, sea));
  }
  std::array<double, names.size()> value{};
  Month out{};
  for (std::size_t f = 0; f < names.size(); ++f) {
    const auto field = static_cast<Field>(f);
    const double reach = field == Field::cloud_cover ? cloud_reach_km : reach_km;
    const auto found = mean(field, place, month, reach);
    if (!found) return fmt::format("has no {} for month {} within {:.0f} km", names[f], month, reach);
    value[f] = found->value;
    if (found->distance_km > out.farthest_km) {
      out.farthest_km = found->distance_km;
      out.farthest = names[f];
    }
  }
  const auto of = [&](Field field) { return value[static_cast<std::size_t>(field)]; };
  out.sea_temperature_degC = of(Field::sea_temperature);
  out.air_temperature_degC = of(Field::air_temperature);
  out.relative_humidity_pct = of(Field::relative_humidity);
  out.wind_speed_m_s = of(Field::wind_speed);
  out.cloud_cover_fraction = of(Field::cloud_cover);
  out.pressure_hPa = of(Field::pressure);
  out.wind_spread_m_s = std::max(component_spread_m_s(of(Field::wind_speed), of(Field::vector_wind)),
                                 constants::steadiest_wind.value * of(Field::wind_speed));
  out.air_temperature_spread_K = by_latitude(&constants::Zone::air_temperature_spread_K, place.latitude_deg);
  out.rain_mm_h = by_latitude(&constants::Zone::rain_mm_d, place.latitude_deg) / day_h;
  out.rain_share = by_latitude(&constants::Zone::rain_share, place.latitude_deg);
  return out;
}

}  // namespace bide::climate
