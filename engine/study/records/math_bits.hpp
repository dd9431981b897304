// To which bits the C library works out exp, log and the like here.
//
// It chooses among several versions of each when the program starts, by the processor, and they round the
// last digit differently; another release of it may as well. The fingerprint of the build cannot know that.
#pragma once

#include <cstdint>

namespace bide::study {

// A hash over the results of every such function that a sample's figures depend on, for thousands of
// arguments each.
std::uint64_t math_bits();

}  // namespace bide::study
