#include "bide/system/schedule.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

#include "bide/constants/routine.hpp"
#include "bide/core/units.hpp"

namespace bide::system {

namespace {

using Stops = std::vector<ScheduledStop>;

void every(Stops& stops, StopKind kind, double first_s, double interval_s, double end_s) {
  if (interval_s <= 0) return;
  int index = 0;
  for (double t = first_s; t <= end_s && stops.size() <= most_time_events; t = first_s + interval_s * ++index)
    stops.push_back({t, kind, index});
}

// Times at which a condition that holds on `index` 1 begins and ends, on a grid of ten minutes.
template <class Condition>
void changes(Stops& stops, StopKind kind, double end_s, Condition&& holds) {
  constexpr double grid_s = 600;
  bool before = holds(0.0);
  if (before || kind == StopKind::daylight) stops.push_back({0, kind, before ? 1 : 0});
  for (double t = grid_s; t <= end_s; t += grid_s) {
    const bool now = holds(t);
    if (now != before) stops.push_back({t, kind, now ? 1 : 0});
    before = now;
  }
}

void aboard_routine(Structure& s, const scenario::ValidScenario& v, const weather::Record& weather,
                    Stops& stops) {
  const scenario::Routine& routine = v.scenario.routine;
  changes(stops, StopKind::daylight, s.end_s, [&](double t) { return weather.is_day(t); });
  const double sleep_h = routine.sleep_h_per_night;
  if (sleep_h > 0)
    changes(stops, StopKind::sleep, s.end_s, [&](double t) {
      const double since = std::fmod(weather.local_solar_hour(t) - constants::bedtime_h.value + 24, 24.0);
      return since < sleep_h && t >= s.boarding_s;
    });
  if (s.wring) stops.push_back({s.boarding_s + constants::wring_after_h.value * hour_s, StopKind::wring, 0});
  every(stops, StopKind::medicine, s.boarding_s + constants::medicine_after_h.value * hour_s,
        constants::medicine_interval_h.value * hour_s, s.end_s);
  if (s.ration_plan.rule == scenario::RationingRule::by_thirst)
    every(stops, StopKind::drink, s.boarding_s + hour_s, hour_s, s.end_s);
  every(stops, StopKind::issue, s.boarding_s + day_s / s.ration_plan.issues_per_day,
        day_s / s.ration_plan.issues_per_day, s.end_s);
  every(stops, StopKind::bail, s.boarding_s + hour_s * routine.bail_every_h, s.bail_interval_s, s.end_s);
  every(stops, StopKind::make_water, s.boarding_s + hour_s, hour_s, s.end_s);
  every(stops, StopKind::lights, s.boarding_s + hour_s, hour_s, s.end_s);
  if (routine.flares_per_night > 0)
    changes(stops, StopKind::signal, s.end_s, [&](double t) {
      return std::floor(weather.local_solar_hour(t)) == constants::signal_hour_h.value;
    });
}

// Work begins at the check that follows, or is at the same time.
void mark_hard(const Structure& s, Stops& sorted) {
  bool work_waits = false;
  for (ScheduledStop& stop : sorted) {
    switch (stop.kind) {
      case StopKind::failure:
      case StopKind::board:
      case StopKind::daylight:
      case StopKind::wring:
        stop.hard = true;
        break;
      case StopKind::bail:
        work_waits = true;
        break;
      case StopKind::make_water:
        work_waits = work_waits || pumping_share(stop, s) > 0;
        break;
      case StopKind::check:
        stop.hard = std::exchange(work_waits, false);
        break;
      default:
        break;
    }
  }
}

}  // namespace

double pumping_share(const ScheduledStop& stop, const Structure& structure) {
  if (!structure.gear.desalinator) return 0;
  // Hours of the day at the pump, from boarding on.
  const int hour = stop.index % static_cast<int>(day_h);
  return std::clamp(structure.desalinator_h_per_day - hour, 0.0, 1.0);
}

bool changes_surroundings(StopKind kind) {
  return kind == StopKind::board || kind == StopKind::failure;
}

Structure make_structure(const scenario::ValidScenario& v, const weather::Record& weather) {
  const scenario::Scenario& in = v.scenario;
  Structure s;
  s.persons = static_cast<int>(in.crew.size());
  s.has_raft = in.raft.has_value();
  s.end_s = in.duration_h * hour_s;
  s.output_interval_s = in.output_interval_min * 60;
  s.check_interval_s = constants::check_interval_s.value;
  s.starts_in_water = in.boarding.kind != scenario::BoardingKind::dry;
  s.boarding_s = !s.has_raft ? s.end_s : s.starts_in_water ? in.boarding.minutes_in_water * 60 : 0;
  s.failures = in.failures;
  s.gear = stores::gear_of(v);
  s.one_skin_sun =
      cabin::canopy_sun(s.has_raft ? scenario::CanopyKind::one_skin : scenario::CanopyKind::none);
  s.two_skin_sun =
      cabin::canopy_sun(s.has_raft ? scenario::CanopyKind::two_skins : scenario::CanopyKind::none);
  Stops& stops = s.stops;
  for (std::size_t i = 0; i < in.failures.size(); ++i)
    stops.push_back({in.failures[i].at_h * hour_s, StopKind::failure, static_cast<int>(i)});
  if (s.has_raft) {
    const scenario::Rationing& rationing = in.rationing;
    const scenario::Routine& routine = in.routine;
    s.ration_plan = {rationing.rule, rationing.spread_days.value_or(0), rationing.issues_per_day,
                     rationing.injured_first, rationing.food_only_with_water};
    s.bail_interval_s = routine.bail_every_h * hour_s;
    s.desalinator_h_per_day = routine.desalinator_h_per_day;
    s.catch_rain = routine.catch_rain;
    s.wring = routine.wring_clothes;
    s.damp_in_heat = routine.damp_clothes_in_heat;
    s.inflate_floor = routine.inflate_floor;
    s.huddle = routine.huddle;
    if (s.boarding_s > 0) stops.push_back({s.boarding_s, StopKind::board, 0});
    aboard_routine(s, v, weather, stops);
  }
  every(stops, StopKind::check, 0, s.check_interval_s, s.end_s);
  if (stops.back().time_s < s.end_s) stops.push_back({s.end_s, StopKind::check, 0});  // who dies last counts
  for (const double knot : weather.knots_s()) stops.push_back({knot, StopKind::knot, 0});
  std::erase_if(stops, [&](const ScheduledStop& stop) { return stop.time_s > s.end_s; });
  std::sort(stops.begin(), stops.end(), [](const ScheduledStop& a, const ScheduledStop& b) {
    return std::tie(a.time_s, a.kind, a.index) < std::tie(b.time_s, b.kind, b.index);
  });
  mark_hard(s, stops);
  return s;
}

}  // namespace bide::system
