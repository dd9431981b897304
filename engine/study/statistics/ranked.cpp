#include "bide/study/statistics/ranked.hpp"

#include <climits>
#include <cmath>
#include <cstdint>
#include <map>
#include <stdexcept>
#include <type_traits>

#include "bide/core/bit_cast.hpp"

namespace bide::study {
namespace {

template <class Number>
using Bits = std::conditional_t<sizeof(Number) == sizeof(std::uint32_t), std::uint32_t, std::uint64_t>;
template <class Number>
inline constexpr unsigned bits_of = sizeof(Number) * CHAR_BIT;
template <class Number>
inline constexpr Bits<Number> sign_bit = Bits<Number>{1} << (bits_of<Number> - 1);

// Bits in the order of the numbers. Those of IEEE 754 numbers that are not negative are in order already;
// those of negative numbers are in reverse order.
template <class Number>
Bits<Number> ascending(Number value) {
  if (std::isnan(value)) throw std::invalid_argument("what is not a number has no rank");
  const auto bits = bit_cast<Bits<Number>>(value + Number{0});  // a negative zero is a zero
  return (bits & sign_bit<Number>) != 0 ? ~bits : bits | sign_bit<Number>;
}

template <class Number>
Number number_of(Bits<Number> ascending) {
  return bit_cast<Number>((ascending & sign_bit<Number>) != 0 ? ascending & ~sign_bit<Number> : ~ascending);
}

// What is known so far of a wanted value: its highest bits, and its rank among the numbers that share them.
template <class Number>
struct Wanted {
  Bits<Number> known = 0;
  std::size_t rank = 0;
};

}  // namespace

template <class Number>
std::vector<Number> at_ranks(const EachNumber<Number>& each, std::span<const std::size_t> ranks) {
  constexpr unsigned widest = 11;
  std::vector<Wanted<Number>> wanted;
  for (const std::size_t rank : ranks) {
    if (rank == 0) throw std::invalid_argument("ranks count from 1");
    wanted.push_back({0, rank});
  }
  for (unsigned left = bits_of<Number>; left > 0;) {
    const unsigned width = left < widest ? left : widest, shift = left - width;
    const std::size_t digits = std::size_t{1} << width;
    std::map<Bits<Number>, std::vector<std::size_t>> counts;  // by the bits known so far
    for (const Wanted<Number>& w : wanted) counts[w.known].resize(digits);
    each([&](Number value) {
      const Bits<Number> bits = ascending(value);
      const Bits<Number> known = left == bits_of<Number> ? 0 : bits >> left;
      if (const auto count = counts.find(known); count != counts.end())
        ++count->second[static_cast<std::size_t>(bits >> shift) & (digits - 1)];
    });
    for (Wanted<Number>& w : wanted) {
      const auto& count = counts.at(w.known);
      std::size_t digit = 0;
      while (digit < digits && w.rank > count[digit]) w.rank -= count[digit++];
      if (digit == digits) throw std::invalid_argument("a rank beyond the last number");
      w.known = static_cast<Bits<Number>>(w.known << width) | static_cast<Bits<Number>>(digit);
    }
    left = shift;
  }
  std::vector<Number> out;
  for (const Wanted<Number>& w : wanted) out.push_back(number_of<Number>(w.known));
  return out;
}

template std::vector<float> at_ranks(const EachNumber<float>&, std::span<const std::size_t>);
template std::vector<double> at_ranks(const EachNumber<double>&, std::span<const std::size_t>);

}  // namespace bide::study
