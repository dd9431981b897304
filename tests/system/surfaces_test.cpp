// What touches what, flux by flux, against hand arithmetic with the published numbers.
//
// A body of round sizes: convection 4 and radiation 5 W/(m2 K), vapour transfer 0.003 m/s, vapour in the air
// 0.010 kg/m3; skin at 33 degC and clothing at 28 degC, saturated vapour 0.0357 and 0.0272 kg/m3 (steam
// tables).
#include "bide/system/freeze_surfaces.hpp"

#include <doctest/doctest.h>

#include "support/near.hpp"

using namespace bide;
using bide::test::Near;
namespace bat = bide::body::at;
using body::arms, body::head, body::trunk, body::legs;

namespace {

struct Dressed {
  body::Build<double> b{};
  system::Surroundings<double> around{};
  system::HeldPerson<double> held;
  // Round numbers of this test, not those in force.
  system::Fitted<double> fitted{0.5, 0.7};
  std::array<double, bat::count> x{};
  body::PersonCoefficients<double> out{};
  double aid_m2K_W = 0, sweat_W = 0, runs_off_kg_s = 0, given_kg_s = 0;

  Dressed() {
    b.area_m2 = {0.12, 0.6, 0.2, 0.1, 0.6, 0.1};
    b.permeability_index = 0.38, b.greatest_wettedness = 1;
    b.skin_vapour_conductance_m_s = 1e-4, b.burnt_skin_vapour_conductance_m_s = 3e-3;
    for (int s = 0; s < body::segment_count; ++s) {
      b.clothing_capacity_kg[s] = b.per_clothing_capacity[s] = 1;
      x[bat::node(s, body::skin)] = 33, x[bat::node(s, body::clothing)] = 28;
    }
    x[bat::finger] = 33;
    around.convection_W_m2K = 4, around.radiation_W_m2K = 5, around.transfer_m_s = 0.003;
    around.transfer_under_aid_m_s = 0.001;
    around.vapour_kg_m3 = 0.010, around.latent_heat_J_kg = 2.44e6;
    around.water_film_W_m2K = 460, around.under_floor_W_m2K = 250, around.seated_floor_m2K_W = 0.05;
    around.neighbours = 1, around.pooled_share = 0.25;
  }
  void clothe(int s) {  // 1 clo
    b.covered[s] = 1, b.insulation_m2K_W[s] = 0.155, b.immersed_insulation_m2K_W = 0.03;
  }
  system::Worn<double> worn() const { return system::wear(b, around, held, aid_m2K_W, 0.0); }
  void freeze(int s) {
    system::freeze_saturation(x.data(), around, out);
    const system::Sweat<double> sweat = system::freeze_segment_surfaces(
        b, s, x.data(), around, system::shares(s, around, held.in_water, held.left_behind), worn(), sweat_W,
        fitted, out);
    runs_off_kg_s = sweat.runs_off_kg_s, given_kg_s = sweat.given_kg_s;
  }
  const body::Surface<double>& skin(int s) const { return out.skin_surface[s]; }
  const body::OuterSurface<double>& cloth(int s) const { return out.clothing_surface[s]; }
};

}  // namespace

// A sleeve at -2 degC comes out of the sea into air of 74 degC with vapour that is saturated at
// 70 degC: 31,200 Pa / (461.5 J/(kg K) x 343 K) = 0.197 kg/m3 there (steam tables). A tangent at -2 degC
// rises by 0.0003 kg/(m3 K) and would let vapour condense up to some 600 degC.
TEST_CASE("in steam the line of saturation at a cold surface ends where vapour no longer condenses") {
  Dressed c;
  c.clothe(arms);
  c.x[bat::node(arms, body::clothing)] = -2;
  c.around.vapour_kg_m3 = 0.197, c.around.saturated_at_degC = 70;
  c.freeze(arms);
  const auto density = [&](double degC) {
    return c.cloth(arms).density_at_zero_kg_m3 + c.cloth(arms).density_slope_kg_m3_K * degC;
  };
  CHECK(density(-2) == doctest::Approx(0.0042).epsilon(0.02));  // 527 Pa over supercooled water
  CHECK(density(70) == doctest::Approx(0.197).epsilon(1e-6));
}

