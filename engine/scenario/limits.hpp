// The limits that end ability, consciousness or life: one row each, with what a scenario may say of it.
//
// States: none; this is the table that schema, check aboard, watch, causes and pages are read from. Validity:
// constants/limits.hpp. Source: levels from constants/limits and constants/fuel, or the scenario's own.
#pragma once

#include <array>
#include <cstddef>

#include "bide/constants/fuel.hpp"
#include "bide/constants/hands.hpp"
#include "bide/constants/injury.hpp"
#include "bide/constants/limits.hpp"
#include "bide/constants/swimming.hpp"
#include "bide/core/scalar.hpp"
#include "bide/core/units.hpp"
#include "bide/scenario/scenario.hpp"

namespace bide::scenario {

// Record files hold these numbers: a new limit that has a level goes before lost_airway, and the files'
// format changes.
enum class Limit : unsigned char {
  able_core_low,
  able_core_high,
  able_water_deficit,
  able_co2,
  unconscious_core,
  lethal_core_low,
  lethal_core_high,
  lethal_water_deficit,
  lethal_osmolality,
  lethal_co2,
  lethal_fat,
  lethal_protein,
  swim_failure,
  cold_injury,
  frostbite,
  able_osmolality_low,
  lethal_osmolality_low,
  frostbite_face,
  lost_airway,    // no level of its own: see takes_airway() in system/limits.hpp
  first_minutes,  // nor has this: stated or drawn of a person, before anything is computed
  none
};
inline constexpr std::size_t level_count =
    static_cast<std::size_t>(Limit::lost_airway);  // those with a level
inline constexpr std::size_t limit_count = static_cast<std::size_t>(Limit::none);

enum class Meaning : unsigned char { unable, unconscious, lethal, sinking, injury };
// Whether passing such a limit by itself ends something for somebody aboard.
inline constexpr bool ends(Meaning meaning) {
  return meaning == Meaning::unable || meaning == Meaning::unconscious || meaning == Meaning::lethal;
}
enum class Side : unsigned char { below, above };  // where the quantity is past the limit
enum class ByPerson : unsigned char {
  same,          // for everybody
  cold_shifted,  // by the person's shift of core limits
  fevered,       // by the person's fever, as far as fevers go
  lean           // no more than a share of what the person had at the start
};

// A person's own core limit. Heat stroke is a core that nobody set: one that a fever holds is not it, up to
// the highest that fevers are let rise to (constants/injury.hpp).
// @param level        of a person of no particular kind, degC
// @param cold_shift_K the person's shift of the limits of the cold, K
// @param fever_K      rise of the set point, K, at least 0
// @return degC; as it came where neither moves the limit
template <class T>
inline T own_core_level(ByPerson by_person, T level, T cold_shift_K, T fever_K) {
  if (by_person == ByPerson::cold_shifted) return level + cold_shift_K;
  if (by_person == ByPerson::fevered)
    return larger(level, smaller(T(level + fever_K), T(constants::fever_bound_degC)));
  return level;
}

namespace quantity {
enum Id : unsigned char {
  core,
  deficit,
  osmolality,
  co2,
  fat,
  protein_used,
  swimming,
  cold_feet,
  frozen,
  face,
  count
};
}  // namespace quantity
struct QuantityRow {
  quantity::Id id;
  double normal;      // of a well person, for margins
  double per_stated;  // of the quantity to one of the unit in which it is stated
  const char* unit;   // in which it is stated, as printed after a number
};
inline constexpr std::array<QuantityRow, quantity::count> quantities{{
    {quantity::core, 37, 1, " °C"},
    {quantity::deficit, 0, 1, " % of body mass"},
    {quantity::osmolality, 287, 1, " mOsm/kg"},
    {quantity::co2, 0, 1e-6, " ppm"},
    {quantity::fat, 10, 1, " kg"},
    {quantity::protein_used, 0, 0.01, " %"},
    {quantity::swimming, 1, 1, " of a rested swimmer's power"},
    {quantity::cold_feet, 0, hour_s, " h"},
    {quantity::frozen, 0, hour_s, " h"},
    {quantity::face, 0, 1, " of the time in which a face may freeze"},
}};

// The key of a scenario that sets the level, and the range in which it may lie.
struct StatedLevel {
  double Limits::*member = nullptr;  // null: no key
  const char* key = "";
  const char* unit = "";
  double low = 0, high = 0;
  const char* sentence = "";
};

struct LimitRow {
  Limit id;
  const char* name;  // in result files
  Meaning meaning;
  quantity::Id of;
  Side side;
  ByPerson by_person;
  double level;        // in the unit in which it is stated
  const char* cause;   // in a word
  const char* clause;  // with the stated level after it
  StatedLevel stated;
};

// In the order of Limit.
inline constexpr std::array<LimitRow, limit_count> limits = [] {
  using enum Limit;
  using enum Meaning;
  using enum Side;
  using enum ByPerson;
  using namespace quantity;
  using S = Limits;
  namespace c = constants;
  const char *C = "degC", *pct = "% of body mass";
  const auto key = [](double S::*member, const char* name, const char* unit, double low, double high,
                      const char* sentence) { return StatedLevel{member, name, unit, low, high, sentence}; };
  return std::array<LimitRow, limit_count>{{
      {able_core_low, "able_core_low", unable, core, below, cold_shifted, c::able_core_low_degC, "cold",
       "core temperature below",
       key(&S::able_core_low_degC, "able_core_low_degC", C, 28, 36, "Not able below this core temperature.")},
      {able_core_high, "able_core_high", unable, core, above, fevered, c::able_core_high_degC, "heat",
       "core temperature above",
       key(&S::able_core_high_degC, "able_core_high_degC", C, 38, 42,
           "Not able above this core temperature; a fever's own rise is added, as far as fevers go.")},
      {able_water_deficit, "able_water_deficit", unable, deficit, above, same, c::able_water_deficit_pct,
       "water loss", "more than",
       key(&S::able_water_deficit_pct, "able_water_deficit_pct", pct, 2, 20,
           "Not able beyond this water deficit.")},
      {able_co2, "able_co2", unable, co2, above, same, c::able_co2_ppm, "foul air", "CO2 above",
       key(&S::able_co2_ppm, "able_co2_ppm", "ppm", 5000, 150000, "Not able above this carbon dioxide.")},
      {unconscious_core, "unconscious_core", unconscious, core, below, cold_shifted, c::unconscious_core_degC,
       "cold", "core temperature below",
       key(&S::unconscious_core_degC, "unconscious_core_degC", C, 20, 34,
           "Unconscious below this core temperature.")},
      {lethal_core_low, "lethal_core_low", lethal, core, below, cold_shifted, c::lethal_core_low_degC, "cold",
       "core temperature below",
       key(&S::lethal_core_low_degC, "lethal_core_low_degC", C, 10, 32,
           "Not alive below this core temperature.")},
      {lethal_core_high, "lethal_core_high", lethal, core, above, same, c::lethal_core_high_degC, "heat",
       "core temperature above",
       key(&S::lethal_core_high_degC, "lethal_core_high_degC", C, 40, 45,
           "Not alive above this core temperature.")},
      {lethal_water_deficit, "lethal_water_deficit", lethal, deficit, above, same,
       c::lethal_water_deficit_pct, "water loss", "more than",
       key(&S::lethal_water_deficit_pct, "lethal_water_deficit_pct", pct, 5, 30,
           "Not alive beyond this water deficit.")},
      {lethal_osmolality, "lethal_osmolality", lethal, osmolality, above, same, c::lethal_osmolality_mOsm_kg,
       "salt in the blood", "above",
       key(&S::lethal_osmolality_mOsm_kg, "lethal_osmolality_mOsm_kg", "mOsm/kg", 330, 600,
           "Not alive above this plasma osmolality.")},
      {lethal_co2, "lethal_co2", lethal, co2, above, same, c::lethal_co2_ppm, "foul air", "CO2 above",
       key(&S::lethal_co2_ppm, "lethal_co2_ppm", "ppm", 20000, 400000,
           "Not alive above this carbon dioxide.")},
      {lethal_fat, "lethal_fat", lethal, fat, below, lean, c::lethal_fat_left_kg, "hunger",
       "body fat used up", StatedLevel{}},
      {lethal_protein, "lethal_protein", lethal, protein_used, above, same, c::lethal_protein_loss_pct,
       "hunger", "too much body protein used", StatedLevel{}},
      {swim_failure, "swim_failure", sinking, swimming, below, same, c::least_swimming_power,
       "swimming failure", "arms too cold or tired to swim, and no lifejacket", StatedLevel{}},
      {cold_injury, "cold_injury", injury, cold_feet, above, same, c::wet_cold_injury_h,
       "cold injury of the feet", "wet or cold for too long", StatedLevel{}},
      {frostbite, "frostbite", injury, frozen, above, same, c::frostbite_h, "frostbite",
       "fingers or toes frozen, or below freezing for too long", StatedLevel{}},
      {able_osmolality_low, "able_osmolality_low", unable, osmolality, below, same,
       c::able_osmolality_low_mOsm_kg, "dilute blood", "below",
       key(&S::able_osmolality_low_mOsm_kg, "able_osmolality_low_mOsm_kg", "mOsm/kg", 200, 275,
           "Not able below this plasma osmolality.")},
      {lethal_osmolality_low, "lethal_osmolality_low", lethal, osmolality, below, same,
       c::lethal_osmolality_low_mOsm_kg, "dilute blood", "below",
       key(&S::lethal_osmolality_low_mOsm_kg, "lethal_osmolality_low_mOsm_kg", "mOsm/kg", 180, 260,
           "Not alive below this plasma osmolality.")},
      {frostbite_face, "frostbite_face", injury, face, above, same, 1, "frostbite of the face",
       "bare in cold wind for too long", StatedLevel{}},
      {lost_airway, "lost_airway", lethal, count, below, same, 0, "loss of airway protection", "",
       StatedLevel{}},
      {first_minutes, "first_minutes", lethal, count, below, same, 0, "the first minutes in the water", "",
       StatedLevel{}},
  }};
}();
static_assert([] {
  for (std::size_t i = 0; i < limits.size(); ++i)
    if (limits[i].id != static_cast<Limit>(i)) return false;
  for (std::size_t q = 0; q < quantities.size(); ++q)
    if (quantities[q].id != q) return false;
  return true;
}());

}  // namespace bide::scenario
