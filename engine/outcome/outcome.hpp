// The answer, read off a timeline: until when able, until when alive, what ends it, and what runs out.
//
// States: none. Inputs: a timeline and the scenario it came from. Output: numbers with their evidence; no
// words but the short names of causes. Validity: figures read from columns (extremes, hours) see output times
// only; the times in `able_until_s` and `alive_until_s` were located inside steps by the march.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bide/outcome/evidence.hpp"
#include "bide/outcome/measures.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/timeline/series.hpp"

namespace bide::outcome {

// A time since the start; empty: not reached within the horizon.
struct Until {
  std::optional<double> at_s;
  std::string limit;  // as in timeline::Crossing; empty when not reached
  Evidence evidence;
};

struct PersonOutcome {
  Until able, alive;
  std::optional<double> unconscious_s;
  std::string next_limit;           // the nearest limit not yet reached
  double next_margin_fraction = 0;  // of the way to it that is left
  // While able:
  double hands_h = 0;  // hours in which a hand task is possible
  double able_h = 0;   // hours able, up to the horizon
  Evidence hands_evidence;
  // While alive:
  double lowest_core_degC = 0, highest_core_degC = 0, lowest_finger_degC = 0;
  double worst_water_deficit_pct = 0, worst_osmolality_mOsm_kg = 0;
  double shivering_h = 0;
  double urine_kg = 0;
};

enum class StoreState { none_aboard, runs_out, lasts };
struct StoreOutcome {
  std::string store;
  StoreState state = StoreState::none_aboard;
  double at_s = 0;  // when it runs out
  double at_start = 0, left = 0;
  std::string unit;
};

struct SignalsLeft {
  double flares = 0, lamp_h = 0, beacon_h = 0;  // at the horizon
};

struct CabinOutcome {
  std::optional<Extreme> coldest_inside_degC, warmest_inside_degC;
  double co2_above_5000_ppm_h = 0, co2_above_15000_ppm_h = 0, co2_above_30000_ppm_h = 0;
  std::optional<Extreme> highest_co2_ppm;
  std::optional<double> condensate_L_day;
  Evidence temperature_evidence, co2_evidence, condensate_evidence;
};

struct Outcome {
  std::vector<PersonOutcome> persons;
  CrewTimes able, alive;
  Evidence able_evidence, alive_evidence, hands_evidence, thirst_evidence;
  int driest_person = -1;  // index; -1 without persons
  std::vector<StoreOutcome> stores;
  SignalsLeft signals;
  CabinOutcome cabin;
  double watched_s = 0;  // figures of the cabin stop when the last person dies, or at the horizon
  double horizon_s = 0;
};

Outcome read_outcome(const timeline::Timeline& timeline, const scenario::ValidScenario& scenario);

}  // namespace bide::outcome
