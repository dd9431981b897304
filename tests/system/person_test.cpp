// Heat made and carried, breath, water, salt and fuel of one person, against hand arithmetic with the
// published numbers.
//
// A body of round sizes, all of it at its set points (core 37, skin 33 degC), resting awake, just fed.
#include "bide/system/freeze_person.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "support/near.hpp"

using namespace bide;
using bide::test::Near;
namespace bat = bide::body::at;
using namespace bide::body;

namespace {

struct Resting {
  system::Compiled<double> compiled;
  system::Held<double> held;
  system::Surroundings<double> around{};
  std::array<double, bat::count> x{};
  PersonCoefficients<double> c{};

  Build<double>& b() { return compiled.persons[0]; }

  Resting() {
    compiled.persons.resize(1);
    compiled.raft = {};
    held.persons.resize(1);
    held.enclosed = 0;
    Build<double>& p = b();
    p = {};
    p.mass_kg = 80, p.lean_kg = 61, p.body_fat_pct = 12.9, p.age_years = 30;
    p.area_m2 = {0.2, 0.6, 0.3, 0.1, 0.6, 0.1}, p.finger_area_m2 = 0.1, p.area_total_m2 = 2;
    p.basal_total_W = 80;
    p.basal_W[trunk][core] = 60, p.basal_W[legs][muscle] = 19, p.finger_basal_W = 1;
    p.basal_flow_L_h[trunk] = {100, 0, 2, 3}, p.basal_flow_L_h[legs] = {0, 10, 0, 0};
    p.work_share[legs] = 0.5, p.shiver_share[trunk] = 0.25;
    p.sweat_share[trunk] = 0.5;
    p.finger_basal_flow_L_h = 10, p.finger_capacity_J_K = 3500, p.finger_setpoint_degC = 33;
    p.shivering_ceiling_W = 400, p.shivering_sustained_W = 104,
    p.shivering_factor = p.sweat_factor = p.dilatation_age_factor = p.constriction_age_factor = p.size =
        p.command_size = 1;
    p.core_setpoint_degC = 37, p.mean_skin_setpoint_degC = 33, p.greatest_urine_osmolality_mOsm_kg = 1000,
    p.susceptibility = p.swim_endurance_factor = 1;
    p.greatest_sweat_W_m2 = 500, p.greatest_wettedness = 1, p.sweat_salt_mOsm_kg = 90;
    p.skin_vapour_conductance_m_s = p.burnt_skin_vapour_conductance_m_s = 1e-4;
    p.permeability_index = 0.38;
    p.body_water_kg = 40, p.extracellular_osmoles_mOsm = 4600, p.intracellular_osmoles_mOsm = 7280;
    p.glycogen_kJ = 8000, p.fat_kg = 10.3, p.protein_kg = 12.2;
    for (int s = 0; s < segment_count; ++s) {
      p.clothing_capacity_kg[s] = p.per_clothing_capacity[s] = 1;
      p.receptor[s] = s == trunk ? 1 : 0;
      p.setpoint_degC[s] = {37, 36, 35, 33};
      for (int l = 0; l < tissue_count; ++l) x[bat::node(s, l)] = p.setpoint_degC[s][l];
      x[bat::node(s, clothing)] = 28;
    }
    x[bat::blood] = 37, x[bat::finger] = 33;
    x[bat::body_water] = 40, x[bat::extracellular_osmoles] = 4600, x[bat::urea] = 200;
    x[bat::glycogen] = 8000, x[bat::fat_mass] = 10.3, x[bat::protein_mass] = 12.2;
    around.air_degC = 14, around.vapour_kg_m3 = 0.008;
    around.convection_W_m2K = 4, around.radiation_W_m2K = 5, around.transfer_m_s = 0.003;
    around.transfer_under_aid_m_s = 0.001;
    around.latent_heat_J_kg = 2.44e6, around.water_film_W_m2K = 460, around.under_floor_W_m2K = 250;
    around.seated_floor_m2K_W = 0.05;
  }
  void freeze() { system::freeze_person(compiled, 0, held, around, 100000.0, x.data(), c); }
};

}  // namespace

