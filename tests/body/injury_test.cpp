// Blood loss, burns and fever against hand calculations from their sources.
#include "bide/body/injury.hpp"

#include <doctest/doctest.h>

#include "bide/core/moist_air.hpp"
#include "bide/scenario/catalogue.hpp"

using namespace bide;
using namespace bide::body;

namespace {

scenario::Person man() {
  scenario::Person p;
  p.age_years = 30;
  p.height_m = 1.78;
  p.mass_kg = 75;
  p.body_fat_pct = 17;
  p.vo2max_mL_kg_min = 45;
  p.shivering_drive_factor = p.shivering_ceiling_factor = p.resting_metabolism_factor = p.sweat_factor =
      p.swim_endurance_factor = 1;
  return p;
}

Build<double> build_of(const scenario::Person& person) {
  return make_build(person, *scenario::find_ensemble("tropical"));
}

double basal_W(const Build<double>& b) {
  double sum = b.finger_basal_W;
  for (const auto& segment : b.basal_W)
    for (const double node : segment) sum += node;
  return sum;
}

}  // namespace

TEST_CASE("blood lost is water and salt of normal strength") {
  // 75 kg x 0.070 L/kg x 20 % = 1.05 L; 0.588 L of plasma with 0.93 kg/L and 0.462 L of cells with 0.72 kg/L
  // of water: 0.5468 + 0.3326 kg.
  const BloodLost lost = blood_lost(75, 20);
  CHECK(lost.water_kg == doctest::Approx(0.8795).epsilon(0.001));
  // Textbook: a litre of plasma holds some 140 mmol of sodium and as many anions, 287 mOsm a kg of water.
  CHECK(lost.extracellular_mOsm == doctest::Approx(287 * 0.5468).epsilon(0.001));
  CHECK((lost.extracellular_mOsm + lost.intracellular_mOsm) / lost.water_kg ==
        doctest::Approx(287).epsilon(1e-9));
  CHECK(blood_lost(75, 0).water_kg == 0);

  scenario::Person bled = man();
  bled.blood_loss_pct = 20;
  const Build<double> b = build_of(bled), whole = build_of(man());
  CHECK(b.starting_deficit_kg == doctest::Approx(whole.starting_deficit_kg + lost.water_kg));
  // The strength of body water stays.
  const double left = b.extracellular_osmoles_mOsm - b.starting_salt_lost_mOsm + b.intracellular_osmoles_mOsm;
  CHECK(left / (b.body_water_kg - b.starting_deficit_kg) == doctest::Approx(287).epsilon(1e-9));
}

TEST_CASE("a litre of blood costs an eighth of the oxygen uptake") {
  // Seven men: 4.00 to 3.54 L/min, a factor of 0.885, after 1 L; in 75 kg that is 19 % of all blood.
  CHECK(oxygen_uptake_left(100 * 1 / (75 * 0.070)) == doctest::Approx(0.885).epsilon(0.005));
  scenario::Person bled = man();
  bled.blood_loss_pct = 19;
  const Build<double> b = build_of(bled), whole = build_of(man());
  CHECK(b.greatest_work_W < 0.9 * whole.greatest_work_W);
  // Eyolfson 2001: 30.5 + 0.348 VO2max - 0.909 BMI - 0.233 age; at 45 mL/(kg min), 23.67 kg/m2 and 30 years
  // 17.65, at 0.886 x 45 15.87, each less the 4.51 of rest: 11.36 / 13.14.
  CHECK(b.shivering_ceiling_W / whole.shivering_ceiling_W == doctest::Approx(0.864).epsilon(0.005));
}

TEST_CASE("a burn evaporates as measured, and as the bedside rule has it") {
  // Lamke 1977: 143 to 178 g/(m2 h) from burnt skin of 32 degC where a wet surface lost 310, in air of 23
  // degC and 40 %. The rule for insensible loss of the burnt, (25 + % burnt) x m2 in mL/h, adds 100 mL/h for
  // a square metre burnt, and gives 25 g/(m2 h) to whole skin and lung.
  scenario::Person hurt = man();
  hurt.burned_pct = 10;
  const Build<double> b = build_of(hurt);
  const double air_g_m3 = 1000 * (saturation_density_kg_m3(32.0) - 0.4 * saturation_density_kg_m3(23.0));
  const double film_m_s = 310 / 3600. / air_g_m3;
  const auto lost_g_m2_h = [&](double skin_m_s) { return 3600 * air_g_m3 / (1 / skin_m_s + 1 / film_m_s); };
  const double burnt = lost_g_m2_h(b.burnt_skin_vapour_conductance_m_s);
  const double whole = lost_g_m2_h(b.skin_vapour_conductance_m_s);
  CHECK(burnt > 143);
  CHECK(burnt < 178);
  CHECK(burnt - whole > 100);
  CHECK(whole < 25);
  CHECK(b.burned == doctest::Approx(0.10));
  CHECK(build_of(man()).burned == 0);
}

TEST_CASE("a fever raises resting heat by 13 % a kelvin") {
  scenario::Person ill = man();
  ill.fever_K = 2;
  const Build<double> b = build_of(ill), well = build_of(man());
  CHECK(basal_W(b) == doctest::Approx(1.26 * basal_W(well)));
  CHECK(b.basal_total_W == well.basal_total_W);
}

TEST_CASE("hurt hands and unfitness take away what they should") {
  scenario::Person p = man();
  CHECK(build_of(p).fine_work == 1);
  CHECK(build_of(p).grip == 1);
  p.hands = scenario::Hands::no_fine_work;
  CHECK(build_of(p).fine_work == 0);
  CHECK(build_of(p).grip == 1);
  p.hands = scenario::Hands::useless;
  CHECK(build_of(p).grip == 0);
  CHECK(build_of(p).greatest_work_W > 0);
  p.fit_for_work = false;
  CHECK(build_of(p).greatest_work_W == 0);
}
