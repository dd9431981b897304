// Why a question has no answer.
#pragma once

#include <string>

#include "bide/scenario/validate.hpp"
#include "bide/timeline/failure.hpp"

namespace bide::study {

struct Refusal {
  enum class Why {
    input,  // something asked or read cannot be used
    run,    // a simulation failed
    output  // a file could not be written
  };
  Why why = Why::input;
  scenario::Diagnostics reasons;  // at least one
};

// So many of the futures of an answer may have no result, as a share; with more it is not to be relied on.
inline constexpr double bearable_failures = 0.01;

// A failed run as a refusal.
// @param file    of the scenario that was run
// @param failure what went wrong
Refusal refusal_of(const std::string& file, const timeline::Failure& failure);

}  // namespace bide::study
