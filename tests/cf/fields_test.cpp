#include "cf/fields.hpp"

#include <doctest/doctest.h>

#include <string>

#include "cf/refused.hpp"

using namespace bide::tool::cf;

namespace {

double ours(Field field, const char* units, double value) {
  const Linear to = read_units(field, std::string(units));
  return value * to.factor + to.offset;
}

}  // namespace

TEST_CASE("facts stand in the order of the fields") {
  for (const FieldFacts& each : fields()) CHECK(&facts(each.field) == &each);
}

TEST_CASE("units of files become ours") {
  CHECK(ours(Field::air_temperature, "K", 273.15) == 0);
  CHECK(ours(Field::sea_temperature, "degC", 12.5) == 12.5);
  CHECK(ours(Field::pressure, "Pa", 101325) == doctest::Approx(1013.25));
  CHECK(ours(Field::wind_east, "m s**-1", -3) == -3);
  CHECK(ours(Field::wind_speed, "knots", 3600) == doctest::Approx(1852));
  CHECK(ours(Field::cloud, "(0 - 1)", 0.25) == 0.25);
  CHECK(ours(Field::cloud, "%", 25) == 0.25);
  CHECK(ours(Field::relative_humidity, "1", 0.8) == doctest::Approx(80));
  CHECK(ours(Field::rain_amount, "m", 0.002) == 2);
  CHECK(ours(Field::rain_amount, "kg m**-2", 2) == 2);
  CHECK(ours(Field::rain_rate, "kg m**-2 s**-1", 0.001) == doctest::Approx(3.6));
  CHECK(ours(Field::rain_rate, "m s-1", 1e-6) == doctest::Approx(3.6));
  CHECK(ours(Field::rain_rate, "mm day-1", 24) == doctest::Approx(1));
}

TEST_CASE("other units are refused, and so are none, but for a share") {
  const auto refusal = [](Field field, const std::optional<std::string>& units) -> std::string {
    try {
      read_units(field, units);
    } catch (const Refused& wrong) {
      return wrong.what();
    }
    return "";
  };
  CHECK(refusal(Field::air_temperature, "F") == "units: found \"F\"; allowed K or degC");
  CHECK(refusal(Field::pressure, {}) == "units: missing; allowed Pa, hPa, mbar or kPa");
  // An amount is no rate.
  CHECK(refusal(Field::rain_amount, "kg m-2 s-1") == "units: found \"kg m-2 s-1\"; allowed m, mm or kg m-2");
  CHECK(refusal(Field::cloud, {}).empty());
}
