#include "bide/scenario/month_weather.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "bide/constants/climate.hpp"
#include "bide/core/interpolate.hpp"
#include "bide/scenario/patch.hpp"
#include "bide/scenario/words.hpp"

namespace bide::scenario {
namespace {

double to_hundredths(double value) {
  constexpr double hundredths = 100;
  return std::round(value * hundredths) / hundredths;
}

}  // namespace

void put_month_weather(Node& document, WeatherKind kind, const StatedWeather& stated,
                       const std::optional<climate::Month>& month) {
  put(document, "/weather/kind", std::string(word(kind)));
  const auto put_one = [&](const char* key, const std::optional<double>& answer, double of_month) {
    const std::string pointer = fmt::format("/weather/{}", key);
    if (answer)
      put(document, pointer, *answer);
    else if (month)
      put(document, pointer, to_hundredths(of_month));
  };
  const climate::Month m = month.value_or(climate::Month{});
  put_one("air_temperature_degC", stated.air_degC, m.air_temperature_degC);
  put_one("water_temperature_degC", stated.water_degC, m.sea_temperature_degC);
  put_one("relative_humidity_pct", std::nullopt, m.relative_humidity_pct);
  put_one("wind_speed_m_s", stated.wind_m_s, m.wind_speed_m_s);
  put_one("cloud_cover_fraction", std::nullopt, m.cloud_cover_fraction);
  put_one("pressure_hPa", std::nullopt, m.pressure_hPa);
  if (kind != WeatherKind::variable) return;
  if (month)  // rounded first: the limit is no whole hundredth
    put(document, "/weather/wind_spread_fraction",
        std::min(to_hundredths(m.wind_spread_m_s / m.wind_speed_m_s),
                 constants::no_prevailing_direction.value));
  put_one("air_temperature_spread_K", std::nullopt, m.air_temperature_spread_K);
  put_one("rain_mm_h", std::nullopt, m.rain_mm_h);
  put_one("rain_hours_fraction", std::nullopt, m.rain_share);
}

double usual_opening_by_day(double air_degC) {
  constexpr std::array temperature_degC{closed_up_degC, 20.0}, opening{0.05, 0.3};
  return to_hundredths(interpolate_linear(temperature_degC, opening, air_degC));
}

}  // namespace bide::scenario
