#include "bide/study/questions/common_futures.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "bide/scenario/patch.hpp"

using namespace bide;

namespace {

scenario::ValidScenario shipped(double capacity_persons) {
  const std::string folder = BIDE_SOURCE_DIR "/scenarios";
  scenario::Validated read = scenario::validate_file(folder + "/unknown_crew_cold_sea.json");
  scenario::Node document = *std::get<scenario::ValidScenario>(read).document;
  REQUIRE(scenario::put(document, "/duration_h", 24.0));
  REQUIRE(scenario::put(document, "/raft/capacity_persons", capacity_persons));
  read = scenario::validate_document(document, "changed", folder);
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(read));
  return std::get<scenario::ValidScenario>(read);
}

study::FuturesOfOption drawn(const scenario::ValidScenario& scenario, std::uint64_t count) {
  return study::draw_futures(scenario, 1, count, [](double) {});
}

study::FuturesOfOption made(const std::vector<std::optional<float>>& able_h, double horizon_h) {
  study::FuturesOfOption out;
  out.horizon_h = horizon_h;
  for (const std::optional<float>& each : able_h) {
    study::Future future;
    future.able_h.fill(each.value_or(0));
    future.alive_h.fill(each.value_or(0));
    out.futures.push_back(each ? std::optional(future) : std::nullopt);
  }
  return out;
}

}  // namespace

TEST_CASE("pairs are judged within the nearer horizon, and a sample without a result is left out of both") {
  const float beyond = std::numeric_limits<float>::infinity();
  const auto paired =
      study::pair_futures(made({10, 60, beyond, {}, 5}, 72), made({20, beyond, 50, 30, 5}, 48), 0.95);
  REQUIRE(paired);
  CHECK(paired->horizon_h == 48);
  CHECK(paired->drawn == 5);
  CHECK(paired->without_result == 1);
  // 10 against 20; 60 and beyond, both past 48; beyond and 50, both past 48; 5 and 5.
  CHECK(paired->able.samples == 4);
  CHECK(paired->able.second_longer.count == 1);
  CHECK(paired->able.indistinguishable.count == 2);
  CHECK(paired->able.same.count == 1);
  CHECK(paired->able.mean_difference == doctest::Approx(2.5));
  CHECK_FALSE(study::pair_futures(made({10, {}}, 48), made({10, 10}, 48), 0.95));
}

TEST_CASE("the same scenario twice differs in nothing") {
  const scenario::ValidScenario scenario = shipped(6);
  const auto paired = study::pair_futures(drawn(scenario, 24), drawn(scenario, 24), 0.95);
  REQUIRE(paired);
  for (const study::Paired* each : {&paired->able, &paired->alive}) {
    CHECK(each->mean_difference == 0);
    CHECK(each->mean_standard_error == 0);
    CHECK(each->median_difference == 0);
    CHECK(each->first_longer.count + each->second_longer.count == 0);
  }
}

TEST_CASE("common futures tell options apart with less scatter than futures of their own") {
  constexpr std::uint64_t count = 64;
  const study::FuturesOfOption small = drawn(shipped(4), count), large = drawn(shipped(12), count);
  const auto paired = study::pair_futures(small, large, 0.95);
  REQUIRE(paired);
  CHECK(paired->able.first_longer.count > 0);
  // The variance of a difference of independent means is the sum of both variances.
  double variance = 0;
  for (const study::FuturesOfOption* option : {&small, &large}) {
    double sum = 0, squares = 0;
    for (const auto& each : option->futures) {
      const double until_h =
          std::min(static_cast<double>(each->able_h[study::first_person]), option->horizon_h);
      sum += until_h;
      squares += until_h * until_h;
    }
    const double n = count;
    variance += (squares - sum * sum / n) / (n - 1) / n;
  }
  CHECK(paired->able.mean_standard_error < std::sqrt(variance));
}
