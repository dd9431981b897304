// The figures of a scenario at the caller's own points: one simulation for each row of a table, in the order
// given.
//
// A row is run as a sample of an ensemble, so its figures depend neither on the other rows nor on the
// threads. Tables of many rows are quicker by the row: a block of lanes takes as long as one sample.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "bide/scenario/study_file.hpp"
#include "bide/study/ensemble/progress.hpp"
#include "bide/study/ensemble/refusal.hpp"
#include "bide/study/questions/outputs.hpp"
#include "bide/study/sampling/design.hpp"
#include "bide/study/sampling/sampler.hpp"

namespace bide::study {

struct PointsQuestion {
  Points points;  // a row for each simulation, a column for each of Sampler::factors()
  scenario::PointScale scale = scenario::PointScale::unit;
  std::vector<std::string> outputs;  // names of figures; empty: all
  int threads = 0;                   // 0: one to a core
};

struct Evaluated {
  std::vector<Output> outputs;
  Points values;  // a row for each point, a column for each output, as Output::of gives it
  std::vector<std::optional<std::string>> failures;  // one for each point: why it has no figures
};

// Runs a scenario at every point.
// @param scenario with `uncertain`, which names the inputs
// @param question the points, their scale, the figures wanted
// @param progress may be empty; an exception from it is passed on
// @return the figures; refused when nothing is uncertain, when a figure is not known, and when a number of
// the
//         points is not allowed. A point that the validation refuses is a row without figures.
std::variant<Evaluated, Refusal> evaluate(const scenario::ValidScenario& scenario, PointsQuestion question,
                                          const ToldProgress& progress = {});

}  // namespace bide::study
