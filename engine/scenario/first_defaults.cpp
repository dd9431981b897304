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

// Whether anything in the scenario makes use of a field.
bool in_play(std::string_view pattern, const Scenario& scenario) {
  const BoardingKind boarding = scenario.boarding.kind;
  const bool swam = boarding == BoardingKind::swim || boarding == BoardingKind::float_free;
  const bool raft = scenario.raft.has_value();
  const RationingRule rule = scenario.rationing.rule;
  if (pattern == "/boarding/minutes_in_water") return swam;
  if (pattern == "/rationing/water_L_per_day")
    return rule == RationingRule::fixed_per_day || rule == RationingRule::none_first_day;
  if (pattern == "/routine/inflate_floor") return raft && scenario.raft->floor == FloorKind::inflated;
  if (pattern == "/raft/canopy_heat_loss_position") return raft && scenario.raft->canopy != CanopyKind::none;
  if (pattern.starts_with("/raft/") || pattern.starts_with("/routine/") || pattern == "/crew/*/seat" ||
      pattern == "/boarding/water_shipped_L")
    return raft;
  return true;
}

}  // namespace

std::vector<DefaultInForce> first_defaults(const ValidScenario& valid, std::size_t most) {
  static const std::vector<FieldLine> fields = field_lines();
  const Json scenario = object_to_json(valid.scenario);
  std::vector<DefaultInForce> out;
  const auto add = [&](const std::string& pointer) {
    const std::string pattern = any_index(pointer);
    if (!in_play(pattern, valid.scenario)) return;
    const DefaultInForce::Value value{pointer, value_at(scenario, pointer)};
    const auto known = std::find_if(out.begin(), out.end(), [&](const DefaultInForce& each) {
      return any_index(each.values.front().pointer) == pattern;
    });
    if (known == out.end()) {
      const auto field = std::find_if(fields.begin(), fields.end(),
                                      [&](const FieldLine& each) { return each.pointer == pattern; });
      if (out.size() < most) out.push_back({{value}, field->sentence});
    } else if (std::none_of(known->values.begin(), known->values.end(),
                            [&](const auto& each) { return each.pointer == pointer; })) {
      known->values.push_back(value);
    }
  };
  for (const std::string_view first : order)
    for (const std::string& pointer : valid.defaults)
      if (any_index(pointer) == first) add(pointer);
  for (const std::string& pointer : valid.defaults) add(pointer);
  return out;
}

}  // namespace bide::scenario
