#include "bide/body/anthropometry.hpp"

#include <doctest/doctest.h>

using namespace bide::body;
using bide::scenario::Sex;
using doctest::Approx;

TEST_CASE("surface after Du Bois") {
  // 70 kg, 1.75 m: 1.844 m2 in this form, 1.848 in the paper's (0.007184, height in cm).
  CHECK(dubois_area_m2(70, 1.75) == Approx(1.844).epsilon(5e-4));
  CHECK(dubois_area_m2(70, 1.75) == Approx(1.848).epsilon(3e-3));
}

TEST_CASE("resting heat after Mifflin and St Jeor") {
  // 80 kg, 1.80 m, 30 years: 800 + 1125 - 150 + 5 = 1780 kcal/d for a man, 1614 for a woman.
  // 1 kcal/d = 0.04846 W.
  CHECK(basal_heat_W(Sex::male, 30, 80, 1.80) == Approx(1780 * 0.04846).epsilon(1e-4));
  CHECK(basal_heat_W(Sex::female, 30, 80, 1.80) == Approx(1614 * 0.04846).epsilon(1e-4));
}

TEST_CASE("body water after Watson") {
  // Man 40 y, 175 cm, 75 kg: 2.447 - 3.8064 + 18.795 + 25.215 = 42.6506 L (57 % of mass; men 55-65 %).
  CHECK(body_water_kg(Sex::male, 40, 75, 1.75) == Approx(42.6506));
  // Woman 165 cm, 62 kg: -2.097 + 17.6385 + 15.2892 = 30.8307 L (50 %; women 45-55 %).
  CHECK(body_water_kg(Sex::female, 40, 62, 1.65) == Approx(30.8307));
  CHECK(body_water_kg(Sex::female, 70, 62, 1.65) == body_water_kg(Sex::female, 20, 62, 1.65));
}

// Schofield 1985 and Mellits & Cheek 1970, from memory. A boy of 6 years, 1.15 m, 20 kg: 22.706 x 20 + 504.3
// = 958 kcal/d; -1.927 + 9.3 + 5.175 = 12.5 kg of water, 63 % of the mass; Watson's men would give him 21.
TEST_CASE("a child's heat and water") {
  CHECK(basal_heat_W(Sex::male, 6, 20, 1.15) == Approx(958.4 * 0.04846).epsilon(1e-3));
  CHECK(body_water_kg(Sex::male, 6, 20, 1.15) == Approx(12.548).epsilon(1e-3));
  // A girl of 14, 1.60 m, 50 kg: -10.313 + 12.6 + 24.64.
  CHECK(body_water_kg(Sex::female, 14, 50, 1.60) == Approx(26.927));
  CHECK(basal_heat_W(Sex::female, 14, 50, 1.60) == Approx((13.384 * 50 + 692.6) * 0.04846).epsilon(1e-3));
}

// Falk 1992: 4.9 over 6.6 for each square metre.
TEST_CASE("an adult's amounts and commands are a child's by lean mass and by surface") {
  CHECK(sweat_age_factor(8) == Approx(4.9 / 6.6).epsilon(0.01));
  CHECK(sweat_age_factor(18) == 1);
  CHECK(size_of(30, 40) == 1);
  CHECK(size_of(8, 20) == Approx(20.0 / 61));
  CHECK(command_size(30, 1.5) == 1);
  CHECK(command_size(8, 0.94385) == Approx(0.5));
}

TEST_CASE("fat and lean mass") {
  // The standard man of Stolwijk 1971: 74.4 kg, 15 %, 11.16 kg fat.
  CHECK(fat_mass_kg(74.4, 15) == Approx(11.16));
  CHECK(lean_mass_kg(74.4, 15) == Approx(63.24));
}

TEST_CASE("aerobic power") {
  // 50 mL/(kg min) x 75 kg = 3.75 L/min; 20.4 kJ/L at RQ 0.85 (ISO 8996): 1275 W.
  CHECK(greatest_aerobic_heat_W(75, 50, 0.85) == Approx(1275).epsilon(3e-3));
}

