#include "bide/scenario/first_defaults.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include "bide/scenario/write.hpp"
#include "bide/scenario/writer.hpp"

namespace bide::scenario {
namespace {

constexpr std::array<std::string_view, 20> order{"/weather/rain_mm_h",
                                                 "/routine/opening_fraction_day",
                                                 "/routine/opening_fraction_night",
                                                 "/crew/*/clothing",
                                                 "/boarding/minutes_in_water",
                                                 "/boarding/wet_fraction",
                                                 "/boarding/water_shipped_L",
                                                 "/stores/pack",
                                                 "/rationing/rule",
                                                 "/rationing/water_L_per_day",
                                                 "/routine/inflate_floor",
                                                 "/crew/*/seat",
                                                 "/raft/floor",
                                                 "/raft/canopy_heat_loss_position",
                                                 "/raft/leakage_position",
                                                 "/crew/*/body_fat_pct",
                                                 "/weather/cloud_cover_fraction",
                                                 "/weather/relative_humidity_pct",
                                                 "/routine/bail_every_h",
                                                 "/model/shivering_endurance"};

std::string value_at(const Json& scenario, const std::string& pointer) {
  const auto at = Json::json_pointer(pointer);
  if (!scenario.contains(at)) return "none";
  const Json& value = scenario.at(at);
  return value.is_string() ? value.get<std::string>() : value.dump();
}

}  // namespace

std::vector<DefaultInForce> first_defaults(const ValidScenario& valid, std::size_t most) {
  static const std::vector<FieldLine> fields = field_lines();
  const Json scenario = object_to_json(valid.scenario);
  std::vector<DefaultInForce> out;
  const auto add = [&](const std::string& pointer) {
    const std::string pattern = any_index(pointer);
    if (out.size() == most ||
        std::any_of(out.begin(), out.end(), [&](const auto& each) { return each.pointer == pattern; }))
      return;
    const auto field = std::find_if(fields.begin(), fields.end(),
                                    [&](const FieldLine& each) { return each.pointer == pattern; });
    std::string value = value_at(scenario, pointer);
    if (field->is_number && field->unit != "1") value += " " + field->unit;
    out.push_back({pattern, std::move(value), field->sentence});
  };
  for (const std::string_view first : order)
    for (const std::string& pointer : valid.defaults)
      if (any_index(pointer) == first) add(pointer);
  for (const std::string& pointer : valid.defaults) add(pointer);
  return out;
}

}  // namespace bide::scenario
