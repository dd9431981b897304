#include "study_work.hpp"

#include <fmt/format.h>

#include <array>
#include <cstdlib>
#include <system_error>

#include "bide/core/notice.hpp"
#include "bide/core/units.hpp"
#include "bide/report/study/study_page.hpp"
#include "bide/report/study/study_table.hpp"
#include "bide/report/study/study_text.hpp"
#include "bide/study/questions/ask_study.hpp"
#include "csv_file.hpp"
#include "files.hpp"
#include "interrupt.hpp"
#include "output.hpp"
#include "pages.hpp"
#include "study_netcdf.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

namespace fs = std::filesystem;

constexpr const char *summary_txt = "summary.txt", *summary_json = "summary.json",
                     *summary_html = "summary.html", *results_csv = "results.csv", *results_nc = "results.nc",
                     *results_notice = "results.csv.notice.txt";
constexpr std::array result_names{summary_txt, summary_json,   summary_html,
                                  results_csv, results_notice, results_nc};

std::string left(double s) {
  if (s < 2 * minute_s) return fmt::format("{:.0f} s", s);
  if (s < 2 * hour_s) return fmt::format("{:.0f} min", s / minute_s);
  return fmt::format("{:.1f} h", s / hour_s);
}

void show(ProgressLine& line, const study::Progress& p) {
  line(static_cast<double>(p.done) / static_cast<double>(p.total),
       fmt::format(" of {}, {:.0f}/s, {} left, {} failed   ", p.total, p.per_s, left(p.left_s), p.failed));
}

// What makes the results again, from records or without.
std::string command_of(const StudyArguments& arguments) {
  return fmt::format("bide study {} --out {}{}{}", arguments.study, folder_of(arguments).string(),
                     arguments.csv ? " --csv" : "", arguments.netcdf ? " --netcdf" : "");
}

}  // namespace

void add_table_options(Command& command, StudyArguments& arguments) {
  const Argument csv = command.flag("--csv", arguments.csv, "Write every sample to results.csv too");
  command.flag("--plain", arguments.plain, "The notice of results.csv goes to a file beside it").needs(csv);
  command.flag("--netcdf", arguments.netcdf,
               "Write every sample to results.nc too (NetCDF-4, CF conventions)");
  command.flag("--report", arguments.report, "Write a page with charts to summary.html too");
  command.text("--charts", arguments.charts, "Write each chart of that page to this folder, as SVG and PNG");
  command.flag("--quiet", arguments.quiet, "Do not print the summary");
}

void add_study_options(Command& command, StudyArguments& arguments) {
  command.text("study", arguments.study, "Study file, or a folder of results that a study has left")
      .required();
  command.text(
      "--out", arguments.out,
      "Folder of the results; if left out, the folder given, or the study file's name with _results");
  command.number("--threads", arguments.threads, any_threads,
                 "Threads; 0: one to a core. Results do not depend on it");
  command.flag("--progress", arguments.progress, "Report progress even when not on a terminal");
  add_table_options(command, arguments);
}

fs::path folder_of(const StudyArguments& arguments) {
  if (!arguments.out.empty()) return arguments.out;
  // What was opened as a folder of results goes on there.
  std::error_code error;
  const fs::path study = arguments.study;
  return fs::is_directory(study, error) ? study : fs::path(study.stem().string() + "_results");
}

int load_study(const StudyArguments& arguments, const study::Shard& shard,
               std::optional<study::Study>& study) {
  auto opened = study::open_study(arguments.study);
  if (const auto* refusal = std::get_if<study::Refusal>(&opened)) return refuse(*refusal);
  study.emplace(std::get<study::Study>(std::move(opened)));
  if (const auto why = arguments.netcdf ? why_no_netcdf() : std::nullopt) {
    say("--netcdf: {}\n", *why);
    return exit_cannot_write;
  }
  const fs::path folder = folder_of(arguments);
  std::error_code error;
  if (!fs::exists(folder, error)) return exit_ok;  // nothing there that could be overwritten
  Files files{files_of(study->scenario()), {folder / study::file_name_of(shard)}};
  files.read.emplace_back(study->file_name());
  if (auto points = study->points_file()) files.read.push_back(std::move(*points));
  for (const char* name : result_names) files.written.push_back(folder / name);
  return check(files);
}

int run_shard(const study::Study& study, const StudyArguments& arguments, const study::Shard& shard) {
  const fs::path folder = folder_of(arguments);
  when_interrupted(fmt::format("What is recorded in {} is kept; the same command goes on from there.",
                               (folder / study::file_name_of(shard)).string()));
  ProgressLine progress(arguments.progress);
  const auto refusal = study::run_part(study, folder, shard, arguments.threads,
                                       [&](const study::Progress& p) { show(progress, p); });
  progress.finish();
  return refusal ? refuse(*refusal) : exit_ok;
}

int write_results(const study::Study& study, const StudyArguments& arguments) {
  const fs::path folder = folder_of(arguments), records = folder / study::file_name_of({});
  const auto answer = study::summary_of(study, folder);
  if (const auto* refusal = std::get_if<study::Refusal>(&answer)) return refuse(*refusal);
  const auto& summary = std::get<study::Summary>(answer);
  const std::string text = report::study_text(study, summary);
  if (const int code = write_file(folder / summary_txt, text); code != exit_ok) return code;
  if (const int code = write_file(folder / summary_json, report::study_json(study, summary)); code != exit_ok)
    return code;
  if (arguments.report || !arguments.charts.empty()) {
    const PageFiles pages{arguments.report ? (folder / summary_html).string() : "", arguments.charts};
    if (const int code = ready_pages(pages); code != exit_ok) return code;
    std::vector<fs::path> kept = files_of(study.scenario());
    kept.emplace_back(study.file_name());
    if (auto points = study.points_file()) kept.push_back(std::move(*points));
    for (const char* name : result_names) kept.push_back(folder / name);
    if (const int code = write_pages(report::pages::study_page(study, summary), pages, kept); code != exit_ok)
      return code;
  }
  if (arguments.csv)
    if (const auto why = report::write_study_csv(study, records, folder / results_csv,
                                                 notice_of(folder / results_csv, arguments.plain)))
      return cannot_write((folder / results_csv).string(), *why, letters(true));
  if (arguments.netcdf)
    if (const auto why = write_study_netcdf(study, records, folder / results_nc, command_of(arguments)))
      // HDF5 crashes at exit where a file could not be closed: no leave is taken of it.
      std::_Exit(cannot_write((folder / results_nc).string(), *why, letters(true)));
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