TEST_CASE("shivering ceiling after Eyolfson 2001") {
  // VO2max 50, BMI 23, 25 years: 30.5 + 17.4 - 20.907 - 5.825 = 21.168 mL/(kg min), in all 540 W for 75 kg at
  // 20.4 kJ/L; rest is 22.1 / 4.9 = 4.51 of it, 115 W.
  const double height_m = 1.8058;  // sqrt(75 / 23)
  CHECK(shivering_ceiling_W(75, height_m, 25, 50, 0.85) == Approx(540 - 115).epsilon(4e-3));

  // Continued, the regression leaves nothing for BMI 40, 70 years, VO2max 25: 30.5 + 8.7 - 36.36 - 16.31 < 0.
  // Held at BMI 28 and 37 years, 80.92 kg of the 115.6 and VO2max 35.7 of those: 30.5 + 12.43 - 25.45 - 8.62
  // = 8.86; but nobody of that group peaked two spreads below its share: (0.417 - 2 x 0.051) x 35.7 = 11.25.
  const double heavy = shivering_ceiling_W(115.6, 1.70, 70, 25, 0.85);
  CHECK(heavy == Approx(80.92 * 6.74 / 1000 / 60 * 20440).epsilon(1e-3));
  // 95 kg at 1.75 m, 30 years, VO2max 40: 85.75 kg at 44.3: 30.5 + 15.42 - 25.45 - 6.99 = 13.48,
  // raised to 0.315 x 44.3 = 13.96; less 4.51.
  CHECK(shivering_ceiling_W(95, 1.75, 30, 40, 0.85) ==
        Approx(85.75 * 9.45 / 1000 / 60 * 20440).epsilon(2e-3));
  // With the same heart and muscle, fat beyond the group's end takes nothing away.
  CHECK(shivering_ceiling_W(120, 1.75, 30, 40 * 95.0 / 120, 0.85) ==
        Approx(shivering_ceiling_W(95, 1.75, 30, 40, 0.85)));
  CHECK(shivering_ceiling_W(75, height_m, 60, 50, 0.85) ==
        Approx(shivering_ceiling_W(75, height_m, 37, 50, 0.85)));
  CHECK(beyond_shivering_peak_trial(75, height_m, 60));
  CHECK(beyond_shivering_peak_trial(95, 1.75, 30));
  CHECK_FALSE(beyond_shivering_peak_trial(75, height_m, 25));
  // Never above what the heart can deliver.
  CHECK(shivering_ceiling_W(115.6, 1.70, 70, 8, 0.85) <= greatest_aerobic_heat_W(115.6, 8, 0.85));
  CHECK(shivering_ceiling_W(75, height_m, 45, 50, 0.85) < shivering_ceiling_W(75, height_m, 25, 50, 0.85));
}

TEST_CASE("shivering that can be kept up") {
  // 2.3 times basal less the 1.15 of sitting: 92 W of 80, whatever the ceiling (a fit man's 425 W, or 200
  // W)...
  CHECK(sustained_shivering_W(80, 425) == Approx(92));
  CHECK(sustained_shivering_W(80, 200) == Approx(92));
  // ...as long as it is no more than 0.56 of that.
  CHECK(sustained_shivering_W(80, 100) == Approx(56));
}

TEST_CASE("ageing factors of Takahashi 2021") {
  CHECK(shivering_age_factor(20) == 1.0);
  CHECK(shivering_age_factor(45) == Approx(0.950));
  CHECK(shivering_age_factor(65) == Approx(0.901));
  CHECK(shivering_age_factor(95) == Approx(0.826));
  CHECK(sweat_age_factor(50) == 1.0);
  CHECK(sweat_age_factor(70) >= 0.40);
  CHECK(sweat_age_factor(70) <= 0.75);
  CHECK(dilatation_age_factor(50) == 1.0);
  CHECK(dilatation_age_factor(70) >= 0.31);
  CHECK(dilatation_age_factor(70) <= 0.91);
  // Degroot & Kenney 2007: a skin whose conductance falls by 53 % in the young falls by 42 % at 71 years.
  // With conductance 1 / (1 + x), x = 1.128 in the young.
  CHECK(constriction_age_factor(50) == 1.0);
  CHECK(1 - 1 / (1 + 1.128 * constriction_age_factor(71)) == Approx(0.42).epsilon(0.01));
  // No jump on a birthday: the two sides of 60 differ by a hundredth of the whole fall.
  CHECK(sweat_age_factor(59.95) - sweat_age_factor(60.05) == Approx(0.00425));
}