TEST_CASE("heat made, breathed out and put where it is made") {
  Resting r;
  r.freeze();
  // Basal 80, sitting awake 0.15 x 80 = 12, made where basal heat is.
  CHECK(r.c.metabolic_W == Near(92));
  CHECK(r.c.shivering_W == Near(0));
  // 0.0014 x 92 x (34 - 14).
  CHECK(r.c.breath_dry_W == Near(2.576));
  // Vapour 0.008 x 461.5 x 287.15 = 1060.2 Pa; 0.0173 x 92 x (5.87 - 1.0602); latent heat at 34
  // degC 2.42042e6.
  CHECK(r.c.breath_latent_W == Near(7.65534).epsilon(1e-5));
  CHECK(r.c.breath_water_kg_s == Near(3.16282e-6).epsilon(1e-5));
  CHECK(r.c.source_W[trunk][core] == Near(69 - 2.576 - 7.65534).epsilon(1e-5));
  CHECK(r.c.source_W[legs][muscle] == Near(19 * 1.15));
  CHECK(r.c.finger_source_W == Near(1.15));
  CHECK(r.c.source_W[trunk][muscle] == 0);
}

TEST_CASE("blood carries 1.163 W/K per litre an hour, and more to a working muscle") {
  Resting r;
  r.freeze();
  CHECK(r.c.perfusion_W_K[trunk][core] == Near(116.3));
  CHECK(r.c.perfusion_W_K[trunk][fat] == Near(2.326));
  CHECK(r.c.perfusion_W_K[trunk][skin] == Near(3.489));
  CHECK(r.c.perfusion_W_K[legs][muscle] == Near(11.63));
  CHECK(r.c.finger_perfusion_W_K == Near(11.63));
  // Work of 40 W, half of it in the legs: 10 L/h + 0.8598 x 20 W.
  r.held.persons[0].labour_W = 40;
  r.freeze();
  CHECK(r.c.perfusion_W_K[legs][muscle] == Near(1.163 * 27.196).epsilon(1e-5));
  // Muscle 10 K cold: half of the resting flow (Q10 of 2), and all of what work asks for. Warm muscle: as it
  // was.
  r.x[bat::node(legs, muscle)] = 26;
  r.freeze();
  CHECK(r.c.perfusion_W_K[legs][muscle] == Near(1.163 * 22.196).epsilon(1e-5));
  r.x[bat::node(legs, muscle)] = 38;
  r.freeze();
  CHECK(r.c.perfusion_W_K[legs][muscle] == Near(1.163 * 27.196).epsilon(1e-5));
}

