// One future of an uncertain scenario by itself: sample k of a seed, run with its timeline, or as a file.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>

#include "bide/study/ensemble/run_all.hpp"
#include "bide/study/questions/help.hpp"

namespace bide::study {

struct Replay {
  scenario::ValidScenario scenario;  // what was drawn, as a plain scenario
  Run run;
  double help_needed_h = 0;  // as drawn; means nothing without help
  std::optional<Help> help;  // empty: the scenario says nothing of rescue
};

// Runs one future.
// @param scenario with `uncertain`
// @param seed     of the futures
// @param k        number of the sample
// @return the run; refused when the draw makes no scenario, and when its run fails
std::variant<Replay, Refusal> replay(const scenario::ValidScenario& scenario, std::uint64_t seed,
                                     std::uint64_t k);

// The text of a plain scenario file for one future; it need not be valid.
// @param scenario with `uncertain`
// @param seed     of the futures
// @param k        number of the sample
std::string text_of_future(const scenario::ValidScenario& scenario, std::uint64_t seed, std::uint64_t k);

}  // namespace bide::study
