// bide study T.json: many simulations by a design, taken up again where they were left; bide merge: parts of
// one made elsewhere.
#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <memory>
#include <string>
#include <vector>

#include "bide/core/notice.hpp"
#include "bide/study/questions/ask_study.hpp"
#include "bide/study/questions/outputs.hpp"
#include "bide/study/questions/study.hpp"
#include "commands.hpp"
#include "files.hpp"
#include "interrupt.hpp"
#include "output.hpp"
#include "study_work.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

namespace fs = std::filesystem;

// "2/4"; nothing for anything else.
std::optional<study::Shard> shard_of(const std::string& text) {
  study::Shard shard;
  const char* const end = text.data() + text.size();
  const auto [slash, first_wrong] = std::from_chars(text.data(), end, shard.number);
  if (first_wrong != std::errc() || slash == end || *slash != '/') return std::nullopt;
  const auto [stop, second_wrong] = std::from_chars(slash + 1, end, shard.of);
  const bool whole = second_wrong == std::errc() && stop == end;
  return whole && shard.number >= 1 && shard.number <= shard.of ? std::optional(shard) : std::nullopt;
}

// Name and unit of every figure that "outputs" of the file may name.
int show_outputs(const StudyArguments& arguments) {
  const auto opened = study::open_study(arguments.study);
  if (const auto* refusal = std::get_if<study::Refusal>(&opened)) return refuse(*refusal);
  std::string text;
  for (const study::Output& each : study::outputs(static_cast<int>(std::get<study::Study>(opened).persons())))
    text += fmt::format("{} [{}]\n", each.name, each.unit);
  return put(text + std::string(standing_notice) + "\n", "", false);
}

int run_study(const StudyArguments& arguments, const std::string& shard_text) {
  study::Shard shard;
  if (!shard_text.empty()) {
    const auto asked = shard_of(shard_text);
    if (!asked) {
      say("--shard: found \"{}\"; allowed i/n with i from 1 to n, as 2/4\n", shard_text);
      return exit_usage;
    }
    shard = *asked;
  }
  std::optional<study::Study> study;
  if (const int code = load_study(arguments, shard, study); code != exit_ok) return code;
  if (const int code = run_shard(*study, arguments, shard); code != exit_ok) return code;
  if (shard.of == 1) return write_results(*study, arguments);
  if (arguments.quiet) return exit_ok;
  return put(fmt::format("shard {} of {} is done; when all are: bide merge {} --study {}\n{}\n", shard.number,
                         shard.of, folder_of(arguments).string(), arguments.study, standing_notice),
             "", false);
}

// Files of records in a folder, but for `except`; a file stands for itself.
std::vector<fs::path> records_in(const std::string& place, const fs::path& except) {
  if (!fs::is_directory(place)) return {place};
  std::vector<fs::path> out;
  for (const auto& entry : fs::directory_iterator(place))
    if (entry.path().extension() == ".records" &&
        entry.path().lexically_normal() != except.lexically_normal())
      out.push_back(entry.path());
  std::sort(out.begin(), out.end());
  return out;
}

int merge(const std::vector<std::string>& places, StudyArguments arguments) {
  if (arguments.out.empty()) arguments.out = places.front();
  const fs::path whole = fs::path(arguments.out) / study::file_name_of({});
  std::vector<fs::path> parts;
  for (const std::string& place : places)
    for (fs::path& part : records_in(place, whole)) parts.push_back(std::move(part));
  if (parts.empty()) {
    say("{}: no files of records\n", places.front());
    return exit_input_refused;
  }
  if (fs::exists(arguments.out))
    if (const int code = check({parts, {whole}}); code != exit_ok) return code;
  when_interrupted("The parts are kept; the same command joins them anew.");
  const auto joined = study::join_parts(parts, arguments.out);
  if (const auto* refusal = std::get_if<study::Refusal>(&joined)) return refuse(*refusal);
  const std::string done = fmt::format("{}: {} samples from {} files\n{}\n", whole.string(),
                                       std::get<std::uint64_t>(joined), parts.size(), standing_notice);
  if (const int code = put(done, "", false); code != exit_ok) return code;
  if (arguments.study.empty()) return exit_ok;
  when_interrupted(fmt::format("{} is whole and kept; the results follow from it by: bide study {} --out {}",
                               whole.string(), arguments.study, arguments.out));
  std::optional<study::Study> study;
  if (const int code = load_study(arguments, {}, study); code != exit_ok) return code;
  if (const int code = write_results(*study, arguments); code != exit_ok) return code;
  const auto refusal = study::keep_study(*study, arguments.out);
  return refusal ? refuse(*refusal) : exit_ok;
}

}  // namespace

void add_study(Program& program) {
  auto arguments = std::make_shared<StudyArguments>();
  auto shard = std::make_shared<std::string>();
  auto outputs = std::make_shared<bool>(false);
  Command command =
      program.command("study", "Many simulations by a design: how results spread, and what they depend on");
  add_study_options(command, *arguments);
  command.text("--shard", *shard, "Only part i of n, as 2/4; bide merge joins the parts");
  command.footer(standing_notice);
  command.flag("--outputs", *outputs, "List the figures that \"outputs\" of the file may name; run nothing");
  command.does([arguments, shard, outputs] {
    return *outputs ? show_outputs(*arguments) : run_study(*arguments, *shard);
  });
}

void add_merge(Program& program) {
  auto arguments = std::make_shared<StudyArguments>();
  auto places = std::make_shared<std::vector<std::string>>();
  Command command = program.command("merge", "Join the parts of a study");
  command.texts("places", *places, "Folders with parts, or files of records").required();
  command.text("--out", arguments->out, "Folder of the whole; the first one if left out");
  command.text("--study", arguments->study, "The study file: write its results too");
  add_table_options(command, *arguments);
  command.footer(standing_notice);
  command.does([arguments, places] { return merge(*places, *arguments); });
}

}  // namespace bide::tool
