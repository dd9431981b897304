// Accumulated rain to its rate.
//
// States: none. Inputs: a series of amounts. Validity: what an amount was accumulated over is stated by the
// caller, or by the file's bounds of time, or it is one hour where the times are an hour apart; anything else
// is asked for, and so is a series that looks like a running total. Source: ours; the hourly reanalysis
// accumulates over the hour that ends at the time, whatever the step of a download (its documentation, from
// memory).
#pragma once

#include <optional>

#include "series.hpp"

namespace bide::tool::cf {

struct RainRule {
  bool running = false;               // a total that grows from a start; a fall begins a new one
  std::optional<double> each_over_h;  // hours over which each amount fell
};

// @param amounts in mm; the first value of a running total has no rate
// @param rule    empty: by the file
// @return the rates in mm/h, each over the time up to its own. Throws Refused.
Series rain_rates(Series amounts, const RainRule& rule);

}  // namespace bide::tool::cf
