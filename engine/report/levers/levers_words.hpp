// Gains of levers in words, for text and page.
#pragma once

#include <string>
#include <vector>

#include "bide/study/questions/levers.hpp"

namespace bide::report {

// Explains the ranges of bought_words().
inline constexpr const char* what_the_ends_are =
    "A gain is told for the central case; the range in brackets is over the least and the most heat lost: "
    "canopy heat loss and leakage, which nobody has measured, and the model's own error.";

// Both gains, each with its range: "able +14 h; alive none to +24 h or more, depending on heat loss". Where
// no limit of being able is reached, the margin too.
// @param horizon_s end of the runs, s
std::string bought_words(const study::LeverTried& tried, double horizon_s);

// The levers that buy most: hours able, then alive, then margin. Hours that only an end of the range gains
// count too: where the central case reaches no limit, it is there that time is won.
// @param most how many at most
std::vector<const study::LeverTried*> most_bought(const study::LeversTried& levers, std::size_t most);
// The same in words, each with its hours, or its points of margin.
std::string most_bought_words(const study::LeversTried& levers, std::size_t most);

// Why it gains or loses here: "More to drink makes up for... (worst water deficit 6.1 %, 7.7 % without)";
// empty where it does neither.
std::string reason_words(const study::LeversTried& levers, const study::LeverTried& tried);

// Carbon dioxide with a lever that closes openings or makes the air worse; else empty.
std::string air_words(const study::LeversTried& levers, const study::LeverTried& tried);

// " (1.2 kg more aboard, takes up 2.5 L)"; empty where a lever adds nothing.
std::string burden_words(const scenario::Burden& burden);

}  // namespace bide::report
