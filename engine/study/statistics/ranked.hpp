// Order statistics of more numbers than fit in memory. They are counted by their highest bits, then by the
// next bits within the counts that hold a wanted rank. Exact, in a few passes, in constant memory.
#pragma once

#include <cstddef>
#include <functional>
#include <span>
#include <vector>

namespace bide::study {

// Calls its argument with every number; the same numbers each time.
template <class Number>
using EachNumber = std::function<void(const std::function<void(Number)>&)>;

// The value at each rank; a negative zero counts as zero. Three passes for float, six for double. Throws
// std::invalid_argument for a rank outside its range, and for a value that is not a number.
// @param each  gives the numbers
// @param ranks from 1 to the number of numbers, in any order
// @return in the order of the ranks
template <class Number>
std::vector<Number> at_ranks(const EachNumber<Number>& each, std::span<const std::size_t> ranks);

extern template std::vector<float> at_ranks(const EachNumber<float>&, std::span<const std::size_t>);
extern template std::vector<double> at_ranks(const EachNumber<double>&, std::span<const std::size_t>);

}  // namespace bide::study
