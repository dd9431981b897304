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

// A failed run as a refusal.
// @param file    of the scenario that was run
// @param failure what went wrong
Refusal refusal_of(const std::string& file, const timeline::Failure& failure);

}  // namespace bide::study
