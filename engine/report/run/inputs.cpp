#include "bide/report/run/inputs.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "bide/report/words/input.hpp"
#include "bide/scenario/write.hpp"

namespace bide::report {

std::vector<InputInForce> inputs_in_force(const scenario::ValidScenario& scenario) {
  const std::vector<scenario::FieldLine> fields = scenario::field_lines();
  const auto unit_of = [&fields](const std::string& pointer) -> std::string {
    const std::string any = scenario::any_index(pointer);
    const auto known =
        std::find_if(fields.begin(), fields.end(), [&](const auto& f) { return f.pointer == any; });
    return known == fields.end() ? "" : known->unit;
  };
  const auto inputs = nlohmann::ordered_json::parse(scenario::write_scenario(scenario.scenario)).flatten();
  std::vector<InputInForce> out;
  for (const auto& [pointer, value] : inputs.items())
    out.push_back({input_words(pointer), value.is_string() ? value.get<std::string>() : value.dump(),
                   unit_of(pointer), !scenario::is_default(scenario, pointer), pointer});
  return out;
}

}  // namespace bide::report
