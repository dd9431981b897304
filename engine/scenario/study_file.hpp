// A study file: which scenario is run many times, what varies, by which design, and what is asked of the
// results.
//
// States: none. Inputs: a JSON file, read as strictly as a scenario. What varies is the scenario's own
// "uncertain", or the study's in its place, in the same format.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "bide/scenario/validate.hpp"

namespace bide::scenario {

inline constexpr std::string_view study_format_word = "bide study 1";
inline constexpr int most_samples = 100'000'000;

enum class DesignKind {
  grid,             // every combination of listed values, or of levels of what is not listed
  random,           // independent draws
  latin_hypercube,  // each input cut into as many slices as there are samples
  sobol,            // scrambled Sobol' points
  saltelli,         // rows from which first and total Sobol' indices are estimated
  morris,           // trajectories that change one input at a time
  points            // the user's own, from a file
};

constexpr bool has_levels(DesignKind kind) {
  return kind == DesignKind::grid || kind == DesignKind::morris;
}

// What the numbers of a user's own points are.
enum class PointScale {
  unit,    // every number is a place in (0, 1), made a value by the input's quantile function
  natural  // inputs and groups of numbers have their value itself; all else has its place in (0, 1)
};

// Inputs whose share in the variance is asked for together.
struct DesignGroup {
  std::string name;
  std::vector<std::string> inputs;  // names of what varies; "/crew/*/mass_kg" means all of them

  bool operator==(const DesignGroup&) const = default;
};

struct Design {
  DesignKind kind = DesignKind::random;
  std::optional<int> samples;  // none for grid and points
  int levels = 0;
  int seed = 0;
  std::vector<DesignGroup> groups;
  std::optional<std::string> points;  // file of points, relative to the study file
  PointScale scale = PointScale::unit;

  bool operator==(const Design&) const = default;
};

// As validate_study() returns it, with the defaults of describe_study.hpp filled in.
struct StudyFile {
  std::string format, name, setting;
  std::string scenario;  // relative to the study file
  std::optional<Uncertain> uncertain;
  Design design;
  std::vector<std::string> outputs;
  std::vector<double> at_h;
  double near_margin = 0;  // share of the margin left where somebody counts as near a limit

  bool operator==(const StudyFile&) const = default;
};

struct ValidStudy {
  std::string file;
  StudyFile study;
  ValidScenario scenario;  // with what varies in its "uncertain"
};

// The file that holds the points of a study of kind `points`.
std::filesystem::path points_file_of(const ValidStudy& study);

std::variant<ValidStudy, Diagnostics> validate_study(const std::filesystem::path& path);

// JSON Schema 2020-12 of a study file.
std::string study_json_schema();

}  // namespace bide::scenario
