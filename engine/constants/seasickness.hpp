// Seasickness: dose, incidence, adaptation, medicine, what is lost by it.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

inline constexpr Sourced vomiting_per_dose{1.0 / 3.0,
                                           "% per m/s^1.5",
                                           "iso2631",
                                           "annex D: K_m of a mixed unadapted population",
                                           Trust::second_hand,
                                           0.25,
                                           0.45};
inline constexpr Sourced vomiting_greatest{0.70, "-", "iso2631", "annex D: range of the data, recalled",
                                           Trust::from_memory};
inline constexpr Sourced dose_longest_h{6.0, "h", "iso2631", "annex D: range of the data, recalled",
                                        Trust::from_memory};
inline constexpr Sourced dose_rounding_h{
    0.5, "h", "", "the last half hour of dose is spread, so that it has no corner", Trust::judgement,
    0.1, 1.0};
inline constexpr Sourced dose_recovery_h{
    6.0, "h", "", "sickness goes within hours once the motion ends", Trust::judgement, 2.0, 24.0};

inline constexpr Sourced enclosed_sick{
    0.75, "-", "landoltmonaco1989", "enclosed survival craft: 75 % or more, even in 1 m waves", Trust::seen,
    0.55, 0.99};
inline constexpr Sourced enclosed_wave_m{1.0, "m", "landoltmonaco1989", "same", Trust::seen};
inline constexpr Sourced rough_sick{
    0.95, "-", "maritimemedicine", "life raft in rough sea: nearly everyone eventually", Trust::seen,
    0.85, 0.99};
inline constexpr Sourced rough_wave_m{3.0, "m", "", "a rough sea", Trust::judgement, 2.0, 4.0};
inline constexpr Sourced enclosed_onset_h{
    2.0, "h", "", "hours until the trial's share is sick; not stated", Trust::judgement, 0.5, 4.0};

inline constexpr Sourced adaptation_time_days{
    1.25,           "d", "dan", "2 to 3 days typical: 1 - exp(-2.5/1.25) = 86 % adapted at 2.5 d",
    Trust::derived, 0.8, 2.0};
inline constexpr Sourced adaptation_motion_m_s2{
    0.1,
    "m/s2",
    "",
    "weighted rms that counts as motion to adapt to: 5 % would vomit in 6 h",
    Trust::judgement,
    0.05,
    0.25};

inline constexpr Sourced tablet_protection{
    0.60, "-", "landingcraft", "hyoscine 0.6 mg: about 60 % protected", Trust::seen, 0.4, 0.75};
inline constexpr Sourced patch_protection_day_1{0.74, "-", "attias1987", "transdermal hyoscine, day 1",
                                                Trust::seen};
inline constexpr Sourced patch_protection_day_2{0.73, "-", "attias1987", "day 2", Trust::seen};
inline constexpr Sourced patch_protection_day_3{0.39, "-", "attias1987", "day 3", Trust::seen};

inline constexpr Sourced vomit_kg_day{
    1.0,
    "kg/d",
    "",
    "no published volume; planning 0.5 to 2 L on a first day of repeated vomiting",
    Trust::judgement,
    0.5,
    2.0};

}  // namespace bide::constants
