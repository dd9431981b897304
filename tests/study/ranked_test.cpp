// Values at ranks, counted in passes, beside sorting; and futures kept in a file beside those in memory.
#include "bide/study/statistics/ranked.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>
#include <stdexcept>

#include "bide/study/questions/future.hpp"
#include "bide/study/records/unnamed_file.hpp"

using namespace bide;

namespace {

template <class Number>
study::EachNumber<Number> all(const std::vector<Number>& numbers) {
  return [&numbers](const std::function<void(Number)>& visit) {
    for (const Number number : numbers) visit(number);
  };
}

template <class Number>
void check_against_sorting() {
  using Limits = std::numeric_limits<Number>;
  std::mt19937 bits(7);
  std::uniform_real_distribution<Number> hours(-40, 300);
  std::vector<Number> numbers{
      0,     -Number{0}, Limits::denorm_min(), -Limits::denorm_min(), Limits::lowest(), 12.5, 12.5, 12.5,
      -12.5, -12.5};
  for (int i = 0; i < 5000; ++i) numbers.push_back(hours(bits));
  for (int i = 0; i < 5000; ++i) numbers.push_back(std::round(hours(bits)));
  for (int i = 0; i < 500; ++i) numbers.push_back(Limits::infinity());
  numbers.push_back(-Limits::infinity());
  std::vector<std::size_t> ranks(numbers.size());
  for (std::size_t i = 0; i < ranks.size(); ++i) ranks[i] = ranks.size() - i;
  const auto found = study::at_ranks<Number>(all(numbers), ranks);
  std::sort(numbers.begin(), numbers.end());
  for (std::size_t i = 0; i < ranks.size(); ++i) REQUIRE(found[i] == numbers[ranks[i] - 1]);
}

}  // namespace

TEST_CASE("values at ranks are those that sorting finds, with ties, either sign, the smallest and infinity") {
  check_against_sorting<float>();
  check_against_sorting<double>();
}

TEST_CASE("ranks and numbers that have no answer are refused") {
  const std::vector<double> three{1, 2, 3}, none{1, std::nan("")};
  for (const std::size_t rank : {std::size_t{0}, std::size_t{4}})
    CHECK_THROWS_AS(study::at_ranks<double>(all(three), std::vector{rank}), std::invalid_argument);
  CHECK_THROWS_AS(study::at_ranks<double>(all(none), std::vector<std::size_t>{1}), std::invalid_argument);
}

TEST_CASE("futures come back from their file as they went in, as often as asked, and after more have come") {
  study::UnnamedFile<study::Future> file;
  for (std::uint64_t k = 0; k < 5000; ++k) {
    study::Future f;
    f.sample = k;
    f.able_h = {static_cast<float>(k), std::numeric_limits<float>::infinity(), 1};
    f.alive_cause[study::last_person] = system::Limit::able_co2;
    f.no_weather_for_help = k % 2 == 1;
    file.add(f);
    if (k != 2499 && k != 4999) continue;
    for (int again = 0; again < 2; ++again) {
      std::uint64_t seen = 0;
      file.each([&](const study::Future& back) {
        REQUIRE(back.sample == seen);
        REQUIRE(back.able_h[study::first_person] == static_cast<float>(seen));
        REQUIRE(std::isinf(back.able_h[study::half_of_crew]));
        REQUIRE(back.alive_cause[study::last_person] == system::Limit::able_co2);
        REQUIRE(back.no_weather_for_help == (seen % 2 == 1));
        ++seen;
      });
      CHECK(seen == k + 1);
    }
  }
  CHECK(file.size() == 5000);
}
