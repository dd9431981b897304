// The ledgers: the change of what is stored must equal what came in less what went out.
//
// States: none. Inputs: the states at both ends, the running totals in them, and the books of events.
// Residuals are divided by the sum of absolute fluxes. Source: conservation of energy, water, CO2, food
// energy and salt.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "bide/system/system.hpp"
#include "bide/timeline/failure.hpp"
#include "bide/timeline/series.hpp"

namespace bide::timeline {

// The ledgers of a run: heat (J), water (kg), co2 (m3), food_energy (kJ) and salt (mOsm), in that order.
// @param system after the run, with the books of its events
// @param start  state at the start
// @param end    state at the end
// @return one list per lane
template <class T>
std::array<std::vector<Ledger>, lane_count<T>> ledgers(const system::System<T>& system,
                                                       const std::vector<T>& start,
                                                       const std::vector<T>& end);

// Checks that every ledger closes to 1e-9 of its throughput per day.
// @param ledgers of one run
// @param days    length of the run, d; less than one counts as one
// @return the first that does not close; empty when all do
std::optional<Failure> broken(const std::vector<Ledger>& ledgers, double days);

}  // namespace bide::timeline
