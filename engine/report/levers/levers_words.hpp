// Gains of levers in words, for text and page.
#pragma once

#include <string>
#include <vector>

#include "bide/study/questions/levers.hpp"

namespace bide::report {

inline constexpr const char* one_change_each =
    "Each change is tried alone with everything else as entered, and is one case, not a forecast.";

// Explains the ranges of bought_words().
inline constexpr const char* what_gains_are =
    "A gain is told for the central case, with its range over what nobody has measured: each run with the "
    "change against the same run without it. Where the central case reaches no limit, the range stands "
    "alone.";

// Both gains, each with its range: "able longer by 14 h; alive longer by 0 to 24 h or more". Where no limit
// of being able is reached, the margin too.
// @param horizon_s end of the runs, s
std::string bought_words(const study::LeverTried& tried, double horizon_s);

// The levers that buy most, in their order (study::LeversTried).
// @param most how many at most
std::vector<const study::LeverTried*> most_bought(const study::LeversTried& levers, std::size_t most);
// The same in words, each with its hours, or the margin it gains.
std::string most_bought_words(const study::LeversTried& levers, std::size_t most);

// Why it gains or loses here: "More to drink makes up for... (worst water deficit 6.1 %, 7.7 % without)";
// empty where it does neither.
std::string reason_words(const study::LeversTried& levers, const study::LeverTried& tried);

// Carbon dioxide with a lever that closes openings or makes the air worse; else empty.
std::string air_words(const study::LeversTried& levers, const study::LeverTried& tried);

}  // namespace bide::report
