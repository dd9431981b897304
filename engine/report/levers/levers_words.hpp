// Gains of levers in words, for text and page.
#pragma once

#include <string>

#include "bide/study/questions/levers.hpp"

namespace bide::report {

// "able gains 14 h", "alive not told apart".
// @param what      "able" or "alive"
// @param gain      in that time
// @param horizon_s end of the runs, s
std::string gain_words(const char* what, const study::Gain& gain, double horizon_s);

// Explains the brackets of bought_words().
inline constexpr const char* what_the_ends_are =
    "At the ends: with canopy heat loss and leakage, which nobody has measured, and the model's own error at "
    "the end of least and then of most heat lost, with and without the lever.";

// Both gains; where no limit is reached, the margin. Each with its value at both ends of the unmeasured
// ranges.
std::string bought_words(const study::LeverTried& tried, double horizon_s);

// "What would buy time or margin, most first: ...": the first few of the levers with a gain.
std::string most_bought_words(const study::LeversTried& levers);

// Carbon dioxide with a lever that closes openings or makes the air worse; else empty.
std::string air_words(const study::LeversTried& levers, const study::LeverTried& tried);

// " (1.2 kg more aboard, takes up 2.5 L)"; empty where a lever adds nothing.
std::string burden_words(const scenario::Burden& burden);

}  // namespace bide::report
