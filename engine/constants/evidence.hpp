// How far the published measurements reach: beyond these marks a result is extrapolated.
//
// Validity: these numbers judge results, they never enter the model. Source: each its own, mostly the end of
// the longest or coldest trial that measured core, skin and metabolic rate against time.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

inline constexpr Sourced longest_raft_trial_h{
    2.5, "h", "piran2007raft", "p. 559: 135 min aboard, taken up to the half hour; none longer is known",
    Trust::derived};
inline constexpr Sourced shivering_law_core_degC{
    35.0, "degC", "tikuisis1999", "data mean 35.92 less its spread of 0.93, rounded: few points lie below",
    Trust::derived};
inline constexpr Sourced shivering_law_lowest_core_degC{
    33.25, "degC", "tikuisis1999", "abstract: coldest oesophageal temperature of the data", Trust::seen};
inline constexpr Sourced longest_shivering_trial_h{
    6.5, "h", "tikuisis2002", "abstract: trials of 105 to 388 min without a fall in oxygen uptake",
    Trust::seen};
inline constexpr Sourced shivering_counted_W{
    30.0, "W", "", "a third of resting heat: less than this is hard to tell from fidgeting",
    Trust::judgement};
inline constexpr Sourced longest_wet_sitting_h{
    3.0, "h", "", "no published trial of sitting in wet clothes and cold is known beyond this",
    Trust::judgement};
inline constexpr Sourced wet_clothing_counted_kg{
    0.5, "kg", "", "about an eighth of what a soaked and drained heavy outfit holds", Trust::judgement};
inline constexpr Sourced women_cold_core_degC{
    36.0, "degC", "", "mild cold: most multi-hour trials below this had men only", Trust::judgement};
// Days without water, the model's over those published: the least and the most of the rows in
// validation/README.md, "What is weak" (tests/validation holds the two against the rows).
inline constexpr Sourced days_without_water_least_times{
    0.7, "-", "", "a youth in a cool damp cell: 13.0 days for 18", Trust::derived};
inline constexpr Sourced days_without_water_most_times{
    1.5, "-", "", "light clothes in air of 32 degC: 10.8 days for 7", Trust::derived};
inline constexpr Sourced youngest_measured_years{
    18.0, "years", "", "the cold, heat and thirst trials had adult volunteers", Trust::judgement};
inline constexpr Sourced oldest_measured_years{
    60.0, "years", "", "no multi-hour severe cold trial of older people is known", Trust::judgement};
inline constexpr Sourced humid_heat_trial_degC{
    35.0, "degC", "humidheat2020", "abstract: seated for 8 h at 95 % humidity, hottest of three conditions",
    Trust::seen};
inline constexpr Sourced humid_heat_trial_h{8.0, "h", "humidheat2020", "abstract: length of exposure",
                                            Trust::seen};
inline constexpr Sourced sweating_deficit_pct{
    5.0, "% of body mass", "", "no measurement of sweating at rest is known at 5 to 10 %", Trust::judgement};
inline constexpr Sourced recalled_osmolality_mOsm_kg{
    350.0, "mOsm/kg", "arieff1976", "signs above this are recalled figures", Trust::from_memory};
inline constexpr Sourced finger_curve_degC{
    15.0, "degC", "", "no published finger temperatures over hours at 0 to 15 degC are known",
    Trust::judgement};
inline constexpr Sourced finger_curve_h{2.0, "h", "", "trials of hands in cold last about this long",
                                        Trust::judgement};
inline constexpr Sourced alcohol_trial_mg_dL{82.0, "mg/dL", "fox1979", "abstract: 45 min in water at 10 degC",
                                             Trust::seen};
inline constexpr Sourced immersion_trial_h{
    6.5, "h", "tikuisis2002",
    "longest controlled immersion with shivering measured; later times are accidents", Trust::seen};

// ---- foul air: hours above these are counted
inline constexpr Sourced co2_workday_ppm{5000.0, "ppm", "niosh1994co2", "limit as a mean of 8 to 10 h",
                                         Trust::seen};
inline constexpr Sourced co2_headache_ppm{
    15000.0, "ppm", "", "between the workday limit and deeper breathing with headache at 20,000 (recalled)",
    Trust::judgement};
inline constexpr Sourced co2_short_term_ppm{30000.0, "ppm", "niosh1994co2",
                                            "short-term limit; its 15 min are recalled", Trust::from_memory};

// ---- comparison of two results: a smaller difference counts as not distinguishable
inline constexpr Sourced times_apart_fraction{
    0.05, "-", "", "what two printed figures resolve; steps alone may shift a time by 1 %", Trust::judgement,
    0.01, 0.2};
inline constexpr Sourced times_apart_s{1800.0, "s", "", "a lapse of 30 min decides what counts as able",
                                       Trust::judgement};
inline constexpr Sourced temperatures_apart_K{0.5, "K", "", "half of the whole degree that is printed",
                                              Trust::judgement};
inline constexpr Sourced deficits_apart_pct{0.5, "% of body mass", "",
                                            "day to day spread of body mass at rest, about that of a scale",
                                            Trust::judgement};
inline constexpr Sourced margins_apart_fraction{
    0.05, "-", "", "of the way from the normal value to a limit; as for times", Trust::judgement};
inline constexpr Sourced foul_air_apart_h{1.0, "h", "", "a few output times", Trust::judgement};
// Least excess over the outside temperature for which the loss per kelvin is given.
inline constexpr Sourced excess_for_conductance_K{1.0, "K", "", "below it the quotient is noise",
                                                  Trust::judgement};

}  // namespace bide::constants
