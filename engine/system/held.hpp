// The discrete states: constant between two time events and changed by these alone. Conditions of people, the
// state of the raft, the stores, and the books of what events moved in and out.
//
// States: these, kept apart from the integrated vector. Inputs: events. Flags are numbers 0 or 1 of the
// scalar type, so that lanes can differ. Source: none, bookkeeping.
#pragma once

#include <array>
#include <vector>

#include "bide/constants/control.hpp"
#include "bide/core/scalar.hpp"
#include "bide/core/units.hpp"
#include "bide/stores/inventory.hpp"

namespace bide::system {

inline constexpr double never_s = -1e9;  // long before any run

template <class T>
struct HeldPerson {
  T living{1}, conscious{1}, able{1}, asleep{0};
  T depth_at_turn{0}, turned_at_s{never_s};  // of sleep, when it last began or ended
  T in_water{0};                             // immersed to the neck
  T left_behind{0};                          // dead in the water, and there when the rest are aboard
  T airway_open_to_sea{0};  // in the water, without a lifejacket or in waves that wash over it
  T wears_aid{0};           // thermal protective aid
  T labour_W{0};            // heat of work beyond sitting still
  T work_left_J{0};         // to be done from the next check on
  T work_pace_W{0};         // above rest, of the work taken on last
  T medicine{0};            // fraction of seasickness prevented now
  T watered_at_s{never_s};  // last time water was given
  // Books of events
  T drunk_kg{0}, eaten_kJ{0}, eaten_salt_mOsm{0}, soaked_kg{0}, wrung_kg{0};
};

// How far heat made has sunk to that of sleep, or has not yet risen from it: neither jumps.
// @param time_s since the start, s
// @return 0 awake to 1 asleep
template <class T>
inline T sleep_depth(const HeldPerson<T>& p, T time_s) {
  const T since = positive_part(T(time_s - p.turned_at_s));
  return p.asleep + (p.depth_at_turn - p.asleep) * exp(-since * T(1 / (constants::sleep_depth_h * hour_s)));
}

template <class T>
struct Held {
  std::vector<HeldPerson<T>> persons;
  T enclosed{1};  // 0: no canopy stands between people and the weather
  T afloat{1};    // 0: in the water, no raft around
  T opening_m2{0};
  T extra_opening_m2{0};  // a torn canopy or a lost closure
  T floor_inflated{1};    // 0: the insulating floor is flat
  T tube_leak{0};
  T bailer{1}, pump{1}, desalinator{1};
  T huddled{1};
  T opened_for_air{0};  // the air rule holds the entrances open
  T opened_at_s{never_s};
  T rain_since_spray_mm{0};
  T water_made_L{0};
  bool daylight = true;  // of the routine; the same in every lane
  stores::Stock<T> stock{};
  // Books of events
  T water_shipped_kg{0}, water_bailed_kg{0}, air_replaced_kg{0}, co2_replaced_m3{0};
};

// How many the others have left behind.
template <class T>
inline T people_left_behind(const Held<T>& held) {
  T sum(0);
  for (const HeldPerson<T>& p : held.persons) sum += p.left_behind;
  return sum;
}

}  // namespace bide::system
