// Odds counted from now: for people whose ship was abandoned some hours ago.
#pragma once

#include "bide/study/questions/ask_odds.hpp"

namespace bide::report {

// Moves the origin of every time to now; the clocks stay as they were, and a time before now is negative.
// @param answer of a scenario that says when now is, counted from its start
study::OddsAnswer from_now(study::OddsAnswer answer);

}  // namespace bide::report
