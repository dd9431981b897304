// Counter-current exchange of heat between the arteries and deep veins of a limb, from their geometry.
//
// States: none; evaluated once, before a run. Inputs: height; sizes in constants/vessels.hpp. Validity: the
// named main vessels; finer ones are part of the exchange of tissue with blood. Source: conduction between
// two parallel cylinders and laminar flow in tubes (Incropera 2007).
#pragma once

namespace bide::body {

// Equal bundles of one artery and its veins along a stretch of limb.
struct VesselBundles {
  double length_m, artery_mm, vein_mm, wall_mm;  // wall: between the two bloods
  int veins, bundles;                            // veins beside each artery, 1 or 2
};

// Conductance between arteries and veins of one stretch: tissue between two parallel cylinders,
// 2 pi k L / acosh((4 w^2 - a^2 - v^2) / (2 a v)) with w from axis to axis, in series with the film of
// flowing blood on either side, Nu pi k L.
// @param bundles sizes, all above 0
// @return W/K
double exchange_W_K(const VesselBundles& bundles);

// Both arms, and both legs.
// @param height_m of the person, m, above 0
// @return W/K
double arms_exchange_W_K(double height_m);
double legs_exchange_W_K(double height_m);

}  // namespace bide::body
