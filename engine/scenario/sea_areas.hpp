// Places at sea by name, for scenarios that give no position.
//
// Validity: one place inside each area; its climate is that of the place (climate/month.hpp). Source:
// scenarios/catalogue/sea_areas.json.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace bide::scenario {

struct SeaArea {
  std::string key, title;
  double latitude_deg = 0, longitude_deg = 0;
};

struct SeaAreas {
  std::string source;
  std::vector<SeaArea> sea_areas;
};

const SeaAreas& sea_areas();
// By name or key; capital letters do not matter.
// @return null when there is none
const SeaArea* find_sea_area(std::string_view name);

}  // namespace bide::scenario
