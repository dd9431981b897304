// Sentences about persons and evidence that the terminal and the pages share.
#pragma once

#include <string>
#include <vector>

#include "bide/report/run/sections.hpp"

namespace bide::report {

// What ends it for each person and the next limit; persons with the same words stand together.
std::vector<std::string> person_sentences(const Material& material);

// The results of each grade that has any: "extrapolated", "able until, hands".
struct GradeWords {
  std::string grade, results;
};
std::vector<GradeWords> evidence_words(const Material& material);

// Where the measurements end that these results went beyond.
std::vector<std::string> data_ends(const Material& material);

inline constexpr const char* not_in_the_model =
    "Drowning, cold shock and swimming failure in the first minutes, injury, illness, despair, capsize and "
    "breakage unless entered, and collapse during or after rescue.";

// Cautions of the scenario, expired items and how many inputs are defaults.
std::vector<std::string> caution_sentences(const scenario::ValidScenario& scenario);

}  // namespace bide::report
