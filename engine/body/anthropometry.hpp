// Quantities derived from a person's sex, age, mass, height, fatness and fitness: surface, resting heat, body
// water, lean and fat mass, aerobic power, shivering ceiling, ageing factors.
//
// States: none; evaluated once, before a run. Inputs: as named, one person. Validity: adults; regressions are
// not clamped unless said, so outside the measured group they extrapolate. Sources: each function's own;
// numbers in constants/body.hpp and constants/shivering.hpp.
#pragma once

#include "bide/scenario/scenario.hpp"

namespace bide::body {

// Skin area (Du Bois & Du Bois 1916).
// @param mass_kg  body mass, kg
// @param height_m m
// @return m2
double dubois_area_m2(double mass_kg, double height_m);

// Resting heat (Mifflin & St Jeor 1990, 498 adults of 19 to 78 years, lean and obese; chosen over Harris &
// Benedict 1919, which is some 5 % above present-day measurements). Under 18 by mass and groups of age
// (Schofield 1985).
// @param sex       as recorded
// @param age_years years, [2, 78]; extrapolated above
// @param mass_kg   body mass, kg
// @param height_m  m
// @return W
double basal_heat_W(scenario::Sex sex, double age_years, double mass_kg, double height_m);

// Total body water (Watson 1980; that of women does not depend on age). Under 18 Mellits & Cheek 1970.
// @param sex       as recorded
// @param age_years years
// @param mass_kg   body mass, kg
// @param height_m  m
// @return kg
double body_water_kg(scenario::Sex sex, double age_years, double mass_kg, double height_m);

// Fat mass, and the mass without fat.
// @param mass_kg      body mass, kg
// @param body_fat_pct body fat, % of mass
// @return kg
double fat_mass_kg(double mass_kg, double body_fat_pct);
double lean_mass_kg(double mass_kg, double body_fat_pct);

// Heat made at maximal oxygen uptake.
// @param mass_kg          body mass, kg
// @param vo2max_mL_kg_min maximal oxygen uptake, mL/(kg min)
// @param rq               respiratory quotient, [0.7, 1.0]
// @return W
double greatest_aerobic_heat_W(double mass_kg, double vo2max_mL_kg_min, double rq);

// Greatest shivering heat above rest: the peak of Eyolfson 2001 (15 people of 24.7 (6) years, 72.1 (12) kg,
// 1.76 m) less their resting uptake. Age and body mass index are limited to the range of that group:
// extrapolated, the regression leaves a heavy or old person no shivering at all, which no measurement shows.
// Mass above the heaviest of the group does not shiver. The peak lies within two spreads of the group's share
// of its own VO2max, 41.7 (5.1) %, which carries it to the old and to women, and is at least twice the
// resting uptake and at most VO2max.
// @param mass_kg          body mass, kg
// @param height_m         m
// @param age_years        years
// @param vo2max_mL_kg_min maximal oxygen uptake, mL/(kg min)
// @param rq               respiratory quotient, [0.7, 1.0]
// @return W, at least 0
double shivering_ceiling_W(double mass_kg, double height_m, double age_years, double vo2max_mL_kg_min,
                           double rq);

// Shivering heat above rest that can be kept up for days: all heat 2.3 times basal, as near-nude men made for
// nine days at 8 degC and as people at large can spend (Westerterp 2001: 2.2 to 2.5). It does not follow the
// ceiling, which falls with age, so the old do not lose what everybody can do; but it is at most the share of
// the ceiling that was held for 6.5 h (Tikuisis 2002).
// @param basal_W   resting heat, W
// @param ceiling_W greatest shivering heat above rest, W
// @return W
double sustained_shivering_W(double basal_W, double ceiling_W);

// Whether age or body mass index is outside the range of that group.
// @param mass_kg   body mass, kg
// @param height_m  m
// @param age_years years
bool beyond_shivering_peak_trial(double mass_kg, double height_m, double age_years);

// 0 for the young, 1 for the old, with a linear change over the ten years around 60.
// @param age_years years
double old_share(double age_years);

// Factors of age on the shivering drive, sweating, skin dilatation (Takahashi 2021) and skin constriction
// (Degroot & Kenney 2007), 1 in the young.
// @param age_years years; constant outside [25, 85]
double shivering_age_factor(double age_years);
double sweat_age_factor(double age_years);
double dilatation_age_factor(double age_years);
double constriction_age_factor(double age_years);

// What amounts stated for an adult (a day's salt and ketones, a fluid shift, the bounds of urine flow, a
// meal) are for this person: as lean mass to an adult's under 18, 1 from then on.
// @param age_years years
// @param lean_kg   mass without fat, kg
// @return (0, 1]
double size_of(double age_years, double lean_kg);

// What commands of sweat and skin flow, stated for the standard man, are for this person: as surface to his
// under 18, 1 from then on.
// @param age_years years
// @param area_m2   of the whole skin, m2
// @return (0, 1]
double command_size(double age_years, double area_m2);

}  // namespace bide::body
