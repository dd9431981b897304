// Default body fat and aerobic capacity of a person of whom neither is known, and who falls outside what was
// measured.
//
// Validity: adults of 20 and over (surveys of the United States population).
#pragma once

#include "core/sourced.hpp"

namespace bide::constants {

// ---- body fat, % = intercept - slope / BMI - male (if male) + per_year x age; R2 0.84, RMSE 3.5 %
inline constexpr Sourced body_fat_intercept_pct{61.93, "%", "nhanesfat2015", "regression on NHANES DXA",
                                                Trust::seen};
inline constexpr Sourced body_fat_per_inverse_bmi{680.06, "% kg/m2", "nhanesfat2015", "same", Trust::seen};
inline constexpr Sourced body_fat_male_pct{12.05, "%", "nhanesfat2015", "same, subtracted for men",
                                           Trust::seen};
inline constexpr Sourced body_fat_per_year_pct{0.08, "%/year", "nhanesfat2015", "same", Trust::seen};
inline constexpr Sourced body_fat_lowest_pct{4.0, "%", "", "essential fat of lean men is 3-5 (recalled)",
                                             Trust::judgement};
inline constexpr Sourced body_fat_highest_pct{60.0, "%", "", "above the heaviest surveyed", Trust::judgement};

// ---- maximal oxygen uptake, 50th percentile; linear in age between the middles of the two decades
inline constexpr Sourced vo2max_male_25_mL_kg_min{48.0, "mL/(kg min)", "kaminsky2015", "men 20-29",
                                                  Trust::seen};
inline constexpr Sourced vo2max_male_75_mL_kg_min{24.4, "mL/(kg min)", "kaminsky2015", "men 70-79",
                                                  Trust::seen};
inline constexpr Sourced vo2max_female_25_mL_kg_min{37.6, "mL/(kg min)", "kaminsky2015", "women 20-29",
                                                    Trust::seen};
inline constexpr Sourced vo2max_female_75_mL_kg_min{18.3, "mL/(kg min)", "kaminsky2015", "women 70-79",
                                                    Trust::seen};
inline constexpr Sourced vo2max_younger_age_years{25.0, "years", "kaminsky2015", "middle of 20-29",
                                                  Trust::derived};
inline constexpr Sourced vo2max_older_age_years{75.0, "years", "kaminsky2015", "middle of 70-79",
                                                Trust::derived};
inline constexpr Sourced vo2max_youngest_years{20.0, "years", "", "start of the youngest decade: held below",
                                               Trust::judgement};
inline constexpr Sourced vo2max_oldest_years{80.0, "years", "", "end of the oldest decade: held above",
                                             Trust::judgement};

// ---- who was measured: outside these a result is extrapolated, and says so
inline constexpr Sourced youngest_measured_years{18.0, "years", "", "trials enrolled adults",
                                                 Trust::judgement};
inline constexpr Sourced oldest_measured_years{60.0, "years", "", "trials rarely enrolled older people",
                                               Trust::judgement};
inline constexpr Sourced leanest_measured_pct{7.0, "%", "", "lean subjects of the immersion trials",
                                              Trust::judgement};
inline constexpr Sourced fattest_measured_pct{45.0, "%", "", "above the fat subjects of the trials",
                                              Trust::judgement};

}  // namespace bide::constants
