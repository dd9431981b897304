// What a study was read from, kept beside its records: the folder of results then opens by itself, and
// wherever it is moved.
//
// Layout: copies stand byte for byte below inputs/, as they stand to each other; study.inputs lists them, the
// study file first. A file that is named by its whole path is not copied: there the name leads out of any
// folder. Whether copies belong to records is told by the records themselves (Study::kind).
#pragma once

#include <filesystem>
#include <variant>

#include "bide/scenario/validate.hpp"

namespace bide::study {

class Study;

// Copies what the study was read from, over copies of an earlier time. Throws RecordFileError when a file
// cannot be read or written, or has the place of a copy and is none.
// @param study  as it was read
// @param folder of its results; must be there
void keep_inputs(const Study& study, const std::filesystem::path& folder);

// @param folder of results
// @return where the copy of the study file is, or that there is none
std::variant<std::filesystem::path, scenario::Diagnostics> kept_study_file(
    const std::filesystem::path& folder);

}  // namespace bide::study
