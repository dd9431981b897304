// What follows from a person's sex, age, mass, height, fatness and fitness: surface, resting heat, body
// water, lean and fat mass, aerobic power, shivering ceiling, ageing factors.
//
// States: none; evaluated once, before a run. Inputs: as named, one person. Validity: adults; regressions are
// not clamped unless said, so outside the measured group they extrapolate. Sources: each function's own;
// numbers in constants/body.hpp and constants/shivering.hpp.
#pragma once

#include "bide/scenario/scenario.hpp"

namespace bide::body {

// Skin area, m2 (Du Bois & Du Bois 1916).
double dubois_area_m2(double mass_kg, double height_m);

// Resting heat, W (Mifflin & St Jeor 1990, 498 adults of 19 to 78 years, lean and obese). Chosen over Harris
// & Benedict 1919, which reads some 5 % above present-day measurements.
double basal_heat_W(scenario::Sex sex, double age_years, double mass_kg, double height_m);

// Total body water, kg (Watson 1980; women's has no age term).
double body_water_kg(scenario::Sex sex, double age_years, double mass_kg, double height_m);

double fat_mass_kg(double mass_kg, double body_fat_pct);
double lean_mass_kg(double mass_kg, double body_fat_pct);

// Heat made at maximal oxygen uptake, W, at respiratory quotient `rq`.
double greatest_aerobic_heat_W(double mass_kg, double vo2max_mL_kg_min, double rq);

// Greatest shivering heat above rest, W: the peak of Eyolfson 2001 (15 people of 24.7 (6) years, 72.1 (12)
// kg, 1.76 m) less their resting uptake. Age and body mass index are held at the ends of that group:
// continued, the straight lines leave a heavy or old person no shivering at all, which no measurement shows.
// Mass beyond the heaviest is ballast. Not below twice the resting uptake in all, not above VO2max.
double shivering_ceiling_W(double mass_kg, double height_m, double age_years, double vo2max_mL_kg_min,
                           double rq);

// True where the above is held at an end.
bool beyond_shivering_peak_trial(double mass_kg, double height_m, double age_years);

// Factors of age on the shivering drive, sweating and skin dilatation, 1 in the young (Takahashi 2021).
// Constriction does not change. Held beyond 25 and 85 years.
double shivering_age_factor(double age_years);
double sweat_age_factor(double age_years);
double dilatation_age_factor(double age_years);

}  // namespace bide::body
