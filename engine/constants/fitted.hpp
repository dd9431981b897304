// Every number that was set so that the model meets data. A number that was read somewhere stands with its
// field; one that came out of a fit, or was chosen knowing the outcome, stands here and nowhere else.
//
// `where` names the rows it was fitted on, which count as calibrated and validate nothing. `low` and `high`
// are what physics allows, and the fit stays inside.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

// Insulation of soaked clothing over dry, in air, dry heat path only (evaporation is a path of its own).
inline constexpr Sourced soaked_insulation{0.443,
                                           "-",
                                           "mak2009",
                                           "R 0.236 dry, 0.146 wet on the inflated floor "
                                           "(validation/raft_insulation); cloth full of water still has "
                                           "a thickness and traps some air, and never beats dry cloth",
                                           Trust::fitted,
                                           0.10,
                                           0.70};

// Sweat that cannot evaporate wets the skin, and wet skin stops glands: of the sweat commanded beyond what
// can evaporate, this share is withheld. The direction is published (nadel1973, recalled), the size is not.
inline constexpr Sourced wet_skin_withholds{
    0.735,
    "-",
    "nadel1973",
    "mass lost by people seated for 8 h in 95 % humidity (validation/humid_heat)",
    Trust::fitted,
    0.4,
    0.9};

}  // namespace bide::constants
