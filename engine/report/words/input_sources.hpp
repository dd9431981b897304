// Where the numbers behind an input come from, in words: what stands when it is left out, what bounds it,
// what is drawn when nobody knows it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "bide/core/sourced.hpp"

namespace bide::report {

// "10 min (3 to 30 min): reaching and entering a raft alongside in a sea. Our own estimate, no source."
std::string source_words(const Sourced& number);

// One line for each number that the engine keeps a source of; none where it keeps none.
// @param pointer of a field, with "*" for each entry of a list: "/boarding/minutes_in_water"
std::vector<std::string> input_sources(std::string_view pointer);

// Those inputs of which there are any.
std::vector<std::string> inputs_with_sources();

// Author, title and year of an entry of constants/references.bib; its key where there is no such entry.
std::string reference_words(std::string_view key);

}  // namespace bide::report
