// The limits that end ability, consciousness or life: one row each.
//
// States: none. Inputs: what is read off a person and the air, and the levels in force. Read by the check
// aboard, the watch inside steps, fates, margins, causes in words and marks on pages: whoever asks whether a
// limit is passed asks beyond(), so all give one answer. Source: levels from constants/limits and
// constants/fuel, or the scenario's own.
#pragma once

#include <array>
#include <cstddef>
#include <optional>

#include "bide/constants/fuel.hpp"
#include "bide/constants/hands.hpp"
#include "bide/constants/limits.hpp"
#include "bide/constants/swimming.hpp"
#include "bide/core/units.hpp"
#include "bide/scenario/scenario.hpp"
#include "bide/system/readings.hpp"

namespace bide::system {

// Record files hold these numbers: a new limit goes before lost_airway, and the files' format changes.
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
  lost_airway,  // no level of its own: see takes_airway()
  none
};
inline constexpr std::size_t level_count =
    static_cast<std::size_t>(Limit::lost_airway);  // those with a level

enum class Meaning : unsigned char { unable, unconscious, lethal, sinking, injury };
// Whether passing such a limit by itself ends something for somebody aboard.
inline constexpr bool ends(Meaning meaning) {
  return meaning == Meaning::unable || meaning == Meaning::unconscious || meaning == Meaning::lethal;
}
enum class Side : unsigned char { below, above };  // where the quantity is past the limit
enum class ByPerson : unsigned char {
  same,          // for everybody
  cold_shifted,  // by Build::core_limit_shift_K
  lean           // no more than a share of what the person had at the start
};

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
    {quantity::core, 37, 1, " C"},
    {quantity::deficit, 0, 1, " % of body mass"},
    {quantity::osmolality, 287, 1, " mOsm/kg"},
    {quantity::co2, 0, 1e-6, " ppm"},
    {quantity::fat, 10, 1, " kg"},
    {quantity::protein_used, 0, 0.01, " %"},
    {quantity::swimming, 1, 1, " of a rested swimmer's power"},
    {quantity::cold_feet, 0, hour_s, " h"},
    {quantity::frozen, 0, hour_s, " h"},
}};

struct LimitRow {
  Limit id;
  const char* name;  // in result files
  Meaning meaning;
  quantity::Id of;
  Side side;
  ByPerson by_person;
  double scenario::Limits::*stated;  // null: no key in a scenario, `level` holds
  double level;                      // in the unit in which it is stated
  const char* cause;                 // in a word
  const char* clause;                // with the stated level after it
};

// In the order of Limit.
inline constexpr std::array<LimitRow, level_count + 1> limits = [] {
  using enum Limit;
  using enum Meaning;
  using enum Side;
  using enum ByPerson;
  using namespace quantity;
  using S = scenario::Limits;
  namespace c = constants;
  return std::array<LimitRow, level_count + 1>{{
      {able_core_low, "able_core_low", unable, core, below, cold_shifted, &S::able_core_low_degC, 0, "cold",
       "core temperature below"},
      {able_core_high, "able_core_high", unable, core, above, same, &S::able_core_high_degC, 0, "heat",
       "core temperature above"},
      {able_water_deficit, "able_water_deficit", unable, deficit, above, same, &S::able_water_deficit_pct, 0,
       "water loss", "more than"},
      {able_co2, "able_co2", unable, co2, above, same, &S::able_co2_ppm, 0, "foul air", "CO2 above"},
      {unconscious_core, "unconscious_core", unconscious, core, below, cold_shifted,
       &S::unconscious_core_degC, 0, "cold", "core temperature below"},
      {lethal_core_low, "lethal_core_low", lethal, core, below, cold_shifted, &S::lethal_core_low_degC, 0,
       "cold", "core temperature below"},
      {lethal_core_high, "lethal_core_high", lethal, core, above, same, &S::lethal_core_high_degC, 0, "heat",
       "core temperature above"},
      {lethal_water_deficit, "lethal_water_deficit", lethal, deficit, above, same,
       &S::lethal_water_deficit_pct, 0, "water loss", "more than"},
      {lethal_osmolality, "lethal_osmolality", lethal, osmolality, above, same, &S::lethal_osmolality_mOsm_kg,
       0, "salt in the blood", "above"},
      {lethal_co2, "lethal_co2", lethal, co2, above, same, &S::lethal_co2_ppm, 0, "foul air", "CO2 above"},
      {lethal_fat, "lethal_fat", lethal, fat, below, lean, nullptr, c::lethal_fat_left_kg, "hunger",
       "body fat used up"},
      {lethal_protein, "lethal_protein", lethal, protein_used, above, same, nullptr,
       c::lethal_protein_loss_pct, "hunger", "too much body protein used"},
      {swim_failure, "swim_failure", sinking, swimming, below, same, nullptr, c::least_swimming_power,
       "swimming failure", "arms too cold or tired to swim, and no lifejacket"},
      {cold_injury, "cold_injury", injury, cold_feet, above, same, nullptr, c::wet_cold_injury_h,
       "cold injury of the feet", "wet or cold for too long"},
      {frostbite, "frostbite", injury, frozen, above, same, nullptr, c::frostbite_h, "frostbite",
       "fingers or toes below freezing for too long"},
      {lost_airway, "lost_airway", lethal, count, below, same, nullptr, 0, "loss of airway protection", ""},
  }};
}();
static_assert([] {
  for (std::size_t i = 0; i < limits.size(); ++i)
    if (limits[i].id != static_cast<Limit>(i)) return false;
  for (std::size_t q = 0; q < quantities.size(); ++q)
    if (quantities[q].id != q) return false;
  return true;
}());

