// Draws samples of a scenario with an `uncertain` block, and makes the plain scenario of each.
//
// States: none after construction, so samples may be made in any order and by any thread. Inputs: a
// ValidScenario; a seed and k, or a point of a design. A draw goes through the ordinary validation: one that
// is out of range or contradicts itself is a failed sample with its reasons; it is never cut to fit.
#pragma once

#include <Eigen/Core>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "bide/scenario/study_file.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/study/sampling/factor_kind.hpp"
#include "bide/study/sampling/raft_draw.hpp"

namespace bide::study {

// One uncertain input or event: a column of the design.
struct Factor {
  std::string name;
  FactorKind kind = FactorKind::aleatory;
  std::uint32_t stream = 0;  // of the random numbers
  bool has_value = false;    // an input or group of numbers, which a point may give as they are
};

// A value to be set in the scenario.
struct Setting {
  std::string pointer;  // JSON pointer of the key
  scenario::Value value;
};

// What was drawn for one sample.
struct Drawn {
  std::vector<Setting> settings;            // in the order in which they are applied
  std::vector<scenario::Failure> failures;  // drawn, in addition to those of the file
  std::vector<Setting> of_alternative;      // applied last
  std::string alternative;                  // name; empty when there are none
  RaftDrawn raft;                           // of readiness and launch
  std::vector<std::string> lost;            // fields of the people lost in the first minutes, if they enter
                                            // the water
  std::optional<double> rescue_h;           // after the start; infinite: no help comes; empty: not considered
};

// Name of the factor that decides whether a failure of "events" happens.
// @param uncertain the block of the scenario
// @param place     in the list "events", from 0
std::string event_name(const scenario::Uncertain& uncertain, std::size_t place);

// The law of shivering's endurance at a place: from the least to the most that people may keep, each as
// likely as the others.
// @param place in [0, 1]
scenario::ShiveringEndurance endurance_at(double place);

class Sampler {
 public:
  explicit Sampler(const scenario::ValidScenario& scenario);

  // One per column of a design, in order.
  const std::vector<Factor>& factors() const { return factors_; }

  // The point of sample k of plain Monte Carlo: one number in (0, 1) for each factor.
  // @param seed of the study
  // @param k    number of the sample, from 0
  std::vector<double> point(std::uint64_t seed, std::uint64_t k) const;
  // What is drawn at a point. Throws std::invalid_argument unless it has one number per factor.
  // @param point one number for each factor: in (0, 1), or on the natural scale the value of an input that
  //              has one
  // @param scale on the natural scale inputs are what they are given as, correlated or not
  Drawn at(const std::vector<double>& point, scenario::PointScale scale = scenario::PointScale::unit) const;
  Drawn draw(std::uint64_t seed, std::uint64_t k) const { return at(point(seed, k)); }

  // The plain scenario of a sample, validated.
  scenario::Validated scenario_of(const Drawn& sample) const;
  // The same as the text of a scenario file.
  std::string text_of(const Drawn& sample) const;

 private:
  // Gaussian copula: independent normal scores times `lower` are correlated ones.
  struct Copula {
    std::vector<std::size_t> members;  // places in factors()
    Eigen::MatrixXd lower;             // Cholesky factor of the correlations
  };
  using Take = TakeNumber;
  struct Walk;

  Drawn walk(const Take& take, scenario::PointScale scale) const;
  std::vector<double> correlated(const std::vector<double>& point) const;
  void correlate();
  scenario::Node document_of(const Drawn& sample) const;

  std::string file_;
  std::filesystem::path folder_;
  std::shared_ptr<const scenario::Node> plain_;  // the file without `uncertain`
  scenario::Scenario written_;
  scenario::Uncertain uncertain_;
  std::vector<Factor> factors_;
  Copula copula_;
};

// Warns of distributions of which more than 0.1 % lies outside the range of their input.
scenario::Diagnostics range_cautions(const scenario::ValidScenario& scenario);

}  // namespace bide::study
