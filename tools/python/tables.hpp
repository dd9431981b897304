// Results as the tables of Python: DataFrame of pandas, Dataset of xarray. Both are imported when asked for.
#pragma once

#include <pybind11/pybind11.h>

#include <filesystem>

#include "bide/bide.hpp"
#include "bide/study/questions/study.hpp"

namespace bide::python {

// The standing notice, and the build that made a result.
pybind11::dict provenance();

// A run with dims time and person.
pybind11::object dataset(const study::Run& run, const scenario::ValidScenario& scenario);

// A row for each point. A time is followed by whether it was reached; one that was not is the time simulated.
// @param horizon_h time simulated, h
pybind11::object frame(const study::Evaluated& evaluated, double horizon_h);

// Every sample of a study: its inputs, then its figures as frame() gives them.
// @param folder with the whole file of records
pybind11::object frame(const study::Study& study, const std::filesystem::path& folder);

}  // namespace bide::python
