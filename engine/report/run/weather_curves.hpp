// What a page shows of the weather of a run, besides temperatures.
#pragma once

#include "bide/report/document/document.hpp"
#include "bide/timeline/series.hpp"

namespace bide::report::pages {

struct WeatherCurve {
  const char *title, *sentence;
  document::Axis y;
  std::vector<double> timeline::Timeline::*values;
};

inline const WeatherCurve weather_curves[] = {
    {"Wind", "Speed of the wind at 10 m against time.", {"wind", "m/s", true}, &timeline::Timeline::wind_m_s},
    {"Waves",
     "Significant wave height against time: the mean of the highest third.",
     {"significant height", "m", true},
     &timeline::Timeline::wave_height_m},
    {"Rain", "Rain against time.", {"rain", "mm/h", true}, &timeline::Timeline::rain_mm_h}};

}  // namespace bide::report::pages
