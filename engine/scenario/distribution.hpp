// A value as files state it, and a distribution of values.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace bide::scenario {

// A value put in at a pointer: nothing takes the field away.
using Value = std::variant<std::monostate, double, bool, std::string>;

enum class DistributionKind {
  uniform,           // low, high
  normal,            // mean, sd
  truncated_normal,  // mean, sd, low, high
  lognormal,         // median, geometric_sd
  triangular,        // low, mode, high
  discrete,          // values, weights
  empirical          // values, each as likely; numbers between neighbours are interpolated
};

struct Distribution {
  DistributionKind kind = DistributionKind::uniform;
  std::optional<double> low, high, mean, sd, median, geometric_sd, mode;
  std::vector<Value> values;
  std::vector<double> weights;

  bool operator==(const Distribution&) const = default;
};

}  // namespace bide::scenario
