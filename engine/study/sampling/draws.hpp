// Random numbers of designs and bootstraps: a number in (0, 1) looked up by the place where it is used. The
// same place gives the same number, whatever was asked before, so that a study does not depend on threads or
// order.
//
// A function that takes a UniformAt chooses the places itself. Two functions that must be independent need
// two different ones (different keys of the generator behind them).
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <functional>

namespace bide::study {

using UniformAt = std::function<double(std::uint64_t sample, std::uint32_t factor, std::uint32_t draw)>;

// One of the whole numbers 0 to count - 1.
// @param uniform (0, 1)
// @param count   at least 1
inline std::size_t pick(double uniform, std::size_t count) {
  const auto chosen = static_cast<std::size_t>(uniform * static_cast<double>(count));
  return std::min(chosen, count - 1);
}

}  // namespace bide::study
