// Getting aboard, and what breaks. Included by apply.hpp.
#pragma once

#include "bide/cabin/bilge.hpp"
#include "bide/cabin/co2.hpp"
#include "bide/constants/open.hpp"
#include "bide/system/apply_people.hpp"

namespace bide::system {

// The air inside becomes the air outside.
// @param share of it that does, [0, 1]
template <class T>
void replace_air(Moment<T>& m, T share = T(1)) {
  const weather::Forcing<T> w = m.system.forcings().at(m.stop.time_s);
  const T volume = m.raft().volume_m3;
  const T outside_co2(cabin::outdoor_co2_fraction), kept = T(1) - share;
  m.held().air_replaced_kg += volume * share * (w.vapour_density_kg_m3 - m.x[at::vapour]);
  m.held().co2_replaced_m3 += volume * share * (outside_co2 - m.x[at::co2]);
  m.x[at::vapour] = share * w.vapour_density_kg_m3 + kept * m.x[at::vapour];
  m.x[at::co2] = share * outside_co2 + kept * m.x[at::co2];
  m.x[at::air] = share * w.air_temperature_degC + kept * m.x[at::air];
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
  // Until now the sea was at their mouths: who has drowned does not come aboard alive.
  for (int p = 0; p < m.structure().persons; ++p) check_person(m, p);
  held.afloat = T(1);
  held.enclosed = m.raft().has_canopy;
  // The dead stay in the sea, and take no part in the cabin.
  for (HeldPerson<T>& p : held.persons) {
    p.in_water = p.left_behind = T(1) - p.living;
    p.airway_open_to_sea = T(0);
  }
  for (int p = 0; p < m.structure().persons; ++p) {
    soak(m, p, m.amounts().wet_fraction, sea);
    held.persons[static_cast<std::size_t>(p)].wears_aid =
        T(m.structure().aid[static_cast<std::size_t>(p)] ? 1 : 0);
  }
  replace_air(m);
  m.x[at::canopy] = m.x[at::air];
  m.x[at::outer_skin] = m.x[at::air];
  m.x[at::floor_water] = sea;
  ship_water(m, m.amounts().water_shipped_kg, sea);
  held.floor_inflated = T(0);
  inflate_floor(m);
  m.note(NoteKind::boarded);
}

// 1 where the sea is as high as a failure needs, else 0.
template <class T>
T happens(Moment<T>& m, const scenario::Failure& failure) {
  if (!failure.in_waves_from_m) return T(1);
  const T height_m = m.system.forcings().at(m.stop.time_s).wave_height_m;
  return select(height_m < T(*failure.in_waves_from_m), T(0), T(1));
}

template <class T>
void fail(Moment<T>& m) {
  using scenario::FailureKind;
  Held<T>& held = m.held();
  const scenario::Failure& failure = m.structure().failures[static_cast<std::size_t>(m.stop.index)];
  const T sea = m.system.forcings().at(m.stop.time_s).water_temperature_degC;
  const T so = happens(m, failure), left = T(1) - so;
  switch (failure.kind) {
    case FailureKind::floor_not_inflated:
      held.floor_inflated *= left, held.pump *= left;
      break;
    case FailureKind::canopy_torn:
      held.extra_opening_m2 += so * T(constants::torn_canopy_opening_m2.value);
      break;
    case FailureKind::closure_lost:
      held.extra_opening_m2 += so * T(0.5) * m.raft().entrance_area_m2;
      break;
    case FailureKind::tube_leaking:
      held.tube_leak = larger(held.tube_leak, so);
      break;
    case FailureKind::pump_lost:
      held.pump *= left;
      break;
    case FailureKind::bailer_lost:
      held.bailer *= left;
      break;
    case FailureKind::desalinator_lost:
      held.desalinator *= left;
      break;
    case FailureKind::lamp_dead:
      held.stock.lamp_h *= left;
      break;
    case FailureKind::capsize:
      for (int p = 0; p < m.structure().persons; ++p) soak(m, p, so, sea);
      replace_air(m, so);
      ship_water(m, T(so * cabin::capsize_water_L(m.raft().floor_area_m2)), sea);
      break;
  }
  if (lane(so, 0) > 0) m.note(NoteKind::failure, -1, 0, 0, m.stop.index);
}

}  // namespace bide::system