TEST_CASE("cold: shivering from core and skin, in the muscles") {
  Resting r;
  r.x[bat::node(trunk, core)] = 36.5;
  for (int s = 0; s < segment_count; ++s) r.x[bat::node(s, skin)] = 23;
  r.x[bat::finger] = 23;
  r.freeze();
  // The law of 1999: 155.5 x 0.5 + 47 x 10 - 1.57 x 100 = 390.75; over sqrt(12.9) = 108.794 W/m2. Skin and
  // core: 5.01 x 8.4 + 24.4 / 1.8877 x 0.5 x 10 = 106.713; times sqrt(15 / 12.9) = 115.072. The smaller, on 2
  // m2.
  const double shivering_W = 217.588;
  CHECK(r.c.shivering_W == Near(shivering_W).epsilon(1e-4));
  // Basal heat of the trunk, 0.5 K cold inside, by Q10: 69 x 2^(-0.05) = 66.6498 W, and 23 elsewhere.
  CHECK(r.c.metabolic_W == Near(89.6498 + shivering_W).epsilon(1e-5));
  CHECK(r.c.source_W[trunk][muscle] == Near(0.25 * shivering_W).epsilon(1e-4));
  // The trunk's vessels have no share of the constriction here: local cooling alone, 3 x 2^(-10/10) L/h.
  CHECK(r.c.perfusion_W_K[trunk][skin] == Near(1.163 * 1.5).epsilon(1e-4));
  // A core 0.2 K low: 344.1 / sqrt(12.9) = 95.805, and (42.084 + 25.8516) x 1.078327 = 73.257 W/m2.
  r.x[bat::node(trunk, core)] = 36.8;
  r.freeze();
  CHECK(r.c.shivering_W == Near(146.514).epsilon(1e-4));
  // The clock's set point 0.2 K lower: what was low is normal, and only the skin asks, 42.084 x 1.078327.
  r.around.core_rhythm_K = -0.2;
  r.freeze();
  CHECK(r.c.shivering_W == Near(90.761).epsilon(1e-4));
  r.around.core_rhythm_K = 0;
  // A colder skin: (77.75 + 351.75) / sqrt(12.9) = 119.583 W/m2, below the 214 of skin and core.
  r.x[bat::node(trunk, core)] = 36.5;
  for (int s = 0; s < segment_count; ++s) r.x[bat::node(s, skin)] = 15;
  r.x[bat::finger] = 15;
  r.freeze();
  CHECK(r.c.shivering_W == Near(239.166).epsilon(1e-4));
  for (int s = 0; s < segment_count; ++s) r.x[bat::node(s, skin)] = 23;
  r.x[bat::finger] = 23;
  // Immersed, the law of cold cores alone.
  r.held.persons[0].in_water = 1;
  r.freeze();
  CHECK(r.c.shivering_W == Near(217.588).epsilon(1e-4));
}

TEST_CASE("warm: sweat 372.2 W per kelvin of the head's core, by shares") {
  Resting r;
  r.x[bat::node(head, core)] = 37.2;
  r.freeze();
  // 74.44 W are commanded, none given yet: in ten minutes at that pace all would be.
  CHECK(r.c.sweat_W_s == Near(74.44 / 600));
  CHECK(r.c.salt_loss_mOsm_s == Near(337.0 / 86400));
  r.x[bat::sweat] = 74.44;
  r.compiled.fitted.wet_skin_withholds = 0;
  r.freeze();
  CHECK(std::abs(r.c.sweat_W_s) < 1e-12);
  // Half on the trunk: 37.22 W = 1.5254e-5 kg/s, and its salt 90 mOsm/kg.
  const double sweat_kg_s = 37.22 / 2.44e6;
  const double salt = 337.0 / 86400;
  CHECK(r.c.salt_loss_mOsm_s == Near(salt + 90 * sweat_kg_s));
  // What wet skin withholds was never sweat and takes no salt: some 4 % at a third of what the air takes up.
  r.compiled.fitted.wet_skin_withholds = 1;
  r.freeze();
  CHECK(r.c.salt_loss_mOsm_s < salt + 0.97 * 90 * sweat_kg_s);
  CHECK(r.c.salt_loss_mOsm_s > salt + 0.90 * 90 * sweat_kg_s);
  // Flow through the skin: 117 L/h per kelvin, no share of it set for the trunk.
  CHECK(r.c.perfusion_W_K[trunk][skin] == Near(3.489));
}

