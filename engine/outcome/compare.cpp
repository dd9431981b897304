#include "bide/outcome/compare.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "bide/constants/evidence.hpp"
#include "bide/core/units.hpp"

namespace bide::outcome {
namespace {

using timeline::PersonSeries;
using timeline::Timeline;

// Columns that hold means since the row before (and states, whose rows stand for the time before them).
double mean_over(const std::vector<double>& time_s, const std::vector<double>& values, const Window& window) {
  double sum = 0, weight_s = 0;
  for (std::size_t i = 1; i < time_s.size() && i < values.size(); ++i) {
    const double covered_s = std::min(time_s[i], window.to_s) - std::max(time_s[i - 1], window.from_s);
    if (covered_s <= 0) continue;
    sum += covered_s * values[i];
    weight_s += covered_s;
  }
  return weight_s > 0 ? sum / weight_s : 0;
}

// Sorted first, so that the order of the crew does not change the last bits.
double sum_of(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return std::accumulate(values.begin(), values.end(), 0.0);
}

// Mean over people of what `figure` reads off one.
template <class Figure>
double person_mean(const Timeline& timeline, Figure&& figure) {
  std::vector<double> values;
  for (const PersonSeries& person : timeline.persons) values.push_back(figure(person));
  return values.empty() ? 0 : sum_of(values) / static_cast<double>(values.size());
}
double person_mean(const Timeline& timeline, std::vector<double> PersonSeries::*column,
                   const Window& window) {
  return person_mean(timeline, [&](const PersonSeries& person) {
    return mean_over(timeline.time_s, person.*column, window);
  });
}

double first_death_s(const Timeline& timeline) {
  double at_s = timeline.horizon_s;
  for (const timeline::Fate& fate : timeline.fates) at_s = std::min(at_s, fate.alive_until_s.value_or(at_s));
  return at_s;
}

std::optional<Coldest> coldest_inside(const CabinOutcome& cabin, const Timeline& timeline) {
  if (!cabin.coldest_inside_degC) return std::nullopt;
  const Extreme& coldest = *cabin.coldest_inside_degC;
  const auto sun_W_m2 = value_at(timeline.time_s, timeline.irradiance_W_m2, coldest.time_s);
  return Coldest{coldest.value, coldest.time_s, !(sun_W_m2 > 0.0),
                 coldest.time_s < timeline.boarded_s + hour_s};
}

constexpr auto no_limit = system::Limit::none;

std::vector<int> first_persons(const std::vector<PersonEnd>& persons, const Endurance& crew) {
  std::vector<int> out;
  for (std::size_t i = 0; i < persons.size(); ++i) {
    const PersonEnd& person = persons[i];
    const bool first = crew.able.first_s
                           ? person.able_s == crew.able.first_s
                           : person.next_limit != no_limit && std::round(100 * person.next_margin_fraction) ==
                                                                  std::round(100 * crew.next_margin_fraction);
    if (first) out.push_back(static_cast<int>(i));
  }
  return out;
}

std::vector<PersonEnd> ends_of(const Outcome& outcome) {
  std::vector<PersonEnd> out;
  for (const PersonOutcome& person : outcome.persons)
    out.push_back({person.able.at_s, person.alive.at_s, person.able.limit, person.alive.limit,
                   person.next_limit, person.next_margin_fraction});
  return out;
}

}  // namespace

Ahead later(const std::optional<double>& first_s, double first_horizon_s,
            const std::optional<double>& second_s, double second_horizon_s) {
  // A time beyond the horizon is at least the horizon: enough to be ahead of a time, never to be behind one.
  const auto ahead = [](const std::optional<double>& a_s, double a_horizon_s,
                        const std::optional<double>& b_s) {
    return b_s && a_s.value_or(a_horizon_s) > *b_s * (1 + constants::times_apart_fraction) &&
           a_s.value_or(a_horizon_s) > *b_s + constants::times_apart_s;
  };
  if (ahead(first_s, first_horizon_s, second_s)) return Ahead::first;
  if (ahead(second_s, second_horizon_s, first_s)) return Ahead::second;
  return Ahead::indistinguishable;
}

Window common_window(const Timeline& first, const Timeline& second) {
  return {std::max(first.boarded_s, second.boarded_s), std::min(first_death_s(first), first_death_s(second))};
}

CabinHeat cabin_heat(const Timeline& t, const Window& window) {
  const auto mean = [&](const std::vector<double>& values) { return mean_over(t.time_s, values, window); };
  return {mean(t.inside_air_degC),
          mean(t.outside_air_degC),
          mean(t.cabin_from_bodies_W),
          mean(t.cabin_from_sun_W),
          mean(t.cabin_to_outside_through_canopy_W),
          mean(t.cabin_to_sea_W),
          mean(t.cabin_to_outside_by_air_W)};
}

std::optional<WarmerBecause> warmer_because(const CabinHeat& first, const CabinHeat& second) {
  const double excess1 = first.inside_degC - first.outside_degC,
               excess2 = second.inside_degC - second.outside_degC;
  const double q1 = first.canopy_W + first.air_W, q2 = second.canopy_W + second.air_W;
  const double least = constants::excess_for_conductance_K;
  if (excess1 < least || excess2 < least || q1 <= 0 || q2 <= 0) return std::nullopt;
  const double u1 = q1 / excess1, u2 = q2 / excess2;
  const double per_watt = 0.5 * (1 / u1 + 1 / u2), per_conductance = 0.5 * (q1 + q2) / (u1 * u2);
  WarmerBecause out;
  out.canopy_W_K = {first.canopy_W / excess1, second.canopy_W / excess2};
  out.air_W_K = {first.air_W / excess1, second.air_W / excess2};
  out.outside_K = second.outside_degC - first.outside_degC;
  out.bodies_K = per_watt * (second.bodies_W - first.bodies_W);
  out.sun_K = per_watt * (second.sun_W - first.sun_W);
  out.sea_K = -per_watt * (second.sea_W - first.sea_W);
  const auto rest_W = [](const CabinHeat& c) {
    return c.canopy_W + c.air_W + c.sea_W - c.bodies_W - c.sun_W;
  };
  out.rest_K = per_watt * (rest_W(second) - rest_W(first));
  out.canopy_K = -per_conductance * (out.canopy_W_K[1] - out.canopy_W_K[0]);
  out.air_K = -per_conductance * (out.air_W_K[1] - out.air_W_K[0]);
  return out;
}

BodyHeat body_heat(const Timeline& timeline, const Window& window) {
  const auto mean = [&](std::vector<double> PersonSeries::*column) {
    return person_mean(timeline, column, window);
  };
  return {mean(&PersonSeries::metabolic_W),
          mean(&PersonSeries::shivering_W),
          mean(&PersonSeries::heat_loss_air_W),
          mean(&PersonSeries::heat_loss_canopy_W),
          mean(&PersonSeries::heat_loss_floor_W),
          mean(&PersonSeries::heat_loss_water_W),
          mean(&PersonSeries::heat_loss_evaporation_W),
          mean(&PersonSeries::heat_loss_breath_W)};
}

WaterFlows water_flows(const Timeline& timeline, const Window& window) {
  WaterFlows out;
  const auto persons = static_cast<double>(timeline.persons.size());
  if (timeline.persons.empty()) return out;
  std::vector<double> drunk_L;
  for (const timeline::Event& event : timeline.events)
    if (event.kind == system::NoteKind::water_issued && event.time_s <= window.to_s)
      drunk_L.push_back(event.given);
  out.drunk_L = sum_of(drunk_L) / persons;
  const Window whole{0, window.to_s};
  out.sweat_L = person_mean(timeline, &PersonSeries::sweat_kg_h, whole) * window.to_s / hour_s;
  const auto at_the_end = [&](std::vector<double> PersonSeries::*column) {
    return person_mean(timeline, [&](const PersonSeries& person) {
      return value_at(timeline.time_s, person.*column, window.to_s).value_or(0);
    });
  };
  out.urine_L = at_the_end(&PersonSeries::urine_kg_total);
  out.deficit_pct = at_the_end(&PersonSeries::water_deficit_pct);
  return out;
}

Endurance endurance_of(const std::vector<PersonEnd>& persons) {
  Endurance out;
  std::vector<std::optional<double>> able_s, alive_s;
  for (const PersonEnd& person : persons) {
    able_s.push_back(person.able_s);
    alive_s.push_back(person.alive_s);
  }
  out.able = crew_times(std::move(able_s));
  out.alive = crew_times(std::move(alive_s));
  for (const PersonEnd& person : persons) {
    // Of several at one time, the limit that is listed first.
    if (person.able_s && person.able_s == out.able.first_s)
      out.able_limit = std::min(out.able_limit, person.able_limit);
    if (person.alive_s && person.alive_s == out.alive.first_s)
      out.alive_limit = std::min(out.alive_limit, person.alive_limit);
    if (person.next_limit != no_limit &&
        (out.next_limit == no_limit || person.next_margin_fraction < out.next_margin_fraction)) {
      out.next_limit = person.next_limit;
      out.next_margin_fraction = person.next_margin_fraction;
    }
  }
  out.first_persons = first_persons(persons, out);
  return out;
}

Figures figures_of(const Outcome& outcome, const Timeline& timeline) {
  Figures out;
  static_cast<Endurance&>(out) = endurance_of(ends_of(outcome));
  out.coldest_inside = coldest_inside(outcome.cabin, timeline);
  out.horizon_s = outcome.horizon_s;
  out.in_raft = timeline.in_raft;
  out.stores = outcome.stores;
  out.foul_air_h = outcome.cabin.co2_above_5000_ppm_h;
  out.highest_co2_ppm = outcome.cabin.highest_co2_ppm ? outcome.cabin.highest_co2_ppm->value : 0;
  bool any = false;
  for (const PersonOutcome& person : outcome.persons) {
    out.lowest_core_degC =
        any ? std::min(out.lowest_core_degC, person.lowest_core_degC) : person.lowest_core_degC;
    out.highest_core_degC =
        any ? std::max(out.highest_core_degC, person.highest_core_degC) : person.highest_core_degC;
    out.worst_water_deficit_pct = std::max(out.worst_water_deficit_pct, person.worst_water_deficit_pct);
    any = true;
  }
  out.able_evidence = outcome.able_evidence;
  out.alive_evidence = outcome.alive_evidence;
  return out;
}

Figures worse(const Figures& first, const Figures& second) {
  const auto earlier = [](const CrewTimes& a, const CrewTimes& b) {
    return b.first_s && (!a.first_s || *b.first_s < *a.first_s);
  };
  Figures out = first;
  if (earlier(first.able, second.able)) out.able_limit = second.able_limit;
  if (earlier(first.alive, second.alive)) out.alive_limit = second.alive_limit;
  if (second.next_limit != no_limit &&
      (first.next_limit == no_limit || second.next_margin_fraction < first.next_margin_fraction)) {
    out.next_limit = second.next_limit;
    out.next_margin_fraction = second.next_margin_fraction;
  }
  if (second.coldest_inside &&
      (!first.coldest_inside || second.coldest_inside->degC < first.coldest_inside->degC))
    out.coldest_inside = second.coldest_inside;
  out.lowest_core_degC = std::min(first.lowest_core_degC, second.lowest_core_degC);
  out.highest_core_degC = std::max(first.highest_core_degC, second.highest_core_degC);
  out.worst_water_deficit_pct = std::max(first.worst_water_deficit_pct, second.worst_water_deficit_pct);
  out.foul_air_h = std::max(first.foul_air_h, second.foul_air_h);
  out.highest_co2_ppm = std::max(first.highest_co2_ppm, second.highest_co2_ppm);
  return out;
}

}  // namespace bide::outcome