inline constexpr const LimitRow& row_of(Limit limit) {
  return limits[static_cast<std::size_t>(limit)];
}
// "able_core_low"; empty for none.
inline const char* name_of(Limit limit) {
  return limit == Limit::none ? "" : row_of(limit).name;
}

// What all limits look at, of one person.
template <class T>
using Quantities = std::array<T, quantity::count>;

// @param y the person's block of the state
// @param co2_fraction of the air the person breathes, 0..1
template <class T>
Quantities<T> quantities_of(const body::Build<T>& person, const T* y, const T& co2_fraction) {
  return {core_degC(y),
          water_deficit_pct(person, y),
          osmolality_mOsm_kg(person, y),
          co2_fraction,
          y[body::at::fat_mass],
          T(1) - y[body::at::protein_mass] / person.protein_kg,
          swimming_power(person, y),
          y[body::at::total_cold_feet],
          y[body::at::total_frozen]};
}

// The levels in force, one for each limit that has one, in the unit of its quantity. Holds nothing but T.
template <class T>
struct Levels {
  std::array<T, level_count> by_limit;
  T& operator[](Limit limit) { return by_limit[static_cast<std::size_t>(limit)]; }
  const T& operator[](Limit limit) const { return by_limit[static_cast<std::size_t>(limit)]; }
};

// One person's own, from those of a person of no particular kind.
template <class T>
Levels<T> levels_of(const Levels<T>& common, const body::Build<T>& person) {
  Levels<T> out = common;
  for (std::size_t i = 0; i < level_count; ++i) {
    T& level = out.by_limit[i];
    if (limits[i].by_person == ByPerson::cold_shifted) level += person.core_limit_shift_K;
    if (limits[i].by_person == ByPerson::lean)
      level = smaller(level, T(T(constants::lethal_fat_share_of_start.value) * person.fat_kg));
  }
  return out;
}

template <class T>
Mask<T> beyond(const LimitRow& row, const T& value, const T& level) {
  return row.side == Side::above ? value > level : value < level;
}

// Whether somebody past a limit loses the airway where the sea can reach the mouth: who is unconscious, and
// without a lifejacket who can no longer swim.
inline constexpr bool takes_airway(Meaning meaning, bool lifejacket) {
  return meaning == Meaning::unconscious ||
         (!lifejacket && (meaning == Meaning::unable || meaning == Meaning::sinking));
}

// What the limits say of one person now.
template <class T>
struct Past {
  Mask<T> unable, unconscious, lethal;
  Mask<T> airway, airway_without_lifejacket;  // lost where the sea can reach the mouth
};
template <class T>
Past<T> past_limits(const Quantities<T>& values, const Levels<T>& levels) {
  const Mask<T> no = T(1) < T(0);
  Past<T> out{no, no, no, no, no};
  for (std::size_t i = 0; i < level_count; ++i) {
    const Mask<T> past = beyond(limits[i], values[limits[i].of], levels.by_limit[i]);
    const Meaning meaning = limits[i].meaning;
    if (meaning == Meaning::unable) out.unable = out.unable | past;
    if (meaning == Meaning::unconscious) out.unconscious = out.unconscious | past;
    if (meaning == Meaning::lethal) out.lethal = out.lethal | past;
    if (takes_airway(meaning, true)) out.airway = out.airway | past;
    if (takes_airway(meaning, false)) out.airway_without_lifejacket = out.airway_without_lifejacket | past;
  }
  return out;
}

}  // namespace bide::system
