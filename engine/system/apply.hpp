// The events themselves, one function each. Included by events.cpp only.
#pragma once

#include "body/water.hpp"
#include "cabin/bilge.hpp"
#include "cabin/clothing.hpp"
#include "cabin/co2.hpp"
#include "constants/open.hpp"
#include "constants/routine.hpp"
#include "stores/making.hpp"
#include "stores/rationing.hpp"
#include "system/clothing_heat.hpp"
#include "system/events.hpp"
#include "system/readings.hpp"

namespace bide::system {

// The moment an event sees.
template <class T>
struct Moment {
  const ScheduledStop& stop;
  System<T>& system;
  std::vector<T>& x;
  Notes notes;

  const Structure& structure() const { return system.compiled().structure; }
  const RaftBuild<T>& raft() const { return system.compiled().raft; }
  Held<T>& held() { return system.held; }
  T* person(int p) { return x.data() + person_offset(p); }
  const body::Build<T>& build(int p) const { return system.compiled().persons[static_cast<std::size_t>(p)]; }
  double since_boarding_h() const {
    constexpr double hour_s = 3600;
    return (stop.time_s - structure().boarding_s) / hour_s;
  }
  // Lanes leave no notes: whoever wants them replays the sample alone.
  void note(NoteKind kind, int p = -1, double asked = 0, double given = 0, int index = 0) {
    if (notes != nullptr) notes->push_back({stop.time_s, kind, p, index, asked, given});
  }
};

template <class T>
inline T people_able(Moment<T>& m) {
  T sum(0);
  for (const HeldPerson<T>& p : m.held().persons) sum += p.able * p.living;
  return sum;
}

template <class T>
inline T people_living(Moment<T>& m) {
  T sum(0);
  for (const HeldPerson<T>& p : m.held().persons) sum += p.living;
  return sum;
}

// The air inside becomes the air outside.
template <class T>
void replace_air(Moment<T>& m) {
  const weather::Forcing<T> w = m.system.forcings().at(m.stop.time_s);
  const T volume = m.raft().volume_m3;
  const T outside_co2(cabin::outdoor_co2_fraction);
  m.held().air_replaced_kg += volume * (w.vapour_density_kg_m3 - m.x[at::vapour]);
  m.held().co2_replaced_m3 += volume * (outside_co2 - m.x[at::co2]);
  m.x[at::vapour] = w.vapour_density_kg_m3;
  m.x[at::co2] = outside_co2;
  m.x[at::air] = w.air_temperature_degC;
}

// Water added to a person's clothing up to a wetness, at sea temperature: the cloth takes the mixed
// temperature.
template <class T>
void soak(Moment<T>& m, int p, T wetness, T sea_degC) {
  const body::Build<T>& b = m.build(p);
  T* y = m.person(p);
  for (int s = 0; s < body::segment_count; ++s) {
    T& water = y[body::at::clothing_water + s];
    const T target = larger(water, T(wetness * b.clothing_capacity_kg[s] * (T(1) - b.waterproof)));
    const T added = target - water;
    const T before = clothing_capacity_J_K(b, s, water), after = clothing_capacity_J_K(b, s, target);
    T& degC = y[body::at::node(s, body::clothing)];
    degC = sea_degC + (degC - sea_degC) * before / after;
    m.held().persons[static_cast<std::size_t>(p)].soaked_kg += added;
    water = target;
  }
}

// Water onto the floor at sea temperature.
template <class T>
void ship_water(Moment<T>& m, T added_kg, T sea_degC) {
  const T fabric = m.raft().floor_area_m2 * T(constants::floor_mass_kg_m2 * constants::cloth_heat_J_kgK);
  const T heat(constants::water_heat_capacity_J_kgK.value);
  const T before = fabric + heat * m.x[at::water_mass], after = before + heat * added_kg;
  m.x[at::floor_water] = sea_degC + (m.x[at::floor_water] - sea_degC) * before / after;
  m.x[at::water_mass] += added_kg;
  m.held().water_shipped_kg += added_kg;
}

template <class T>
void board(Moment<T>& m) {
  Held<T>& held = m.held();
  const T sea = m.system.forcings().at(m.stop.time_s).water_temperature_degC;
  held.afloat = T(1);
  held.enclosed = m.raft().has_canopy;
  for (HeldPerson<T>& p : held.persons) p.in_water = T(0);
  for (int p = 0; p < m.structure().persons; ++p) {
    soak(m, p, T(m.structure().wet_fraction), sea);
    held.persons[static_cast<std::size_t>(p)].wears_aid =
        T(m.structure().aid[static_cast<std::size_t>(p)] ? 1 : 0);
  }
  replace_air(m);
  m.x[at::canopy] = m.x[at::air];
  m.x[at::outer_skin] = m.x[at::air];
  m.x[at::floor_water] = sea;
  ship_water(m, T(m.structure().water_shipped_kg), sea);
  held.floor_inflated = T(m.structure().inflate_floor ? 1 : 0) * held.pump;
  m.note(NoteKind::boarded);
}

template <class T>
void fail(Moment<T>& m) {
  using scenario::FailureKind;
  Held<T>& held = m.held();
  const T sea = m.system.forcings().at(m.stop.time_s).water_temperature_degC;
  switch (m.structure().failures[static_cast<std::size_t>(m.stop.index)].kind) {
    case FailureKind::floor_not_inflated:
      held.floor_inflated = T(0), held.pump = T(0);
      break;
    case FailureKind::canopy_torn:
      held.extra_opening_m2 += T(constants::torn_canopy_opening_m2.value);
      break;
    case FailureKind::closure_lost:
      held.extra_opening_m2 += T(0.5) * m.raft().entrance_area_m2;
      break;
    case FailureKind::tube_leaking:
      held.tube_leak = T(1);
      break;
    case FailureKind::pump_lost:
      held.pump = T(0);
      break;
    case FailureKind::bailer_lost:
      held.bailer = T(0);
      break;
    case FailureKind::desalinator_lost:
      held.desalinator = T(0);
      break;
    case FailureKind::capsize:
      for (int p = 0; p < m.structure().persons; ++p) soak(m, p, T(1), sea);
      replace_air(m);
      ship_water(m, cabin::capsize_water_L(m.raft().floor_area_m2), sea);
      break;
  }
  m.note(NoteKind::failure, -1, 0, 0, m.stop.index);
}

// Openings: the routine's share of the entrances by day or night, never less than the minimum.
template <class T>
inline T routine_opening_m2(Moment<T>& m, bool day) {
  const RaftBuild<T>& r = m.raft();
  const T share = day ? r.opening_fraction_day : r.opening_fraction_night;
  return larger(T(share * r.entrance_area_m2), r.minimum_opening_m2);
}

template <class T>
void set_daylight(Moment<T>& m) {
  const bool day = m.stop.index == 1;
  m.held().daylight = day;
  m.held().opening_m2 = routine_opening_m2(m, day);
  m.note(day ? NoteKind::daylight : NoteKind::darkness);
}

template <class T>
void set_sleep(Moment<T>& m) {
  for (HeldPerson<T>& p : m.held().persons) p.asleep = T(m.stop.index == 1 ? 1 : 0) * p.conscious;
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
  m.note(NoteKind::clothes_wrung, -1, 0, lane(total, 0));
}

template <class T>
void take_medicine(Moment<T>& m) {
  Held<T>& held = m.held();
  for (int p = 0; p < m.structure().persons; ++p) {
    const auto i = static_cast<std::size_t>(p);
    HeldPerson<T>& person = held.persons[i];
    const T wants = T(m.structure().medicine[i] ? 1 : 0) * person.living * person.conscious;
    const T taken = wants * select(held.stock.medicine_doses >= T(1), T(1), T(0));
    held.stock.medicine_doses -= taken;
    person.medicine = taken;
    if (lane(taken, 0) > 0) m.note(NoteKind::medicine_taken, p, 1, 1);
  }
}

template <class T>
void issue(Moment<T>& m) {
  Held<T>& held = m.held();
  const Structure& s = m.structure();
  const T living = larger(people_living(m), T(1));
  auto& asked = m.system.scratch_asked();
  auto& given = m.system.scratch_given();
  auto& injured = m.system.scratch_injured();
  for (int p = 0; p < s.persons; ++p) {
    const auto i = static_cast<std::size_t>(p);
    const HeldPerson<T>& person = held.persons[i];
    injured[i] = T(s.injured[i] ? 1 : 0);
    const T thirst =
        body::thirst(osmolality_mOsm_kg(m.build(p), m.person(p)), water_deficit_pct(m.build(p), m.person(p)));
    asked[i] = person.living * person.conscious *
               stores::water_request_L(s.ration_plan, m.since_boarding_h(), thirst, injured[i],
                                       held.stock.water_L, living);
  }
  stores::serve(asked.data(), injured.data(), s.persons, s.ration_plan.injured_first, held.stock.water_L,
                given.data());
  held.stock.water_L =
      select(held.stock.water_L > T(constants::nothing_left_L.value), held.stock.water_L, T(0));
  for (int p = 0; p < s.persons; ++p) {
    const auto i = static_cast<std::size_t>(p);
    m.person(p)[body::at::gut_water] += given[i];
    held.persons[i].drunk_kg += given[i];
    held.persons[i].watered_at_s = select(given[i] > T(0), T(m.stop.time_s), held.persons[i].watered_at_s);
    if (lane(asked[i], 0) > 0) m.note(NoteKind::water_issued, p, lane(asked[i], 0), lane(given[i], 0));
  }
  constexpr double day_s = 86400;
  for (int p = 0; p < s.persons; ++p) {
    const auto i = static_cast<std::size_t>(p);
    const HeldPerson<T>& person = held.persons[i];
    const T watered = select(person.watered_at_s > T(m.stop.time_s - day_s), T(1), T(0));
    asked[i] = person.living * person.conscious * stores::food_request_kJ(s.ration_plan, watered);
  }
  stores::serve(asked.data(), injured.data(), s.persons, s.ration_plan.injured_first, held.stock.food_kJ,
                given.data());
  held.stock.food_kJ =
      select(held.stock.food_kJ > T(constants::nothing_left_kJ.value), held.stock.food_kJ, T(0));
  for (int p = 0; p < s.persons; ++p) {
    const auto i = static_cast<std::size_t>(p);
    T* y = m.person(p);
    y[body::at::gut_carbohydrate] += given[i] * T(s.gear.food.carbohydrate);
    y[body::at::gut_fat] += given[i] * T(s.gear.food.fat);
    y[body::at::gut_protein] += given[i] * T(s.gear.food.protein);
    y[body::at::extracellular_osmoles] += T(2) * given[i] * T(s.gear.food.sodium_mmol_kJ);
    y[body::at::fasted] = select(given[i] > T(0), T(0), y[body::at::fasted]);
    held.persons[i].eaten_kJ += given[i];
    if (lane(asked[i], 0) > 0) m.note(NoteKind::food_issued, p, lane(asked[i], 0), lane(given[i], 0));
  }
}

// Work, J, done by the able until the next check: spread evenly as power.
template <class T>
void share_work(Moment<T>& m, T work_J) {
  const T able = larger(people_able(m), T(1));
  const T each_W = work_J / (able * T(m.structure().check_interval_s));
  for (HeldPerson<T>& p : m.held().persons) p.labour_W += each_W * p.able * p.living;
}

// One turn by somebody who is able; its heat is spread over all who are, until the next check.
template <class T>
void bail(Moment<T>& m) {
  Held<T>& held = m.held();
  const stores::Gear& gear = m.structure().gear;
  const T hands = select(people_able(m) > T(0), T(1), T(0)) * held.bailer;
  const cabin::Bailed<T> turn =
      cabin::bail(m.x[at::water_mass], m.raft().floor_area_m2, T(T(gear.bailer_L) * hands),
                  T(T(gear.sponge_L) * hands), T(constants::bail_bout_min.value));
  const T out = m.x[at::water_mass] - turn.left_L;
  m.x[at::water_mass] = turn.left_L;
  held.water_bailed_kg += out;
  constexpr double s_per_min = 60;
  share_work(m, T(turn.work_W * turn.minutes * T(s_per_min)));
  if (lane(out, 0) > 0) m.note(NoteKind::bailed, -1, 0, lane(out, 0));
}

// The hour that ends now: desalinator at its turn of the day, still by the sun, rain by the canopy.
template <class T>
void make_water(Moment<T>& m) {
  Held<T>& held = m.held();
  const Structure& s = m.structure();
  constexpr double hour_s = 3600;
  const weather::Forcing<T> w = m.system.forcings().at(m.stop.time_s - 0.5 * hour_s);
  const T able = select(people_able(m) > T(0), T(1), T(0));
  T made(0);
  if (s.gear.desalinator) {
    // Hours of the day at the pump, from boarding on.
    const double due =
        std::min(1.0, std::max(0.0, s.desalinator_h_per_day - (m.stop.index % stores::whole_hours_per_day)));
    const auto spell = stores::desalinate(T(due), T(s.gear.desalinator_L_h), T(s.gear.desalinator_work_W),
                                          T(able * held.desalinator));
    made += spell.water_L;
    share_work(m, T(spell.metabolic_W * T(due * hour_s) * select(spell.water_L > T(0), T(1), T(0))));
  }
  made += stores::still_L_s(w.global_irradiance_W_m2, T(s.gear.still_area_m2)) * T(hour_s) * able;
  T caught(0);
  if (s.catch_rain) {
    caught =
        stores::rain_caught_L(w.rain_kg_m2_s, T(hour_s), m.raft().catch_area_m2, held.rain_since_spray_mm) *
        able;
    // Spray salts the canopy again whenever no rain falls.
    held.rain_since_spray_mm =
        select(w.rain_kg_m2_s > T(0), held.rain_since_spray_mm + w.rain_kg_m2_s * T(hour_s), T(0));
  }
  const T kept = stores::rain_stored_L(T(made + caught), held.stock.water_L,
                                       m.system.compiled().stock.water_L, m.raft().capacity_persons);
  held.stock.water_L += kept;
  held.water_made_L += kept;
  if (lane(kept, 0) > 0)
    m.note(lane(caught, 0) > 0 ? NoteKind::rain_caught : NoteKind::water_made, -1, lane(T(made + caught), 0),
           lane(kept, 0));
}

template <class T>
void fire_signals(Moment<T>& m) {
  if (m.stop.index != 1) return;
  Held<T>& held = m.held();
  const T able = select(people_able(m) > T(0), T(1), T(0));
  const T planned = able * T(m.structure().flares_per_night);
  const T rockets = smaller(planned, held.stock.rockets),
          flares = smaller(T(planned - rockets), held.stock.hand_flares);
  held.stock.rockets -= rockets;
  held.stock.hand_flares -= flares;
  if (lane(rockets + flares, 0) > 0)
    m.note(NoteKind::flare_fired, -1, lane(planned, 0), lane(T(rockets + flares), 0));
}

// The hour that ends now: the beacon runs always, lamps in the dark.
template <class T>
void burn_lights(Moment<T>& m) {
  Held<T>& held = m.held();
  held.stock.beacon_h = positive_part(T(held.stock.beacon_h - T(1)));
  if (!held.daylight) held.stock.lamp_h = positive_part(T(held.stock.lamp_h - T(1)));
}

// Foul air and heat open the entrances wholly; they go back to the routine once CO2 has fallen to half and
// the inside has cooled a little.
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
  const T before = held.opened_for_air;
  held.opened_for_air = select(bad > T(0), T(1), T(before * (T(1) - good)));
  const T routine = routine_opening_m2(m, held.daylight);
  held.opening_m2 = routine + (r.entrance_area_m2 - routine) * held.opened_for_air;
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

// Conditions of one person.
template <class T>
void check_person(Moment<T>& m, int p) {
  HeldPerson<T>& h = m.held().persons[static_cast<std::size_t>(p)];
  const LimitValues<T>& l = m.system.compiled().limits;
  const body::Build<T>& b = m.build(p);
  const T* y = m.person(p);
  const T core = core_degC(y), deficit = water_deficit_pct(b, y), osmolality = osmolality_mOsm_kg(b, y);
  const T co2 = m.x[at::co2];
  const T lost_protein = T(1) - y[body::at::protein_mass] / b.protein_kg;
  const auto dead = (core < l.lethal_core_low_degC) | (core > l.lethal_core_high_degC) |
                    (deficit > l.lethal_water_deficit_pct) | (osmolality > l.lethal_osmolality_mOsm_kg) |
                    (co2 > l.lethal_co2_fraction) | (lost_protein > l.lethal_protein_fraction_used);
  const auto out_cold = core < l.unconscious_core_degC;
  const T no_jacket = T(1) - b.has_lifejacket;
  const auto drowned = out_cold & (h.in_water * no_jacket > T(0));
  const T was_living = h.living, was_conscious = h.conscious, was_able = h.able;
  h.living *= select(dead | drowned, T(0), T(1));
  h.conscious = h.living * select(out_cold, T(0), T(1));
  const auto unable = (h.conscious < T(0.5)) | (core < l.able_core_low_degC) |
                      (core > l.able_core_high_degC) | (deficit > l.able_water_deficit_pct) |
                      (co2 > l.able_co2_fraction);
  h.able = select(unable, T(0), T(1));
  if (lane(h.able, 0) < lane(was_able, 0)) m.note(NoteKind::unable, p);
  if (lane(h.able, 0) > lane(was_able, 0)) m.note(NoteKind::able_again, p);
  if (lane(h.conscious, 0) < lane(was_conscious, 0) && lane(h.living, 0) > 0)
    m.note(NoteKind::unconscious, p);
  if (lane(h.living, 0) < lane(was_living, 0)) m.note(NoteKind::died, p);
}

template <class T>
void check(Moment<T>& m) {
  for (HeldPerson<T>& p : m.held().persons) p.labour_W = T(0);
  for (int p = 0; p < m.structure().persons; ++p) check_person(m, p);
  if (!m.structure().has_raft || m.stop.time_s < m.structure().boarding_s) return;
  air_rule(m);
  damp_clothes(m);
}

}  // namespace bide::system
