#include "bide/body/stolwijk.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "bide/body/anthropometry.hpp"
#include "bide/body/layout.hpp"
#include "bide/constants/body.hpp"
#include "bide/constants/growth.hpp"
#include "bide/core/units.hpp"

namespace bide::body {

using namespace constants;

namespace {

// Half of the resistance of the standard man's fat layer in a segment, K/W.
double half_fat_resistance_K_W(int segment) {
  const double fat_kg = stolwijk_nodes[segment][fat].capacity_kcal_K / fat_specific_heat_kcal_kgK;
  const double area = stolwijk_segments[segment].area_m2;
  return 0.5 * fat_kg / (fat_density_kg_m3 * fat_conductivity_W_mK * area * area);
}

struct Ratios {
  double area, lean, fat;
};

double scaled_conductance_W_K(double standard_W_K, double fat_part_K_W, const Ratios& r) {
  const double whole = 1 / standard_W_K;
  const double fat_part = std::min(fat_part_K_W, whole);
  return r.area * r.area / (fat_part * r.fat + (whole - fat_part) * r.lean);
}

double volume_m3(int layer, double capacity_J_K) {
  return layer == fat ? capacity_J_K / (fat_specific_heat_kcal_kgK * kcal_J * fat_density_kg_m3)
                      : capacity_J_K / (lean_specific_heat_kcal_kgK * kcal_J * lean_density_kg_m3);
}

double resting_muscle_flow_L_h(double capacity_J_K) {
  constexpr double g_per_kg = 1000, mL_in_L = 1000, g = 100;
  const double muscle_kg = capacity_J_K / (lean_specific_heat_kcal_kgK * kcal_J);
  return resting_muscle_flow_mL_100g_min * muscle_kg * g_per_kg / g / mL_in_L * hour_s / minute_s;
}

// The trunk as a cylinder: conductances between the radii that halve the volumes of its layers.
void conduct_as_cylinder(BodyTable& t) {
  const double conductivity[tissue_count] = {viscera_conductivity_W_mK, muscle_conductivity_W_mK,
                                             fat_conductivity_W_mK, skin_conductivity_W_mK};
  std::array<double, tissue_count> volume{}, middle{}, outer{};
  double whole = 0;
  for (int l = 0; l < tissue_count; ++l) whole += volume[l] = volume_m3(l, t.capacity_J_K[trunk][l]);
  const double radius = 2 * whole / t.area_m2[trunk];
  double within = 0;
  for (int l = 0; l < tissue_count; ++l) {
    middle[l] = radius * std::sqrt((within + 0.5 * volume[l]) / whole);
    within += volume[l];
    outer[l] = radius * std::sqrt(within / whole);
  }
  const double around_m = t.area_m2[trunk] / radius;  // 2 pi times the length
  for (int l = 0; l < skin; ++l)
    t.conductance_W_K[trunk][l] = around_m / (std::log(outer[l] / middle[l]) / conductivity[l] +
                                              std::log(middle[l + 1] / outer[l]) / conductivity[l + 1]);
}

}  // namespace

BodyTable standard_body_table() {
  BodyTable t{};
  const double W_per_kcal_h = kcal_J / hour_s;
  double shiver_sum = 0;
  for (const SegmentRow& s : stolwijk_segments) shiver_sum += s.shiver;
  for (int s = 0; s < segment_count; ++s) {
    const SegmentRow& row = stolwijk_segments[s];
    t.area_m2[s] = row.area_m2;
    t.skin_receptor[s] = row.receptor;
    t.sweat_share[s] = row.sweat;
    t.dilatation_share[s] = row.dilatation;
    t.constriction_share[s] = row.constriction;
    t.work_share[s] = row.work;
    t.shiver_share[s] = row.shiver / shiver_sum;
    for (int l = 0; l < tissue_count; ++l) {
      const NodeRow& node = stolwijk_nodes[s][l];
      t.capacity_J_K[s][l] = node.capacity_kcal_K * kcal_J;
      t.basal_W[s][l] = node.basal_kcal_h * W_per_kcal_h;
      t.basal_flow_L_h[s][l] = node.flow_L_h;
      t.setpoint_C[s][l] = node.setpoint_degC;
      if (l < skin) t.conductance_W_K[s][l] = node.conductance_kcal_hK * W_per_kcal_h;
    }
  }
  t.blood_capacity_J_K = blood_capacity_kcal_K * kcal_J;
  t.blood_setpoint_C = blood_setpoint_degC;
  return t;
}

BodyTable scaled_body_table(scenario::Sex sex, double age_years, double mass_kg, double height_m,
                            double fat_pct) {
  BodyTable t = standard_body_table();
  const Ratios r{dubois_area_m2(mass_kg, height_m) / standard_area_m2,
                 lean_mass_kg(mass_kg, fat_pct) / (standard_mass_kg - standard_fat_kg),
                 fat_mass_kg(mass_kg, fat_pct) / standard_fat_kg};
  double basal_sum_W = 0;
  for (const auto& segment : t.basal_W)
    for (const double node_W : segment) basal_sum_W += node_W;
  const double basal_ratio = basal_heat_W(sex, age_years, mass_kg, height_m) / basal_sum_W;
  const bool grown = age_years >= grown_years;
  for (int s = 0; s < segment_count; ++s) {
    t.area_m2[s] *= r.area;
    t.basal_flow_L_h[s][muscle] = resting_muscle_flow_L_h(t.capacity_J_K[s][muscle]);
    for (int l = 0; l < tissue_count; ++l) {
      const double by_mass = l == fat ? r.fat : r.lean;
      t.capacity_J_K[s][l] *= by_mass;
      t.basal_flow_L_h[s][l] *= grown && l != skin ? by_mass : r.area;
      t.basal_W[s][l] *= basal_ratio;
    }
    const double half = half_fat_resistance_K_W(s);
    t.conductance_W_K[s][core] = scaled_conductance_W_K(t.conductance_W_K[s][core], 0, r);
    t.conductance_W_K[s][muscle] = scaled_conductance_W_K(t.conductance_W_K[s][muscle], half, r);
    t.conductance_W_K[s][fat] = scaled_conductance_W_K(t.conductance_W_K[s][fat], half, r);
  }
  conduct_as_cylinder(t);
  t.blood_capacity_J_K *= r.lean;
  return t;
}

}  // namespace bide::body
