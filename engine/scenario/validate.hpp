// Makes a ValidScenario from a file; there is no other way to make one.
#pragma once

#include <filesystem>
#include <memory>
#include <string>
#include <variant>
#include <vector>

#include "bide/scenario/catalogue.hpp"
#include "bide/scenario/resolved_weather.hpp"

namespace bide::scenario {

// One thing wrong (or worth a caution) in a file.
struct Diagnostic {
  std::string file;
  std::string pointer;  // JSON pointer, "/raft/floor_area_m2"
  std::string message;  // what was found, what is allowed, nearest valid key
};
std::string to_string(const Diagnostic&);  // "file: /pointer: message"

// The inventory after packs are multiplied out and expired items removed.
struct StockItem {
  const ItemKind* kind = nullptr;
  double quantity = 0;
};

struct Node;

// Defaults filled in, and named in `defaults`; catalogue entries looked up.
struct ValidScenario {
  std::string file;
  std::filesystem::path folder;  // weather files are relative to it
  Scenario scenario;
  ResolvedWeather weather;                 // what scenario.weather says
  const RaftKind* raft_kind = nullptr;     // null: no raft
  std::vector<const Ensemble*> ensembles;  // one per person
  std::vector<StockItem> stock;
  std::vector<StockItem> expired;
  double start_unix_s = 0;
  std::vector<std::string> defaults;     // JSON pointers that were filled in
  std::vector<Diagnostic> cautions;      // overload, impossible pairings...: reported, not refused
  std::shared_ptr<const Node> document;  // the file as it was parsed (document.hpp)

 private:
  ValidScenario() = default;
  friend struct Validator;
};

using Diagnostics = std::vector<Diagnostic>;
using Validated = std::variant<ValidScenario, Diagnostics>;

// Reads, parses, checks and resolves; every error found is in the list.
Validated validate_file(const std::filesystem::path& path);
Validated validate_text(const std::string& json, const std::string& file_name,
                        const std::filesystem::path& folder);
// The same from a file that was parsed before.
Validated validate_document(Node root, const std::string& file_name, const std::filesystem::path& folder);

}  // namespace bide::scenario
