// What the results of a study say: how they spread, and which inputs they depend on.
//
// States: none. Inputs: a study and its whole file of records. A time beyond the horizon is never made a
// number: it is later than all others in quantiles, and what depends on inputs is asked of the time within
// the horizon (whose mean is the restricted mean) and of shares that last longer than stated hours.
// Memory: figures stay in files without a name, so it does not grow with the samples, but for Saltelli's and
// Morris' designs, whose indices hold one figure at a time (8 bytes a run, and copies of it).
#pragma once

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "bide/study/questions/outputs.hpp"
#include "bide/study/questions/study.hpp"
#include "bide/study/statistics/morris.hpp"
#include "bide/study/statistics/narrowing.hpp"
#include "bide/study/statistics/sobol_indices.hpp"

namespace bide::study {

inline constexpr double summary_confidence = 0.95;

// How one figure spreads over samples that stand for what may happen.
struct Spread {
  std::string name, unit;
  bool is_time = false;
  std::size_t cases = 0;      // with such a figure
  std::size_t not_there = 0;  // without
  struct Quantile {
    double share = 0;
    std::optional<double> value, low, high;      // of a time left out: beyond the horizon
    bool low_known = false, high_known = false;  // false: too few samples to say
  };
  std::vector<Quantile> quantiles;
  struct Later {
    double than_h = 0;
    std::size_t cases = 0;
    Interval share;
  };
  std::vector<Later> later;  // of a time
  double mean = 0;           // of a time: within the horizon
};

// Of a figure that is the same in all but a few runs (a limit that hardly anybody reaches), indices and
// correlations rest on those few, and say more about chance than about inputs: they are left out. The share
// is our own judgement.
inline constexpr double fewest_differing_share = 0.02;

// What one figure depends on; entries in the order of Summary::inputs.
struct Dependence {
  std::string name, unit;
  std::size_t cases = 0;
  std::size_t differing = 0;  // cases with another value than the one that more than half have, else all
  double mean = 0;
  std::optional<SobolIndices> indices;                                   // saltelli
  std::optional<MorrisEffects> effects;                                  // morris
  std::vector<std::optional<RankCorrelation>> correlations;              // random, latin_hypercube, sobol
  std::vector<std::vector<std::pair<std::string, double>>> level_means;  // grid: value in words, mean
};

struct Summary {
  std::uint64_t samples = 0, failed = 0;
  std::vector<std::pair<std::uint64_t, std::string>> first_failures;
  double horizon_h = 0;
  std::vector<Spread> spreads;  // empty where samples do not stand for what may happen: grid, morris
  std::size_t futures = 0;      // samples that the spreads are read from
  std::vector<std::string> inputs;
  std::vector<Dependence> dependences;
};

// What an input was in a drawn sample; in words for what is no number.
struct InputValue {
  std::optional<double> number;
  std::string words;
};
InputValue input_value(const Study& study, const Drawn& drawn, std::size_t factor);

// The figures a study asks for, or the ordinary ones. Diagnostics for a name that does not exist.
std::variant<std::vector<Output>, scenario::Diagnostics> outputs_of(const Study& study);
// The hours asked for, or the ordinary ones within the time simulated.
std::vector<double> hours_of(const Study& study);

Summary summarise(const Study& study, const std::vector<Output>& outputs,
                  const std::filesystem::path& records);

}  // namespace bide::study
