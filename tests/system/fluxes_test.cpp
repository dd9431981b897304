// Slopes and running totals against the same fluxes added up here.
#include <doctest/doctest.h>

#include "support/near.hpp"

#include <array>

#include "bide/system/slopes.hpp"
#include "bide/system/slow.hpp"
#include "support/equations.hpp"

using namespace bide;
namespace sat = bide::system::at;
namespace bat = bide::body::at;
using bide::test::Near;

namespace {

std::vector<double> some_state(int persons, test::Random& r) {
  std::vector<double> x(static_cast<std::size_t>(system::state_size(persons)), 0.0);
  for (const int i : test::implicit_entries(persons))
    x[static_cast<std::size_t>(i)] = i == sat::vapour ? 0.009 : i == sat::co2 ? 0.004 : r(5, 37);
  return x;
}

}  // namespace

TEST_CASE("slopes are the flows over the capacities") {
  test::Random r;
  const auto c = test::random_coefficients(3, r);
  const auto x = some_state(3, r);
  std::vector<double> k(x.size(), 0.0);
  system::implicit_slopes(c, x.data(), k.data());
  const auto expected = test::flows(c, x);
  for (const int i : test::implicit_entries(3)) {
    CAPTURE(i);
    CHECK(k[static_cast<std::size_t>(i)] ==
          Near(expected[static_cast<std::size_t>(i)] / test::capacity_of(c, i)).epsilon(1e-10));
  }
}

namespace {

// Every coefficient a round number, air 20, canopy 10, floor water 8, vapour 0.01 kg/m3; the person's nodes
// are all at 30 degC but the clothing at 25 and the fingers at 20.
struct Round {
  body::PersonCoefficients<double> c{};
  std::array<double, sat::count> cabin{};
  std::array<double, bat::count> x{}, k{};

  Round() {
    cabin[sat::air] = 20, cabin[sat::canopy] = 10, cabin[sat::floor_water] = 8, cabin[sat::vapour] = 0.01;
    for (int s = 0; s < body::segment_count; ++s) {
      for (int l = 0; l < body::tissue_count; ++l) x[bat::node(s, l)] = 30;
      x[bat::node(s, body::clothing)] = 25;
    }
    x[bat::blood] = 30, x[bat::finger] = 20;
    c.floor_degC = 5, c.tube_degC = 7, c.sea_degC = 6;
    c.latent_heat_J_kg = 2.5e6;
  }
};

}  // namespace

