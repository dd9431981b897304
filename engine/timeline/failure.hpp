// Why a run has no result.
#pragma once

#include <string>

namespace bide::timeline {

// A ledger that did not close, or a state that is not finite.
struct Failure {
  std::string ledger;  // its name, or "state"
  std::string message;
};

}  // namespace bide::timeline