TEST_CASE("a bare head: area times each film, and vapour through skin and film") {
  Dressed c;
  c.freeze(head);
  CHECK(c.skin(head).to_air == Near(0.12 * 4));
  CHECK(c.skin(head).to_canopy == Near(0.12 * 5));
  CHECK(c.skin(head).evaporation_m3_s == Near(0.12 / (1 / 1e-4 + 1 / 0.003)));
  for (const double nothing : {c.skin(head).to_floor, c.skin(head).to_floor_water, c.skin(head).to_tube,
                               c.skin(head).to_sea, c.cloth(head).to_air, c.out.distillation_m3_s[head]})
    CHECK(nothing == 0);
  // Steam tables: 0.03566 kg/m3 at 33 degC, 0.03758 at 34 degC, 0.03383 at 32 degC: slope 0.00188.
  const auto& s = c.skin(head);
  CHECK(s.density_at_zero_kg_m3 + 33 * s.density_slope_kg_m3_K == Near(0.03566).epsilon(0.004));
  CHECK(s.density_slope_kg_m3_K == Near(0.00188).epsilon(0.01));
}

TEST_CASE("more sweat than can evaporate wets all of the skin, and 0.3 of the rest runs off") {
  Dressed c;
  c.sweat_W = 50;  // 50 / 2.44e6 = 2.049e-5 kg/s
  c.freeze(head);
  CHECK(c.skin(head).evaporation_m3_s == Near(0.12 * 0.003));
  // At most 3.6e-4 m3/s x (0.03566 - 0.010) = 9.24e-6 kg/s; 0.3 x (2.049e-5 - 9.24e-6) = 3.38e-6.
  CHECK(c.runs_off_kg_s == Near(3.38e-6).epsilon(0.01));
  // What is withheld was never sweat: 9.24e-6 + 3.38e-6.
  CHECK(c.given_kg_s == Near(12.62e-6).epsilon(0.01));
  // The share withheld is the run's own: 0.6 x 1.125e-5 = 6.75e-6 when 0.4 is withheld.
  c.fitted.wet_skin_withholds = 0.4;
  c.freeze(head);
  CHECK(c.runs_off_kg_s == Near(6.75e-6).epsilon(0.01));
  // Half of what could evaporate wets 2 x 0.5 / (1 + sqrt(1.5)) = 0.4495 of the skin (ISO 7933); the rest
  // passes vapour through itself, 0.12 x 9.677e-5 m3/s for all of it. Of the 0.0505 left 0.6 runs off.
  c.sweat_W = 0.5 * 9.24e-6 * 2.44e6;
  c.freeze(head);
  CHECK(c.skin(head).evaporation_m3_s == Near(0.4495 * 3.6e-4 + 0.5505 * 1.1613e-5).epsilon(0.01));
  CHECK(c.runs_off_kg_s == Near(0.6 * 0.0505 * 9.24e-6).epsilon(0.01));
}

TEST_CASE("a clothed trunk: floor, puddle, tube, neighbours, and films on an area 1.28 times as large") {
  Dressed c;
  c.clothe(trunk);
  c.freeze(trunk);
  // Of 0.6 m2: seat 0.08 (a quarter of it in the puddle), tube 0.15, touching 0.15, so 0.62 = 0.372 m2 faces
  // the air; outside of the clothing 0.372 x 1.28 = 0.47616 m2.
  CHECK(c.cloth(trunk).to_air == Near(1.90464));
  CHECK(c.cloth(trunk).to_canopy == Near(2.3808));
  CHECK(c.out.conductance_W_K[trunk][body::skin] == Near(2.4));  // 0.372 / 0.155
  // Pressed clothing 0.0775; floor 0.05; water below 1/250: 0.1315 m2 K/W over 0.6 x 0.06 m2.
  CHECK(c.skin(trunk).to_floor == Near(0.036 / 0.1315));
  // Immersed and pressed 0.015, film 1/200: 0.02 over 0.6 x 0.02 m2.
  CHECK(c.skin(trunk).to_floor_water == Near(0.012 / 0.02));
  // 0.0775 + 0.13 over 0.6 x 0.15 m2.
  CHECK(c.skin(trunk).to_tube == Near(0.09 / 0.2075));
  CHECK(c.skin(trunk).to_air == 0);
  CHECK(c.skin(trunk).to_sea == 0);
  // Cloth: 0.461 5 kJ/(kg K) x 298.15 K over 2.4418e6 J/kg x 0.155/(0.38 x 16.5) m2 kPa/W = 2.2795e-3 m/s.
  // In series with 1.28 x 0.003: 1.43038e-3; with the skin's 1e-4: 9.34657e-5; over 0.372 m2.
  CHECK(c.skin(trunk).evaporation_m3_s == Near(3.47692e-5).epsilon(1e-4));
  CHECK(c.cloth(trunk).evaporation_m3_s == 0);
  CHECK(c.out.distillation_m3_s[trunk] == 0);
  // A pad of 0.2 m2 K/W under half of the seat: 0.036 x (0.5/0.3315 + 0.5/0.1315); half of the puddle is
  // left.
  c.b.seat_pad_m2K_W = 0.2, c.b.seat_pad_cover = 0.5;
  c.freeze(trunk);
  CHECK(c.skin(trunk).to_floor == Near(0.1911808).epsilon(1e-5));
  CHECK(c.skin(trunk).to_floor_water == Near(0.006 / 0.02));
}

