// What is assumed of people, boats and sea of which nothing is known.
//
// The numbers are data, scenarios/catalogue/priors.json, compiled in; each entry carries its source or its
// mark. Each also carries the question that would replace it by knowledge.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "bide/scenario/scenario.hpp"

namespace bide::scenario {

struct Prior {
  std::string key, title, source;
  std::string ask;                           // the question that settles it
  std::vector<std::string> inputs;           // pointers; "*" stands for each person
  bool shared = false;                       // one draw for all persons
  std::optional<Distribution> distribution;  // empty: drawn by a rule of its own
};

// Rafts of the catalogue whose keys are this and the capacity.
struct RaftFamily {
  std::string key, title, source;
  double weight = 0;
};

// Medians at one age.
struct Growth {
  double age_years = 0, height_male_m = 0, mass_male_kg = 0, height_female_m = 0, mass_female_kg = 0;
};

struct Priors {
  std::vector<Prior> priors;
  std::vector<RaftFamily> rafts;
  std::vector<double> sizes;  // weights of the smallest raft that holds the crew, the next larger one...
  std::vector<Alternative> boarding;
  std::string growth_source;
  std::vector<Growth> growth;  // youngest first
};

const Priors& priors();
// Throws std::logic_error for a key that is not there.
const Prior& prior(std::string_view key);

// The rafts that may be theirs, with weights: of each family the smallest that holds the crew and the next
// larger ones; the largest where none holds it.
// @param persons at least 1
Distribution raft_prior(int persons);

// Size of a person of whom only sex and age are known: the median of the growth charts below 20 years (below
// 1 and above 18 years as at these ages), the survey's central adult from there.
struct Size {
  double height_m, mass_kg;
};
// @param age_years [1, 100]
Size usual_size(Sex sex, double age_years);
inline constexpr double adult_from_years = 20;  // the survey of adults begins here

}  // namespace bide::scenario
