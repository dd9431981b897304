#include "bide/study/questions/kept_inputs.hpp"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <optional>
#include <set>
#include <sstream>
#include <string>
#include <system_error>
#include <vector>

#include "bide/core/file.hpp"
#include "bide/scenario/text_of_file.hpp"
#include "bide/scenario/weather_files.hpp"
#include "bide/study/questions/study.hpp"

namespace bide::study {
namespace {

namespace fs = std::filesystem;
using Fault = RecordFileError::Fault;

constexpr const char *list_name = "study.inputs", *copies_name = "inputs";

// A file and its name beside the study file, as the files name each other.
struct Named {
  fs::path source, name;
};

std::vector<Named> files_of(const Study& study) {
  const fs::path file = study.file_name(), scenario = study.file().scenario;
  std::vector<Named> out{{file, file.filename()}, {study.scenario().file, scenario}};
  for (const std::string& weather : scenario::weather_files(study.scenario()))
    out.push_back({study.scenario().folder / weather, scenario.parent_path() / weather});
  if (const auto points = study.points_file()) out.push_back({*points, *study.file().design.points});
  std::erase_if(out, [](const Named& each) { return each.name.is_absolute(); });
  for (Named& each : out) each.name = each.name.lexically_normal();
  return out;
}

std::string bytes_of(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::string out{std::istreambuf_iterator<char>(in), {}};
  if (!in.is_open() || in.bad()) throw RecordFileError(path, "cannot be read");
  return out;
}

struct Copy {
  std::string place;  // below the folder of results
  std::string bytes;
};

// The study file first. Names that lead upwards need folders above it; they have the names they have there.
std::vector<Copy> copies_of(const Study& study) {
  const std::vector<Named> files = files_of(study);
  std::ptrdiff_t upwards = 0;
  for (const Named& each : files)
    upwards = std::max(upwards, std::count(each.name.begin(), each.name.end(), fs::path("..")));
  const fs::path beside = fs::absolute(study.file_name()).lexically_normal().parent_path();
  fs::path root = beside;
  for (; upwards > 0; --upwards) root = root.parent_path();
  std::vector<Copy> out;
  for (const Named& each : files) {
    const fs::path place =
        fs::path(copies_name) / (beside / each.name).lexically_normal().lexically_relative(root);
    Copy copy{place.generic_string(), bytes_of(each.source)};
    const auto same_place =
        std::find_if(out.begin(), out.end(), [&](const Copy& other) { return other.place == copy.place; });
    if (same_place == out.end())
      out.push_back(std::move(copy));
    else if (same_place->bytes != copy.bytes)
      throw RecordFileError(each.source, "cannot be kept: another file has the same place, by a link");
  }
  return out;
}

void write(const fs::path& path, const std::string& bytes) {
  std::error_code error;
  fs::create_directories(path.parent_path(), error);
  if (const auto why = error ? error.message() : write_whole(path, bytes))
    throw RecordFileError(path, "cannot be written: " + *why, Fault::cannot_be_written);
}

}  // namespace

void keep_inputs(const Study& study, const fs::path& folder) {
  const fs::path list = folder / list_name;
  std::set<std::string> ours;
  std::error_code error;
  if (fs::exists(list, error)) {
    std::istringstream lines(bytes_of(list));
    for (std::string line; std::getline(lines, line);) ours.insert(line);
  }
  std::string listed;
  std::vector<Copy> changed;
  for (Copy& copy : copies_of(study)) {
    listed += copy.place + "\n";
    const fs::path path = folder / copy.place;
    const bool there = fs::exists(path, error);
    if (there && bytes_of(path) == copy.bytes) continue;
    if (there && !ours.contains(copy.place))
      throw RecordFileError(path, "is there and was not left by a study; allowed another folder for results",
                            Fault::cannot_be_written);
    changed.push_back(std::move(copy));
  }
  // The list first: whatever it names may be written over by the next.
  if (!fs::exists(list, error) || bytes_of(list) != listed) write(list, listed);
  for (const Copy& copy : changed) write(folder / copy.place, copy.bytes);
}

std::variant<fs::path, scenario::Diagnostics> kept_study_file(const fs::path& folder) {
  const std::string file = (folder / list_name).string();
  scenario::Diagnostics wrong;
  std::error_code error;
  if (!fs::exists(file, error)) {
    wrong.push_back({folder.string(), "",
                     std::string("found a folder without ") + list_name +
                         "; allowed a study file, or a folder of results that a study has left"});
    return wrong;
  }
  const auto text = scenario::text_of_file(file, "the list of what a study was read from", wrong);
  if (!text) return wrong;
  return folder / text->substr(0, text->find('\n'));
}

}  // namespace bide::study
