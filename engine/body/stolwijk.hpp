// The 25-node table of a person: capacities, conductances, basal heat and flow, set points, shares.
//
// States: none; evaluated once, before a run. Inputs: sex, age, mass, height, body fat. Validity: adults,
// and children from two years on as far as size makes the difference; the standard man (74.4 kg, 15 %
// fat, 1.8877 m2) gets the published table, except for basal heat, which is the person's own, the flow of
// resting muscle and the conductances of the trunk. Source: Stolwijk 1971 (NASA CR-1855), numbers in
// constants/body.hpp; scaling below is ours.
//
// Muscle at rest has the flow measured in people, three times the table's: with the table's the trunk's
// muscle hangs on the core by a tenth of what shivering opens, and core heat is dumped into a cold store when
// it begins.
//
// The trunk is a cylinder of its own volumes and surface, with a node in each layer at the radius that halves
// the layer's volume. The table's conductances are 2.9 (core to muscle) and 1.5 times (muscle to fat)
// smaller, which made the trunk insulate better than the limbs; in people it is the other way round (Hayward
// & Keatinge 1981). Limbs keep the table's.
//
// Scaling. With a = area ratio (Du Bois), l = lean mass ratio, f = fat mass ratio to the standard man:
//  - areas and basal skin flow x a; lean capacities, blood and core flow x l; fat capacity and fat flow x f;
//    muscle flow goes with the muscle's own mass;
//  - under 18 years all flow x a: the heart gives 3.4 L/(min m2) to bodies of 0.2 to 2.0 m2 alike, a little
//    more to the young ("The relation between cardiac output and body size", abstract, 77 people; Katori
//    1979, abstract, 151 people of 4 to 78 years). By lean mass a child of six got half of that: its muscle
//    cooled for hours, and as shivering opened it, the core fell by a kelvin, several times a day;
//  - basal heat of every node x (own resting heat / table's sum);
//  - a conductance between two layers of head and limbs is the inverse of a fat part and a tissue part in
//  series. A fat
//    layer of mass m and area A has the thickness m / (rho A) and the resistance m / (rho k A^2), half of it
//    on the inside (muscle to fat), half on the outside (fat to skin); it grows as f / a^2. The tissue part
//    is a length over an area, the length like volume over area: it grows as (l / a) / a = l / a^2. Where
//    half of the fat layer's resistance is more than the whole of the table (fat to skin in arms and legs,
//    whose fat lies partly between the muscles), all of that resistance is fat.
#pragma once

#include "bide/scenario/scenario.hpp"

namespace bide::body {

// Segments: head, trunk, arms, hands, legs, feet (both sides together). Layers: core, muscle, fat, skin.
// conductance_W_K[s][i] lies between layers i and i + 1.
struct BodyTable {
  double area_m2[6];
  double capacity_J_K[6][4];
  double basal_W[6][4];
  double basal_flow_L_h[6][4];
  double conductance_W_K[6][3];
  double setpoint_C[6][4];
  double blood_capacity_J_K;
  double blood_setpoint_C;
  double skin_receptor[6], sweat_share[6], dilatation_share[6], constriction_share[6], work_share[6],
      shiver_share[6];
};

// The published table of the standard man, in SI, shivering shares divided by their sum of 0.99.
BodyTable standard_body_table();

// The table scaled to a person, as described above.
// @param sex       as recorded
// @param age_years years
// @param mass_kg   body mass, kg
// @param height_m  m
// @param fat_pct   body fat, % of mass, [3, 60]
BodyTable scaled_body_table(scenario::Sex sex, double age_years, double mass_kg, double height_m,
                            double fat_pct);

}  // namespace bide::body
