// Scrambled Sobol' points: any first 2^m of them fill every column evenly (one point in each of 2^m equal
// slices), and low-dimensional faces of the cube far more evenly than chance does.
//
// Direction numbers: Joe & Kuo (2008), as Boost.Random holds them, up to 3667 dimensions. Scrambling: Owen's
// nested uniform scrambling (Owen 1995) of the 32 binary digits: whether a digit is flipped is random and
// depends on the digits before it. Each scrambled point is uniform in the cube, so that means are unbiased,
// and the points stay evenly spread. Use a power of two of them: another count is allowed and less even.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "bide/study/sampling/design.hpp"

namespace bide::study {

class SobolPoints {
 public:
  // Without scrambling the points are Sobol's own, moved by half of the last digit so that none is exactly 0.
  // @param factors    number of columns, [1, 3667]; else throws std::invalid_argument
  // @param scrambling where the random numbers come from; empty: no scrambling
  explicit SobolPoints(std::size_t factors, UniformAt scrambling = {});
  std::size_t factors() const { return factors_; }
  // Point k in Sobol's own order (not that of the Gray code).
  // @param k   [0, 2^32); else throws std::invalid_argument
  // @param out filled with numbers in (0, 1); of length factors()
  void point(std::uint64_t k, std::span<double> out) const;
  // The first points, one per row.
  Points first(std::size_t samples) const;

 private:
  static constexpr unsigned digits = 32;
  std::uint32_t scrambled(std::uint32_t plain, std::size_t factor) const;
  std::size_t factors_;
  UniformAt scrambling_;
  std::vector<std::uint32_t> directions_;  // digit by digit, all factors of the first digit first
};

}  // namespace bide::study