TEST_CASE("water and salt") {
  Resting r;
  r.x[bat::gut_water] = 0.1;
  r.x[bat::motion_dose] = 900, r.x[bat::adaptation] = 0.2;
  r.freeze();
  CHECK(r.c.absorption_kg_s == Near(0.1 / 900));  // emptied with 15 min
  // Salt 337 mOsm/d = 3.90046e-3, urea 200 mOsm over 15.6 h = 3.56125e-3 mOsm/s. Osmolality 11880 / 40 = 297,
  // above 295: urine as dense as it gets, 1000 mOsm/kg; 7.46172e-6 kg/s (27 mL/h).
  CHECK(r.c.urine_kg_s == Near(7.46172e-6).epsilon(1e-5));
  // A dose of 900: 1/3 sqrt(900) = 10 %, less a fifth by adaptation: 0.08 of 1 kg a day.
  CHECK(r.c.severity == Near(0.08));
  CHECK(r.c.vomit_kg_s == Near(0.08 / 86400));
  CHECK(r.c.salt_loss_mOsm_s == Near(3.90046e-3 + 139 * 0.08 / 86400).epsilon(1e-5));
  // Carbohydrate 0.40 x 92 W over 17 kJ/g = 2.16471e-6 kg/s and protein 17.4819 W over 18.59 kJ/g =
  // 9.4039e-7 kg/s leave three times their mass of water at 287 mOsm/kg: 2.67349e-3 mOsm/s.
  CHECK(r.c.osmole_rate_mOsm_s == Near(2.67349e-3 - 3.90046e-3 - 139 * 0.08 / 86400).epsilon(1e-5));
  CHECK(r.c.fluid_shift_L_s == Near(0));
  // Immersed: 0.68 L with a time of 2.33 h, all of it urine, with 150 mOsm/kg.
  r.held.persons[0].in_water = 1;
  r.freeze();
  CHECK(r.c.fluid_shift_L_s == Near(0.68 / 8388));
  CHECK(r.c.urine_kg_s == Near(7.46172e-6 + 0.68 / 8388).epsilon(1e-5));
  CHECK(r.c.salt_loss_mOsm_s == Near(3.90046e-3 + 139 * 0.08 / 86400 + 150 * 0.68 / 8388).epsilon(1e-5));
}

TEST_CASE("used tissue leaves its water, and a body with less tissue lacks less") {
  Resting r;
  const Build<double>& p = r.compiled.persons[0];
  const auto deficit = [&] { return system::water_deficit_pct(p, r.x.data()); };
  const auto osmolality = [&] { return system::osmolality_mOsm_kg(p, r.x.data()); };
  CHECK(deficit() == Near(0));
  CHECK(osmolality() == Near(297));
  // 1 kg of protein and 1700 kJ = 0.1 kg of glycogen used: 3.3 kg of water are free, none of it lacking yet.
  // Its salt, 3.3 x 287 = 947.1 mOsm, comes out of the cells.
  r.x[bat::protein_mass] -= 1, r.x[bat::glycogen] -= 1700;
  // The body that is left weighs 80 - 1 - 0.1 - 3.3 = 75.6 kg.
  CHECK(deficit() == Near(-100 * 3.3 / 75.6));
  CHECK(osmolality() == Near((11880 - 947.1) / 40));
  // All of it passed: nothing lacks. A litre more: 1 of 75.6 kg.
  r.x[bat::body_water] -= 3.3;
  CHECK(deficit() + 1 == Near(1));
  CHECK(osmolality() == Near((11880 - 947.1) / 36.7));
  r.x[bat::body_water] -= 1;
  CHECK(deficit() == Near(100 / 75.6));
}

TEST_CASE("fuel, nitrogen, CO2 and the water fuel leaves behind") {
  Resting r;
  r.freeze();
  CHECK(r.c.oxidised_kJ_s == Near(0.092));
  // Nitrogen 13 g/d (61 kg lean): 1.50463e-4 g/s, x 6.25 x 18.59 kJ/g = 17.4819 W = 0.190021 of 92 W.
  // Carbohydrate 0.40, fat the rest, 0.409979.
  CHECK(r.c.nitrogen_g_s == Near(1.50463e-4).epsilon(1e-5));
  CHECK(r.c.glycogen_kJ_s == Near(-0.4 * 0.092));
  CHECK(r.c.fat_kg_s == Near(-9.58285e-7).epsilon(1e-5));      // 0.409979 x 0.092 / 39360
  CHECK(r.c.protein_kg_s == Near(-9.40394e-7).epsilon(1e-5));  // 0.0174819 / 18590
  // Urea made 35.7 mOsm/g N = 5.37153e-3, less 3.56125e-3 excreted.
  CHECK(r.c.urea_rate_mOsm_s == Near(1.81027e-3).epsilon(1e-5));
  // 92e-6 x (0.4 x 0.56/17 + 0.409979 x 1.07/39.36 + 0.190021 x 0.41/18.59).
  CHECK(r.c.metabolic_water_kg_s == Near(2.62316e-6).epsilon(1e-5));
  // Oxygen 21168 (0.23 RQ + 0.77) J/L for RQ 1, 0.707, 0.80: mixture RQ 0.837656; CO2 at 14 degC, 100 kPa:
  // 0.837656 x 92 / 20377.6 L/s x 1.05125 x 1.01325.
  CHECK(r.c.co2_m3_s == Near(4.02833e-6).epsilon(1e-5));
}

