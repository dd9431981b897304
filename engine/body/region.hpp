// The region that conditions fall into, and whether a study that the model was compared with is near.
#pragma once

#include "bide/constants/regions.hpp"

namespace bide::body {

constants::Region region_of(const constants::Conditions& at);

// @param hours since the run or the trial began, at least 0
constants::Span span_of(double hours);

// @param at    conditions of a result
// @param study conditions of a study
bool is_near(const constants::Conditions& at, const constants::Conditions& study);

}  // namespace bide::body
