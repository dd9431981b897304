#include "bide/cabin/envelope.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace bide::cabin {

namespace {

// Upper half of the surface of an ellipsoid of revolution, radius a, height c above its equator.
double half_spheroid_area_m2(double a, double c) {
  const double ratio = c / a;
  const double disc = std::numbers::pi * a * a;
  if (std::abs(ratio - 1) < 1e-6) return 2 * disc;
  if (ratio < 1) {
    const double e = std::sqrt(1 - ratio * ratio);
    return disc * (1 + (1 - e * e) / e * std::atanh(e));
  }
  const double e = std::sqrt(1 - 1 / (ratio * ratio));
  return disc * (1 + ratio / e * std::asin(e));
}

}  // namespace

Geometry raft_geometry(double floor_area_m2, double canopy_height_m, double tube_diameter_m) {
  Geometry g;
  const double radius = std::sqrt(floor_area_m2 / std::numbers::pi);
  const double tubes_height = 2 * tube_diameter_m;
  g.plan_area_m2 = floor_area_m2;
  g.perimeter_m = 2 * std::numbers::pi * radius;
  g.tube_side_area_m2 = g.perimeter_m * std::numbers::pi * tube_diameter_m;
  if (canopy_height_m <= 0) return g;
  const double dome = std::max(canopy_height_m - tubes_height, 0.0);
  // At a flat cover atanh(e) has no limit, but its product with 1 - e^2 goes to 0: only the disc is left.
  g.canopy_area_m2 = dome > 1e-6 * radius ? half_spheroid_area_m2(radius, dome) : floor_area_m2;
  g.volume_m3 = floor_area_m2 * std::min(canopy_height_m, tubes_height) + 2.0 / 3.0 * floor_area_m2 * dome;
  // (1 + n_z) / 2 averaged over the surface: the integral of n_z over it is the plan area.
  g.sky_view = 0.5 * (1 + floor_area_m2 / g.canopy_area_m2);
  return g;
}

double body_volume_m3(double mass_kg) {
  constexpr double body_density_kg_m3 = 1000;
  return mass_kg / body_density_kg_m3;
}

CanopySun canopy_sun(scenario::CanopyKind skins, double cloth_transmitted, double cloth_absorbed) {
  const double t = cloth_transmitted, a = cloth_absorbed, r = 1 - t - a;
  if (!(t >= 0 && a >= 0 && r >= 0))
    throw std::invalid_argument(
        "canopy cloth: transmitted and absorbed shares of the sun must lie in [0, 1]");
  if (skins == scenario::CanopyKind::none) return {0, 0, 1};
  if (skins == scenario::CanopyKind::one_skin) return {a, 0, t};
  const double between = t / (1 - r * r);  // falls on the inner skin, all passes counted
  return {a + a * r * between, a * between, t * between};
}

CanopySun canopy_sun(scenario::CanopyKind skins) {
  return canopy_sun(skins, constants::cloth_sun_transmitted, constants::cloth_sun_absorbed);
}

}  // namespace bide::cabin
