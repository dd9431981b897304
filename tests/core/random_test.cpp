#include "bide/core/random.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace bide;

// Known answers published by the authors with their reference implementation (Random123, tests/kat_vectors,
// the three lines "philox4x32 10"; read in public copies of that file).
TEST_CASE("Philox4x32-10 gives the published answers") {
  CHECK(philox4x32_10({0, 0, 0, 0}, {0, 0}) == PhiloxCounter{0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8});
  constexpr std::uint32_t ones = 0xffffffff;
  CHECK(philox4x32_10({ones, ones, ones, ones}, {ones, ones}) ==
        PhiloxCounter{0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd});
  CHECK(philox4x32_10({0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344}, {0xa4093822, 0x299f31d0}) ==
        PhiloxCounter{0xd16cfe09, 0x94fdcceb, 0x5001e420, 0x24126ea1});
}

// The first published answer: words 6627e8d5 e169c58d, their upper 53 bits with the last one set.
TEST_CASE("a uniform number is the upper bits of the first two words") {
  CHECK(uniform(0, 0, 0, 0) ==
        std::ldexp(static_cast<double>((std::uint64_t{0x6627e8d5e169c58d} >> 11) | 1), -53));
}

// Mean 1/2 and variance 1/12; of n = 100,000 the standard errors are 0.0009 and 0.00024: five of them.
TEST_CASE("uniform numbers have the mean and variance of the interval, whichever index runs") {
  constexpr int n = 100000;
  for (int which = 0; which < 3; ++which) {
    CAPTURE(which);
    double sum = 0, square = 0;
    for (std::uint32_t i = 0; i < n; ++i) {
      const double u = which == 0   ? uniform(7, i, 3, 0)
                       : which == 1 ? uniform(7, 3, i, 0)
                                    : uniform(7, 3, 5, i);
      REQUIRE(u > 0);
      REQUIRE(u < 1);
      sum += u;
      square += u * u;
    }
    const double mean = sum / n;
    CHECK(std::abs(mean - 0.5) < 5 * 0.00092);
    CHECK(std::abs(square / n - mean * mean - 1.0 / 12) < 5 * 0.00024);
  }
}

TEST_CASE("every part of the address changes the number") {
  const double u = uniform(1, 2, 3, 4);
  CHECK(uniform(1, 2, 3, 4) == u);
  for (const double other :
       {uniform(2, 2, 3, 4), uniform(1, 3, 3, 4), uniform(1, 2, 4, 4), uniform(1, 2, 3, 5),
        uniform(1 + (std::uint64_t{1} << 32), 2, 3, 4), uniform(1, 2 + (std::uint64_t{1} << 32), 3, 4)})
    CHECK(other != u);
}

// Test values of the 32-bit FNV-1a published with it ("" and "a"; from memory).
TEST_CASE("streams are the FNV-1a of the name") {
  CHECK(stream_of("") == 0x811C9DC5);
  CHECK(stream_of("a") == 0xE40C292C);
}
