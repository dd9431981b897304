// The limits of scenario/limits.hpp at work: what they look at, the levels in force, and who is past one.
//
// States: none. Inputs: what is read off a person and the air, and the levels in force. Read by the check
// aboard, the watch inside steps, fates, margins, causes in words and marks on pages: whoever asks whether a
// limit is passed asks beyond(), so all give one answer.
#pragma once

#include <array>
#include <cstddef>

#include "bide/constants/fuel.hpp"
#include "bide/scenario/limits.hpp"
#include "bide/system/readings.hpp"

namespace bide::system {

using scenario::ByPerson;
using scenario::ends;
using scenario::level_count;
using scenario::Limit;
using scenario::LimitRow;
using scenario::limits;
using scenario::Meaning;
using scenario::quantities;
using scenario::QuantityRow;
using scenario::Side;
namespace quantity = scenario::quantity;

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
          y[body::at::total_frozen],
          y[body::at::total_face]};
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
    level = scenario::own_core_level(limits[i].by_person, level, person.core_limit_shift_K, person.fever_K);
    if (limits[i].by_person == ByPerson::lean)
      level = smaller(level, T(T(constants::lethal_fat_share_of_start.value) * person.fat_kg));
  }
  return out;
}

// @param value, level what the limit looks at, and where it ends something, in the unit of its quantity
template <class T>
Mask<T> beyond(const LimitRow& row, const T& value, const T& level) {
  return row.side == Side::above ? value > level : value < level;
}

// Share of the way from normal to a level that is left: 1 at the normal value, 0 at the level, below 0 past
// it. Of fat, in which people differ, what the person had at the start counts as normal.
// @param level      where the limit ends something, in the unit of its quantity
// @param start, now what the limit looks at, of one person, at the start and now
template <class T>
T margin_left(const LimitRow& limit, const T& level, const T& start, const T& now) {
  const T normal = limit.of == quantity::fat ? start : T(quantities[limit.of].normal);
  return (now - level) / (normal - level);
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
