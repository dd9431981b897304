// Scrambled Sobol' points: any first 2^m of them fill every column evenly (one point in each of 2^m equal
// slices), and low-dimensional faces of the cube far more evenly than chance does.
//
// Direction numbers: Joe & Kuo (2008), as Boost.Random holds them, up to 3667 dimensions. Scrambling: Owen's
// nested uniform scrambling (Owen 1995), in which every digit is flipped or not by a coin that belongs to the
// digits before it; the digits are the 32 binary ones. Scrambled points are each uniform in the cube, so that
// means over them are unbiased, and they keep the evenness. Use a power of two of them: another count is
// allowed and loses part of it.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "bide/study/sampling/design.hpp"

namespace bide::study {

class SobolPoints {
 public:
  // Without scrambling the points are Sobol's own, moved by half of the last digit so that none is exactly 0.
  explicit SobolPoints(std::size_t factors, UniformAt scrambling = {});
  std::size_t factors() const { return factors_; }
  // Point k, k < 2^32, in Sobol's own order (not the Gray code's).
  void point(std::uint64_t k, std::span<double> out) const;
  Points first(std::size_t samples) const;

 private:
  static constexpr unsigned digits = 32;
  std::uint32_t scrambled(std::uint32_t plain, std::size_t factor) const;
  std::size_t factors_;
  UniformAt scrambling_;
  std::vector<std::uint32_t> directions_;  // digit by digit, all factors of the first digit first
};

}  // namespace bide::study
