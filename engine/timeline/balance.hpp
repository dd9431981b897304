// The ledgers: what was stored must equal what came in less what went out.
//
// States: none. Inputs: the states at both ends, the running totals in them, and the books of events.
// Residuals are divided by the sum of absolute fluxes. Source: conservation of energy, water, CO2 and food
// energy.
#pragma once

#include <vector>

#include "system/system.hpp"
#include "timeline/series.hpp"

namespace bide::timeline {

// heat, water, co2 and food_energy, in that order.
std::vector<Ledger> ledgers(const system::System<double>& system, const std::vector<double>& start,
                            const std::vector<double>& end);

}  // namespace bide::timeline
