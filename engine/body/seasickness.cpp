#include "bide/body/seasickness.hpp"

#include "bide/core/interpolate.hpp"

namespace bide::body {

double patch_protection(double hours) {
  using namespace constants;
  constexpr double middle_h[] = {12, 36, 60};
  constexpr double end_h = 72;
  const double protection[] = {patch_protection_day_1, patch_protection_day_2, patch_protection_day_3};
  return hours < 0 || hours >= end_h ? 0 : interpolate_linear(middle_h, protection, hours);
}

}  // namespace bide::body
