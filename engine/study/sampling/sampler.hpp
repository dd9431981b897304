// From a scenario with `uncertain` to sample k: what was drawn, and the plain scenario that it makes.
//
// States: none after construction, so samples may be made in any order and by any thread. Inputs: a
// ValidScenario; a seed and k, or a point of a design. A draw goes through the ordinary validation: what is
// out of range or contradicts itself is a failed sample with its reasons, never cut to fit.
#pragma once

#include <Eigen/Core>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "bide/scenario/validate.hpp"

namespace bide::study {

// Variety differs from one real case to the next (people, weather, failures); ignorance is the same in every
// case, but nobody has measured it. Bands of results are nested by it.
enum class FactorKind { variety, ignorance };

struct Factor {
  std::string name;
  FactorKind kind = FactorKind::variety;
  std::uint32_t stream = 0;  // of the random numbers
};

struct Setting {
  std::string pointer;
  scenario::Value value;
};

struct Drawn {
  std::vector<Setting> settings;            // in the order in which they are put in
  std::vector<scenario::Failure> failures;  // that happen, beside those of the file
  std::vector<Setting> of_alternative;      // put in after all else
  std::string alternative;                  // name; empty when there are none
  std::optional<double> rescue_h;           // as stated; infinite: no help comes; empty: not considered
};

// Name of the factor by which the failure at a place of "events" happens or not.
std::string event_name(const scenario::Uncertain& uncertain, std::size_t place);

class Sampler {
 public:
  explicit Sampler(const scenario::ValidScenario& scenario);

  const std::vector<Factor>& factors() const { return factors_; }

  // The numbers of sample k, one for each factor, in (0, 1).
  std::vector<double> point(std::uint64_t seed, std::uint64_t k) const;
  // What a point stands for. Throws std::invalid_argument unless it has one number per factor.
  Drawn at(const std::vector<double>& point) const;
  Drawn draw(std::uint64_t seed, std::uint64_t k) const { return at(point(seed, k)); }

  scenario::Validated scenario_of(const Drawn& sample) const;
  // The same as the text of a plain scenario file.
  std::string text_of(const Drawn& sample) const;

 private:
  // Gaussian copula: independent normal scores times `lower` are correlated ones.
  struct Copula {
    std::vector<std::size_t> members;  // places in factors()
    Eigen::MatrixXd lower;             // Cholesky factor of the correlations
  };
  // Asked once for each factor, in order; gives its number in (0, 1).
  using Take = std::function<double(const std::string& name, FactorKind kind)>;
  struct Walk;

  Drawn walk(const Take& take) const;
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

// Distributions of which more than a thousandth lies outside the range of their input.
scenario::Diagnostics range_cautions(const scenario::ValidScenario& scenario);

}  // namespace bide::study
