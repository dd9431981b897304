// Checks that a function gives in every lane what it gives for a double.
#pragma once

#include <doctest/doctest.h>

#include <array>
#include <cstddef>
#include <tuple>

#include "bide/core/scalar.hpp"

// `f` takes N arguments of one scalar type; four rows of arguments, one per lane.
template <std::size_t N, class F>
void check_lanes(F f, const double (&rows)[4][N]) {
  std::array<bide::Lanes<4>, N> wide;
  for (int i = 0; i < 4; ++i)
    for (std::size_t k = 0; k < N; ++k) wide[k].set(i, rows[i][k]);
  const bide::Lanes<4> out = std::apply(f, wide);
  for (int i = 0; i < 4; ++i) {
    CAPTURE(i);
    std::array<double, N> one;
    for (std::size_t k = 0; k < N; ++k) one[k] = rows[i][k];
    const double expected = std::apply(f, one);
    CHECK(bide::lane(out, i) == doctest::Approx(expected).epsilon(1e-12));
  }
}

// A template function over T as something to hand to check_lanes.
#define AS_LAMBDA(name) [](auto... arguments) { return name(arguments...); }
