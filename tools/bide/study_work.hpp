// What the commands that run studies share: read one, run a part of it, write its results. All of them say
// what went wrong on the error stream and return an exit code.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "bide/study/questions/study.hpp"

namespace bide::tool {

struct StudyArguments {
  std::string study, out;
  int threads = 0;
  bool csv = false, netcdf = false, report = false, quiet = false, progress = false;
};

// Options that every way of running a study takes.
template <class Command>
void add_study_options(Command& command, StudyArguments& arguments) {
  command.add_option("study", arguments.study, "Study file")->required();
  command.add_option("--out", arguments.out,
                     "Folder of the results; the study's name with _results if left out");
  command.add_option("--threads", arguments.threads, "Threads; one to a core if left out");
  command.add_flag("--csv", arguments.csv, "Write every sample to results.csv too");
  command.add_flag("--netcdf", arguments.netcdf,
                   "Write every sample to results.nc too (NetCDF-4, CF conventions)");
  command.add_flag("--report", arguments.report, "Write a page with charts to summary.html too");
  command.add_flag("--quiet", arguments.quiet, "Do not print the summary");
  command.add_flag("--progress", arguments.progress, "Report progress even when not on a terminal");
}

std::filesystem::path folder_of(const StudyArguments& arguments);

int load_study(const std::string& path, std::optional<study::Study>& study);

// Makes the folder if it is not there. Leaves no more to do than what the shard's file does not hold yet.
int run_shard(const study::Study& study, const StudyArguments& arguments, const study::Shard& shard);

// From the whole file of records: summary.txt, summary.json, and the tables asked for.
int write_results(const study::Study& study, const StudyArguments& arguments);

// The parts of all shards to the whole file of records, if that is not there yet.
int merge_shards(const StudyArguments& arguments, std::uint64_t shards);

}  // namespace bide::tool
