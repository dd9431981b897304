#include "bide/study/sampling/own_points.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "bide/core/random.hpp"

namespace bide::study {

std::optional<std::string> settle_number(double& number, const Factor& factor, scenario::PointScale scale) {
  if (scale == scenario::PointScale::natural && factor.has_value) {
    if (std::isfinite(number)) return std::nullopt;
    return fmt::format("found {} for {}; allowed a finite number", number, factor.name);
  }
  if (!(number >= 0 && number <= 1))
    return fmt::format("found {} for {}; allowed 0 to 1, its place in the distribution", number, factor.name);
  number = std::clamp(number, least_uniform, 1 - least_uniform);
  return std::nullopt;
}

}  // namespace bide::study
