// The ledgers: what was stored must equal what came in less what went out.
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
#include "bide/timeline/series.hpp"

namespace bide::timeline {

// heat, water, co2, food_energy and salt, in that order; one list to a lane.
template <class T>
std::array<std::vector<Ledger>, lane_count<T>> ledgers(const system::System<T>& system,
                                                       const std::vector<T>& start,
                                                       const std::vector<T>& end);

// A ledger that did not close, or a state that left the numbers.
struct Failure {
  std::string ledger;
  std::string message;
};

// The first ledger that does not close to 1e-9 of its throughput a day.
std::optional<Failure> broken(const std::vector<Ledger>& ledgers, double days);

}  // namespace bide::timeline
