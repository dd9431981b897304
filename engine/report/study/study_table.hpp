// Every sample of a study as a row: what was drawn, and the results. As CSV; other writers of tables use the
// same columns.
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "bide/study/questions/study.hpp"
#include "bide/study/questions/summary.hpp"

namespace bide::report {

// An input by its place among the settings of every draw, then events, alternative and rescue.
struct InputColumn {
  std::string name, unit;
  bool is_number = true;
  std::function<study::InputValue(const study::Drawn&)> of;
};
std::vector<InputColumn> input_columns(const study::Study& study);

// The name of a column: letters, digits and "_", its unit at the end: "/crew/0/mass_kg" ->
// "person_a_mass_kg", "first able until" in h -> "first_able_until_h".
std::string column_name(const std::string& name, const std::string& unit);

// Written beside `path` and renamed when it is whole. The reason when it fails.
// @param notice where the comment lines go, a file of its own; empty: at the head of the table
std::optional<std::string> write_study_csv(const study::Study& study, const std::filesystem::path& records,
                                           const std::filesystem::path& path,
                                           const std::filesystem::path& notice);

}  // namespace bide::report