TEST_CASE("food is taken up with two hours, and goes to the stores") {
  Resting r;
  r.x[bat::gut_carbohydrate] = 720, r.x[bat::gut_fat] = 360, r.x[bat::gut_protein] = 72;
  r.freeze();
  CHECK(r.c.absorbed_carbohydrate_kJ_s == Near(0.1));
  CHECK(r.c.absorbed_fat_kJ_s == Near(0.05));
  CHECK(r.c.absorbed_protein_kJ_s == Near(0.01));
  // Food brings more than the 92 W made, without protein: 36.6 mg/(kg d), for 70 kg 2.56 of the 13 g/d of
  // nitrogen, are left: 17.48192 x 2.56 / 13 = 3.442594 W of protein.
  r.x[bat::gut_protein] = 0;
  r.freeze();
  CHECK(r.c.glycogen_kJ_s == Near(0.1 - 0.4 * 0.092));
  CHECK(r.c.protein_kg_s == Near(-0.003442594 / 18590).epsilon(1e-5));
  CHECK(r.c.fat_kg_s == Near((0.05 - (0.6 * 0.092 - 0.003442594)) / 39360).epsilon(1e-5));
}

TEST_CASE("liquid water onto the clothing, and what it costs to warm it") {
  Resting r;
  r.around.drip_kg_s = 1e-5, r.around.wetting_kg_s = 2e-5, r.around.pooled_share = 0.25;
  r.b().covered[trunk] = 1, r.b().insulation_m2K_W[trunk] = 0.155, r.b().waterproof = 0.25;
  r.x[bat::clothing_water + trunk] = 1.2;
  r.freeze();
  // Caught 3e-5 x 0.75 x 0.6/2 = 6.75e-6; the rest goes to the floor; 0.2 kg too much drains with 600 s.
  CHECK(r.c.clothing_gain_kg_s[trunk] == Near(6.75e-6));
  CHECK(r.c.clothing_drain_kg_s[trunk] == Near(0.2 / 600));
  CHECK(r.c.liquid_to_floor_kg_s == Near(3e-5 - 6.75e-6));
  CHECK(r.c.wetting_kg_s == Near(2e-5));
  CHECK(r.c.clothing_surface[trunk].to_sea == Near(2e-5 * 0.75 * 0.3 * 3990));
  // Dry: a quarter of the seat (0.08) lies in water and wicks 0.75 x 0.02 x 1 kg with 1800 s.
  r.x[bat::clothing_water + trunk] = 0;
  r.freeze();
  CHECK(r.c.clothing_gain_kg_s[trunk] == Near(6.75e-6 + 0.015 / 1800));
  CHECK(r.c.liquid_to_floor_kg_s == Near(3e-5 - 6.75e-6 - 0.015 / 1800));
  // 3990 J/(kg K) of the water carried, 1500 of the cloth, and the nominal 1 J/K.
  r.b().clothing_mass_kg[trunk] = 0.5, r.x[bat::clothing_water + trunk] = 0.3;
  r.freeze();
  CHECK(r.c.capacity_J_K[trunk][clothing] == Near(1 + 750 + 1197));
}

