// Lights and signals: which work, and from how far a light is seen.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

inline constexpr Sourced signals_fail_in_date{
    0.06, "-", "uscgflares1977", "flares and smokes tested, pistol parachutes apart; how many was not read",
    Trust::seen};
inline constexpr Sourced signals_fail_expired{
    0.26, "-", "flaretest207", "of 207 pyrotechnics past their date", Trust::second_hand, 0.20, 0.33};

// Luminous range: I = 3.43e6 T D^2 K^-D, I in cd, D in nautical miles.
inline constexpr Sourced luminous_range_factor{3.43e6, "-", "colregs", "Annex I section 8; recalled",
                                               Trust::from_memory};
inline constexpr Sourced light_threshold_night_lux{
    2e-7, "lux", "colregs", "Annex I section 8: eye used to the dark; recalled", Trust::from_memory};
inline constexpr Sourced light_threshold_day_lux{
    1e-3, "lux", "", "by day, recalled, unsure", Trust::from_memory, 3e-4, 3e-3};
// What is left of a light after the meteorological visibility.
inline constexpr Sourced contrast_at_visibility{
    0.05, "-", "colregs", "K = 0.8 a mile is a visibility of 13 miles", Trust::from_memory};
inline constexpr Sourced horizon_nm_per_root_m{
    2.08, "nm/m^0.5", "", "geographical range with refraction, recalled", Trust::from_memory};

// Charge that cells keep at -20 degC, of that at 20 degC, at a low drain.
inline constexpr Sourced alkaline_at_minus_20{
    0.3, "-", "", "recalled, unsure: treat as a range", Trust::from_memory, 0.2, 0.4};
inline constexpr Sourced lithium_at_minus_20{
    0.7, "-", "", "recalled, unsure: treat as a range", Trust::from_memory, 0.6, 0.8};

}  // namespace bide::constants
