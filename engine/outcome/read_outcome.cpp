#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "bide/constants/evidence.hpp"
#include "bide/core/units.hpp"
#include "bide/outcome/outcome.hpp"
#include "bide/system/conditions.hpp"

namespace bide::outcome {
namespace {

using timeline::PersonSeries;
using timeline::Timeline;

double or_else(const std::optional<Extreme>& extreme, double otherwise) {
  return extreme ? extreme->value : otherwise;
}

// Mean of what was around the person until then: water of those who reach no raft, air inside of the others.
constants::Conditions conditions_until(const Timeline& timeline, const scenario::Person& person,
                                       constants::Dress dress, double until_s) {
  using constants::Medium;
  constants::Conditions at;
  at.medium = timeline.in_raft ? Medium::air : Medium::water;
  at.dress = dress;
  at.fat_pct = person.body_fat_pct;
  at.age_years = person.age_years;
  const auto& degC = timeline.in_raft ? timeline.inside_air_degC : timeline.sea_degC;
  double sum_degC = 0;
  int count = 0;
  for (std::size_t i = 0; i < degC.size() && timeline.time_s[i] <= until_s; ++i)
    if (std::isfinite(degC[i])) sum_degC += degC[i], ++count;
  if (count > 0) at.degC = sum_degC / count;
  return at;
}

Facts facts_until(const Timeline& timeline, const PersonSeries& series, const scenario::Person& person,
                  constants::Dress dress, bool under_canopy, double until_s) {
  const auto& t = timeline.time_s;
  Facts facts;
  facts.hours = until_s / hour_s;
  facts.at = conditions_until(timeline, person, dress, until_s);
  facts.in_raft = timeline.in_raft;
  facts.under_canopy = under_canopy;
  facts.age_years = person.age_years;
  facts.female = person.sex == scenario::Sex::female;
  facts.injured = person.injured || person.fever_K > 0;
  facts.blood_alcohol_mg_dL = person.blood_alcohol_mg_dL;
  facts.lowest_core_degC = or_else(lowest(t, series.core_degC, until_s), facts.lowest_core_degC);
  facts.highest_core_degC = or_else(highest(t, series.core_degC, until_s), facts.highest_core_degC);
  facts.shivering_h = hours_above(t, series.shivering_W, constants::shivering_counted_W, until_s);
  facts.wet_clothing_h =
      hours_above(t, series.clothing_water_kg, constants::wet_clothing_counted_kg, until_s);
  facts.cold_fingers_h = hours_below(t, series.finger_degC, constants::finger_curve_degC, until_s);
  facts.worst_deficit_pct = or_else(highest(t, series.water_deficit_pct, until_s), 0);
  facts.worst_osmolality_mOsm_kg = or_else(highest(t, series.osmolality_mOsm_kg, until_s), 0);
  facts.hottest_inside_degC =
      or_else(highest(t, timeline.inside_air_degC, until_s, timeline.boarded_s), facts.hottest_inside_degC);
  return facts;
}

PersonOutcome read_person(const Timeline& timeline, std::size_t i, const scenario::Person& person,
                          constants::Dress dress, bool under_canopy) {
  const PersonSeries& series = timeline.persons[i];
  const timeline::Fate& fate = timeline.fates[i];
  const auto& t = timeline.time_s;
  const double able_s = fate.able_until_s.value_or(timeline.horizon_s);
  const double alive_s = fate.alive_until_s.value_or(timeline.horizon_s);

  PersonOutcome out;
  static_cast<PersonFigures&>(out) =
      person_figures(t,
                     {series.core_degC, series.finger_degC, series.water_deficit_pct,
                      series.osmolality_mOsm_kg, series.shivering_W, series.task_ability},
                     fate, timeline.horizon_s);
  out.able.at_s = fate.able_until_s, out.able.limit = fate.able_cause;
  out.alive.at_s = fate.alive_until_s, out.alive.limit = fate.alive_cause;
  out.unconscious_s = fate.unconscious_s;
  out.injuries = fate.injuries;
  out.next_limit = fate.next_cause;
  out.next_margin_fraction = fate.nearest_margin_fraction;

  Facts facts = facts_until(timeline, series, person, dress, under_canopy, able_s);
  out.hands_evidence = judge(topic_hands, facts, timeline.flags);
  facts.cause = out.able.limit;
  out.able.evidence = judge(topic_able, facts, timeline.flags);
  out.able_h = able_s / hour_s;

  facts = facts_until(timeline, series, person, dress, under_canopy, alive_s);
  facts.cause = out.alive.limit;
  out.alive.evidence = judge(topic_alive, facts, timeline.flags);
  out.urine_kg = value_at(t, series.urine_kg_total, alive_s).value_or(0);
  return out;
}

struct StoreColumn {
  Store store;
  const char* name;
  const char* unit;
  std::vector<double> Timeline::*values;
};
constexpr StoreColumn store_columns[] = {
    {Store::water, "water", "L", &Timeline::water_L},
    {Store::food, "food", "kJ", &Timeline::food_kJ},
    {Store::seasickness_medicine, "seasickness medicine", "doses", &Timeline::medicine_doses},
    {Store::flares, "flares", "", &Timeline::flares},
    {Store::lamp, "lamp", "h", &Timeline::lamp_h},
    {Store::beacon, "beacon", "h", &Timeline::beacon_h},
};

std::vector<StoreOutcome> read_stores(const Timeline& timeline) {
  std::vector<StoreOutcome> stores;
  for (const StoreColumn& each : store_columns)
    stores.push_back(
        {store_figures(timeline.time_s, timeline.*each.values), each.store, each.name, each.unit});
  return stores;
}

CabinOutcome read_cabin(const Timeline& timeline, bool under_canopy, double until_s) {
  const auto& t = timeline.time_s;
  CabinOutcome cabin;
  if (!timeline.in_raft) return cabin;
  static_cast<CabinFigures&>(cabin) =
      cabin_figures(t, {timeline.inside_air_degC, timeline.co2_ppm}, timeline.boarded_s, until_s);
  if (const auto total_L = value_at(t, timeline.condensate_L_total, until_s); total_L && until_s > 0) {
    cabin.condensate_L_day = (*total_L - timeline.condensate_L_total.front()) / until_s * day_s;
  }
  Facts facts;
  facts.hours = until_s / hour_s;
  facts.under_canopy = under_canopy;
  cabin.temperature_evidence = judge(topic_cabin, facts, timeline.flags);
  cabin.co2_evidence = judge(topic_co2, facts, timeline.flags);
  cabin.condensate_evidence = judge(topic_condensate, facts, timeline.flags);
  return cabin;
}

bool has_canopy(const scenario::ValidScenario& scenario) {
  const auto& raft = scenario.scenario.raft;
  return raft && raft->canopy != scenario::CanopyKind::none;
}

}  // namespace

const StoreOutcome* store_of(const std::vector<StoreOutcome>& stores, Store store) {
  const auto found = std::find_if(stores.begin(), stores.end(),
                                  [store](const StoreOutcome& each) { return each.store == store; });
  return found == stores.end() ? nullptr : &*found;
}

Outcome read_outcome(const timeline::Timeline& timeline, const scenario::ValidScenario& scenario) {
  const auto& crew = scenario.scenario.crew;
  if (timeline.persons.size() != crew.size() || timeline.fates.size() != crew.size()) {
    throw std::logic_error("the timeline holds other persons than the scenario");
  }
  const bool under_canopy = has_canopy(scenario);
  Outcome outcome;
  outcome.horizon_s = timeline.horizon_s;

  std::vector<std::optional<double>> able_s, alive_s;
  std::vector<Evidence> able, alive, hands, thirst;
  for (std::size_t i = 0; i < crew.size(); ++i) {
    const constants::Dress dress = system::dress_of(*scenario.ensembles[i]);
    outcome.persons.push_back(read_person(timeline, i, crew[i], dress, under_canopy));
    const PersonOutcome& person = outcome.persons.back();
    able_s.push_back(person.able.at_s);
    alive_s.push_back(person.alive.at_s);
    able.push_back(person.able.evidence);
    alive.push_back(person.alive.evidence);
    hands.push_back(person.hands_evidence);
    const double until_s = person.alive.at_s.value_or(timeline.horizon_s);
    thirst.push_back(judge(topic_thirst,
                           facts_until(timeline, timeline.persons[i], crew[i], dress, under_canopy, until_s),
                           timeline.flags));
    if (outcome.driest_person < 0 ||
        person.worst_water_deficit_pct >
            outcome.persons[static_cast<std::size_t>(outcome.driest_person)].worst_water_deficit_pct) {
      outcome.driest_person = static_cast<int>(i);
    }
  }
  outcome.able = crew_times(able_s);
  outcome.alive = crew_times(alive_s);
  outcome.able_evidence = merge(able);
  outcome.alive_evidence = merge(alive);
  outcome.hands_evidence = merge(hands);
  outcome.thirst_evidence = merge(thirst);

  outcome.watched_s = outcome.alive.last_s.value_or(timeline.horizon_s);
  outcome.cabin = read_cabin(timeline, under_canopy, outcome.watched_s);
  outcome.stores = read_stores(timeline);
  outcome.signals.flares = timeline.flares.empty() ? 0 : timeline.flares.back();
  outcome.signals.lamp_h = timeline.lamp_h.empty() ? 0 : timeline.lamp_h.back();
  outcome.signals.beacon_h = timeline.beacon_h.empty() ? 0 : timeline.beacon_h.back();
  return outcome;
}

}  // namespace bide::outcome
