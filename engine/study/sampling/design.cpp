#include "bide/study/sampling/design.hpp"

#include <limits>
#include <numeric>
#include <stdexcept>
#include <utility>

namespace bide::study {
namespace {

using Row = Eigen::Index;

Points empty(std::size_t samples, std::size_t factors) {
  return Points(static_cast<Row>(samples), static_cast<Row>(factors));
}

}  // namespace

Points random_points(std::size_t samples, std::size_t factors, const UniformAt& uniform) {
  Points points = empty(samples, factors);
  for (std::size_t k = 0; k < samples; ++k) {
    for (std::size_t j = 0; j < factors; ++j) {
      points(static_cast<Row>(k), static_cast<Row>(j)) = uniform(k, static_cast<std::uint32_t>(j), 0);
    }
  }
  return points;
}

Points latin_hypercube(std::size_t samples, std::size_t factors, const UniformAt& uniform) {
  constexpr std::uint32_t order = 0, within = 1;
  Points points = empty(samples, factors);
  std::vector<std::size_t> slice(samples);
  for (std::size_t j = 0; j < factors; ++j) {
    const auto factor = static_cast<std::uint32_t>(j);
    // The shuffle of Fisher and Yates.
    std::iota(slice.begin(), slice.end(), std::size_t{0});
    for (std::size_t left = samples; left > 1; --left) {
      std::swap(slice[left - 1], slice[pick(uniform(left - 1, factor, order), left)]);
    }
    for (std::size_t k = 0; k < samples; ++k) {
      points(static_cast<Row>(k), static_cast<Row>(j)) =
          (static_cast<double>(slice[k]) + uniform(k, factor, within)) / static_cast<double>(samples);
    }
  }
  return points;
}

Grid::Grid(std::vector<std::vector<double>> values) : values_(std::move(values)) {
  for (const auto& listed : values_) {
    if (listed.empty()) throw std::invalid_argument("a grid needs at least one value for every input");
    if (size_ > std::numeric_limits<std::size_t>::max() / listed.size()) {
      throw std::invalid_argument("the grid has more combinations than can be counted");
    }
    size_ *= listed.size();
  }
}

template <class Put>
void Grid::digits(std::size_t k, std::size_t room, Put put) const {
  if (k >= size_ || room != factors()) throw std::invalid_argument("no such row of the grid");
  for (std::size_t j = factors(); j-- > 0;) {
    put(j, k % values_[j].size());
    k /= values_[j].size();
  }
}

void Grid::places(std::size_t k, std::span<std::size_t> out) const {
  digits(k, out.size(), [&](std::size_t j, std::size_t place) { out[j] = place; });
}

void Grid::row(std::size_t k, std::span<double> out) const {
  digits(k, out.size(), [&](std::size_t j, std::size_t place) { out[j] = values_[j][place]; });
}

}  // namespace bide::study
