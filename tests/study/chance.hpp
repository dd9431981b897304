// Uniform numbers by place for these tests, apart from the engine's own: the finaliser of SplitMix64 (Steele,
// Lea & Flood 2014, from memory) over key, sample, factor and draw.
#pragma once

#include <cstdint>

#include "bide/study/sampling/draws.hpp"

namespace bide::test {

inline std::uint64_t mixed(std::uint64_t x) {
  x += 0x9e3779b97f4a7c15U;
  x = (x ^ (x >> 30)) * 0xbf58476d1ce4e5b9U;
  x = (x ^ (x >> 27)) * 0x94d049bb133111ebU;
  return x ^ (x >> 31);
}

inline study::UniformAt chance(std::uint64_t key) {
  return [key](std::uint64_t sample, std::uint32_t factor, std::uint32_t draw) {
    const std::uint64_t word = mixed(mixed(mixed(mixed(key) + sample) + factor) + draw);
    return (static_cast<double>(word >> 11) + 0.5) * 0x1p-53;
  };
}

}  // namespace bide::test
