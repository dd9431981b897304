#include "place.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <string_view>
#include <vector>

#include "bide/core/text.hpp"
#include "bide/scenario/nearest.hpp"
#include "bide/scenario/sea_areas.hpp"
#include "point.hpp"

namespace bide::tool {
namespace {

std::vector<std::string_view> area_names() {
  std::vector<std::string_view> out;
  for (const scenario::SeaArea& area : scenario::sea_areas().sea_areas) out.push_back(area.title);
  return out;
}

}  // namespace

Place place_of(const std::string& text) {
  if (const scenario::SeaArea* area = scenario::find_sea_area(text))
    return {{area->latitude_deg, area->longitude_deg}, area->title};
  const std::optional<climate::Point> point = point_in(text);
  if (!point)
    throw BadAnswer(
        fmt::format("place {}: give \"latitude,longitude\" or the name of a sea (bide catalogue seas){}",
                    text, scenario::did_you_mean(text, area_names())));
  if (!on_earth(*point))
    throw BadAnswer(fmt::format("place {}: latitude is -90 to 90, longitude -180 to 180", text));
  return {*point,
          fmt::format("{:g}° {} {:g}° {}", std::abs(point->latitude_deg), point->latitude_deg < 0 ? "S" : "N",
                      std::abs(point->longitude_deg), point->longitude_deg < 0 ? "W" : "E")};
}

std::optional<int> take_month(std::string& place) {
  constexpr std::array<std::string_view, 12> names{"january",   "february", "march",    "april",
                                                   "may",       "june",     "july",     "august",
                                                   "september", "october",  "november", "december"};
  const std::size_t in = place.rfind(" in ");
  if (in == std::string::npos) return std::nullopt;
  const std::string word = lower_case(place.substr(in + std::string_view(" in ").size()));
  const auto at = std::find(names.begin(), names.end(), word);
  if (at == names.end()) return std::nullopt;
  place.resize(in);
  return static_cast<int>(at - names.begin()) + 1;
}

}  // namespace bide::tool
