#include "bide/body/vessels.hpp"

#include <cmath>
#include <numbers>

#include "bide/constants/body.hpp"
#include "bide/constants/vessels.hpp"

namespace bide::body {

using namespace constants;

double exchange_W_K(const VesselBundles& b) {
  const double apart = 0.5 * (b.artery_mm + b.vein_mm) + b.wall_mm;
  const double shape =
      2 * std::numbers::pi /
      std::acosh((2 * apart * 2 * apart - b.artery_mm * b.artery_mm - b.vein_mm * b.vein_mm) /
                 (2 * b.artery_mm * b.vein_mm));
  const double tissue_W_mK = shape * muscle_conductivity_W_mK * (1 + second_vein_adds * (b.veins - 1));
  const double film_W_mK = laminar_nusselt * std::numbers::pi * blood_conductivity_W_mK;
  return b.bundles * b.length_m / (1 / tissue_W_mK + 1 / film_W_mK + 1 / (film_W_mK * b.veins));
}

// Anatomy: one brachial artery between two veins, radial and ulnar with two each; one femoral artery beside
// one vein, then three arteries of the lower leg with two each.
double arms_exchange_W_K(double height_m) {
  const double one =
      exchange_W_K({upper_arm_vessels_m, upper_arm_artery_mm, upper_arm_vein_mm, upper_arm_wall_mm, 2, 1}) +
      exchange_W_K({forearm_vessels_m, forearm_artery_mm, forearm_vein_mm, forearm_wall_mm, 2, 2});
  return 2 * one * height_m / vessels_height_m;
}

double legs_exchange_W_K(double height_m) {
  constexpr int arteries_below_knee = 3;
  const double one = exchange_W_K({thigh_vessels_m, thigh_artery_mm, thigh_vein_mm, thigh_wall_mm, 1, 1}) +
                     exchange_W_K({lower_leg_vessels_m, lower_leg_artery_mm, lower_leg_vein_mm,
                                   lower_leg_wall_mm, 2, arteries_below_knee});
  return 2 * one * height_m / vessels_height_m;
}

}  // namespace bide::body
