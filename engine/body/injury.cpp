#include "bide/body/injury.hpp"

#include "bide/constants/injury.hpp"
#include "bide/constants/water.hpp"
#include "bide/core/units.hpp"

namespace bide::body {

BloodLost blood_lost(double mass_kg, double blood_loss_pct) {
  using namespace constants;
  const double litres = blood_L_kg * mass_kg * blood_loss_pct / pct;
  const double of_plasma_kg = litres * (1 - blood_cell_share) * plasma_water_kg_L;
  const double of_cells_kg = litres * blood_cell_share * blood_cell_water_kg_L;
  return {of_plasma_kg + of_cells_kg, of_plasma_kg * normal_osmolality_mOsm_kg,
          of_cells_kg * normal_osmolality_mOsm_kg};
}

double oxygen_uptake_left(double blood_loss_pct) {
  return 1 - constants::oxygen_uptake_per_blood * blood_loss_pct / pct;
}

double fever_heat_factor(double fever_K) {
  return 1 + constants::fever_heat_per_K * fever_K;
}

void injure(const scenario::Person& p, Build<double>& b) {
  const BloodLost lost = blood_lost(p.mass_kg, p.blood_loss_pct);
  b.starting_deficit_kg += lost.water_kg;
  b.starting_salt_lost_mOsm = lost.extracellular_mOsm;
  b.intracellular_osmoles_mOsm -= lost.intracellular_mOsm;
  b.burned = p.burned_pct / pct;
  b.burnt_skin_vapour_conductance_m_s = constants::burnt_skin_vapour_conductance_m_s;
  b.fever_K = p.fever_K;
  // Not the sums over nodes: what is stated in resting heats, such as swimming, is of the healthy.
  for (auto& segment : b.basal_W)
    for (double& node : segment) node *= fever_heat_factor(p.fever_K);
  b.finger_basal_W *= fever_heat_factor(p.fever_K);
  b.fine_work = p.hands == scenario::Hands::sound ? 1 : 0;
  b.grip = p.hands == scenario::Hands::useless ? 0 : 1;
  if (!p.fit_for_work) b.greatest_work_W = 0;
}

}  // namespace bide::body
