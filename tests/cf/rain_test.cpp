#include "cf/rain.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "cf/refused.hpp"

using namespace bide::tool::cf;

namespace {

Series amounts(double step_h, std::vector<double> mm) {
  Series out;
  out.field = Field::rain_amount;
  out.file = "a.nc";
  out.variable = "tp";
  for (std::size_t i = 0; i < mm.size(); ++i) out.unix_s.push_back(3600 * step_h * static_cast<double>(i));
  out.value = std::move(mm);
  return out;
}

std::string refusal(const Series& series, const RainRule& rule) {
  try {
    rain_rates(series, rule);
  } catch (const Refused& wrong) {
    return wrong.what();
  }
  return "";
}

const std::vector<double> rising{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13};

}  // namespace

TEST_CASE("amounts of an hour each") {
  const Series rates = rain_rates(amounts(1, {0, 2, 1.5}), {});
  CHECK(rates.field == Field::rain_rate);
  CHECK(rates.value == std::vector<double>{0, 2, 1.5});
}

TEST_CASE("amounts over stated hours, whatever the step") {
  CHECK(rain_rates(amounts(3, {0, 2, 3}), {false, 1}).value == std::vector<double>{0, 2, 3});
  CHECK(rain_rates(amounts(3, {0, 3, 6}), {false, 3}).value == std::vector<double>{0, 1, 2});
  CHECK(refusal(amounts(3, {0, 2, 1}), {})
            .find("a.nc: tp: found amounts of rain at times 3 h apart; allowed 1 h") == 0);
}

TEST_CASE("bounds of time say over how long an amount fell") {
  Series series = amounts(6, {6, 3});
  series.interval_s = {6 * 3600, 1 * 3600};
  CHECK(rain_rates(series, {}).value == std::vector<double>{1, 3});
}

TEST_CASE("a running total gives its differences, and begins anew where it falls") {
  const Series rates = rain_rates(amounts(2, {4, 6, 6, 1}), {true, {}});
  CHECK(std::isnan(rates.value[0]));
  CHECK(rates.value[1] == 1);
  CHECK(rates.value[2] == 0);
  CHECK(rates.value[3] == 0.5);
}

TEST_CASE("what looks like a running total is asked about") {
  CHECK(refusal(amounts(1, rising), {})
            .find("a.nc: tp: found amounts of rain that rise 13 times and fall 0 times") == 0);
  CHECK(refusal(amounts(1, rising), {false, 1}).empty());
  std::vector<double> showers;
  for (int i = 0; i < 40; ++i) showers.push_back(i % 4);  // three rises a fall
  CHECK(refusal(amounts(1, showers), {}).empty());
}