// The skin's resistance is 10,000 s/m. A film of 2 to 30 mm/s adds 33 to 500; two clo under it 875, a soaked
// clo half of that for one. So all lie within a tenth of what bare skin passes into still air, 1 / 10,333.
TEST_CASE("without sweat, wind and clothing change the skin's vapour by less than a tenth") {
  for (const double film_m_s : {0.002, 0.003, 0.010, 0.030}) {
    for (const double clo : {0.0, 0.5, 1.0, 2.0}) {
      for (const double wetness : {0.0, 0.3, 1.0}) {
        Dressed c;
        c.around.transfer_m_s = film_m_s, c.around.neighbours = 0;
        c.b.covered[arms] = clo > 0, c.b.insulation_m2K_W[arms] = 0.155 * clo;
        c.x[bat::clothing_water + arms] = wetness;
        c.freeze(arms);
        const double all = c.skin(arms).evaporation_m3_s + c.out.distillation_m3_s[arms];
        CAPTURE(film_m_s);
        CAPTURE(clo);
        CAPTURE(wetness);
        CHECK(all == Near(0.19 / 10333.3).epsilon(0.1));
      }
    }
  }
}

TEST_CASE("a skin wet with sweat all over evaporates through clothing and film alone") {
  Dressed c;
  c.clothe(trunk);
  c.sweat_W = 1000;
  c.freeze(trunk);
  CHECK(c.skin(trunk).evaporation_m3_s == Near(0.372 * 1.43038e-3).epsilon(1e-4));
  c.x[bat::clothing_water + trunk] = 1;
  c.freeze(trunk);
  CHECK(c.out.distillation_m3_s[trunk] == Near(0.372 * 2.2795e-3 / 0.5).epsilon(1e-4));
}

TEST_CASE("a tenth of the skin burnt: each part through its own skin and the film") {
  Dressed c;
  c.b.burned = 0.1;
  c.freeze(head);
  // 3e-3 under 3e-3 is 1.5e-3; 1e-4 under it 9.67742e-5.
  CHECK(c.skin(head).evaporation_m3_s == Near(0.12 * (0.1 * 1.5e-3 + 0.9 * 9.67742e-5)).epsilon(1e-5));
  c.clothe(trunk);
  c.freeze(trunk);
  // Under 1.43038e-3: 9.68563e-4 and 9.34657e-5.
  CHECK(c.skin(trunk).evaporation_m3_s == Near(0.372 * (0.1 * 9.68563e-4 + 0.9 * 9.34657e-5)).epsilon(1e-4));
}

TEST_CASE("soaked clothing: thinner, evaporates outside, takes up the skin's vapour") {
  Dressed c;
  c.clothe(trunk);
  c.x[bat::clothing_water + trunk] = 1;  // all it holds
  c.freeze(trunk);
  CHECK(c.out.conductance_W_K[trunk][body::skin] == Near(0.372 / 0.0775).epsilon(1e-5));  // 0.5 x 0.155
  CHECK(c.cloth(trunk).evaporation_m3_s == Near(1.42848e-3).epsilon(1e-5));
  // 2.2795e-3 / 0.5 in series with the skin's 1e-4: 9.78536e-5; over 0.372 m2.
  CHECK(c.out.distillation_m3_s[trunk] == Near(3.64015e-5).epsilon(1e-4));
  CHECK(c.skin(trunk).evaporation_m3_s == Near(0).epsilon(1e-12));
}

TEST_CASE("under water that stands on the floor, cloth is worth its immersed insulation, wet before or not") {
  Dressed c;
  c.clothe(legs);
  c.around.submerged[legs] = 0.5;
  c.freeze(legs);
  // Half stands in water, 0.03 and film 1/200; of the rest 0.12 is seat, a quarter in the puddle: 0.015 of
  // the skin, pressed to 0.015.
  const double in_water = 0.6 * (0.5 / 0.035 + 0.015 / 0.02);
  CHECK(c.skin(legs).to_floor_water == Near(in_water));
  c.x[bat::clothing_water + legs] = 1;
  c.freeze(legs);
  CHECK(c.skin(legs).to_floor_water == Near(in_water));
  // A waterproof suit stays dry inside, pressed to 0.0775 by seat and water alike.
  c.x[bat::clothing_water + legs] = 0, c.b.waterproof = 1;
  c.freeze(legs);
  CHECK(c.skin(legs).to_floor_water == Near(0.6 * 0.515 / 0.0825));
}

