// Times that may lie beyond the time simulated. Such a time is not a number: all that is known is that
// nothing had ended by then, and no function here turns it into one.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "bide/study/statistics/bootstrap.hpp"

namespace bide::study {

struct Observed {
  double time = 0;
  bool ended = true;  // false: it had not ended by `time`, where watching stopped (censored on the right)
};

// The curve of Kaplan & Meier (1958), a step at each time at which something ended. Cases whose watching
// stops at such a time were still watched then.
struct SurvivalStep {
  double time = 0;
  std::size_t at_risk = 0;
  std::size_t ended = 0;
  double share = 1;           // lasting beyond `time`
  double standard_error = 0;  // Greenwood (1926)
  Interval interval;          // of the share, see below
};

// The interval is the normal one on the scale log(-log share) (Kalbfleisch & Prentice 1980), which stays
// within (0, 1). Once the share is 0 that scale has no value: the upper end is then the one before the last
// step times Wilson's for none of those at risk, which errs to the wide side.
struct SurvivalCurve {
  std::vector<SurvivalStep> steps;
  std::size_t cases = 0;
  double last_watched = 0;  // the latest time of any case
  double confidence = 0;
  // Share that lasts beyond t; nothing after the last case was lost from sight, unless the curve is at 0.
  std::optional<double> share_at(double t) const;
  // Interval of that share. Before the first step all last: Wilson's for all of those watched that long.
  std::optional<Interval> interval_at(double t) const;
  std::vector<double> watched_until;  // ascending; for the number still watched at a time
};

// Throws std::invalid_argument without cases, and for a time that is negative or no number.
SurvivalCurve survival_curve(std::span<const Observed> cases, double confidence);

// Earliest time by which the share p has ended: where the curve is at or below 1 - p. Left out: not reached
// within the time watched. The interval is where the interval of the curve crosses the same height
// (Brookmeyer & Crowley 1982).
struct TimeQuantile {
  std::optional<double> time;
  std::optional<double> low;
  std::optional<double> high;
};
TimeQuantile time_quantile(const SurvivalCurve& curve, double p);

// Mean of the time within the horizon, the area under the curve up to it (Irwin 1949), with Greenwood's
// variance (Klein & Moeschberger 2003, section 4.5). Left out when the curve is not known up to the horizon.
struct RestrictedMean {
  double mean = 0;
  double standard_error = 0;
};
std::optional<RestrictedMean> restricted_mean(const SurvivalCurve& curve, double horizon);

// Quantile of times that were all watched to one horizon, with order statistics for its interval
// (quantile_ranks). A time left out lies beyond the horizon; `low_known` and `high_known` are false when
// there are too few cases for that end. Throws std::invalid_argument when a case was not watched to the
// horizon.
struct QuantileByRank {
  std::optional<double> time;
  std::optional<double> low;
  std::optional<double> high;
  bool low_known = false;
  bool high_known = false;
};
QuantileByRank quantile_by_rank(std::span<const Observed> cases, double horizon, double p, double confidence);

// First, middle and last end of a group. The middle is the one by which at least half have ended, so that it
// is always somebody's. Left out: not within the time watched. Same conditions as quantile_by_rank.
struct OrderOfEnds {
  std::optional<double> first;
  std::optional<double> middle;
  std::optional<double> last;
};
OrderOfEnds order_of_ends(std::span<const Observed> group, double horizon);

}  // namespace bide::study
