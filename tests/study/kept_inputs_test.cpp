// A folder of results keeps what its study was read from, and opens by itself wherever it is moved.
#include "bide/study/questions/kept_inputs.hpp"

#include <doctest/doctest.h>
#include <fmt/core.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>

#include "bide/study/questions/ask_study.hpp"
#include "bide/study/questions/study.hpp"

using namespace bide;
using namespace bide::study;
namespace fs = std::filesystem;

namespace {

std::string text_of(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

// studies/of_mine/t.json names ../../scenarios/s.json, which names ../weather/gale.csv.
struct Work {
  fs::path folder = fs::temp_directory_path() / fmt::format("bide_kept_inputs_test_{}", ::getpid());
  fs::path file = folder / "studies/of_mine/t.json", results = folder / "results";
  fs::path scenario = folder / "scenarios/s.json", weather = folder / "weather/gale.csv";

  Work() {
    for (const fs::path& each : {file, scenario, weather}) fs::create_directories(each.parent_path());
    fs::copy(fs::path(BIDE_SOURCE_DIR) / "tests/cli/held_back/gale.csv", weather);
    put_scenario("../weather/gale.csv");
    put_study("../../scenarios/s.json", 70);
  }
  ~Work() { fs::remove_all(folder); }
  Work(const Work&) = delete;
  Work& operator=(const Work&) = delete;

  void put_scenario(const std::string& weather_name) const {
    std::ofstream(scenario) << R"({"format": "bide scenario 1", "start_time_utc": "2031-02-03T00:00:00Z",
      "duration_h": 6, "position": {"latitude_deg": 49, "longitude_deg": -21},
      "weather": {"kind": "csv", "file": ")"
                            << weather_name
                            << R"("}, "raft": {"kind": "offshore_4"}, "boarding": {"kind": "dry"},
      "crew": [{"sex": "male", "age_years": 35, "height_m": 1.75, "mass_kg": 75}],
      "uncertain": {"inputs": {"/crew/0/mass_kg": {"kind": "uniform", "low": 60, "high": 100}}}})";
  }
  void put_study(const std::string& scenario_name, int samples) const {
    std::ofstream(file) << fmt::format(
        R"({{"format": "bide study 1", "scenario": "{}", "design": {{"kind": "random", "samples": {}}}}})",
        scenario_name, samples);
  }
  Study open(const fs::path& path) const {
    auto opened = open_study(path);
    if (const auto* refusal = std::get_if<Refusal>(&opened)) FAIL(to_string(refusal->reasons.front()));
    return std::get<Study>(std::move(opened));
  }
  std::optional<Refusal> run(const fs::path& path) const { return run_part(open(path), results, {}, 1); }
};

std::string reason_of(const std::optional<Refusal>& refusal) {
  REQUIRE(refusal);
  return to_string(refusal->reasons.front());
}

}  // namespace

TEST_CASE("copies stand to each other as what they are copies of, and open when all else is gone") {
  const Work work;
  REQUIRE_FALSE(work.run(work.file));
  const fs::path copies = work.results / "inputs";
  CHECK(text_of(work.results / "study.inputs") ==
        "inputs/studies/of_mine/t.json\ninputs/scenarios/s.json\ninputs/weather/gale.csv\n");
  CHECK(text_of(copies / "studies/of_mine/t.json") == text_of(work.file));
  CHECK(text_of(copies / "scenarios/s.json") == text_of(work.scenario));
  CHECK(text_of(copies / "weather/gale.csv") == text_of(work.weather));

  const RecordKind kind = work.open(work.file).kind();
  const fs::path moved = work.folder / "elsewhere/deep/moved";
  fs::create_directories(moved.parent_path());
  fs::rename(work.results, moved);
  for (const char* gone : {"studies", "scenarios", "weather"}) fs::remove_all(work.folder / gone);
  const Study study = work.open(moved);
  CHECK(study.kind() == kind);
  const auto summary = summary_of(study, moved);
  REQUIRE(std::holds_alternative<Summary>(summary));
  CHECK(std::get<Summary>(summary).samples == 70);
  // Gone on with, it is its own source.
  CHECK_FALSE(run_part(study, moved, {}, 1));
  CHECK(text_of(moved / "study.inputs").starts_with("inputs/studies/of_mine/t.json\n"));
  CHECK(std::distance(fs::recursive_directory_iterator(moved / "inputs"), {}) == 7);  // 3 files, 4 folders
}

TEST_CASE("a study of more samples replaces its copy; another study is refused and replaces nothing") {
  const Work work;
  REQUIRE_FALSE(work.run(work.file));
  work.put_study("../../scenarios/s.json", 100);
  REQUIRE_FALSE(work.run(work.file));
  const std::string kept = text_of(work.file);
  CHECK(text_of(work.results / "inputs/studies/of_mine/t.json") == kept);
  std::ofstream(work.weather, std::ios::app) << "# another file\n";
  CHECK(reason_of(work.run(work.file)).find("another study") != std::string::npos);
  CHECK(text_of(work.results / "inputs/weather/gale.csv") != text_of(work.weather));
  CHECK(std::get<Summary>(summary_of(work.open(work.results), work.results)).samples == 100);
}

TEST_CASE("a file named by its whole path is not copied, and must stay as it was") {
  const Work work;
  work.put_scenario(work.weather.string());
  REQUIRE_FALSE(work.run(work.file));
  CHECK(text_of(work.results / "study.inputs") == "inputs/studies/of_mine/t.json\ninputs/scenarios/s.json\n");
  const Study before = work.open(work.results);
  CHECK(std::holds_alternative<Summary>(summary_of(before, work.results)));
  std::ofstream(work.weather, std::ios::app) << "# another file\n";
  const auto summary = summary_of(work.open(work.results), work.results);
  REQUIRE(std::holds_alternative<Refusal>(summary));
  CHECK(to_string(std::get<Refusal>(summary).reasons.front()).find("another study") != std::string::npos);
  fs::remove(work.weather);
  const auto opened = open_study(work.results);
  REQUIRE(std::holds_alternative<Refusal>(opened));
  CHECK(to_string(std::get<Refusal>(opened).reasons.front()).find("found no file") != std::string::npos);
}

TEST_CASE("nothing that a study has not left is written over, and no folder opens without its list") {
  const Work work;
  const fs::path mine = work.results / "inputs/scenarios/s.json";
  fs::create_directories(mine.parent_path());
  std::ofstream(mine) << "mine";
  const auto refusal = work.run(work.file);
  CHECK(reason_of(refusal).find("was not left by a study") != std::string::npos);
  CHECK(refusal->why == Refusal::Why::output);
  CHECK(text_of(mine) == "mine");
  const auto opened = open_study(work.results);
  REQUIRE(std::holds_alternative<Refusal>(opened));
  CHECK(to_string(std::get<Refusal>(opened).reasons.front()).find("without study.inputs") !=
        std::string::npos);
}