TEST_CASE("a person's running totals grow by each flux once") {
  Round t;
  auto& c = t.c;
  // Trunk skin (30 degC): 1 W/K to the air (10 K) = 10; 2 to the canopy (20 K) = 40; 0.5 to the water (22 K)
  // = 11; 3 to the floor (25 K) = 75; 0.2 to the tube (23 K) = 4.6; 4 to the sea (24 K) = 96 W.
  c.skin_surface[body::trunk] = {1, 2, 0.5, 3, 0.2, 4, 1e-3, -0.02, 0.002};
  // Vapour at the skin -0.02 + 0.002 x 30 = 0.04: less 0.01 gives 0.03 x 1e-3 = 3e-5 kg/s, 75 W.
  // Trunk clothing (25 degC): 2 x 5 = 10, 1 x 15 = 15 W, 0.5 x 19 = 9.5 W to the sea; vapour -0.02 + 0.05 =
  // 0.03, less 0.01 gives 0.02 x 2e-3 = 4e-5 kg/s, 100 W.
  c.clothing_surface[body::trunk] = {2, 1, 0.5, 2e-3, -0.02, 0.002};
  // Fingers (20 degC): 0.1 x 10 = 1 W to the canopy; vapour -0.02 + 0.04 - 0.01 = 0.01 x 1e-3 = 1e-5 kg/s, 25
  // W.
  c.finger_surface = {0, 0.1, 0, 1e-3, -0.02, 0.002};
  // Distilled: (0.04 - 0.03) x 5e-3 = 5e-5 kg/s.
  c.distillation_m3_s[body::trunk] = 5e-3;
  c.clothing_gain_kg_s[body::trunk] = 7e-5, c.clothing_drain_kg_s[body::trunk] = 2e-5;
  // Of 4e-5 kg/s of fog that settles on the person the trunk's clothing takes a quarter, 1e-5.
  c.catch_share[body::trunk] = 0.25;
  c.liquid_to_floor_kg_s = 3e-6, c.overboard_kg_s = 4e-6, c.wetting_kg_s = 5e-6;
  c.metabolic_W = 120, c.shivering_W = 33, c.sun_W = 8, c.breath_dry_W = 6, c.breath_latent_W = 11;
  c.breath_water_kg_s = 2e-6, c.sweat_drip_kg_s = 9e-6, c.urine_kg_s = 1.1e-5, c.vomit_kg_s = 1.2e-5;
  c.absorption_kg_s = 6e-5, c.metabolic_water_kg_s = 1.3e-6;
  c.osmole_rate_mOsm_s = -0.5, c.urea_rate_mOsm_s = 0.25, c.salt_loss_mOsm_s = 0.5;
  c.fluid_shift_L_s = 1.5e-5, c.glycogen_kJ_s = -0.05, c.fat_kg_s = -2e-6, c.protein_kg_s = -3e-7;
  c.absorbed_carbohydrate_kJ_s = 0.01, c.absorbed_fat_kJ_s = 0.02, c.absorbed_protein_kJ_s = 0.03;
  c.oxidised_kJ_s = 0.12, c.nitrogen_g_s = 1e-4, c.fatigue_per_s = 1e-5, c.motion_dose_m2_s4 = 0.4;
  c.adaptation_per_s = 2e-6, c.alcohol_mg_dL_s = -0.004, c.cold_feet = 1, c.frozen = 0.5, c.face = 6e-4,
  c.living = 1, c.arms_used_per_s = 3e-4, c.sweat_W_s = 0.7;
  // Stored: 9000 J/K x 0.01 K/s of blood + 500 x 0.02 of fingers + 20000 x 0.001 of trunk core = 120 W.
  c.blood_capacity_J_K = 9000, t.k[bat::blood] = 0.01;
  c.finger_capacity_J_K = 500, t.k[bat::finger] = 0.02;
  c.capacity_J_K[body::trunk][body::core] = 20000, t.k[bat::node(body::trunk, body::core)] = 0.001;

  const auto from = system::slow_person(c, t.cabin.data(), 4e-5, t.x.data(), t.k.data());
  const auto& k = t.k;
  CHECK(k[bat::total_to_air] == Near(20));
  CHECK(k[bat::total_to_canopy] == Near(40 + 15 + 1));
  CHECK(k[bat::total_to_floor_water] == Near(11));
  CHECK(k[bat::total_to_floor] == Near(75));
  CHECK(k[bat::total_to_tube] == Near(4.6));
  CHECK(k[bat::total_to_sea] == Near(96 + 9.5));
  CHECK(k[bat::total_evaporation] == Near(75 + 100 + 25));
  CHECK(k[bat::total_breath] == Near(17));
  CHECK(k[bat::total_sun] == 8);
  CHECK(k[bat::total_metabolic] == 120);
  CHECK(k[bat::total_shivering] == 33);
  CHECK(k[bat::total_stored] == Near(120));
  // 120 + 8 + 17, then 20 + 56 + 11 + 75 + 4.6 + 105.5 + 200 of the surfaces.
  CHECK(k[bat::total_absolute_heat] == Near(145 + 472.1));
  CHECK(from.heat_W == Near(20 + 56 + 11 + 6));
  CHECK(from.evaporated_kg_s == Near(8e-5));
  CHECK(from.drained_kg_s == Near(2.3e-5 + 3e-5));
  // Body water: +6e-5 + 1.3e-6 - 1.1e-5 - 2e-6 - 1.2e-5 - 9e-6, less 3e-5 + 1e-5 + 5e-5 through the skin.
  CHECK(k[bat::body_water] == Near(6e-5 + 1.3e-6 - 3.4e-5 - 9e-5));
  CHECK(k[bat::total_skin_water] == Near(9e-5));
  CHECK(k[bat::gut_water] == Near(-6e-5));
  // Clothing: distilled 5e-5 + 7e-5 - drained 2e-5 - evaporated 4e-5 + fog 1e-5.
  CHECK(k[bat::clothing_water + body::trunk] == Near(7e-5));
  CHECK(k[bat::clothing_water + body::arms] == 0);
  CHECK(k[bat::total_distilled] == Near(5e-5));
  CHECK(k[bat::total_clothing_evaporation] == Near(4e-5));
  CHECK(k[bat::total_clothing_drain] == Near(2.3e-5 + 3e-5));
  const std::array<std::pair<int, double>, 31> same{{{bat::extracellular_osmoles, -0.5},
                                                     {bat::urea, 0.25},
                                                     {bat::fluid_shift, 1.5e-5},
                                                     {bat::glycogen, -0.05},
                                                     {bat::fat_mass, -2e-6},
                                                     {bat::protein_mass, -3e-7},
                                                     {bat::gut_carbohydrate, -0.01},
                                                     {bat::gut_fat, -0.02},
                                                     {bat::gut_protein, -0.03},
                                                     {bat::fatigue, 1e-5},
                                                     {bat::arms_used, 3e-4},
                                                     {bat::sweat, 0.7},
                                                     {bat::motion_dose, 0.4},
                                                     {bat::adaptation, 2e-6},
                                                     {bat::alcohol, -0.004},
                                                     {bat::fasted, 1},
                                                     {bat::total_urine, 1.1e-5},
                                                     {bat::total_breath_water, 2e-6},
                                                     {bat::total_sweat_drip, 9e-6},
                                                     {bat::total_overboard, 4e-6},
                                                     {bat::total_vomit, 1.2e-5},
                                                     {bat::total_metabolic_water, 1.3e-6},
                                                     {bat::total_wetting, 5e-6},
                                                     {bat::total_salt_lost, 0.5},
                                                     {bat::total_oxidised, 0.12},
                                                     {bat::total_nitrogen, 1e-4},
                                                     {bat::total_cold_feet, 1},
                                                     {bat::total_frozen, 0.5},
                                                     {bat::total_face, 6e-4},
                                                     {bat::total_metabolic, 120},
                                                     {bat::total_shivering, 33}}};
  for (const auto& row : same) {
    CAPTURE(row.first);
    CHECK(k[static_cast<std::size_t>(row.first)] == Near(row.second));
  }
}

