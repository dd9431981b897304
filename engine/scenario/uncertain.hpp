// What is not known about a scenario: the optional object "uncertain" of its file.
//
// States: none. Inputs: read with the scenario (validate.hpp). A single run uses the values as written and
// leaves this aside; a study draws from it (study/sampler.hpp).
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "bide/scenario/readiness.hpp"

namespace bide::scenario {

// Members whose keys the user chooses, in file order.
template <class T>
struct Named {
  std::vector<std::pair<std::string, T>> entries;

  bool operator==(const Named&) const = default;
};

// One draw for several inputs.
struct SharedInput {
  std::string name;
  std::vector<std::string> pointers;
  Distribution distribution;

  bool operator==(const SharedInput&) const = default;
};

// Correlation of the normal scores of two inputs (Gaussian copula).
struct Together {
  std::string first, second;  // pointers of inputs, or names of groups
  double correlation = 0;

  bool operator==(const Together&) const = default;
};

// One of several possible situations, of which exactly one holds.
struct Alternative {
  std::string name;
  double weight = 1;
  Named<Value> set;

  bool operator==(const Alternative&) const = default;
};

enum class FailureKind;

// A failure that may happen, at an hour that is drawn and then rounded to a whole one.
struct UncertainFailure {
  FailureKind failure{};
  double probability = 0;
  Distribution at_h;
  std::optional<double> in_waves_from_m = {};

  bool operator==(const UncertainFailure&) const = default;
};

// Share of those who enter the water that is lost in its first minutes: drawn evenly from the range once for
// a future; then each of them is lost or not. The user's statement, for nobody has published such a share.
struct FirstMinutes {
  double low = 0, high = 0;

  bool operator==(const FirstMinutes&) const = default;
};

enum class UnknownPart { height, mass, fat };

// What is not known of one person, drawn from the population of their sex and age.
struct UnknownPerson {
  std::string pointer;               // "/crew/0"
  std::vector<UnknownPart> unknown;  // empty: all of it

  bool operator==(const UnknownPerson&) const = default;
};

enum class RescueKind { fixed, lognormal, weibull, empirical, none };

// Weather above which help cannot work, as the user states it; at the limit it still can.
struct HeldBackAbove {
  std::optional<double> wind_speed_m_s;  // at 10 m
  std::optional<double> wave_height_m;   // significant

  bool operator==(const HeldBackAbove&) const = default;
};

// When help arrives, in hours after the start; where weather holds it back, in hours of weather it can work
// in (study/help.hpp).
struct Rescue {
  RescueKind kind = RescueKind::none;
  std::optional<double> at_h;                    // fixed
  std::optional<double> median_h, geometric_sd;  // lognormal
  std::optional<double> scale_h, shape;          // weibull
  std::vector<double> hours;                     // empirical
  std::optional<HeldBackAbove> held_back_above;  // all but none

  bool operator==(const Rescue&) const = default;
};

// Facts at the last contact.
struct Known {
  std::optional<double> alive_at_h, now_h;

  bool operator==(const Known&) const = default;
};

struct Uncertain {
  Named<Distribution> inputs;  // by JSON pointer
  std::vector<SharedInput> groups;
  std::vector<Together> together;
  std::vector<Alternative> alternatives;
  std::vector<UncertainFailure> events;
  std::optional<RaftChances> readiness;
  std::optional<Launch> launch;
  std::optional<FirstMinutes> lost_in_first_minutes;
  bool crew_unknown = false;
  std::vector<UnknownPerson> unknown_persons;
  bool person_spread = false;  // the published spread from person to person
  bool weather = false;        // another variable weather for each sample
  bool unmeasured = false;     // canopy heat loss, leakage, the law of shivering, the model's error
  std::optional<Rescue> rescue;
  std::optional<Known> known;

  bool operator==(const Uncertain&) const = default;
};

}  // namespace bide::scenario
