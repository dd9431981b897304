// How far people drink beyond their need.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

inline constexpr Sourced overdrunk_mOsm_kg{
    280.0,
    "mOsm/kg",
    "saker2016",
    "told to drink as much as they could, people managed just over a litre, and swallowing took three times "
    "the effort: 1.05 L beyond the need takes 42 L of body water from 287 to 280. That they had no need left "
    "when they began is a judgement",
    Trust::derived,
    275.0,
    284.0};

}  // namespace bide::constants
