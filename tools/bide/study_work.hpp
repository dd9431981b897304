// What the commands that run studies share: read one, run a part of it, write its results. All of them say
// what went wrong on the error stream and return an exit code.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "arguments.hpp"
#include "bide/study/questions/study.hpp"

namespace bide::tool {

struct StudyArguments {
  std::string study, out, charts;
  int threads = 0;
  bool csv = false, plain = false, netcdf = false, report = false, quiet = false, progress = false;
};

// Which tables and pages are wanted.
void add_table_options(Command& command, StudyArguments& arguments);
// Options that every way of running a study takes.
void add_study_options(Command& command, StudyArguments& arguments);

std::filesystem::path folder_of(const StudyArguments& arguments);

// Reads the study, and sees to it that none of its results would be written over what it reads.
// @param shard the part whose records are written
int load_study(const StudyArguments& arguments, const study::Shard& shard,
               std::optional<study::Study>& study);

// Makes the folder if it is not there. Leaves no more to do than what the shard's file does not hold yet.
int run_shard(const study::Study& study, const StudyArguments& arguments, const study::Shard& shard);

// From the whole file of records: summary.txt, summary.json, and the tables asked for.
int write_results(const study::Study& study, const StudyArguments& arguments);

}  // namespace bide::tool
