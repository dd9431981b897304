#include "bide/stores/seen_range.hpp"

#include <cmath>

#include "bide/constants/signals.hpp"

namespace bide::stores {

double luminous_range_nm(double light_cd, double visibility_nm, double threshold_lux) {
  namespace c = constants;
  const double lost_per_nm = -std::log(c::contrast_at_visibility) / visibility_nm;
  const auto needed_cd = [&](double nm) {
    return c::luminous_range_factor * threshold_lux * nm * nm * std::exp(lost_per_nm * nm);
  };
  // Without any haze it is seen at least as far.
  double near = 0, far = std::sqrt(light_cd / (c::luminous_range_factor * threshold_lux));
  constexpr double close_nm = 1e-9;
  while (far - near > close_nm * (1 + far)) {
    const double middle = (near + far) / 2;
    (needed_cd(middle) < light_cd ? near : far) = middle;
  }
  return (near + far) / 2;
}

double horizon_range_nm(double eye_m, double light_m) {
  return constants::horizon_nm_per_root_m * (std::sqrt(eye_m) + std::sqrt(light_m));
}

}  // namespace bide::stores
