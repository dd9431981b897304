// The library's questions on several threads, and asked by several at once: the same bits. Built with the
// preset `tsan` this is what the thread sanitizer watches. Weather varies and is drawn, so that threads share
// its cache.
#include <doctest/doctest.h>
#include <unistd.h>

#include <chrono>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <mutex>
#include <set>
#include <string>
#include <thread>
#include <vector>

#include "bide/bide.hpp"
#include "bide/study/ensemble/parallel.hpp"

using namespace bide;
namespace fs = std::filesystem;

namespace {

std::string text_of(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

scenario::ValidScenario read_file(const fs::path& file) {
  auto read = bide::read(file);
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(read));
  return std::get<scenario::ValidScenario>(std::move(read));
}

// A cold crew, and a study of a day of a shipped scenario with variable weather.
struct Day {
  Day() : folder(fs::temp_directory_path() / ("bide_threads_test_" + std::to_string(::getpid()))) {
    fs::create_directories(folder);
    std::string text = text_of(fs::path(BIDE_SOURCE_DIR) / "scenarios/family_ten_days.json");
    const std::string ten_days = "\"duration_h\": 240";
    const std::size_t at = text.find(ten_days);
    REQUIRE(at != std::string::npos);
    std::ofstream(folder / "day.json") << text.replace(at, ten_days.size(), "\"duration_h\": 24");
    std::ofstream(folder / "study.json") << R"({"format": "bide study 1", "scenario": "day.json",
      "uncertain": {"inputs": {"/weather/wind_speed_m_s": {"kind": "uniform", "low": 1, "high": 15}},
                    "person_spread": true, "unmeasured": true},
      "outputs": ["coldest core"], "design": {"kind": "sobol", "samples": 128}})";
  }
  ~Day() {
    std::error_code error;
    fs::remove_all(folder, error);
  }
  Day(const Day&) = delete;
  Day& operator=(const Day&) = delete;

  // Every share of the table against time, and what each unknown explains.
  std::vector<double> odds(int threads) const {
    study::OddsQuestion question;
    question.futures = 128;
    question.threads = threads;
    const auto asked = bide::odds(cold, question);
    const auto* answer = std::get_if<study::OddsAnswer>(&asked);
    if (answer == nullptr) return {};
    std::vector<double> out;
    for (const auto& at : answer->odds.times) out.insert(out.end(), {at.all_able.share, at.some_alive.share});
    for (const auto& unknown : answer->unknowns) out.push_back(unknown.reduction.of_variance);
    return out;
  }
  std::string records(int threads) const {
    const fs::path out = folder / ("by_" + std::to_string(threads));
    const auto done = bide::run_study({folder / "study.json", out, threads});
    if (!std::holds_alternative<study::Summary>(done)) return {};
    return text_of(out / "study.records");
  }

  fs::path folder;
  scenario::ValidScenario cold =
      read_file(fs::path(BIDE_SOURCE_DIR) / "scenarios/unknown_crew_cold_sea.json");
};

}  // namespace

TEST_CASE("as many threads work as are asked for, be there as many cores or not") {
  const std::size_t asked = 2 * std::thread::hardware_concurrency() + 1;
  std::set<std::thread::id> seen;
  std::mutex mutex;
  constexpr std::size_t works = 500;
  study::in_parallel(works, static_cast<int>(asked), [&](std::size_t) {
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
    const std::lock_guard hold(mutex);
    seen.insert(std::this_thread::get_id());
  });
  CHECK(seen.size() == asked);
}

TEST_CASE("odds and studies are the same bits on 1, 2 and 8 threads") {
  const Day day;
  const std::vector<double> odds = day.odds(1);
  const std::string records = day.records(1);
  CHECK(odds.size() > 24);
  CHECK(records.size() > 128 * 100);
  for (const int threads : {2, 8}) {
    CAPTURE(threads);
    CHECK(day.odds(threads) == odds);
    CHECK(day.records(threads) == records);
  }
}

TEST_CASE("questions that several threads ask at once get the answers of one that asks alone") {
  const Day day;
  const std::vector<double> alone = day.odds(2);
  REQUIRE(!alone.empty());
  std::vector<std::vector<double>> at_once(2);
  bool compared = false;
  {
    std::vector<std::thread> askers;
    for (auto& answer : at_once) askers.emplace_back([&] { answer = day.odds(2); });
    askers.emplace_back([&] {
      study::CompareQuestion question;
      question.futures = 64;
      compared = std::holds_alternative<study::Comparison>(bide::compare({day.cold, day.cold}, question));
    });
    for (std::thread& each : askers) each.join();
  }
  for (const auto& answer : at_once) CHECK(answer == alone);
  CHECK(compared);
}
