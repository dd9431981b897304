// A new scenario from a few facts: who, in what raft, where and when. What nobody said is left to the
// defaults.
//
// Inputs: keys of the catalogue, a place at sea and a month with its climate. Output: the tree of a scenario
// file, which validation has yet to see. Start: noon UTC on the 15th of the month in an invented year, unless
// it is given.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bide/scenario/catalogue.hpp"
#include "bide/scenario/crew_words.hpp"
#include "bide/scenario/month_weather.hpp"

namespace bide::scenario {

struct NewScenario {
  std::string name;
  std::vector<KnownPerson> crew;
  std::string clothing, raft, pack, boarding;  // keys; boarding: dry, swim, float_free
  climate::Point place{};
  std::string place_words;
  int month = 1;                       // 1 to 12
  std::optional<double> start_unix_s;  // in place of the middle of the month
  double duration_h = 0;
  WeatherKind weather = WeatherKind::variable;  // or constant
  StatedWeather stated = {};
  std::optional<climate::Month> climate = {};  // empty: `stated` has all
};
Node new_scenario(const NewScenario& facts);

// The smallest raft of the catalogue with an inflated floor that holds these people; null when none does.
const RaftKind* usual_raft(int persons);

// Men and women in turn, of usual size, all 40 years old.
std::vector<KnownPerson> usual_crew(int persons);

}  // namespace bide::scenario
