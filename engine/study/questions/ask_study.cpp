#include "bide/study/questions/ask_study.hpp"

#include <system_error>
#include <utility>
#include <vector>

#include "bide/study/questions/kept_inputs.hpp"
#include "bide/study/questions/study.hpp"
#include "bide/study/records/sample_bytes.hpp"

namespace bide::study {
namespace {

namespace fs = std::filesystem;

Refusal refused(Refusal::Why why, std::string file, std::string message) {
  return {why, {{std::move(file), "", std::move(message)}}};
}

// The name of the file stands in the error's own words.
Refusal refused(const RecordFileError& wrong) {
  const bool unwritable = wrong.fault() == RecordFileError::Fault::cannot_be_written;
  return refused(unwritable ? Refusal::Why::output : Refusal::Why::input, "records", wrong.what());
}

std::optional<Refusal> make_folder(const fs::path& folder) {
  std::error_code error;
  fs::create_directories(folder, error);
  if (!error) return std::nullopt;
  return refused(Refusal::Why::output, folder.string(), "cannot be made: " + error.message());
}

}  // namespace

std::variant<Study, Refusal> open_study(const fs::path& file) {
  const auto input = [](scenario::Diagnostics wrong) {
    return Refusal{Refusal::Why::input, std::move(wrong)};
  };
  std::error_code error;
  auto found = fs::is_directory(file, error) ? kept_study_file(file) : file;
  if (auto* wrong = std::get_if<scenario::Diagnostics>(&found)) return input(std::move(*wrong));
  auto valid = scenario::validate_study(std::get<fs::path>(found));
  if (auto* wrong = std::get_if<scenario::Diagnostics>(&valid)) return input(std::move(*wrong));
  auto made = Study::make(std::get<scenario::ValidStudy>(std::move(valid)));
  if (auto* wrong = std::get_if<scenario::Diagnostics>(&made)) return input(std::move(*wrong));
  auto& study = std::get<Study>(made);
  auto outputs = outputs_of(study);
  if (auto* wrong = std::get_if<scenario::Diagnostics>(&outputs)) return input(std::move(*wrong));
  return std::move(study);
}

std::optional<Refusal> run_part(const Study& study, const fs::path& folder, const Shard& shard, int threads,
                                const ToldProgress& progress) {
  if (auto refusal = make_folder(folder)) return refusal;
  try {
    study.run(range_of(shard, study.plan().size()), folder / file_name_of(shard), threads, progress,
              [&] { keep_inputs(study, folder); });
  } catch (const RecordFileError& wrong) {
    return refused(wrong);
  }
  return std::nullopt;
}

std::optional<Refusal> keep_study(const Study& study, const fs::path& folder) {
  try {
    keep_inputs(study, folder);
  } catch (const RecordFileError& wrong) {
    return refused(wrong);
  }
  return std::nullopt;
}

std::variant<std::uint64_t, Refusal> join_parts(std::span<const fs::path> parts, const fs::path& folder) {
  if (auto refusal = make_folder(folder)) return std::move(*refusal);
  try {
    return merge_records(parts, folder / file_name_of({}), [](const Record& record) {
      read_sample(record.sample, persons_of(record.payload.size()), record.payload);
    });
  } catch (const RecordFileError& wrong) {
    return refused(wrong);
  }
}

std::variant<Summary, Refusal> summary_of(const Study& study, const fs::path& folder, const Look& look) {
  const auto outputs = outputs_of(study);
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&outputs))
    return Refusal{Refusal::Why::input, *wrong};
  try {
    return summarise(study, std::get<std::vector<Output>>(outputs), folder / file_name_of({}), look);
  } catch (const RecordFileError& wrong) {
    return refused(wrong);
  }
}

std::variant<Summary, Refusal> ask_study(const StudyQuestion& question, const ToldProgress& progress) {
  auto opened = open_study(question.file);
  if (auto* refusal = std::get_if<Refusal>(&opened)) return std::move(*refusal);
  const auto& study = std::get<Study>(opened);
  if (auto refusal = run_part(study, question.folder, {}, question.threads, progress))
    return std::move(*refusal);
  return summary_of(study, question.folder);
}

}  // namespace bide::study
