// A study from its file to its summary, in a folder that keeps its records.
//
// Records survive being killed: asked again with the same folder, a study goes on where it was left. Its
// parts (shards) may be run anywhere and joined.
#pragma once

#include <cstdint>
#include <filesystem>
#include <optional>
#include <span>
#include <variant>

#include "bide/study/ensemble/progress.hpp"
#include "bide/study/ensemble/refusal.hpp"
#include "bide/study/questions/summary.hpp"

namespace bide::study {

class Study;
struct Shard;

// Reads a study file and all it depends on.
// @param file path of the study file, or of a folder of results, which keeps what its study was read from
// @return the study, or everything that is wrong with it, its scenario, its weather and its outputs
std::variant<Study, Refusal> open_study(const std::filesystem::path& file);

// Runs what the records of a part do not hold yet, and keeps beside them what the study was read from
// (kept_inputs.hpp). Makes the folder if it is not there.
// @param study    from open_study()
// @param folder   for the file of records
// @param shard    which part
// @param threads  0: one to a core
// @param progress may be empty
// @return why the records could not be written or taken up; empty when all of the part is recorded
std::optional<Refusal> run_part(const Study& study, const std::filesystem::path& folder, const Shard& shard,
                                int threads, const ToldProgress& progress = {});

// Keeps what the study was read from beside records that were joined (run_part does so by itself).
// @param study  from open_study()
// @param folder with records of this study
// @return why it could not be kept; empty when it is
std::optional<Refusal> keep_study(const Study& study, const std::filesystem::path& folder);

// Joins parts to the whole file of records of a folder, which is made if it is not there.
// @param parts  files of records
// @param folder for the whole
// @return the number of samples in it, or why they could not be joined
std::variant<std::uint64_t, Refusal> join_parts(std::span<const std::filesystem::path> parts,
                                                const std::filesystem::path& folder);

// Summarises the whole file of records of a folder.
// @param study  from open_study()
// @param folder with the records
// @param look   see Look
// @return the summary, or what is missing or wrong in the records
std::variant<Summary, Refusal> summary_of(const Study& study, const std::filesystem::path& folder,
                                          const Look& look = {});

struct StudyQuestion {
  std::filesystem::path file;    // of the study
  std::filesystem::path folder;  // for its records
  int threads = 0;               // 0: one to a core
};

// All of it: reads, runs what is not recorded yet, and summarises.
// @param question the study and its folder
// @param progress may be empty
std::variant<Summary, Refusal> ask_study(const StudyQuestion& question, const ToldProgress& progress = {});

}  // namespace bide::study
