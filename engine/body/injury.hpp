// What blood loss, burns and fever change in a person, before a run.
//
// States: none. Inputs: a person of the scenario. Validity: hurt just before the start and bleeding no more;
// adults, untreated, for days. The blood that was lost is not replaced by cells within a run; water moves in
// from around the vessels, so that loss counts as lost body water of normal salt. Left out: shock, infection,
// heat made by large burns from the second day on, what fever and illness waste of protein, and shivering of
// the bled that sets in later or weaker than their greatest oxygen uptake explains: no number was found for
// it. Source: constants/injury.hpp.
#pragma once

#include "bide/body/build.hpp"
#include "bide/scenario/scenario.hpp"

namespace bide::body {

// What went with the blood: water in plasma and cells, and the effective osmoles it carried.
struct BloodLost {
  double water_kg, extracellular_mOsm, intracellular_mOsm;
};

// @param mass_kg        body mass, kg
// @param blood_loss_pct of all blood, %, [0, 30]
BloodLost blood_lost(double mass_kg, double blood_loss_pct);

// Factor on the greatest oxygen uptake: work and the strongest shivering are carried by what blood is left.
// @param blood_loss_pct of all blood, %, [0, 30]
// @return [0.8, 1]
double oxygen_uptake_left(double blood_loss_pct);

// Factor on resting heat: all tissues burn faster.
// @param fever_K rise of the set point, K, [0, 3]
// @return at least 1
double fever_heat_factor(double fever_K);

// Puts all of it, and what hurt hands cannot do, into a person's parameters.
// @param person as validated
// @param b      their parameters, complete but for this
void injure(const scenario::Person& person, Build<double>& b);

}  // namespace bide::body
