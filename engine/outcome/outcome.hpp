// The answer, read off a timeline: until when able, until when alive, what ends it, and what runs out.
//
// States: none. Inputs: a timeline and the scenario it came from. Output: numbers with their evidence; no
// words. Validity: figures read from columns (extremes, hours) see output times
// only; the times in `able_until_s` and `alive_until_s` were located inside steps by the march.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bide/outcome/evidence.hpp"
#include "bide/outcome/figures.hpp"
#include "bide/scenario/validate.hpp"

namespace bide::outcome {

// A time since the start; empty: not reached within the horizon.
struct Until {
  std::optional<double> at_s;
  system::Limit limit = system::Limit::none;  // none when not reached
  Evidence evidence;
};

struct PersonOutcome : PersonFigures {
  Until able, alive;
  std::optional<double> unconscious_s;
  system::Limit next_limit = system::Limit::none;  // the nearest limit not yet reached
  double next_margin_fraction = 0;                 // of the margin to it, what is left
  double able_h = 0;                               // hours able, up to the horizon
  Evidence hands_evidence;
  std::vector<timeline::Injury> injuries;  // of the cold, possible from a time on, while alive
  double urine_kg = 0;                     // while alive
};

enum class Store { water, food, seasickness_medicine, flares, lamp, beacon };
struct StoreOutcome : StoreFigures {
  Store store = Store::water;
  std::string name, unit;  // as printed
};
// Null: no such store is kept.
const StoreOutcome* store_of(const std::vector<StoreOutcome>& stores, Store store);

struct SignalsLeft {
  double flares = 0, lamp_h = 0, beacon_h = 0;  // at the horizon
};

struct CabinOutcome : CabinFigures {
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
