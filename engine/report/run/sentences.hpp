// Sentences about a run.
#pragma once

#include <string>
#include <vector>

#include "bide/report/run/material.hpp"

namespace bide::report {

// Who, where, from when and for how long: "4 people in a raft for 4, from 15 Feb 12:00 UTC, followed for 5
// d."
std::string head_sentence(const Material& material);

// Cause of the end for each person, and the next limit; persons with the same words share a sentence.
std::vector<std::string> person_sentences(const Material& material);

inline constexpr const char* not_in_the_model =
    "Drowning, the first minutes in cold water, despair, collapse at or after rescue; injury, illness, "
    "capsize "
    "and breakage unless entered.";

// Cautions of the scenario, expired items and how many inputs are defaults.
std::vector<std::string> caution_sentences(const scenario::ValidScenario& scenario);

}  // namespace bide::report
