// What a planner knows of people in distress, and the uncertain scenario that follows from it: what is not
// known is drawn from the stated priors (priors.hpp).
//
// Inputs: instants in s since 1970, a place at sea. Output: the tree of a scenario file that begins when the
// ship was abandoned and goes on beyond now, with what is known so far. Weather: of the month at the place
// (climate/month.hpp), another one in each future.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "bide/climate/climate.hpp"
#include "bide/scenario/crew_words.hpp"
#include "bide/scenario/document.hpp"

namespace bide::scenario {

struct Situation {
  std::string name;
  double now_unix_s = 0, abandoned_unix_s = 0;
  std::optional<double> last_contact_unix_s;  // all were alive then
  double ahead_h = 120;                       // followed beyond now
  climate::Point place{};
  std::optional<int> month;       // of the climate; empty: that of now
  std::vector<KnownPerson> crew;  // described people; empty: `persons` of whom nothing is known
  int persons = 0;
  std::optional<double> sea_degC, air_degC, wind_m_s;  // empty: from the climate
  std::optional<std::string> raft;                     // catalogue key, or "none"; empty: not known
  std::optional<std::string> clothing;                 // catalogue key; empty: not known
  std::optional<std::string> boarding;                 // dry, swim or float_free; empty: not known
  std::optional<FirstMinutes> lost_in_first_minutes;   // empty: not counted
};

struct SituationFile {
  Node document;
  Diagnostics cautions;  // on what was stated beside what the climate says
};
// @return the scenario; or what contradicts itself or lies out of range, each with the name of its flag as
//         the pointer
std::variant<SituationFile, Diagnostics> scenario_of(const Situation& situation);

}  // namespace bide::scenario
