// When something can change: every stop of a run, in order, fixed before it starts.
//
// States: none. Inputs: the scenario's routine, rationing, boarding and failures, and the sun. Order of stops
// at one time: by kind as listed, then by index (file order). Source: none, bookkeeping.
#pragma once

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
  issue,  // water and food handed out
  bail,
  make_water,  // desalinator, still and rain of the hours before
  signal,
  lights,  // lamps and beacons burn
  check,   // conditions of people, air rule
  knot     // a sample of the weather file: nothing changes but the slope of the forcing
};

struct ScheduledStop {
  double time_s;
  StopKind kind;
  int index;
  bool operator==(const ScheduledStop&) const = default;
};

// True where the coefficients jump, so that the steps after it must be graded.
bool is_hard(StopKind kind);

// What all lanes share: two runs march in lock step when these are equal.
struct Structure {
  int persons = 0;
  bool has_raft = true;
  bool starts_in_water = false;
  double boarding_s = 0;  // 0: aboard from the start
  double end_s = 0;
  double output_interval_s = 0;
  double check_interval_s = 0;
  stores::RationPlan ration_plan;
  double bail_interval_s = 0;
  double desalinator_h_per_day = 0;
  bool catch_rain = true, wring = true, damp_in_heat = false, inflate_floor = true, huddle = true;
  std::vector<scenario::Failure> failures;
  std::vector<bool> injured, lifejacket, aid, medicine;
  stores::Gear gear;
  cabin::CanopySun one_skin_sun, two_skin_sun;
  double aid_m2K_W = 0;              // what a protective aid adds
  std::vector<ScheduledStop> stops;  // sorted
  bool operator==(const Structure&) const = default;
};

Structure make_structure(const scenario::ValidScenario& scenario, const weather::Record& weather);

}  // namespace bide::system
