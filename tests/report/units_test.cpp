// Signs of units in texts for people.
#include "bide/report/words/units.hpp"

#include <doctest/doctest.h>

#include "bide/report/words/input.hpp"
#include "bide/report/words/text.hpp"

using bide::report::unit_signs;

TEST_CASE("units get their signs as whole words, and quoted words stay as they were written") {
  CHECK(unit_signs("allowed -2 to 36 degC") == "allowed -2 to 36 °C");
  CHECK(unit_signs("4 m2, 0.1 m3 and 25 kg/m2") == "4 m², 0.1 m³ and 25 kg/m²");
  CHECK(unit_signs("/weather/air_temperature_degC: /raft/floor_area_m2") ==
        "/weather/air_temperature_degC: /raft/floor_area_m2");
  CHECK(unit_signs("found \"20 degC\"; allowed 2 degC") == "found \"20 degC\"; allowed 2 °C");
  CHECK(unit_signs("a lone \" quote\n3 degC") == "a lone \" quote\n3 °C");  // a line ends what is quoted
  CHECK(bide::report::ascii(unit_signs("36 degC, 4 m2")) == "36 C, 4 m2");
}

TEST_CASE("an input is told with the sign of its unit") {
  CHECK(bide::report::setting_words("/raft/floor_area_m2", "4") == "raft: floor area 4 m²");
  CHECK(bide::report::setting_words("/weather/air_temperature_degC", "5") == "weather: air temperature 5 °C");
}
