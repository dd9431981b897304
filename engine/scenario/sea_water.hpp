// The range of sea surface temperature, the same in scenarios, the catalogue and weather files.
#pragma once

namespace bide::scenario {

inline constexpr double coldest_sea_degC = -3,
                        warmest_sea_degC = 45;  // climatic chambers are warmer than any sea

}  // namespace bide::scenario
