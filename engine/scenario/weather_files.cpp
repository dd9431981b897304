#include "bide/scenario/weather_files.hpp"

namespace bide::scenario {

std::vector<std::string> weather_files(const ValidScenario& scenario) {
  const std::string key = "/weather/file";
  std::vector<std::string> out;
  const auto add = [&](const Value& value) {
    if (const auto* name = std::get_if<std::string>(&value)) out.push_back(*name);
  };
  if (const auto* weather = std::get_if<FileWeather>(&scenario.weather)) add(weather->file);
  const auto& uncertain = scenario.scenario.uncertain;
  if (!uncertain) return out;
  const auto add_all = [&](const Distribution& distribution) {
    for (const Value& value : distribution.values) add(value);
  };
  for (const auto& [pointer, distribution] : uncertain->inputs.entries)
    if (pointer == key) add_all(distribution);
  for (const SharedInput& group : uncertain->groups)
    for (const std::string& pointer : group.pointers)
      if (pointer == key) add_all(group.distribution);
  for (const Alternative& alternative : uncertain->alternatives)
    for (const auto& [pointer, value] : alternative.set.entries)
      if (pointer == key) add(value);
  return out;
}

}  // namespace bide::scenario
