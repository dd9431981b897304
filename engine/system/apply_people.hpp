// Conditions of people, the openings, and the chores of the day. Included by apply.hpp.
#pragma once

#include "bide/cabin/bilge.hpp"
#include "bide/cabin/clothing.hpp"
#include "bide/constants/limits.hpp"
#include "bide/constants/routine.hpp"
#include "bide/core/units.hpp"
#include "bide/system/apply_moment.hpp"

namespace bide::system {

// Openings: the routine's share of the entrances by day or night, never less than the minimum.
template <class T>
inline T routine_opening_m2(Moment<T>& m, bool day) {
  const RaftBuild<T>& r = m.raft();
  const T share = day ? r.opening_fraction_day : r.opening_fraction_night;
  return larger(T(share * r.entrance_area_m2), r.minimum_opening_m2);
}

// The routine's opening, or the whole entrance while it is held open for air; as it was, where no hand can
// change it.
// @param due above 0: it is now to be changed, so that cold hands are noted
template <class T>
void set_opening(Moment<T>& m, T due) {
  Held<T>& held = m.held();
  const T routine = routine_opening_m2(m, held.daylight);
  const T wanted = routine + (m.raft().entrance_area_m2 - routine) * held.opened_for_air;
  const T can = crew_can(m, Task::entrance, T(due * abs(wanted - held.opening_m2)));
  held.opening_m2 += (wanted - held.opening_m2) * can;
}

template <class T>
void set_daylight(Moment<T>& m) {
  const bool day = m.stop.index == 1;
  m.held().daylight = day;
  set_opening(m, T(1));
  m.note(day ? NoteKind::daylight : NoteKind::darkness);
}

template <class T>
void set_sleep(Moment<T>& m) {
  for (HeldPerson<T>& p : m.held().persons) {
    p.depth_at_turn = sleep_depth(p, T(m.stop.time_s));
    p.turned_at_s = T(m.stop.time_s);
    p.asleep = T(m.stop.index == 1 ? 1 : 0) * p.conscious;
  }
  m.note(m.stop.index == 1 ? NoteKind::fell_asleep : NoteKind::woke);
}

template <class T>
void wring(Moment<T>& m) {
  T total(0);
  for (int p = 0; p < m.structure().persons; ++p) {
    HeldPerson<T>& person = m.held().persons[static_cast<std::size_t>(p)];
    for (int s = 0; s < body::segment_count; ++s) {
      T& water = m.person(p)[body::at::clothing_water + s];
      const T kept = cabin::wrung_water_kg(water, m.build(p).clothing_capacity_kg[s]);
      const T out = (water - kept) * person.able;
      water -= out;
      person.wrung_kg += out;
      total += out;
    }
  }
  if (lane(total, 0) > 0) m.note(NoteKind::clothes_wrung, -1, 0, lane(total, 0));
}

// With the pump, where the routine has it and a hand can; tried again with every turn of bailing.
template <class T>
void inflate_floor(Moment<T>& m) {
  Held<T>& held = m.held();
  const T due = T(m.structure().inflate_floor ? 1 : 0) * held.pump * (T(1) - held.floor_inflated);
  held.floor_inflated += due * crew_can(m, Task::pump, due);
}

// One turn of one person's, shared by those who can; what they cannot keep up, or are too busy for, is not
// bailed.
template <class T>
void bail(Moment<T>& m) {
  Held<T>& held = m.held();
  const stores::Gear& gear = m.structure().gear;
  inflate_floor(m);
  const T turn_min(constants::bail_bout_min.value), turn_s(turn_min * T(minute_s));
  const Work<T> work{Task::bailer, T(constants::bail_work_W.value), turn_s, turn_s};
  const T hands = crew_can(m, work.task, m.x[at::water_mass], work.heat_W) * held.bailer;
  const cabin::Bailed<T> turn =
      cabin::bail(m.x[at::water_mass], m.raft().floor_area_m2, T(T(gear.bailer_L) * hands),
                  T(T(gear.sponge_L) * hands), T(turn_min * given_by_all(m, work)));
  const T out = m.x[at::water_mass] - turn.left_L;
  m.x[at::water_mass] = turn.left_L;
  held.water_bailed_kg += out;
  share_work(m, work, T(turn.minutes * T(minute_s)));
  if (lane(out, 0) > 0) m.note(NoteKind::bailed, -1, 0, lane(out, 0));
}

// Foul air and heat open the entrances wholly, for an hour at least; then they go back to the routine once
// CO2 has fallen to half and the inside has cooled a little. In an hour the air inside forgets what it was,
// so that near the threshold two runs that differ by little stay together.
template <class T>
void air_rule(Moment<T>& m) {
  Held<T>& held = m.held();
  const RaftBuild<T>& r = m.raft();
  const T able = select(people_able(m) > T(0), T(1), T(0)) * held.enclosed;
  const T inside = m.x[at::air], co2 = m.x[at::co2];
  const T bad = select((co2 > r.open_above_co2_fraction) | (inside > r.open_above_degC), T(1), T(0)) * able;
  const T good = select((co2 < T(0.5) * r.open_above_co2_fraction) &
                            (inside < r.open_above_degC - T(constants::heat_rule_span_K.value)),
                        T(1), T(0));
  const T long_enough =
      select(T(m.stop.time_s) - held.opened_at_s < T(constants::open_for_air_least_s.value), T(0), T(1));
  const T before = held.opened_for_air;
  held.opened_for_air = select(bad > T(0), T(1), T(before * (T(1) - good * long_enough)));
  held.opened_at_s = select(held.opened_for_air > before, T(m.stop.time_s), held.opened_at_s);
  set_opening(m, T(abs(held.opened_for_air - before)));
  if (lane(held.opened_for_air, 0) > lane(before, 0)) m.note(NoteKind::opened_for_air);
  if (lane(held.opened_for_air, 0) < lane(before, 0)) m.note(NoteKind::closed_again);
}

// By day, in heat, clothes are kept damp with sea water where the routine says so.
template <class T>
void damp_clothes(Moment<T>& m) {
  if (!m.structure().damp_in_heat || !m.held().daylight) return;
  const T hot = select(m.x[at::air] > T(constants::damp_above_degC.value), T(1), T(0));
  const T sea = m.system.forcings().at(m.stop.time_s).water_temperature_degC;
  for (int p = 0; p < m.structure().persons; ++p)
    soak(m, p, T(hot * T(constants::damp_wetness.value) * m.held().persons[static_cast<std::size_t>(p)].able),
         sea);
}

// Conditions of one person. An airway that was open since the last check counts too: whoever passed out
// meanwhile, or could no longer swim without a lifejacket, has drowned.
template <class T>
void check_person(Moment<T>& m, int p) {
  HeldPerson<T>& h = m.held().persons[static_cast<std::size_t>(p)];
  const body::Build<T>& b = m.build(p);
  const Past<T> past =
      past_limits(quantities_of(b, m.person(p), m.x[at::co2]), levels_of(m.system.compiled().limits, b));
  const T waves = m.system.forcings().at(m.stop.time_s).wave_height_m;
  const T washed = select(waves > T(constants::airway_wave_height_m.value), T(1), T(0));
  const T was_open = h.airway_open_to_sea;
  h.airway_open_to_sea = h.in_water * larger(T(T(1) - b.has_lifejacket), washed);
  const auto sinks = past.airway | (past.airway_without_lifejacket & (b.has_lifejacket < T(0.5)));
  const auto drowned = sinks & (larger(was_open, h.airway_open_to_sea) > T(0));
  const T was_living = h.living, was_conscious = h.conscious, was_able = h.able;
  h.living *= select(past.lethal | drowned | (b.lost > T(0.5)), T(0), T(1));
  h.conscious = h.living * select(past.unconscious, T(0), T(1));
  h.able = select(past.unable | (h.conscious < T(0.5)), T(0), T(1));
  if (lane(h.able, 0) < lane(was_able, 0)) m.note(NoteKind::unable, p);
  if (lane(h.able, 0) > lane(was_able, 0)) m.note(NoteKind::able_again, p);
  if (lane(h.conscious, 0) < lane(was_conscious, 0) && lane(h.living, 0) > 0)
    m.note(NoteKind::unconscious, p);
  if (lane(h.living, 0) < lane(was_living, 0)) m.note(NoteKind::died, p);
}

template <class T>
void check(Moment<T>& m) {
  for (int p = 0; p < m.structure().persons; ++p) check_person(m, p), set_labour(m, p);
  if (!m.structure().has_raft || m.stop.time_s < m.structure().boarding_s) return;
  air_rule(m);
  damp_clothes(m);
}

}  // namespace bide::system
