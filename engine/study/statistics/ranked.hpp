// Values at ranks of more numbers than are worth holding: counted by the highest bits, then by the next ones
// within the counts that hold a wanted rank. Exact, in a few passes, and the memory is the same for any
// number of numbers.
#pragma once

#include <cstddef>
#include <functional>
#include <span>
#include <vector>

namespace bide::study {

// Calls with every number, the same ones each time.
template <class Number>
using EachNumber = std::function<void(const std::function<void(Number)>&)>;

// The value at each rank, ranks from 1; a negative zero counts as zero. Three passes for float, six for
// double. Throws std::invalid_argument for a rank that there is no number for, and for what is not a number.
template <class Number>
std::vector<Number> at_ranks(const EachNumber<Number>& each, std::span<const std::size_t> ranks);

extern template std::vector<float> at_ranks(const EachNumber<float>&, std::span<const std::size_t>);
extern template std::vector<double> at_ranks(const EachNumber<double>&, std::span<const std::size_t>);

}  // namespace bide::study
