// Weather that is shared: the same bits as weather of one's own, whatever was asked for before.
#include "bide/weather/cache.hpp"

#include <doctest/doctest.h>
#include <unistd.h>

#include <array>
#include <bit>
#include <cstdint>
#include <filesystem>
#include <string>

#include "bide/weather/sea.hpp"

using namespace bide;
using namespace bide::weather;

namespace {

constexpr double hour = 3600;

// The invented scenario with a buoy's record, one in steady weather, and one with a daily cycle.
scenario::ValidScenario shipped(const std::string& name) {
  auto valid =
      scenario::validate_file(std::filesystem::path(BIDE_SOURCE_DIR) / "scenarios" / (name + ".json"));
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(valid));
  return std::get<scenario::ValidScenario>(std::move(valid));
}

Record from(Cache& cache, const scenario::ValidScenario& valid) {
  auto loaded = cache.load(valid);
  REQUIRE(std::holds_alternative<Record>(loaded));
  return std::get<Record>(std::move(loaded));
}

Record alone(const scenario::ValidScenario& valid) {
  return std::get<Record>(load(valid));
}

void check_same_bits(const Record& a, const Record& b, double end_s) {
  using Bits = std::array<std::uint64_t, sizeof(Forcing<double>) / sizeof(std::uint64_t)>;
  constexpr double step_s = 137;
  for (double t = 0; t <= end_s; t += step_s)
    REQUIRE(std::bit_cast<Bits>(a.at(t)) == std::bit_cast<Bits>(b.at(t)));
  CHECK(a.knots_s() == b.knots_s());
  CHECK(a.notes() == b.notes());
}

}  // namespace

TEST_CASE("what a cache hands out is what load() makes, and is shared") {
  Cache cache;
  for (const char* name : {"three_weeks_by_buoy", "unknown_crew_cold_sea", "tropics_little_water"}) {
    CAPTURE(name);
    const scenario::ValidScenario valid = shipped(name);
    const double end_s = valid.scenario.duration_h * hour;
    const Record first = from(cache, valid), again = from(cache, valid);
    check_same_bits(first, alone(valid), end_s);
    check_same_bits(again, alone(valid), end_s);
    CHECK(again.same_as(first));
  }
}

TEST_CASE("other weather, another place, raft, time or length is another record") {
  Cache cache;
  scenario::ValidScenario valid = shipped("three_weeks_by_buoy");
  const Record first = from(cache, valid);
  const auto changed = [&](auto change) {
    scenario::ValidScenario other = valid;
    change(other);
    const Record record = from(cache, other);
    CHECK_FALSE(record.same_as(first));
    check_same_bits(record, alone(other), other.scenario.duration_h * hour);
  };
  changed([](auto& other) { std::get<scenario::FileWeather>(other.weather).rain_mm_h = 2; });
  changed([](auto& other) { std::get<scenario::FileWeather>(other.weather).anemometer_height_m = 9; });
  changed([](auto& other) { other.scenario.position.latitude_deg += 1; });
  changed([](auto& other) { other.scenario.raft->floor_area_m2 = 5; });
  changed([](auto& other) { other.start_unix_s += hour; });
  changed([](auto& other) { other.scenario.duration_h -= 24; });
  CHECK(from(cache, valid).same_as(first));
}

TEST_CASE("drawn weather does not pile up, and what gave way is built again") {
  Cache cache;
  scenario::ValidScenario valid = shipped("unknown_crew_cold_sea");
  const Record first = from(cache, valid);
  scenario::ValidScenario other = valid;
  for (std::size_t i = 0; i < 2 * Cache::most_records; ++i) {
    const double degC = 1 + 0.1 * static_cast<double>(i);
    std::get<scenario::SteadyWeather>(other.weather).air_temperature_degC = degC;
    CHECK(from(cache, other).at(0).air_temperature_degC == degC);
  }
  const Record again = from(cache, valid);
  CHECK_FALSE(again.same_as(first));
  check_same_bits(again, first, valid.scenario.duration_h * hour);
}

TEST_CASE("a file is read once, and one that cannot be read is refused as without a cache") {
  const std::filesystem::path folder =
      std::filesystem::temp_directory_path() / ("bide_cache_test_" + std::to_string(::getpid()));
  std::filesystem::remove_all(folder);
  std::filesystem::create_directories(folder);
  scenario::ValidScenario valid = shipped("three_weeks_by_buoy");
  auto& weather = std::get<scenario::FileWeather>(valid.weather);
  std::filesystem::copy_file(valid.folder / weather.file, folder / "station.txt");
  valid.folder = folder;
  weather.file = "station.txt";
  Cache cache;
  from(cache, valid);
  std::filesystem::remove_all(folder);
  weather.rain_mm_h = 3;  // another record of the same file
  CHECK(from(cache, valid).at(0).rain_kg_m2_s == doctest::Approx(3 / 3600.0));
  Cache fresh;
  for (int i = 0; i < 2; ++i) {
    const auto refused = fresh.load(valid), as_ever = load(valid);
    REQUIRE(std::holds_alternative<scenario::Diagnostics>(refused));
    CHECK(to_string(std::get<scenario::Diagnostics>(refused).front()) ==
          to_string(std::get<scenario::Diagnostics>(as_ever).front()));
  }
}

TEST_CASE("wave motion is that of the sea at each knot, also when a sea comes back or goes calm") {
  const Site site{1.9e9, 3 * hour, 50, -20, 2.5};
  const double cut = cut_off_rad_s(site.raft_length_m);
  const MotionBand band = motion_band(cut);
  const SeaState seas[] = {{2, 6}, {2, 6}, {0, 0}, {2, 6}, {2, 7}, {1, 7}};
  const auto sea_at = [&](double t_s) { return seas[static_cast<std::size_t>(t_s / 600) % 6]; };
  const auto atmosphere = [&](double t_s, const SunPosition&) {
    return Atmosphere{10, 12, 900, 8, 101325, 0.5, 0, sea_at(t_s)};
  };
  const Record record = RecordBuilder::build(site, sun_track(site), {}, atmosphere, {});
  for (double t = 0; t <= site.duration_s; t += 600) {
    CAPTURE(t);
    CHECK(record.at(t).vertical_acceleration_m_s2 == vertical_acceleration_m_s2(sea_at(t), cut));
    CHECK(record.at(t).weighted_acceleration_m_s2 == weighted_acceleration_m_s2(sea_at(t), band));
  }
  const Site elsewhere{1.9e9, 3 * hour, 51, -20, 2.5};
  CHECK_THROWS_AS(RecordBuilder::build(elsewhere, sun_track(site), {}, atmosphere, {}),
                  std::invalid_argument);
}
