// Distributions by their quantiles, so that any design of points in (0, 1) can drive them.
//
// States: none. Inputs: a checked scenario::Distribution; a probability in (0, 1). Source: Boost.Math for the
// normal; the rest is closed form (each at its case).
#pragma once

#include "bide/scenario/uncertain.hpp"

namespace bide::study {

// Quantile of a distribution; for discrete values, in the order listed.
// @param distribution a checked distribution
// @param u            share below the value, (0, 1)
// @return in the unit of the input
scenario::Value quantile(const scenario::Distribution& distribution, double u);

// Share of a distribution below a value.
// @param distribution a checked distribution of numbers
// @param x            in the unit of the input
// @return [0, 1]
double share_below(const scenario::Distribution& distribution, double x);

// Quantile of the time of rescue.
// @param rescue a checked distribution of the time of rescue
// @param u      share of rescues before that time, (0, 1)
// @return h after the start; infinite when no help comes
double rescue_h(const scenario::Rescue& rescue, double u);

// Quantile and share below a value of the standard normal distribution.
// @param u share below the quantile, (0, 1)
double standard_normal_quantile(double u);
double standard_normal_share(double z);

// Quantile of a lognormal distribution of which what lies beyond two values is cut off.
// @param median    of the whole distribution, within the two values, above 0
// @param sd_of_log spread of the logarithm, above 0
// @param low, high the least and the greatest value, low above 0
// @param u         share below the quantile, (0, 1)
double lognormal_within(double median, double sd_of_log, double low, double high, double u);

}  // namespace bide::study