TEST_CASE("immersed: the sea's film on bare skin and clothing, the immersed insulation between") {
  Dressed c;
  c.held.in_water = 1;
  c.b.covered[arms] = 0.75, c.b.insulation_m2K_W[arms] = 0.155, c.b.immersed_insulation_m2K_W = 0.05;
  c.freeze(arms);
  CHECK(c.skin(arms).to_sea == Near(0.2 * 0.25 * 460));
  CHECK(c.cloth(arms).to_sea == Near(0.2 * 0.75 * 460));
  CHECK(c.out.conductance_W_K[arms][body::skin] == Near(0.2 * 0.75 / 0.05));
  for (const double nothing : {c.skin(arms).to_air, c.skin(arms).to_canopy, c.skin(arms).to_tube,
                               c.cloth(arms).to_air, c.skin(arms).evaporation_m3_s})
    CHECK(nothing == 0);
  c.freeze(head);  // stays above water
  CHECK(c.skin(head).to_air == Near(0.48));
  CHECK(c.skin(head).to_sea == 0);
}

TEST_CASE("a protective aid adds its resistance over both films") {
  Dressed c;
  c.held.wears_aid = 1, c.aid_m2K_W = 0.2, c.around.neighbours = 0;
  c.freeze(arms);
  // 0.05 of the arms lean on the tube; films 9 W/(m2 K): 1 / (1 + 9 x 0.2) = 0.357143.
  CHECK(c.skin(arms).to_air == Near(0.2 * 0.95 * 4 / 2.8));
  CHECK(c.skin(arms).to_canopy == Near(0.2 * 0.95 * 5 / 2.8));
  CHECK(c.skin(arms).evaporation_m3_s == Near(0.19 / (1 / 1e-4 + 1 / 0.001)));
  c.freeze(head);  // half of the head: 1 / (1 + 9 x 0.2 x 0.5)
  CHECK(c.skin(head).to_air == Near(0.48 / 1.9));
  CHECK(c.skin(head).evaporation_m3_s == Near(0.12 / (1 / 1e-4 + 1 / 0.002)));
}

TEST_CASE("shares of the legs half under water add up to one") {
  Dressed c;
  c.around.submerged[legs] = 0.5;
  const auto s = system::shares(legs, c.around, 0.0, 0.0);
  // Rest 0.5: seat 0.12 x 0.5 = 0.06 with a quarter pooled, touching 0.12 x 0.5 = 0.06.
  CHECK(s.floor == Near(0.045));
  CHECK(s.puddle == Near(0.015));
  CHECK(s.wading == Near(0.5));
  CHECK(s.touching == Near(0.06));
  CHECK(s.tube == 0);
  CHECK(s.exposed == Near(0.38));
  CHECK(s.immersed == 0);
}

TEST_CASE("fingers, gloved, bare and immersed") {
  Dressed c;
  c.b.finger_area_m2 = 0.04;
  auto& f = c.out.finger_surface;
  const auto freeze = [&] { system::freeze_finger(c.b, c.x.data(), c.held, c.worn(), c.fitted, c.out); };
  freeze();
  CHECK(f.to_air == Near(0.16));
  CHECK(f.to_canopy == Near(0.20));
  CHECK(f.evaporation_m3_s == Near(0.04 / (1 / 1e-4 + 1 / 0.003)));
  c.held.in_water = 1;
  freeze();
  // Inside 198 and the film of a thin cylinder 520 W/(m2 K), above the body's 460, in series: 143.40.
  CHECK(f.to_sea == Near(0.04 * 143.398).epsilon(1e-4));
  CHECK(f.to_air == 0);
  c.b.covered[body::hands] = 1, c.b.insulation_m2K_W[body::hands] = 0.1;
  c.b.immersed_insulation_m2K_W = 0.05;
  freeze();
  CHECK(f.to_sea == Near(0.04 / (0.05 + 1 / 143.398)).epsilon(1e-4));
  c.held.in_water = 0;
  freeze();
  // Through the glove 1 / (1 + 9 x 0.1).
  CHECK(f.to_air == Near(0.16 / 1.9));
  CHECK(f.to_canopy == Near(0.20 / 1.9));
  CHECK(f.evaporation_m3_s == 0);
}
