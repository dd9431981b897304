// The nearest of a list of words, for "did you mean".
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace bide::scenario {

// Number of insertions, deletions, substitutions and swaps of neighbours that turn one word into the other
// (optimal string alignment distance), in bytes.
int edit_distance(std::string_view a, std::string_view b);

// `; did you mean "word"?` for the nearest word when at most half of it differs, else an empty string.
std::string did_you_mean(std::string_view found, const std::vector<std::string_view>& words);

}  // namespace bide::scenario
