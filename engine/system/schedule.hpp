// The schedule: every time event of a run, in order, fixed before it starts.
//
// States: none. Inputs: the scenario's routine, rationing, boarding and failures, and the sun. Order of time
// events at one time: by kind as listed, then by index (file order). Source: none, bookkeeping.
#pragma once

#include <cstddef>
#include <vector>

#include "bide/cabin/envelope.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/stores/inventory.hpp"
#include "bide/stores/rationing.hpp"
#include "bide/weather/weather.hpp"

namespace bide::system {

enum class StopKind {
  failure,   // index: of the scenario's list
  board,     // from the water into the raft
  daylight,  // sunrise or sunset: openings; index 1 by day, 0 by night
  sleep,     // index 1 falls asleep, 0 wakes
  wring,
  medicine,
  drink,  // by thirst, where that is the rule
  issue,  // food handed out, and water by any other rule
  bail,
  make_water,  // desalinator, still and rain of the hours before
  signal,
  lights,  // lamps and beacons burn
  check,   // conditions of people, air rule
  knot     // a row of the weather file: only the slope of the forcing changes
};

// A time event.
struct ScheduledStop {
  double time_s;  // since the scenario's start
  StopKind kind;
  int index;          // meaning depends on the kind, see there; else the number of the event among its kind
  bool hard = false;  // the coefficients jump, so that graded steps must follow
  bool operator==(const ScheduledStop&) const = default;
};

// What all lanes share: two runs can march in lock step when their structures are equal.
struct Structure {
  int persons = 0;
  bool has_raft = true;
  bool starts_in_water = false;
  double boarding_s = 0;         // 0: aboard from the start; end_s without a raft
  double end_s = 0;              // end of the run, above 0
  double output_interval_s = 0;  // above 0
  double check_interval_s = 0;
  stores::RationPlan ration_plan;
  double bail_interval_s = 0;
  double desalinator_h_per_day = 0;
  bool catch_rain = true, wring = true, damp_in_heat = false, inflate_floor = true, huddle = true;
  std::vector<scenario::Failure> failures;
  std::vector<bool> injured, aid, medicine;  // by person, as in Compiled::persons
  stores::Gear gear;
  cabin::CanopySun one_skin_sun, two_skin_sun;
  double aid_m2K_W = 0;              // resistance that a protective aid adds
  std::vector<ScheduledStop> stops;  // sorted
  bool operator==(const Structure&) const = default;
};

// Whether people come into other surroundings: out of the water, or into it.
bool changes_surroundings(StopKind kind);

// Share of the hour that ends at a time event of the kind make_water that is spent at the pump.
// @return [0, 1]
double pumping_share(const ScheduledStop& stop, const Structure& structure);

// Of one run. The keys of a scenario come to 110,000 at most (60 days, a row a minute, all chores), so that
// only weather files with many rows reach it. No kind of time event is scheduled beyond it, and make_ready()
// refuses plans that have more.
inline constexpr std::size_t most_time_events = 250000;

// Makes the structure of a scenario, but what is told by person.
// @param scenario a validated scenario
// @param weather  of this scenario: for the sun and the rows of its file
Structure make_structure(const scenario::ValidScenario& scenario, const weather::Record& weather);

}  // namespace bide::system
