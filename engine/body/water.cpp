#include "bide/body/water.hpp"

#include "bide/core/interpolate.hpp"

namespace bide::body {

double greatest_urine_osmolality_mOsm_kg(double age_years) {
  using namespace constants;
  const double old =
      bide::clamp((age_years - urine_young_years) / (urine_old_years - urine_young_years), 0.0, 1.0);
  return urine_greatest_young_mOsm_kg + old * (urine_greatest_old_mOsm_kg - urine_greatest_young_mOsm_kg);
}

double salt_balance_s(double age_years) {
  using namespace constants;
  const double hours[] = {salt_balance_young_h, salt_balance_middle_h, salt_balance_old_h};
  return interpolate_linear(salt_balance_years, hours, age_years) * hour_s;
}

}  // namespace bide::body
