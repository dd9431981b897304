// Summary of a study: the spread of its results, and the inputs they depend on.
//
// States: none. Inputs: a study and its whole file of records. A time beyond the horizon is never made a
// number: it is later than all others in quantiles; sensitivities are computed for the time within the
// horizon (whose mean is the restricted mean) and for shares that last longer than stated hours.
// Memory: figures stay in unnamed files, so it does not grow with the samples, except for Saltelli's and
// Morris' designs, whose indices hold one figure at a time (8 bytes a run, and copies of it).
#pragma once

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "bide/scenario/validate.hpp"
#include "bide/study/ensemble/progress.hpp"
#include "bide/study/questions/outputs.hpp"
#include "bide/study/statistics/morris.hpp"
#include "bide/study/statistics/sobol_indices.hpp"
#include "bide/study/statistics/variance_reduction.hpp"

namespace bide::study {

inline constexpr std::size_t index_replicates = 1000;  // of the bootstrap behind the intervals of indices

class Study;
struct Drawn;

// Spread of one figure over random samples.
struct Spread {
  std::string name, unit;
  bool is_time = false;
  std::size_t cases = 0;      // samples with this figure
  std::size_t not_there = 0;  // samples without it
  struct Quantile {
    double share = 0;
    std::optional<double> value, low, high;      // empty, of a time: beyond the horizon
    bool low_known = false, high_known = false;  // false: too few samples to say
  };
  std::vector<Quantile> quantiles;
  struct Later {
    double than_h = 0;
    std::size_t cases = 0;
    Interval share;
  };
  std::vector<Later> later;  // for a time only
  double mean = 0;           // for a time: within the horizon
};

// Indices and correlations are left out for a figure that is the same in all but a few runs (a limit that
// hardly anybody reaches): they would rest on chance more than on inputs. The share is our own judgement.
inline constexpr double fewest_differing_share = 0.02;

// Sensitivity of one figure; entries in the order of Summary::inputs.
struct Dependence {
  std::string name, unit;
  std::size_t cases = 0;
  std::size_t differing = 0;  // cases that differ from the majority value; all if there is no majority
  double mean = 0;
  std::optional<SobolIndices> indices;                       // saltelli
  std::optional<MorrisEffects> effects;                      // morris
  std::vector<std::optional<RankCorrelation>> correlations;  // random, latin_hypercube, sobol, points
  std::vector<std::vector<std::pair<std::string, double>>> level_means;  // grid: value in words, mean
};

struct Summary {
  std::uint64_t samples = 0, failed = 0;
  std::vector<std::pair<std::uint64_t, std::string>> first_failures;
  double horizon_h = 0;
  std::vector<Spread> spreads;  // empty where samples are not random: grid, morris
  std::size_t futures = 0;      // samples used for the spreads
  std::vector<std::string> inputs;
  std::vector<Dependence> dependences;
};

// Value of an input in a drawn sample; in words where it is not a number.
struct InputValue {
  std::optional<double> number;
  std::string words;
};
// @param factor place of the input among those of the sampler, from 0
InputValue input_value(const Study& study, const Drawn& drawn, std::size_t factor);

// The figures a study asks for, or the ordinary ones. Diagnostics for a name that does not exist.
std::variant<std::vector<Output>, scenario::Diagnostics> outputs_of(const Study& study);
// The hours asked for, or the ordinary ones within the time simulated.
std::vector<double> hours_of(const Study& study);

// Summarises a study.
// @param study   the study
// @param outputs the figures to summarise
// @param records its whole file of records
// @param look    see Look
Summary summarise(const Study& study, const std::vector<Output>& outputs,
                  const std::filesystem::path& records, const Look& look = {});

}  // namespace bide::study
