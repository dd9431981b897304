// What the fields must be to one another: contradictions, unknown catalogue keys, missing files.
#pragma once

#include <filesystem>

#include "bide/scenario/reader.hpp"

namespace bide::scenario {

// Reports each broken rule; a rule whose fields were already reported is left out.
void check_rules(const Scenario& scenario, const std::filesystem::path& folder, Reader& reader);

// The part of it for "readiness", and for its chances and the launch in "uncertain".
void check_readiness(const Scenario& scenario, Reader& reader);

// The part of it for "uncertain": pointers, distributions, correlations.
void check_uncertain(const Scenario& scenario, Reader& reader);

// Seconds since 1970 of "2031-02-03T18:00:00Z"; nothing unless it is such a time, in UTC, of 1970 to 2100.
std::optional<double> start_of(const Scenario& scenario);

}  // namespace bide::scenario
