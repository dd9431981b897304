// Getting aboard, and what breaks. Included by apply.hpp.
#pragma once

#include "bide/cabin/bilge.hpp"
#include "bide/cabin/co2.hpp"
#include "bide/constants/open.hpp"
#include "bide/system/apply_people.hpp"

namespace bide::system {

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
  for (HeldPerson<T>& p : held.persons) p.in_water = p.airway_open_to_sea = T(0);
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

}  // namespace bide::system
