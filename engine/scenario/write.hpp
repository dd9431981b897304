// A scenario, a resolved scenario and the catalogue as text.
#pragma once

#include <string>
#include <string_view>

#include "bide/scenario/validate.hpp"

namespace bide::scenario {

// JSON that reads back equal; empty fields are left out.
std::string write_scenario(const Scenario& scenario);

// Everything that is in force, one field a line, "(default)" behind each one the file did not state, with
// units; then what the raft carries.
std::string listing(const ValidScenario& valid);

// One part of the catalogue: "rafts", "packs", "ensembles", "gloves", "boots" or "items"; all of it for "".
std::string write_catalogue(std::string_view part);

// JSON Schema 2020-12 of a scenario file.
std::string json_schema();

// One line for each field of a scenario, in file order.
struct FieldLine {
  std::string pointer;  // "/crew/*/mass_kg"
  std::string unit;
  std::string allowed;  // "a number from 8 to 250 kg"
  std::string absent;   // "required", or what stands when it is left out
  std::string sentence;
  bool is_number = false;
  double low = 0, high = 0;  // of a number
  enum class Holds { number, whole, truth, word, text, parts };
  Holds holds = Holds::parts;
  std::vector<std::string_view> words{};  // of a word
};
std::vector<FieldLine> field_lines();

// Whether the file left a field out, so that it holds a default.
// @param pointer of the field
bool is_default(const ValidScenario& scenario, std::string_view pointer);

// "/crew/3/mass_kg" -> "/crew/*/mass_kg"
std::string any_index(const std::string& pointer);

}  // namespace bide::scenario