TEST_CASE("sun on a body by lit area, clothing takes what it covers") {
  Resting r;
  r.around.sun_W = 17;  // over 0.2 + 0.6 + 0.3 + 0.6 = 1.7 m2: 10 W/m2
  r.b().covered[trunk] = 0.75;
  r.freeze();
  CHECK(r.c.sun_W == 17);
  CHECK(r.c.source_W[head][skin] == Near(2));
  CHECK(r.c.source_W[trunk][skin] == Near(1.5));
  CHECK(r.c.source_W[trunk][clothing] == Near(4.5));
  CHECK(r.c.source_W[hands][skin] == 0);
}

TEST_CASE("sun in the open on all but what is under water, or against tube and neighbours") {
  Resting r;
  r.around.sun_in_open_W_m2 = 100;
  r.freeze();
  CHECK(r.c.source_W[head][skin] == Near(20));
  CHECK(r.c.source_W[hands][skin] == Near(10));
  CHECK(r.c.source_W[trunk][skin] == Near(60 * 0.85));  // 0.15 against the tube
  CHECK(r.c.source_W[legs][skin] == Near(60));
  CHECK(r.c.sun_W == Near(20 + 51 + 30 * 0.95 + 10 + 60 + 10));  // 0.05 of the arms against the tube
  r.around.neighbours = 1, r.around.submerged[legs] = 0.5;
  r.freeze();
  CHECK(r.c.source_W[trunk][skin] == Near(60 * 0.7));
  CHECK(r.c.source_W[legs][skin] == Near(60 * 0.5 * 0.88));
}

// Cloth under water has no air to give heat to: with the sun on it, trousers in a raft full of water had
// reached 2000 degC in three weeks, and the state was no number once they rose out of it.
TEST_CASE("no sun on what is under the water on the floor") {
  Resting r;
  r.around.sun_W = 14;  // over 0.2 + 0.6 + 0.3 + 0.6 / 2 = 1.4 m2: 10 W/m2
  r.around.submerged[legs] = 0.5;
  r.b().covered[legs] = 1;
  r.freeze();
  CHECK(r.c.source_W[head][skin] == Near(2));
  CHECK(r.c.source_W[legs][clothing] == Near(3));
  r.around.submerged[legs] = 1;
  r.freeze();
  CHECK(r.c.source_W[legs][clothing] == 0);
}

TEST_CASE("who has died makes no heat, and has no circulation, no urine and no breath") {
  Resting r;
  r.x[bat::gut_water] = 0.1, r.x[bat::motion_dose] = 900;
  r.held.persons[0].living = 0;
  r.freeze();
  for (const double nothing :
       {r.c.metabolic_W, r.c.breath_dry_W, r.c.breath_latent_W, r.c.perfusion_W_K[trunk][core],
        r.c.finger_perfusion_W_K, r.c.urine_kg_s, r.c.absorption_kg_s, r.c.vomit_kg_s, r.c.co2_m3_s,
        r.c.source_W[trunk][core], r.c.finger_source_W, r.c.salt_loss_mOsm_s})
    CHECK(nothing == Near(0).epsilon(1e-12));
}

TEST_CASE("tiring, drinking and moving") {
  Resting r;
  r.x[bat::alcohol] = 5, r.around.weighted_acceleration_m_s2 = 0.2;
  r.freeze();
  CHECK(r.c.alcohol_mg_dL_s == Near(-15.0 / 3600 * 0.5));  // half of 15 mg/(dL h) at 5 mg/dL
  CHECK(r.c.motion_dose_m2_s4 == Near(0.04));
}

