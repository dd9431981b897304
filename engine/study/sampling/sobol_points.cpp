#include "bide/study/sampling/sobol_points.hpp"

#include <boost/random/sobol.hpp>
#include <stdexcept>
#include <utility>

namespace bide::study {

SobolPoints::SobolPoints(std::size_t factors, UniformAt scrambling)
    : factors_(factors), scrambling_(std::move(scrambling)), directions_(digits * factors) {
  if (factors == 0 || factors > boost::random::default_sobol_table::max_dimension) {
    throw std::invalid_argument("Sobol' points exist for 1 to 3667 uncertain inputs");
  }
  // The library walks in Gray code order and leaves out point 0. The point whose Gray code has digit b alone
  // is number 2^(b+1) - 1, and it is the direction number of that digit.
  boost::random::sobol_engine<std::uint32_t, digits> walk(factors);
  for (unsigned b = 0; b < digits; ++b) {
    const std::uint64_t number = (std::uint64_t{2} << b) - 1;
    walk.seed(static_cast<std::uint32_t>(number - 1));
    for (std::size_t j = 0; j < factors; ++j) directions_[b * factors + j] = walk();
  }
}

// The digits form a tree of choices; each inner place of the tree holds one coin. One uniform number serves
// the 31 coins of five levels below one place.
std::uint32_t SobolPoints::scrambled(std::uint32_t plain, std::size_t factor) const {
  constexpr unsigned levels = 5;
  std::uint32_t out = 0;
  for (unsigned from = 0; from < digits; from += levels) {
    const std::uint32_t before = from == 0 ? 0 : plain >> (digits - from);
    const double uniform = scrambling_(before, static_cast<std::uint32_t>(factor), from);
    const auto coins = static_cast<std::uint32_t>(uniform * 0x1p32);
    std::uint32_t place = 1;  // in the small tree: the children of p are 2p and 2p + 1
    for (unsigned level = from; level < digits && level < from + levels; ++level) {
      const std::uint32_t digit = plain >> (digits - 1 - level) & 1U;
      const std::uint32_t coin = coins >> place & 1U;
      out = out << 1U | (digit ^ coin);
      place = 2 * place + digit;
    }
  }
  return out;
}

void SobolPoints::point(std::uint64_t k, std::span<double> out) const {
  if (k >> digits != 0 || out.size() != factors_) throw std::invalid_argument("no such Sobol' point");
  for (std::size_t j = 0; j < factors_; ++j) {
    std::uint32_t place = 0;
    for (unsigned b = 0; k >> b != 0; ++b) {
      if (k >> b & 1U) place ^= directions_[b * factors_ + j];
    }
    if (scrambling_) place = scrambled(place, j);
    out[j] = (static_cast<double>(place) + 0.5) * 0x1p-32;
  }
}

Points SobolPoints::first(std::size_t samples) const {
  Points points(static_cast<Eigen::Index>(samples), static_cast<Eigen::Index>(factors_));
  for (std::size_t k = 0; k < samples; ++k) point(k, {points.data() + k * factors_, factors_});
  return points;
}

}  // namespace bide::study
