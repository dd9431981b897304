// A person without food, the fuel functions carried hour by hour to the end: no weather, no water.
#pragma once

#include <string>

#include "validation/support/rest.hpp"

namespace bide::validation {

// Of a person who sits and moves about, over basal; judgement, fixed before the first run.
inline constexpr double starving_activity = 1.3;

struct Starved {
  double days;                   // to the end
  double mass_kg, mass_lost_kg;  // fat, protein and glycogen with their water
  double fat_used_kg, protein_used_kg;
  double protein_energy_pct;  // of all energy on `share_day`
};

// A person (JSON object) at rest in a room with 3 L of water a day and no food.
Rest fasting_rest(const std::string& person, double hours);

// `fixed_W` above 0 replaces the person's own heat.
Starved starve(const std::string& person, double fixed_W, double share_day = 6);

}  // namespace bide::validation
