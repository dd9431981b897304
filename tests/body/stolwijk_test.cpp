#include "bide/body/stolwijk.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "bide/body/anthropometry.hpp"
#include "bide/body/layout.hpp"

using namespace bide::body;
using bide::scenario::Sex;
using doctest::Approx;

namespace {

double sum(const double (&values)[6]) {
  double total = 0;
  for (const double v : values) total += v;
  return total;
}
double sum(const double (&values)[6][4]) {
  double total = 0;
  for (const auto& row : values)
    for (const double v : row) total += v;
  return total;
}

// Height at which 74.4 kg have 1.8877 m2: (1.8877 / (0.202 x 74.4^0.425))^(1/0.725) = 1.744 m.
const double standard_height_m = std::pow(1.8877 / (0.202 * std::pow(74.4, 0.425)), 1 / 0.725);

}  // namespace

TEST_CASE("sums of NASA CR-1855") {
  const BodyTable t = standard_body_table();
  CHECK(sum(t.area_m2) == Approx(1.8877));
  CHECK(sum(t.capacity_J_K) + t.blood_capacity_J_K == Approx(247733).epsilon(1e-5));  // 59.17 kcal/K
  CHECK(sum(t.basal_W) == Approx(86.6).epsilon(5e-4));                                // 74.45 kcal/h
  CHECK(sum(t.basal_flow_L_h) == Approx(285.13));
  for (const auto* shares : {&t.skin_receptor, &t.sweat_share, &t.dilatation_share, &t.constriction_share,
                             &t.work_share, &t.shiver_share})
    CHECK(sum(*shares) == Approx(1.0));
  // Second, independent transcription: group capacities in kcal/K.
  const auto group = [&](int s, int l) { return t.capacity_J_K[s][l] / 4186.8; };
  CHECK(group(trunk, core) + group(trunk, muscle) + group(trunk, fat) + group(trunk, skin) ==
        Approx(9.82 + 16.15 + 4.25 + 1.21));
  CHECK(group(arms, muscle) + group(hands, muscle) + group(legs, muscle) + group(feet, muscle) ==
        Approx(12.33));
  CHECK(group(arms, fat) + group(hands, fat) + group(legs, fat) + group(feet, fat) == Approx(2.23));
  CHECK(group(arms, core) + group(hands, core) + group(legs, core) + group(feet, core) == Approx(6.02));
  // Conductances there: trunk muscle to fat 4.75 kcal/(h K); limbs fat to skin 114.2.
  const auto G = [&](int s, int l) { return t.conductance_W_K[s][l] / 1.163; };
  CHECK(G(trunk, muscle) == Approx(4.75));
  CHECK(G(arms, fat) + G(hands, fat) + G(legs, fat) + G(feet, fat) == Approx(114.2));
  CHECK(t.setpoint_C[trunk][core] == 36.89);
  CHECK(t.blood_setpoint_C == 36.71);
}

// 3.38 L/(min m2) in 77 people of 0.2 to 2.0 m2 ("The relation between cardiac output and body size",
// abstract); 30 % and more off counts as abnormal (Katori 1979, abstract, 4 to 78 years).
TEST_CASE("the flow of a body at rest goes with its surface, in children as in a man") {
  struct Case {
    Sex sex;
    double age_years, mass_kg, height_m, fat_pct;
  };
  for (const Case& c : {Case{Sex::female, 2, 12.5, 0.87, 20}, Case{Sex::male, 6, 21, 1.16, 15},
                        Case{Sex::female, 10, 33, 1.38, 18}, Case{Sex::male, 15, 56, 1.70, 13},
                        Case{Sex::male, 25, 75, 1.78, 15}}) {
    CAPTURE(c.age_years);
    const BodyTable own = scaled_body_table(c.sex, c.age_years, c.mass_kg, c.height_m, c.fat_pct);
    const double index = sum(own.basal_flow_L_h) / 60 / sum(own.area_m2);
    CHECK(index > 0.7 * 3.38);
    CHECK(index < 1.3 * 3.38);
  }
}

