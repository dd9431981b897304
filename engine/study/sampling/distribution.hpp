// Distributions by their quantiles, so that any design of points in (0, 1) can drive them.
//
// States: none. Inputs: a checked scenario::Distribution; a probability in (0, 1). Source: Boost.Math for the
// normal; the rest is closed form (each at its case).
#pragma once

#include "bide/scenario/uncertain.hpp"

namespace bide::study {

// The value below which a share u of the distribution lies; for discrete values, in the order listed.
scenario::Value quantile(const scenario::Distribution& distribution, double u);

// The share that lies below x, of a distribution of numbers.
double share_below(const scenario::Distribution& distribution, double x);

// Hours after the start; infinite when no help comes.
double rescue_h(const scenario::Rescue& rescue, double u);

double standard_normal_quantile(double u);
double standard_normal_share(double z);

}  // namespace bide::study