TEST_CASE("the cabin's running totals grow by each flux once") {
  system::CabinCoefficients<double> c{};
  std::array<double, sat::count> x{}, k{};
  x[sat::air] = 20, x[sat::canopy] = 10, x[sat::floor_water] = 8, x[sat::vapour] = 0.01,
  x[sat::outer_skin] = 6;
  x[sat::co2] = 0.0014;
  c.latent_heat_J_kg = 2.5e6;
  // Canopy vapour -0.006 + 0.001 x 10 = 0.004; condensed 0.02 m3/s x (0.01 - 0.004) = 1.2e-4 kg/s.
  c.condensation_m3_s = 0.02, c.canopy_density_at_zero = -0.006, c.canopy_density_slope = 0.001;
  // Evaporated: floor vapour -0.004 + 0.002 x 8 = 0.012, less 0.01 = 0.002 x 0.01 m3/s = 2e-5 kg/s.
  c.floor_evaporation_m3_s = 0.01, c.floor_density_at_zero = -0.004, c.floor_density_slope = 0.002;
  // Fog: the air holds -0.011 + 0.001 x 20 = 0.009, 0.001 less than there is: 0.05 m3/s of that is 5e-5 kg/s.
  c.fog_m3_s = 0.05, c.fog_density_at_zero = -0.011, c.fog_density_slope = 0.001;
  c.fog_on_people_share = 0.4;
  c.ventilation_m3_s = 0.03, c.outside_vapour_kg_m3 = 0.006, c.outside_co2 = 0.0004;
  c.outer_to_air_W_K = 10, c.outside_degC = 2, c.outer_to_sky_W_K = 5, c.sky_degC = -10;  // 40 + 80 W
  c.floor_to_sea_W_K = 7, c.sea_degC = 6, c.inflow_W_K = 3, c.inflow_degC = 5;            // 14 + 9 W
  c.air_to_tube = 2, c.tube_degC = 4;                                                     // 32 W
  c.air_exchange_W_K = 6;                                                                 // 108 W
  c.sun_outer_W = 30, c.sun_canopy_W = 11, c.sun_inside_W = 7;
  c.water_in_kg_s = 1e-4, c.drip_kg_s = 4e-5, c.drip_to_people_kg_s = 1e-5;
  c.breath_water_kg_s = 6e-6, c.co2_made_m3_s = 5e-6;
  // Stored: 100 x 0.1 + 200 x 0.2 + 300 x 0.3 + 400 x 0.4 = 300 W.
  c.capacity = {100, 200, 300, 0}, c.outer_capacity_J_K = 400;
  k[sat::air] = 0.1, k[sat::canopy] = 0.2, k[sat::floor_water] = 0.3, k[sat::outer_skin] = 0.4;
  const system::FromPerson<double> people{-50, 8e-5, 2.3e-5};
  system::slow_cabin(c, people, x.data(), k.data());
  CHECK(k[sat::total_condensed] == Near(1.2e-4));
  CHECK(k[sat::total_floor_evaporation] == Near(2e-5));
  CHECK(k[sat::film_mass] == Near(1.2e-4 - 4e-5));
  CHECK(k[sat::water_mass] == Near(1e-4 + 4e-5 - 1e-5 - 2e-5 + 2.3e-5 + 0.6 * 5e-5));
  CHECK(k[sat::total_vapour_out] == Near(0.03 * 0.004));
  CHECK(k[sat::total_from_bodies] == -50);
  CHECK(k[sat::total_from_sun] == Near(48));
  CHECK(k[sat::total_through_canopy] == Near(120));
  CHECK(k[sat::total_to_sea] == Near(14 + 9 + 32));
  CHECK(k[sat::total_by_air] == Near(108));
  CHECK(k[sat::total_latent] == Near(2.5e6 * 1.5e-4));
  CHECK(k[sat::total_stored] == Near(300));
  CHECK(k[sat::total_water_in] == Near(1e-4));
  CHECK(k[sat::total_drip] == Near(4e-5));
  CHECK(k[sat::total_absolute_water] == Near(1.2e-4 + 5e-5 + 2e-5 + 1.2e-4 + 1e-4 + 8e-5 + 6e-6));
  CHECK(k[sat::total_co2_made] == Near(5e-6));
  CHECK(k[sat::total_co2_out] == Near(0.03 * 0.001));
}
