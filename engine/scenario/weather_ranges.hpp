// The ranges of weather, the same in scenarios, the catalogue and weather files.
#pragma once

namespace bide::scenario {

struct Range {
  double low, high;
};

// Judgement: what lies beyond is taken for a fault of the file. The warmest sea is warmer than any, for
// people are tried in climatic chambers too.
inline constexpr Range air_range_degC{-50, 60}, sea_range_degC{-3, 45}, dew_point_range_degC{-60, 40},
    wind_range_m_s{0, 60}, pressure_range_hPa{850, 1100}, rain_range_mm_h{0, 200}, wave_height_range_m{0, 25},
    wave_period_range_s{1, 25};

}  // namespace bide::scenario
