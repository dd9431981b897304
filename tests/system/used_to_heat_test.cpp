#include <doctest/doctest.h>

#include <string>

#include "support/runs.hpp"

using doctest::Approx;

namespace {

bide::body::Build<double> person(const std::string& heat_acclimatised) {
  std::string text = bide::test::minimal_text;
  const std::string before = "\"mass_kg\": 75";
  text.insert(text.find(before) + before.size(), ", \"heat_acclimatised\": " + heat_acclimatised);
  return bide::test::load_run(text).compiled.persons[0];
}

}  // namespace

TEST_CASE("people used to heat sweat earlier, more, wetter and less salt") {
  const auto unused = person("0"), half = person("0.5"), used = person("1");
  // ISO 7933: 0.85 and 1 of the skin, a quarter more sweat. Hessemer 1986: thresholds 0.36 K lower, that of
  // shivering too. Klous 2020: sodium and chloride at 60 %; the sweat of both stays within the sums of the
  // published ranges of Na, K and Cl, 15 to 165 mmol/L.
  CHECK(unused.greatest_wettedness == 0.85);
  CHECK(used.greatest_wettedness == 1);
  CHECK(used.greatest_sweat_W_m2 == Approx(1.25 * unused.greatest_sweat_W_m2));
  CHECK(unused.warm_shift_K == 0);
  CHECK(used.warm_shift_K == Approx(-0.36));
  CHECK(used.shivering_shift_K - unused.shivering_shift_K == Approx(0.36));
  CHECK(used.sweat_salt_mOsm_kg > 0.6 * unused.sweat_salt_mOsm_kg);
  CHECK(used.sweat_salt_mOsm_kg < 0.7 * unused.sweat_salt_mOsm_kg);
  CHECK(used.sweat_salt_mOsm_kg > 15);
  CHECK(unused.sweat_salt_mOsm_kg < 165);
  CHECK(half.warm_shift_K == Approx(used.warm_shift_K / 2));
  CHECK(half.greatest_wettedness == Approx(0.925));
}
