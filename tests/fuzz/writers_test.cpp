// Every writer of one run, and the summary of a study, on generated scenarios: what the sanitizers look at.
#include <doctest/doctest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

#include "bide/outcome/outcome.hpp"
#include "bide/report/document/markdown.hpp"
#include "bide/report/html/page.hpp"
#include "bide/report/html/svg.hpp"
#include "bide/report/run/csv.hpp"
#include "bide/report/run/json.hpp"
#include "bide/report/run/range.hpp"
#include "bide/report/run/run_page.hpp"
#include "bide/report/run/sheets.hpp"
#include "bide/report/run/terminal.hpp"
#include "bide/report/study/study_text.hpp"
#include "bide/timeline/simulate.hpp"
#include "fuzz/generator.hpp"

using namespace bide;
namespace fs = std::filesystem;

TEST_CASE("writers on generated scenarios") {
  int written = 0, drawn = 0;
  for (const test::Mode mode : {test::Mode::ordinary, test::Mode::edges})
    for (std::uint64_t k = 0; k < 40; ++k) {
      CAPTURE(k);
      constexpr std::uint64_t seed = 4;
      const auto made = test::any_scenario(mode, seed, k);
      if (!made) continue;
      auto loaded = weather::load(made->valid);
      REQUIRE(std::holds_alternative<weather::Record>(loaded));
      const auto simulated = timeline::simulate(made->valid, std::get<weather::Record>(loaded));
      const auto* t = std::get_if<timeline::Timeline>(&simulated);
      if (!t) continue;
      ++written;
      const outcome::Outcome o = outcome::read_outcome(*t, made->valid);
      CHECK_FALSE(report::terminal_summary(o, *t, made->valid, {}).empty());
      CHECK_FALSE(report::timeline_csv(*t, made->valid).empty());
      CHECK(nlohmann::json::accept(report::result_json(o, *t, made->valid, {})));
      const study::RangeMembers none;
      const report::Material material{o, *t, made->valid};
      for (const report::Sheet& sheet : report::run_sheets(material, report::run_answer(material, none, {})))
        for (const auto& row : sheet.rows) CHECK(row.size() <= sheet.columns.size());
      const report::document::Page page = report::pages::run_page({material, none});
      const std::string html = report::html::to_html(page), markdown = report::document::to_markdown(page);
      CHECK(html.find("<!doctype html>") != std::string::npos);
      for (const std::string& text : {html, markdown}) {
        CHECK(text.find("<b>&amp;</b>") == std::string::npos);  // a title is escaped
        CHECK(text.find("Planning and training aid.") != std::string::npos);
      }
      for (const report::html::NamedChart& chart : report::html::charts_of(page)) {
        ++drawn;
        const std::string svg = report::html::svg_of(*chart.chart);
        CHECK(svg.find("<svg") != std::string::npos);
        for (const char* no_place : {"\"nan\"", "\"inf\"", "\"-inf\""})
          CHECK_MESSAGE(svg.find(no_place) == std::string::npos, chart.name);
      }
    }
  CHECK(written > 50);
  CHECK(drawn > 5 * written);
}

TEST_CASE("a study's summary on a generated scenario") {
  const fs::path folder = fs::temp_directory_path() / ("bide_fuzz_study_" + std::to_string(::getpid()));
  fs::remove_all(folder);
  fs::create_directory(folder);
  constexpr std::uint64_t seed = 5;
  int summarised = 0;
  for (std::uint64_t k = 0; k < 40; ++k) {
    const auto made = test::any_scenario(test::Mode::ordinary, seed, k);
    if (!made || made->file.at("weather").at("kind") != "constant") continue;
    std::ofstream(folder / "s.json") << made->file.dump();
    std::ofstream(folder / "t.json") << R"({"format": "bide study 1", "scenario": "s.json",
      "uncertain": {"inputs": {"/weather/wind_speed_m_s": {"kind": "uniform", "low": 1, "high": 15}}},
      "design": {"kind": "random", "samples": 12}})";
    auto valid = scenario::validate_study(folder / "t.json");
    REQUIRE(std::holds_alternative<scenario::ValidStudy>(valid));
    const auto made_study = study::Study::make(std::get<scenario::ValidStudy>(std::move(valid)));
    const auto& study = std::get<study::Study>(made_study);
    const fs::path records = folder / ("records" + std::to_string(k));
    study.run({0, study.plan().size()}, records, 1);
    const auto outputs = std::get<std::vector<study::Output>>(study::outputs_of(study));
    const study::Summary summary = study::summarise(study, outputs, records);
    CHECK(summary.samples == 12);
    CHECK_FALSE(report::study_text(study, summary).empty());
    CHECK(nlohmann::json::accept(report::study_json(study, summary)));
    ++summarised;
  }
  CHECK(summarised > 3);
  fs::remove_all(folder);
}
