// One line of the comparison of model and publication.
#pragma once

#include <cmath>
#include <optional>
#include <string>
#include <vector>

namespace bide::validation {

// account: what befell a crew, told by those who lived or by those who looked for them.
enum class Kind { measured, predicted_by_others, rule, account };
enum class Class { published, common_practice, from_memory, second_hand };

// `low` to `high` is the interval that counts as holding; it is fixed, with its reason, before the model is
// run. Of an account it is the middle 95 % of the model's futures, in which what was told (`published`) has
// to lie; `model` is their median.
struct Row {
  std::string topic;  // folder under validation/
  std::string study;  // one vote per study
  std::string quantity;
  std::string unit;
  Kind kind = Kind::measured;
  Class source_class = Class::published;
  bool calibrated = false;   // used to set a number of the model: never counts as validation
  bool seen_before = false;  // known while a direction for the model was chosen: not blind
  double published = 0;
  double at = 0;                         // its place on the x axis, if its topic draws it
  std::optional<double> standard_error;  // of the published value, where stated
  double low = 0, high = 0;
  double model = 0;
  std::optional<double> people;             // how many an account's row counts, if it counts people
  std::optional<double> trivial;            // what a trivial predictor says: core stays 37, no change
  std::optional<double> two_node;           // what support/two_node.hpp says
  std::string why;                          // of the interval; for a miss, also what is thought to be wrong
  std::vector<std::string> conflicts_with;  // ids of the rows that contradict it: conflicts.hpp

  std::string id() const { return topic + ": " + quantity; }

  bool holds() const {
    const double value = kind == Kind::account ? published : model;
    return value >= low && value <= high;
  }
  // Whether the model's range is every outcome there can be.
  bool cannot_miss() const { return people && low <= 0 && high >= *people; }
  // Whether it counts as validation. Accounts bound what is possible: they are told of those who lived.
  bool counts() const { return !calibrated && kind != Kind::account; }
  std::optional<double> error_over_standard_error() const {
    if (!standard_error || *standard_error <= 0) return std::nullopt;
    return (model - published) / *standard_error;
  }
  // The model's error over that of a simple prediction; nothing where that one is exactly right.
  std::optional<double> error_beside(const std::optional<double>& simple) const {
    if (!simple || *simple == published) return std::nullopt;
    return std::abs(model - published) / std::abs(*simple - published);
  }
};

// Every topic, in the order of validation/topics.hpp; contradicting rows name each other.
std::vector<Row> all_rows();

}  // namespace bide::validation