TEST_CASE("the standard man gets the table back, but for resting heat, muscle flow and the trunk") {
  const BodyTable standard = standard_body_table();
  const BodyTable own = scaled_body_table(Sex::male, 25, 74.4, standard_height_m, 15);
  const double basal_ratio = basal_heat_W(Sex::male, 25, 74.4, standard_height_m) / 86.585;
  for (int s = 0; s < segment_count; ++s) {
    CAPTURE(s);
    CHECK(own.area_m2[s] == Approx(standard.area_m2[s]).epsilon(1e-12));
    for (int l = 0; l < tissue_count; ++l) {
      CAPTURE(l);
      CHECK(own.capacity_J_K[s][l] == Approx(standard.capacity_J_K[s][l]).epsilon(1e-12));
      if (l != muscle)
        CHECK(own.basal_flow_L_h[s][l] == Approx(standard.basal_flow_L_h[s][l]).epsilon(1e-12));
      CHECK(own.basal_W[s][l] == Approx(standard.basal_W[s][l] * basal_ratio).epsilon(1e-4));
      if (l < skin && s != trunk)
        CHECK(own.conductance_W_K[s][l] == Approx(standard.conductance_W_K[s][l]).epsilon(1e-12));
    }
  }
  // 1.6 mL per 100 g and minute (Lassen 1965): 9.17 kcal/K over 0.9 kcal/(kg K) are 10.189 kg in the legs,
  // 163 mL/min; 17.944 kg in the trunk, 287 mL/min.
  CHECK(own.basal_flow_L_h[legs][muscle] == Approx(9.7813).epsilon(1e-4));
  CHECK(own.basal_flow_L_h[trunk][muscle] == Approx(17.2267).epsilon(1e-4));
}

TEST_CASE("the trunk as a cylinder of its volumes") {
  // 10.392, 17.090, 7.866 and 1.280 L on 0.6804 m2: radius 107.67 mm. Layers end at 57.35, 93.26, 105.77 mm;
  // halves of their volumes lie at 40.55, 77.41, 99.71, 106.72 mm. Area over radius 6.3195 m. Core to muscle:
  // 6.3195 / (ln(57.35 / 40.55) / 0.53 + ln(77.41 / 57.35) / 0.42) = 6.3195 / 1.3682 = 4.619 W/K.
  const BodyTable own = scaled_body_table(Sex::male, 25, 74.4, standard_height_m, 15);
  CHECK(own.conductance_W_K[trunk][core] == Approx(4.619).epsilon(1e-3));
  // 6.3195 / (ln(93.26 / 77.41) / 0.42 + ln(99.71 / 93.26) / 0.2) and
  // 6.3195 / (ln(105.77 / 99.71) / 0.2 + ln(106.72 / 105.77) / 0.47).
  CHECK(own.conductance_W_K[trunk][muscle] == Approx(8.125).epsilon(1e-3));
  CHECK(own.conductance_W_K[trunk][fat] == Approx(20.13).epsilon(2e-3));
}

TEST_CASE("scaling of a large and a fat person") {
  const BodyTable standard = standard_body_table();
  const BodyTable t = scaled_body_table(Sex::female, 40, 95, 1.68, 38);
  const double area_ratio = dubois_area_m2(95, 1.68) / 1.8877;
  const double fat_ratio = 95 * 0.38 / 11.16;
  const double lean_ratio = 95 * 0.62 / 63.24;
  CHECK(sum(t.area_m2) == Approx(dubois_area_m2(95, 1.68)));
  CHECK(sum(t.basal_W) == Approx(basal_heat_W(Sex::female, 40, 95, 1.68)));
  CHECK(t.capacity_J_K[legs][fat] == Approx(1.43 * 4186.8 * fat_ratio));
  CHECK(t.capacity_J_K[legs][muscle] == Approx(9.17 * 4186.8 * lean_ratio));
  // Arms, muscle to fat: 0.58 kcal/K over 0.6 kcal/(kg K) = 0.966 kg on 0.2536 m2, 900 kg/m3 and 0.2 W/(m K):
  // half of 0.966 / (900 x 0.2 x 0.2536^2) = 0.04173 K/W. Table: 1 / 10.351 = 0.09661 K/W.
  const double a2 = area_ratio * area_ratio;
  const double inward = (0.04173 * fat_ratio + (0.09661 - 0.04173) * lean_ratio) / a2;
  CHECK(1 / t.conductance_W_K[arms][muscle] == Approx(inward).epsilon(2e-3));
  CHECK(t.conductance_W_K[legs][core] == Approx(standard.conductance_W_K[legs][core] * a2 / lean_ratio));
  // Legs, fat to skin: all of the table's resistance is fat, so it goes as area^2 over fat.
  CHECK(t.conductance_W_K[legs][fat] == Approx(standard.conductance_W_K[legs][fat] * a2 / fat_ratio));
}

TEST_CASE("fatness insulates, other things equal") {
  const BodyTable lean = scaled_body_table(Sex::male, 30, 75, 1.78, 10);
  const BodyTable fatter = scaled_body_table(Sex::male, 30, 75, 1.78, 25);
  for (int s = 0; s < segment_count; ++s) {
    const double lean_R = 1 / lean.conductance_W_K[s][muscle] + 1 / lean.conductance_W_K[s][fat];
    const double fat_R = 1 / fatter.conductance_W_K[s][muscle] + 1 / fatter.conductance_W_K[s][fat];
    CHECK(fat_R > lean_R);
  }
}
