// Runs under a moored buoy's hourly record (station 44005, 43.2 N 69.1 W, 2012), where that record is at
// hand: in the folder named by BIDE_SHARED_DATA, else in shared/data beside the source folder.
#include <cmath>
#include <cstdlib>

#include "scenarios/shipped.hpp"

using namespace bide;

namespace {

std::filesystem::path record_folder() {
  const char* named = std::getenv("BIDE_SHARED_DATA");
  const std::filesystem::path data = named != nullptr
                                         ? std::filesystem::path(named)
                                         : std::filesystem::path(BIDE_SOURCE_DIR) / ".." / "shared" / "data";
  return data / "buoy";
}

test::Json under_record(const std::string& file, const std::string& start) {
  auto json = test::shipped("long_pack_far_offshore");
  json["setting"] = "Invented crew under a real record.";
  json["start_time_utc"] = start;
  json["duration_h"] = 120;
  json["position"] = {{"latitude_deg", 43.2}, {"longitude_deg", -69.1}};
  json["weather"] = {{"kind", "ndbc"}, {"file", (record_folder() / file).string()}};
  return json;
}

bool at_hand(const std::string& file) {
  if (std::filesystem::exists(record_folder() / file)) return true;
  MESSAGE("skipped: no " << (record_folder() / file).string());
  return false;
}

}  // namespace

TEST_CASE("five days of January by the buoy") {
  const std::string file = "44005_2012-01.txt";
  if (!at_hand(file)) return;
  const auto run = test::simulated(under_record(file, "2012-01-03T00:00:00Z"));
  CHECK(run.time_s.back() == 120 * 3600.0);
  // Rows of the file: 2012-01-03 11:50 ATMP 0.4 WTMP 7.8; 2012-01-04 10:50 ATMP -8.6 WTMP 7.7, the coldest of
  // these days; printed to 0.1.
  const auto warm = test::row_at(run, 11 + 50 / 60.0), cold = test::row_at(run, 34 + 50 / 60.0);
  CHECK(run.outside_air_degC[warm] == doctest::Approx(0.4).epsilon(1e-9));
  CHECK(run.sea_degC[warm] == doctest::Approx(7.8).epsilon(1e-9));
  CHECK(run.outside_air_degC[cold] == doctest::Approx(-8.6).epsilon(1e-9));
  CHECK(run.sea_degC[cold] == doctest::Approx(7.7).epsilon(1e-9));
  CHECK(run.inside_air_degC[cold] > run.outside_air_degC[cold]);
  CHECK(run.inside_air_degC[cold] < run.inside_air_degC[warm]);
  for (const auto& ledger : run.ledgers) {
    CAPTURE(ledger.name);
    CHECK(std::abs(ledger.relative()) < 1e-9 * 5);
  }
}

TEST_CASE("a start in late November is refused, naming the wind") {
  const std::string file = "44005_2012-10_11.txt";
  if (!at_hand(file)) return;
  const auto scenario = test::valid(under_record(file, "2012-11-24T00:00:00Z"));
  const auto record = weather::load(scenario);
  REQUIRE(std::holds_alternative<scenario::Diagnostics>(record));
  bool wind_named = false;
  for (const auto& each : std::get<scenario::Diagnostics>(record)) {
    const std::string text = scenario::to_string(each);
    MESSAGE(text);
    wind_named = wind_named || (text.find("wind speed is missing") != std::string::npos &&
                                text.find("2012-11-") != std::string::npos);
  }
  CHECK(wind_named);
}
