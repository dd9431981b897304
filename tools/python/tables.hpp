// Results as the tables of Python: DataFrame of pandas, Dataset of xarray. Both are imported when asked for.
#pragma once

#include <pybind11/pybind11.h>

#include <filesystem>
#include <vector>

#include "bide/bide.hpp"
#include "bide/study/questions/study.hpp"

namespace bide::python {

// The standing notice, which scenario a result is of, and the build that made it.
pybind11::dict provenance(const scenario::ValidScenario& scenario);

// A run with dims time and person.
pybind11::object dataset(const study::Run& run, const scenario::ValidScenario& scenario);

// A row for each point. A time is followed by whether it was reached; one that was not is the time simulated.
// @param scenario that the points are of
pybind11::object frame(const study::Evaluated& evaluated, const scenario::ValidScenario& scenario);

// Shares of odds against time, a row for each hour.
pybind11::object shares_frame(const study::OddsAnswer& answer);

// A row for each future of odds, those that failed too.
// @param futures those that have a result, in order
pybind11::object futures_frame(const study::OddsAnswer& answer, const std::vector<study::Future>& futures);

// Every sample of a study: its inputs, then its figures as frame() gives them.
// @param folder with the whole file of records
pybind11::object frame(const study::Study& study, const std::filesystem::path& folder);

}  // namespace bide::python
