// Every file of tests/bad_scenarios/ gives exactly the messages that stand beside it, and nothing else.
#include <doctest/doctest.h>

#include <set>

#include "scenario/support.hpp"

using namespace bide::scenario;

TEST_CASE("each bad scenario is refused with the expected messages") {
  int files = 0;
  for (const auto& entry : std::filesystem::directory_iterator(test::source("tests/bad_scenarios"))) {
    if (entry.path().extension() != ".json") continue;
    CAPTURE(entry.path().filename().string());
    ++files;
    std::filesystem::path beside = entry.path();
    beside.replace_extension(".expect");
    std::multiset<std::string> expected;
    std::istringstream lines(test::text_of(beside));
    for (std::string line; std::getline(lines, line);) expected.insert(line);
    REQUIRE_FALSE(expected.empty());
    const std::vector<std::string> got = test::complaints(validate_file(entry.path()));
    CHECK(std::multiset<std::string>(got.begin(), got.end()) == expected);
  }
  CHECK(files >= 70);
}

TEST_CASE("a file that is not there, a folder, and a file too large are refused") {
  CHECK(test::complaints(validate_file("/nonexistent/s.json")) ==
        std::vector<std::string>{"found no such file; allowed a scenario file"});
  CHECK(test::complaints(validate_file(test::source("tests"))) ==
        std::vector<std::string>{"found a folder; allowed a scenario file"});
  const std::string large = "{\"name\": \"" + std::string(1024 * 1024, 'x') + "\"}";
  CHECK(test::complaints(validate_text(large, "s.json", {})) ==
        std::vector<std::string>{"found 1048588 bytes; allowed at most 1048576"});
}

TEST_CASE("a hundred thousand brackets neither crash nor pass") {
  const std::string deep(100000, '[');
  CHECK(test::complaints(validate_text(deep, "s.json", {})) ==
        std::vector<std::string>{"found nesting deeper than 32 levels; allowed 32"});
}

TEST_CASE("a message names the file and the place") {
  const auto result = validate_text("{}", "folder/s.json", {});
  const auto& wrong = std::get<Diagnostics>(result);
  REQUIRE_FALSE(wrong.empty());
  CHECK(to_string(wrong.front()).rfind("folder/s.json: /format: missing", 0) == 0);
}

TEST_CASE("uncertain inputs are limited in number, and their correlations to the pairs that are named") {
  nlohmann::json scenario = test::minimal();
  const nlohmann::json wind = {{"kind", "uniform"}, {"low", 1}, {"high", 2}};
  for (int i = 0; i < 1001; ++i) scenario["uncertain"]["inputs"]["/x" + std::to_string(i)] = wind;
  CHECK(test::complaints(scenario).front() ==
        "/uncertain/inputs: found an object of 1001 members; allowed an object of at most 1000 members");
  scenario["uncertain"]["inputs"] = {{"/weather/wind_speed_m_s", wind}, {"/weather/rain_mm_h", wind}};
  scenario["uncertain"]["together"] = {
      {{"first", "/weather/rain_mm_h"}, {"second", "/weather/wind_speed_m_s"}, {"correlation", 0.5}}};
  CHECK(test::complaints(scenario).empty());
}
