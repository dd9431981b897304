#include "bide/body/water.hpp"

namespace bide::body {

double greatest_urine_osmolality_mOsm_kg(double age_years) {
  using namespace constants;
  const double old =
      bide::clamp((age_years - urine_young_years) / (urine_old_years - urine_young_years), 0.0, 1.0);
  return urine_greatest_young_mOsm_kg + old * (urine_greatest_old_mOsm_kg - urine_greatest_young_mOsm_kg);
}

}  // namespace bide::body
