// Numbers that go through the same arithmetic, worked on in whole registers: those of one simulation share
// the lanes of a register, those of simulations in lanes follow one another.
//
// States: none. Inputs: a scalar type T, how many numbers there are. Validity: the work must be lane-wise.
// Source: none, this is bookkeeping.
#pragma once

#include <algorithm>
#include <type_traits>

#include "bide/core/scalar.hpp"

namespace bide {

// Does put(i, work(get(i))) for i from 0 to size - 1, as many at a time as a register holds.
// @param get  T of an index
// @param work on a T, or on BlockLanes where T is a double; returns one of them, or a struct of them
// @param put  takes an index and what `work` returned for it
template <class T, int size, class Get, class Work, class Put>
[[gnu::always_inline]] inline void in_packs(Get&& get, Work&& work, Put&& put) {
  if constexpr (std::is_same_v<T, double>) {
#pragma GCC unroll 16
    for (int first = 0; first < size; first += block_width) {
      BlockLanes in;
      const int here = std::min(block_width, size - first);
#pragma GCC unroll 16
      for (int i = 0; i < here; ++i) in.set(i, get(first + i));
      const auto out = work(in);
#pragma GCC unroll 16
      for (int i = 0; i < here; ++i) put(first + i, lane(out, i));
    }
  } else {
    for (int i = 0; i < size; ++i) put(i, work(get(i)));
  }
}

}  // namespace bide
