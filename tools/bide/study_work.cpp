#include "study_work.hpp"

#include <fmt/format.h>

#include <cstdio>

#include "bide/core/notice.hpp"
#include "bide/report/study/study_page.hpp"
#include "bide/report/study/study_table.hpp"
#include "bide/report/study/study_text.hpp"
#include "bide/report/words/file.hpp"
#include "commands.hpp"
#include "output.hpp"
#include "study_netcdf.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

namespace fs = std::filesystem;

std::string left(double s) {
  constexpr double minute = 60, hour = 3600;
  if (s < 2 * minute) return fmt::format("{:.0f} s", s);
  if (s < 2 * hour) return fmt::format("{:.0f} min", s / minute);
  return fmt::format("{:.1f} h", s / hour);
}

void show(ProgressLine& line, const study::Progress& p) {
  line(static_cast<double>(p.done) / static_cast<double>(p.total),
       fmt::format(" of {}, {:.0f}/s, {} left, {} failed   ", p.total, p.per_s, left(p.left_s), p.failed));
}

}  // namespace

void add_table_options(Command& command, StudyArguments& arguments) {
  command.flag("--csv", arguments.csv, "Write every sample to results.csv too");
  command.flag("--netcdf", arguments.netcdf,
               "Write every sample to results.nc too (NetCDF-4, CF conventions)");
  command.flag("--report", arguments.report, "Write a page with charts to summary.html too");
  command.flag("--quiet", arguments.quiet, "Do not print the summary");
}

void add_study_options(Command& command, StudyArguments& arguments) {
  command.text("study", arguments.study, "Study file").required();
  command.text("--out", arguments.out, "Folder of the results; the study's name with _results if left out");
  command.number("--threads", arguments.threads, any_threads,
                 "0: one to a core; results do not depend on it");
  command.flag("--progress", arguments.progress, "Report progress even when not on a terminal");
  add_table_options(command, arguments);
}

fs::path folder_of(const StudyArguments& arguments) {
  return arguments.out.empty() ? fs::path(arguments.study).stem().string() + "_results" : arguments.out;
}

int load_study(const std::string& path, std::optional<study::Study>& study) {
  auto valid = scenario::validate_study(path);
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&valid))
    return complain(*wrong), exit_input_refused;
  auto made = study::Study::make(std::get<scenario::ValidStudy>(std::move(valid)));
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&made))
    return complain(*wrong), exit_input_refused;
  study.emplace(std::get<study::Study>(std::move(made)));
  const auto outputs = study::outputs_of(*study);
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&outputs))
    return complain(*wrong), exit_input_refused;
  return exit_ok;
}

int run_shard(const study::Study& study, const StudyArguments& arguments, const study::Shard& shard) {
  const fs::path folder = folder_of(arguments), file = folder / study::file_name_of(shard);
  std::error_code error;
  fs::create_directories(folder, error);
  if (error) return cannot_write(folder.string(), error.message(), letters(true));
  ProgressLine progress(arguments.progress);
  try {
    study.run(study::range_of(shard, study.plan().size()), file, arguments.threads,
              [&](const study::Progress& p) { show(progress, p); });
  } catch (const study::RecordFileError& wrong) {
    say("{}\n", wrong.what());
    return exit_cannot_write;
  }
  progress.finish();
  return exit_ok;
}

int merge_shards(const StudyArguments& arguments, std::uint64_t shards) {
  const fs::path folder = folder_of(arguments), whole = folder / study::file_name_of({});
  std::vector<fs::path> parts;
  for (std::uint64_t i = 1; i <= shards; ++i) parts.push_back(folder / study::file_name_of({i, shards}));
  try {
    study::merge_records(parts, whole);
  } catch (const study::RecordFileError& wrong) {
    say("{}\n", wrong.what());
    return exit_cannot_write;
  }
  return exit_ok;
}

int write_results(const study::Study& study, const StudyArguments& arguments) {
  const fs::path folder = folder_of(arguments), records = folder / study::file_name_of({});
  const auto outputs = std::get<std::vector<study::Output>>(study::outputs_of(study));
  study::Summary summary;
  try {
    summary = study::summarise(study, outputs, records);
  } catch (const study::RecordFileError& wrong) {
    say("{}\n", wrong.what());
    return exit_input_refused;
  }
  const std::string text = report::study_text(study, summary);
  std::vector<std::pair<const char*, std::string>> files{
      {"summary.txt", text}, {"summary.json", report::study_json(study, summary)}};
  if (arguments.report)
    files.emplace_back("summary.html", report::html::to_html(report::pages::study_page(study, summary)));
  for (const auto& [name, content] : files)
    if (const auto why = report::write_whole(folder / name, content))
      return cannot_write((folder / name).string(), *why, letters(true));
  if (arguments.csv)
    if (const auto why = report::write_study_csv(study, records, folder / "results.csv"))
      return cannot_write((folder / "results.csv").string(), *why, letters(true));
  if (arguments.netcdf)
    if (const auto why = write_study_netcdf(study, records, folder / "results.nc"))
      return cannot_write((folder / "results.nc").string(), *why, letters(true));
  if (!arguments.quiet)
    if (const int code = put(text, "", false); code != exit_ok) return code;
  constexpr double tolerated = 0.01;
  if (static_cast<double>(summary.failed) > tolerated * static_cast<double>(summary.samples)) {
    say("{} of {} samples failed, more than 1 %\n", summary.failed, summary.samples);
    return exit_run_failed;
  }
  return exit_ok;
}

}  // namespace bide::tool
