// What is handed out, made, fired and burnt. Included by apply.hpp.
#pragma once

#include <algorithm>

#include "bide/body/thirst.hpp"
#include "bide/core/units.hpp"
#include "bide/stores/making.hpp"
#include "bide/stores/rationing.hpp"
#include "bide/system/apply_moment.hpp"

namespace bide::system {

template <class T>
void take_medicine(Moment<T>& m) {
  Held<T>& held = m.held();
  const auto wants = [&](std::size_t i) {
    const HeldPerson<T>& person = held.persons[i];
    return T(T(m.structure().medicine[i] ? 1 : 0) * person.living * person.conscious);
  };
  T wanted(0);
  for (std::size_t i = 0; i < held.persons.size(); ++i) wanted += wants(i);
  const T share = stores::dose_share(held.stock.medicine_doses, wanted);
  for (int p = 0; p < m.structure().persons; ++p) {
    const auto i = static_cast<std::size_t>(p);
    held.persons[i].medicine = wants(i) * share;
    const double taken = lane(held.persons[i].medicine, 0);
    if (taken > 0) m.note(NoteKind::medicine_taken, p, 1, taken);
  }
  held.stock.medicine_doses = positive_part(T(held.stock.medicine_doses - wanted));
}

// What was asked for was given, or was lacking.
template <class T>
void note_issue(Moment<T>& m, NoteKind whole, NoteKind lacking, int p, T asked_T, T given_T) {
  const double asked = lane(asked_T, 0), given = lane(given_T, 0);
  constexpr double nearly = 0.999;
  if (asked <= 0) return;
  m.note(given >= nearly * asked ? whole : lacking, p, asked, given);
}

// What people ask for, and what they leave of a ration because their blood is dilute: it stays in the stock.
// Who leaves some has water enough to eat.
template <class T>
void give_water(Moment<T>& m) {
  Held<T>& held = m.held();
  const Structure& s = m.structure();
  const T living = larger(people_living(m), T(1));
  auto& asked = m.system.scratch_asked();
  auto& given = m.system.scratch_given();
  auto& injured = m.system.scratch_injured();
  for (int p = 0; p < s.persons; ++p) {
    const auto i = static_cast<std::size_t>(p);
    HeldPerson<T>& person = held.persons[i];
    injured[i] = T(s.injured[i] ? 1 : 0);
    const T* x = m.person(p);
    const T osmolality = osmolality_mOsm_kg(m.build(p), x);
    const T thirst = m.build(p).size * body::thirst(felt_osmolality_mOsm_kg(m.build(p), x),
                                                    felt_deficit_pct(m.build(p), x), m.build(p).old_share);
    const T offered =
        person.living * person.conscious *
        stores::water_request_L(s.ration_plan, m.amounts().water_L_per_day, m.since_boarding_h(), thirst,
                                injured[i], held.stock.water_L, living);
    asked[i] = body::ration_drunk_L(offered, T(T(constants::gut_absorption_L_h) * thirst),
                                    T(osmolality * x[body::at::body_water]),
                                    T(x[body::at::body_water] + x[body::at::gut_water]));
    const T left = (offered - asked[i]) * held.stock.water_L;
    person.watered_at_s = select(left > T(0), T(m.stop.time_s), person.watered_at_s);
  }
  T all(0);
  for (const T& each : asked) all += each;
  const T opened = crew_can(m, Task::sachet, T(all * held.stock.water_L));
  for (T& each : asked) each *= opened;
  stores::serve(asked.data(), injured.data(), s.persons, s.ration_plan.injured_first, held.stock.water_L,
                given.data());
  held.stock.water_L =
      select(held.stock.water_L > T(constants::nothing_left_L.value), held.stock.water_L, T(0));
  for (int p = 0; p < s.persons; ++p) {
    const auto i = static_cast<std::size_t>(p);
    m.person(p)[body::at::gut_water] += given[i];
    held.persons[i].drunk_kg += given[i];
    held.persons[i].watered_at_s = select(given[i] > T(0), T(m.stop.time_s), held.persons[i].watered_at_s);
    note_issue(m, NoteKind::water_issued, NoteKind::water_lacking, p, asked[i], given[i]);
  }
}

template <class T>
void give_food(Moment<T>& m) {
  Held<T>& held = m.held();
  const Structure& s = m.structure();
  auto& asked = m.system.scratch_asked();
  auto& given = m.system.scratch_given();
  auto& injured = m.system.scratch_injured();
  for (int p = 0; p < s.persons; ++p) {
    const auto i = static_cast<std::size_t>(p);
    injured[i] = T(s.injured[i] ? 1 : 0);
  }
  for (int p = 0; p < s.persons; ++p) {
    const auto i = static_cast<std::size_t>(p);
    const HeldPerson<T>& person = held.persons[i];
    const T watered = select(person.watered_at_s > T(m.stop.time_s - day_s), T(1), T(0));
    asked[i] = person.living * person.conscious *
               stores::food_request_kJ(s.ration_plan, m.amounts().food_kJ_per_day, watered);
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
    const T salt_mOsm = T(2) * given[i] * T(s.gear.food.sodium_mmol_kJ);
    y[body::at::extracellular_osmoles] += salt_mOsm;
    held.persons[i].eaten_salt_mOsm += salt_mOsm;
    y[body::at::fasted] = select(given[i] > T(0), T(0), y[body::at::fasted]);
    held.persons[i].eaten_kJ += given[i];
    note_issue(m, NoteKind::food_issued, NoteKind::food_lacking, p, asked[i], given[i]);
  }
}

// The hour that ends now: desalinator at its turn of the day, still by the sun, rain by the canopy.
template <class T>
void make_water(Moment<T>& m) {
  Held<T>& held = m.held();
  const Structure& s = m.structure();
  const weather::Forcing<T> w = m.system.forcings().at(m.stop.time_s - 0.5 * hour_s);
  const T able = select(people_able(m) > T(0), T(1), T(0));
  T made(0);
  if (const double due = pumping_share(m.stop, s); due > 0) {
    // The pace is kept up for the hours of a day that fall to each.
    const T heat_W(stores::work_metabolic_W(s.gear.desalinator_work_W));
    T hands(0);
    for (int p = 0; p < s.persons; ++p) hands += can_do(m, p, Task::pump, heat_W);
    const Work<T> work{Task::pump, heat_W, T(s.desalinator_h_per_day * hour_s) / larger(hands, T(1)),
                       T(due * hour_s)};
    const T pumped =
        held.desalinator * crew_can(m, work.task, T(due * held.desalinator), heat_W) * given_by_all(m, work);
    made += stores::desalinated_L(T(due), T(s.gear.desalinator_L_h), pumped);
    share_work(m, work, T(T(due * hour_s) * pumped));
  }
  made += stores::still_L_s(w.global_irradiance_W_m2, T(s.gear.still_area_m2)) * T(hour_s) * able;
  T caught(0);
  if (s.catch_rain) {
    caught =
        stores::rain_caught_L(w.rain_kg_m2_s, T(hour_s), T(m.raft().catch_area_m2 + T(s.gear.vessel_area_m2)),
                              held.rain_since_spray_mm) *
        able;
    // Spray salts the canopy again whenever no rain falls.
    held.rain_since_spray_mm =
        select(w.rain_kg_m2_s > T(0), held.rain_since_spray_mm + w.rain_kg_m2_s * T(hour_s), T(0));
  }
  const T kept = stores::rain_stored_L(T(made + caught), held.stock.water_L,
                                       T(m.system.compiled().stock.water_L + T(s.gear.vessel_holds_L)),
                                       m.raft().capacity_persons);
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
  const T left = held.stock.rockets + held.stock.hand_flares;
  const T planned =
      m.amounts().flares_per_night * crew_can(m, Task::flare, T(m.amounts().flares_per_night * left));
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

}  // namespace bide::system
