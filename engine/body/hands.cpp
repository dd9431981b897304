#include "bide/body/hands.hpp"

#include "bide/body/layout.hpp"

namespace bide::body {

FingerNode take_fingers(BodyTable& table) {
  using namespace constants;
  FingerNode node{};
  const auto take = [](double& from, double share) {
    const double taken = from * share;
    from -= taken;
    return taken;
  };
  node.area_m2 = take(table.area_m2[hands], finger_area_share);
  node.setpoint_C = table.setpoint_C[hands][skin];
  for (int l = 0; l < tissue_count; ++l) {
    node.capacity_J_K += take(table.capacity_J_K[hands][l], finger_mass_share);
    node.basal_W += take(table.basal_W[hands][l], finger_mass_share);
    node.basal_flow_L_h +=
        take(table.basal_flow_L_h[hands][l], l == skin ? finger_area_share : finger_mass_share);
    if (l < skin) take(table.conductance_W_K[hands][l], finger_area_share);
  }
  return node;
}

}  // namespace bide::body
