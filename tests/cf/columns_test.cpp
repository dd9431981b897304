#include "cf/columns.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <string>

#include "cf/refused.hpp"

using namespace bide::tool::cf;
using bide::weather::Quantity;

namespace {

constexpr double none = std::numeric_limits<double>::quiet_NaN();
const Span hour_and_more{0, 7200};

Series series(Field field, const char* name, std::vector<double> value, const char* file = "a.nc") {
  Series out;
  out.field = field;
  out.variable = name;
  out.file = file;
  out.units = facts(field).unit;
  for (std::size_t i = 0; i < value.size(); ++i) out.unix_s.push_back(3600.0 * static_cast<double>(i));
  out.value = std::move(value);
  out.held = {out.unix_s.front(), out.unix_s.back()};
  return out;
}

std::vector<double> values(const std::vector<Series>& given, Quantity q) {
  for (const Column& each : columns_of(given, hour_and_more, {}).columns)
    if (each.quantity == q) return each.samples.value;
  return {};
}

std::string refusal(const std::vector<Series>& given) {
  try {
    columns_of(given, hour_and_more, {});
  } catch (const Refused& wrong) {
    return wrong.what();
  }
  return "";
}

}  // namespace

TEST_CASE("what rounding puts beyond a range is set to its end, the rest refused") {
  CHECK(values({series(Field::cloud, "tcc", {1.0004, -0.0004, 0.5})}, Quantity::cloud_cover) ==
        std::vector<double>{1, 0, 0.5});
  CHECK(refusal({series(Field::cloud, "tcc", {1.2, 0, 0})}) ==
        "a.nc: tcc at 1970-01-01T00:00:00Z: cloud cover 1.2 of the sky is outside 0 to 1");
  Series coarse = series(Field::cloud, "tcc", {1.2, 0, 0});
  coarse.rounding = 0.25;
  CHECK(values({coarse}, Quantity::cloud_cover)[0] == 1);
}

TEST_CASE("wind is its speed, or of its components where both have a value") {
  const Series east = series(Field::wind_east, "u10", {3, -3, none}),
               north = series(Field::wind_north, "v10", {4, 4, 1});
  CHECK(values({east, north}, Quantity::wind_speed) == std::vector<double>{5, 5});
  CHECK(values({east, north, series(Field::wind_speed, "si10", {7, 8, 9})}, Quantity::wind_speed) ==
        std::vector<double>{7, 8, 9});
  CHECK(refusal({east}).find("found no variable of use") != std::string::npos);
}

TEST_CASE("one measure of humidity, the dew point before the relative humidity") {
  const Series dew = series(Field::dew_point, "d2m", {5, 5, 5}),
               humidity = series(Field::relative_humidity, "hurs", {80, 80, 80});
  CHECK(values({humidity, dew}, Quantity::relative_humidity).empty());
  CHECK(values({humidity, dew}, Quantity::dew_point).size() == 3);
  CHECK(values({humidity}, Quantity::relative_humidity).size() == 3);
}

TEST_CASE("files are joined where they agree and cover the span") {
  Series later = series(Field::pressure, "msl", {1010, 1011}, "b.nc");
  later.unix_s = {3600, 7200};
  later.held = {3600, 7200};
  CHECK(values({series(Field::pressure, "msl", {1009, 1010}), later}, Quantity::pressure) ==
        std::vector<double>{1009, 1010, 1011});
  CHECK(values({series(Field::pressure, "msl", {1009, none}), later}, Quantity::pressure)[1] == 1010);
  CHECK(refusal({series(Field::pressure, "msl", {1009, 1012}), later}) ==
        "b.nc: msl and msl of a.nc contradict each other at 1970-01-01T01:00:00Z: 1010 and 1012 hPa");
  CHECK(refusal({later}) ==
        "b.nc: msl holds 1970-01-01T01:00:00Z to 1970-01-01T02:00:00Z; asked for 1970-01-01T00:00:00Z to "
        "1970-01-01T02:00:00Z");
}

TEST_CASE("a rate of rain is taken before amounts") {
  const Series amount = series(Field::rain_amount, "tp", {1, 0, 2}),
               rate = series(Field::rain_rate, "pr", {3, 4, 5});
  CHECK(values({amount}, Quantity::rain) == std::vector<double>{1, 0, 2});
  CHECK(values({amount, rate}, Quantity::rain) == std::vector<double>{3, 4, 5});
}
