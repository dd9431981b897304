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

// Written beside `path` and renamed when it is whole. The reason when it fails.
std::optional<std::string> write_study_csv(const study::Study& study, const std::filesystem::path& records,
                                           const std::filesystem::path& path);

}  // namespace bide::report
