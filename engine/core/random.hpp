// Random numbers as a pure function of their use: no state, so neither order nor threads matter.
//
// Philox4x32-10: Salmon, Moraes, Dror & Shaw (2011), "Parallel random numbers: as easy as 1, 2, 3", SC11,
// section 3.3 and table 2: ten rounds of two 32 x 32 bit products, the key raised by the Weyl constants
// between rounds.
// A study draws uniform(seed, sample, factor, draw): the seed is the key, the rest is the counter.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

namespace bide {

using PhiloxCounter = std::array<std::uint32_t, 4>;
using PhiloxKey = std::array<std::uint32_t, 2>;

// Four random words for a counter and a key.
// @param c counter: which numbers of the stream
// @param k key: which stream
constexpr PhiloxCounter philox4x32_10(PhiloxCounter c, PhiloxKey k) {
  constexpr std::uint64_t multiplier_0 = 0xD2511F53, multiplier_1 = 0xCD9E8D57;
  constexpr std::uint32_t weyl_0 = 0x9E3779B9, weyl_1 = 0xBB67AE85;  // golden ratio, sqrt(3) - 1
  constexpr int rounds = 10, word_bits = 32;
  for (int round = 0; round < rounds; ++round) {
    const std::uint64_t p0 = multiplier_0 * c[0], p1 = multiplier_1 * c[2];
    c = {static_cast<std::uint32_t>(p1 >> word_bits) ^ c[1] ^ k[0], static_cast<std::uint32_t>(p1),
         static_cast<std::uint32_t>(p0 >> word_bits) ^ c[3] ^ k[1], static_cast<std::uint32_t>(p0)};
    k[0] += weyl_0;
    k[1] += weyl_1;
  }
  return c;
}

// The least number that uniform() gives; the greatest is 1 minus this.
inline constexpr double least_uniform = 0x1p-53;

// Uniform in the open interval (0, 1): an odd multiple of 2^-53, from 52 random bits; never 0 or 1, and
// 1 - u is as likely as u.
// @param seed   of the study
// @param sample number of the sample, from 0
// @param factor which input or use; see stream_of()
// @param draw   number of the draw for that factor, from 0
constexpr double uniform(std::uint64_t seed, std::uint64_t sample, std::uint32_t factor, std::uint32_t draw) {
  constexpr int word_bits = 32, spare_bits = 11;
  const PhiloxCounter words = philox4x32_10(
      {static_cast<std::uint32_t>(sample), static_cast<std::uint32_t>(sample >> word_bits), factor, draw},
      {static_cast<std::uint32_t>(seed), static_cast<std::uint32_t>(seed >> word_bits)});
  const std::uint64_t bits = (std::uint64_t{words[0]} << word_bits) | words[1];
  return static_cast<double>((bits >> spare_bits) | 1) * least_uniform;
}

// Turns a factor's name into its number, so that its draws do not depend on which other factors are drawn
// (FNV-1a of 32 bits: Fowler, Noll & Vo; offset basis and prime from memory).
constexpr std::uint32_t stream_of(std::string_view name) {
  std::uint32_t hash = 0x811C9DC5;
  for (const char letter : name) hash = (hash ^ static_cast<unsigned char>(letter)) * 0x01000193;
  return hash;
}

}  // namespace bide
