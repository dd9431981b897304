// The members of System<T>. Included by the files that instantiate it, one scalar type per file.
#pragma once

#include "bide/system/system.hpp"

#include <algorithm>

#include "bide/constants/seasickness.hpp"
#include "bide/core/units.hpp"
#include "bide/system/freeze_cabin.hpp"
#include "bide/system/freeze_person.hpp"
#include "bide/system/settle.hpp"
#include "bide/system/slopes.hpp"
#include "bide/system/slow.hpp"

namespace bide::system {

template <class T>
System<T>::System(const Compiled<T>& compiled, const Forcings<T>& forcings)
    : compiled_(&compiled), forcings_(&forcings) {
  const auto persons = static_cast<std::size_t>(compiled.structure.persons);
  held.persons.resize(persons);
  coefficients_.persons.resize(persons);
  factor_.persons.resize(persons);
  asked_.resize(persons), given_.resize(persons), injured_.resize(persons);
  blocks_.push_back({0, at::implicit_count, at::total_from_bodies, at::count});
  for (int p = 0; p < compiled.structure.persons; ++p) {
    const auto begin = static_cast<std::size_t>(person_offset(p));
    blocks_.push_back(
        {begin, begin + body::at::thermal_count, begin + body::at::total_metabolic, begin + body::at::count});
    const auto index = static_cast<std::size_t>(p);
    set_tissue(compiled.persons[index], coefficients_.persons[index]);
  }
}

template <class T>
std::vector<T> System<T>::start() {
  const Structure& s = compiled_->structure;
  const weather::Forcing<T> w = forcings_->at(0);
  const bool in_water = s.starts_in_water;
  held.stock = compiled_->stock;
  held.enclosed = in_water ? T(0) : compiled_->raft.has_canopy;
  held.afloat = T(in_water ? 0 : 1);
  held.huddled = T(s.huddle ? 1 : 0);
  held.pump = T(s.gear.pump ? 1 : 0);
  held.bailer = T(1);
  held.floor_inflated = T(s.inflate_floor ? 1 : 0);
  held.opening_m2 = compiled_->raft.minimum_opening_m2;

  std::vector<T> x(size(), T(0));
  x[at::air] = x[at::canopy] = x[at::outer_skin] = w.air_temperature_degC;
  x[at::floor_water] = w.water_temperature_degC;
  x[at::vapour] = w.vapour_density_kg_m3;
  x[at::co2] = T(cabin::outdoor_co2_fraction);
  if (!in_water) x[at::water_mass] = compiled_->amounts.water_shipped_kg;
  const T rhythm = body::core_rhythm_K(compiled_->raft.rhythm, 0);
  for (int p = 0; p < s.persons; ++p) {
    const auto i = static_cast<std::size_t>(p);
    const body::Build<T>& b = compiled_->persons[i];
    T* y = x.data() + person_offset(p);
    namespace at = body::at;
    for (int seg = 0; seg < body::segment_count; ++seg) {
      for (int l = 0; l < body::tissue_count; ++l) y[at::node(seg, l)] = b.setpoint_degC[seg][l];
      // Worn until now: half-way between skin and air.
      y[at::node(seg, body::clothing)] = T(0.5) * (b.setpoint_degC[seg][body::skin] + w.air_temperature_degC);
      y[at::clothing_water + seg] = (in_water ? T(1) : compiled_->amounts.wet_fraction) *
                                    b.clothing_capacity_kg[seg] * (T(1) - b.waterproof);
    }
    const T above = b.starting_core_excess_K + rhythm + b.fever_K;
    y[at::node(body::trunk, body::core)] += above;
    y[at::node(body::head, body::core)] += above;
    y[at::blood] = b.blood_setpoint_degC + above;
    y[at::finger] = b.finger_setpoint_degC;
    y[at::body_water] = b.body_water_kg - b.starting_deficit_kg;
    y[at::gut_water] = b.starting_gut_water_kg;
    y[at::extracellular_osmoles] = b.extracellular_osmoles_mOsm - b.starting_salt_lost_mOsm;
    y[at::urea] = T(0.5) * T(constants::normal_glucose_and_urea_mOsm_kg.value) * b.body_water_kg;
    y[at::glycogen] = b.glycogen_kJ;
    y[at::fat_mass] = b.fat_kg;
    y[at::protein_mass] = b.protein_kg;
    y[at::gut_carbohydrate] = b.starting_gut_carbohydrate_kJ;
    y[at::gut_fat] = b.starting_gut_fat_kJ;
    y[at::gut_protein] = b.starting_gut_protein_kJ;
    y[at::alcohol] = b.alcohol_mg_dL;
    y[at::fasted] = b.fasted_s;
    // Already sick: the dose at which the law of doses is at its end.
    const T most = T(pct * constants::vomiting_greatest / constants::vomiting_per_dose);
    y[at::motion_dose] = b.already_sick * most * most;
    held.persons[i].in_water = T(in_water ? 1 : 0);
    held.persons[i].wears_aid = T(!in_water && s.aid[i] ? 1 : 0);
  }
  return x;
}

template <class T>
void System<T>::freeze(double t_s, const std::vector<T>& x) {
  const weather::Forcing<T> w = forcings_->at(t_s);
  CabinCoefficients<T>& c = coefficients_.cabin;
  Surroundings<T> around;
  freeze_cabin(*compiled_, held, w, x.data(), c, around);
  around.core_rhythm_K = body::core_rhythm_K(compiled_->raft.rhythm, t_s);
  around.time_s = T(t_s);
  c.breath_dry_W = c.breath_water_kg_s = c.co2_made_m3_s = T(0);
  for (int p = 0; p < compiled_->structure.persons; ++p) {
    body::PersonCoefficients<T>& person = coefficients_.persons[static_cast<std::size_t>(p)];
    freeze_person(*compiled_, p, held, around, w.pressure_Pa, x.data() + person_offset(p), person);
    c.breath_dry_W += person.breath_dry_W;
    c.breath_water_kg_s += person.breath_water_kg_s;
    c.co2_made_m3_s += person.co2_m3_s;
  }
}

template <class T>
void System<T>::factor(double a_s) {
  system::factor(coefficients_, a_s, factor_);
}

template <class T>
void System<T>::stage(const std::vector<T>& y, std::vector<T>& u) {
  solve_stage(coefficients_, factor_, y.data(), u.data());
}

template <class T>
void System<T>::slow(const std::vector<T>& mean, std::vector<T>& k) {
  FromPerson<T> people{T(0), T(0), T(0)};
  const T persons = T(static_cast<double>(compiled_->structure.persons)) - people_left_behind(held);
  const T fog_each = fog_kg_s(coefficients_.cabin, mean.data()) * coefficients_.cabin.fog_on_people_share /
                     larger(persons, T(1));
  for (int p = 0; p < compiled_->structure.persons; ++p) {
    const auto i = static_cast<std::size_t>(p);
    const T fog = fog_each * (T(1) - held.persons[i].left_behind);
    const FromPerson<T> one = slow_person(coefficients_.persons[i], mean.data(), fog,
                                          mean.data() + person_offset(p), k.data() + person_offset(p));
    people.heat_W += one.heat_W;
    people.evaporated_kg_s += one.evaporated_kg_s;
    people.drained_kg_s += one.drained_kg_s;
  }
  slow_cabin(coefficients_.cabin, people, mean.data(), k.data());
}

template <class T>
void System<T>::settle(double length_s, const std::vector<T>& mean_slopes, std::vector<T>& x,
                       std::vector<T>& end_slopes, std::vector<T>& ahead) {
  StepEnd<T> end{length_s, mean_slopes, x, end_slopes, ahead};
  system::settle(coefficients_, held, end);
}

template <class T>
void System<T>::slope(double t_s, const std::vector<T>& x, std::vector<T>& k) {
  freeze(t_s, x);
  implicit_slopes(coefficients_, x.data(), k.data());
  slow(x, k);
  for (int p = 0; p < compiled_->structure.persons; ++p) {
    T* of_person = k.data() + person_offset(p);
    k[at::water_mass] +=
        run_off_kg(of_person, T(1), held.persons[static_cast<std::size_t>(p)].in_water, of_person);
  }
}

}  // namespace bide::system
