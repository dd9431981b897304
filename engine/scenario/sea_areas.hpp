// Monthly climate of a few sea areas, for scenarios that have no weather of their own.
//
// Validity: monthly means of ship reports; wind is the mean scalar speed, so gales and calms are not in it.
// Source: scenarios/catalogue/sea_areas.json, which names the climatology of each table.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace bide::scenario {

using Months = std::array<double, 12>;

struct SeaArea {
  std::string key, title, source;
  double latitude_deg = 0, longitude_deg = 0;
  Months water_temperature_degC{}, air_temperature_degC{}, relative_humidity_pct{}, wind_speed_m_s{},
      pressure_hPa{}, cloud_cover_fraction{};
};

struct SeaAreas {
  std::vector<SeaArea> sea_areas;
};

const std::vector<SeaArea>& sea_areas();
const SeaArea* find_sea_area(std::string_view key);

// The table whose cell is nearest, and how far it is along the great circle.
struct NearestArea {
  const SeaArea* area = nullptr;
  double distance_km = 0;
};
NearestArea nearest_sea_area(double latitude_deg, double longitude_deg);

}  // namespace bide::scenario
