#include "study/ranked.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <cstdint>
#include <map>
#include <stdexcept>

namespace bide::study {
namespace {

struct Digits {
  unsigned shift, width;
};
constexpr std::array<Digits, 3> passes{{{21, 11}, {10, 11}, {0, 10}}};

// A wanted value, as far as it is known: its highest bits, and its rank among those that share them.
struct Wanted {
  std::uint32_t known = 0;
  std::size_t rank = 0;
};

}  // namespace

std::vector<float> at_ranks(const EachNumber& each, std::span<const std::size_t> ranks) {
  std::vector<Wanted> wanted;
  for (const std::size_t rank : ranks) {
    if (rank == 0) throw std::invalid_argument("ranks count from 1");
    wanted.push_back({0, rank});
  }
  for (const Digits& pass : passes) {
    const unsigned shift = pass.shift;
    const unsigned width = pass.width;
    const std::uint32_t digits = std::uint32_t{1} << width;
    std::map<std::uint32_t, std::vector<std::size_t>> counts;  // by the bits known so far
    for (const Wanted& w : wanted) counts[w.known].resize(digits);
    each([&](float value) {
      if (!(value >= 0)) throw std::invalid_argument("only numbers that are not negative can be ranked");
      const auto bits = std::bit_cast<std::uint32_t>(value + 0.0F);  // a negative zero is a zero
      const auto known = static_cast<std::uint32_t>(std::uint64_t{bits} >> (shift + width));
      if (const auto count = counts.find(known); count != counts.end())
        ++count->second[(bits >> shift) & (digits - 1)];
    });
    for (Wanted& w : wanted) {
      const auto& count = counts.at(w.known);
      std::uint32_t digit = 0;
      while (digit < digits && w.rank > count[digit]) w.rank -= count[digit++];
      if (digit == digits) throw std::invalid_argument("a rank beyond the last number");
      w.known = (w.known << width) | digit;
    }
  }
  std::vector<float> out;
  for (const Wanted& w : wanted) out.push_back(std::bit_cast<float>(w.known));
  return out;
}

}  // namespace bide::study
