// Values at ranks of more numbers than are worth holding: counted by the highest bits, then by the next ones
// within the counts that hold a wanted rank. Exact, in three passes, and the memory is the same for any
// number of numbers. Numbers that are not negative are in the order of their bits (IEEE 754).
#pragma once

#include <cstddef>
#include <functional>
#include <span>
#include <vector>

namespace bide::study {

// Calls with every number, the same ones each time.
using EachNumber = std::function<void(const std::function<void(float)>&)>;

// The value at each rank, ranks from 1. Throws std::invalid_argument for a rank that there is no number for,
// and for a number that is negative or none.
std::vector<float> at_ranks(const EachNumber& each, std::span<const std::size_t> ranks);

}  // namespace bide::study