TEST_CASE("constriction narrows skin and fat, and sends blood back along the arteries") {
  Resting r;
  r.b().constriction_share[trunk] = 0.4, r.b().countercurrent_W_K[trunk] = 50;
  r.x[bat::node(trunk, skin)] = 29;
  r.freeze();
  // Trunk skin 4 K too cold on all the receptors: command 5.0 x 4 = 20, flows over 1 + 0.4 x 20 = 9. Skin
  // 3/9 x 2^(-4/10) = 0.252619, fat 2/9 = 0.222222, core 100 L/h, and no shivering over a warm core.
  // Together 100.474841 L/h, 116.85224 W/K. The exchanger is wholly in use at 20: 116.85224^2 / (116.85224 +
  // 50) = 81.83556 W/K, 0.814488 per L/h.
  CHECK(r.c.perfusion_W_K[trunk][core] == Near(81.4488).epsilon(1e-5));
  CHECK(r.c.perfusion_W_K[trunk][skin] == Near(0.814488 * 0.252619).epsilon(1e-5));
  CHECK(r.c.perfusion_W_K[trunk][fat] == Near(0.814488 / 4.5).epsilon(1e-5));
  // Half of the full command of 40: 0.5 of the 0.5 L that cold brings, with 2.33 h; all of it urine.
  CHECK(r.c.fluid_shift_L_s == Near(0.25 / 8388));
  CHECK(r.c.urine_kg_s == Near(7.46172e-6 + 0.25 / 8388).epsilon(1e-5));
}

TEST_CASE("dilatation opens the skin") {
  Resting r;
  r.b().dilatation_share[trunk] = 0.5;
  r.x[bat::node(head, core)] = 37.2;
  r.freeze();
  // 117 L/h per kelvin x 0.2 K x 0.5 = 11.7 on top of 3 L/h.
  CHECK(r.c.perfusion_W_K[trunk][skin] == Near(1.163 * 14.7).epsilon(1e-5));
}

TEST_CASE("sweat that cannot evaporate runs to the floor, or into the sea") {
  Resting r;
  r.compiled.fitted.wet_skin_withholds = 0.7;
  r.x[bat::sweat] = 372.2;
  r.freeze();
  // Half of it on the trunk: 7.627e-5 kg/s. Its 0.77 x 0.6 m2 x 0.003 m/s x (0.03566 - 0.008) take
  // 3.834e-5; 0.3 of the rest runs off.
  CHECK(r.c.sweat_drip_kg_s == Near(0.3 * 3.793e-5).epsilon(0.01));
  CHECK(r.c.liquid_to_floor_kg_s == r.c.sweat_drip_kg_s);
  CHECK(r.c.overboard_kg_s == 0);
  r.held.persons[0].in_water = 1;
  r.freeze();
  CHECK(r.c.overboard_kg_s == Near(0.3 * 186.1 / 2.44e6));
  CHECK(r.c.liquid_to_floor_kg_s == 0);
}

TEST_CASE("what glycogen stores cannot hold becomes fat") {
  Resting r;
  r.x[bat::glycogen] = 24000, r.x[bat::gut_carbohydrate] = 720;
  r.freeze();
  // 0.1 kJ/s all spilled; carbohydrate burnt 0.65 of 92 W at the most, protein 2.56 / 13 of 17.48193 W, for
  // food brings more than is made, fat the rest: 92 - 59.8 - 3.442594 = 28.757406 W.
  CHECK(r.c.glycogen_kJ_s == Near(-0.0598));
  CHECK(r.c.fat_kg_s == Near((0.1 - 0.028757406) / 39360).epsilon(1e-5));
}

TEST_CASE("the clock lifts the thresholds of the vessels and of sweat") {
  Resting r;
  const auto commands = [&](double rhythm_K) { return body::commands(r.b(), r.x.data(), 0.0, rhythm_K); };
  // A head core 0.2 K warm, all skin at its set point: 117 x 0.2 L/h and 372.2 x 0.2 W (Stolwijk 1971).
  r.x[bat::node(head, core)] = 37.2;
  CHECK(commands(0).dilatation_L_h == Near(23.4));
  CHECK(commands(0).sweat_W == Near(74.44));
  // In the afternoon, with all thresholds 0.2 K higher, that is no warmth; at night it is twice as much.
  CHECK(std::abs(commands(0.2).dilatation_L_h) < 1e-9);
  CHECK(commands(-0.2).sweat_W == Near(148.88));
  CHECK(commands(0.4).constriction == Near(1));  // 5 x 0.2
}
