// Every sample of a study as NetCDF-4 with the CF conventions (1.10), over samples and people.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "bide/study/questions/study.hpp"

namespace bide::tool {

// Why this program writes no NetCDF; empty where it does.
std::optional<std::string> why_no_netcdf();

// Written beside `path` and renamed when it is whole. The reason when it fails.
// @param command that makes the file, kept in it
std::optional<std::string> write_study_netcdf(const study::Study& study, const std::filesystem::path& records,
                                              const std::filesystem::path& path, const std::string& command);

}  // namespace bide::tool
