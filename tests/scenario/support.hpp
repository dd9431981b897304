// Shared by the scenario tests: files of this repository, and what validation says of a text.
#pragma once

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>
#include <vector>

#include "bide/scenario/write.hpp"

namespace bide::scenario::test {

inline std::filesystem::path source(const char* relative) {
  return std::filesystem::path(BIDE_SOURCE_DIR) / relative;
}

inline std::string text_of(const std::filesystem::path& path) {
  std::ifstream stream(path, std::ios::binary);
  std::ostringstream out;
  out << stream.rdbuf();
  return out.str();
}

inline nlohmann::json minimal() {
  return nlohmann::json::parse(text_of(source("tests/scenario/minimal.json")));
}

// "pointer: message" for each thing wrong; empty when the text is valid.
inline std::vector<std::string> complaints(const Validated& result) {
  std::vector<std::string> out;
  if (const auto* wrong = std::get_if<Diagnostics>(&result))
    for (Diagnostic each : *wrong) {
      each.file.clear();
      out.push_back(to_string(each).substr(2));
    }
  return out;
}
inline std::vector<std::string> complaints(const nlohmann::json& scenario) {
  return complaints(validate_text(scenario.dump(), "s.json", source("tests/scenario")));
}

// Fails the test (by the exception) when it is not valid.
inline ValidScenario valid(const nlohmann::json& scenario) {
  return std::get<ValidScenario>(validate_text(scenario.dump(), "s.json", source("tests/scenario")));
}

}  // namespace bide::scenario::test
