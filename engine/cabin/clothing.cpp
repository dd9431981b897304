#include "bide/cabin/clothing.hpp"

namespace bide::cabin {

double aid_resistance_m2K_W() {
  using namespace constants;
  return aid_material_m2K_W + (1 - aid_touching) * air_gap_m2K_W(aid_air_gap_mm, HeatFlow::level);
}

}  // namespace bide::cabin
