// The weather of a new scenario: what was stated goes before what the climate of the month says.
#pragma once

#include <optional>

#include "bide/climate/month.hpp"
#include "bide/scenario/document.hpp"

namespace bide::scenario {

struct StatedWeather {
  std::optional<double> air_degC, water_degC, wind_m_s;
};

// Puts "/weather" into a tree. The climate is not known better than to a hundredth.
// @param kind   constant or variable
// @param stated in place of the month's
// @param month  empty: only what was stated is put
void put_month_weather(Node& document, WeatherKind kind, const StatedWeather& stated,
                       const std::optional<climate::Month>& month);

inline constexpr double closed_up_degC = 10;
// Share of the entrances open by day in a new scenario: nobody leaves them a third open in the cold. A
// twentieth at closed_up_degC and below, as at night; three tenths, which is the default, at 20 degC and
// above; a straight line between. Common practice, no source.
// @param air_degC mean air temperature, degC
double usual_opening_by_day(double air_degC);

}  // namespace bide::scenario
