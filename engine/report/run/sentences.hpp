// Sentences about a run.
#pragma once

#include <string>
#include <vector>

#include "bide/report/run/material.hpp"

namespace bide::report {

// Who, where, from when and for how long: "4 people in a raft for 4, from 15 Feb 12:00 UTC, followed for 5
// d."
// @param in_raft   whether anybody came aboard
// @param horizon_s end of the run, s
std::string head_sentence(const scenario::ValidScenario& scenario, bool in_raft, double horizon_s);

// Cause of the end for each person, and the next limit; persons with the same words share a sentence.
std::vector<std::string> person_sentences(const Material& material);

// What an answer is about: one case as written, or futures drawn from what is uncertain.
enum class Told { as_written, futures };

// What the model leaves out, and whether injury, illness, capsize or breakage were entered.
std::string not_in_the_model(const scenario::ValidScenario& scenario, Told told);

// "5 to 20 %" of a stated range of losses in the first minutes.
std::string share_lost(const scenario::FirstMinutes& range);

inline constexpr const char* what_able_means = "Able: can still help themselves.";

// Cautions of the scenario, expired items and how many inputs are defaults.
std::vector<std::string> caution_sentences(const scenario::ValidScenario& scenario);

}  // namespace bide::report
