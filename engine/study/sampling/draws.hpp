// What designs and bootstraps take their chance from: a number in (0, 1) looked up by where it is used. The
// same place gives the same number, whatever was asked before, so that a study does not depend on threads or
// order.
//
// A function that takes a UniformAt uses places of its own choosing. Two functions that must be independent
// of one another get two different ones (different keys of the generator behind them).
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <functional>

namespace bide::study {

using UniformAt = std::function<double(std::uint64_t sample, std::uint32_t factor, std::uint32_t draw)>;

// One of the whole numbers 0 to count - 1, from a number in (0, 1).
inline std::size_t pick(double uniform, std::size_t count) {
  const auto chosen = static_cast<std::size_t>(uniform * static_cast<double>(count));
  return std::min(chosen, count - 1);
}

}  // namespace bide::study
