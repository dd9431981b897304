#include "bide/weather/load.hpp"

#include <doctest/doctest.h>

#include <chrono>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <numbers>
#include <sstream>

#include "bide/core/moist_air.hpp"
#include "bide/core/time_utc.hpp"
#include "bide/weather/sky.hpp"
#include "bide/weather/sun.hpp"
#include "bide/weather/variable.hpp"

using namespace bide;
using namespace bide::weather;
using scenario::WeatherKind;

namespace {

constexpr double hour = 3600;

Site site(const char* start, double duration_h, double latitude_deg = 50, double longitude_deg = -20) {
  return {parse_time_utc(start).value(), duration_h * hour, latitude_deg, longitude_deg, 2.5};
}

scenario::SteadyWeather stated() {
  scenario::SteadyWeather w;
  w.air_temperature_degC = 12;
  w.water_temperature_degC = 14;
  w.relative_humidity_pct = 80;
  w.wind_speed_m_s = 10;
  w.cloud_cover_fraction = 0.5;
  w.rain_mm_h = 3.6;
  w.pressure_hPa = 1000;
  return w;
}

scenario::FileWeather from_file(WeatherKind kind, const std::string& name) {
  scenario::FileWeather w;
  w.kind = kind;
  w.file = name;
  w.cloud_cover_fraction = 0.5;
  w.rain_mm_h = 0;
  w.longest_gap_h = 3;
  w.anemometer_height_m = kind == WeatherKind::ndbc ? 5 : 10;
  return w;
}

Record loaded(const scenario::ResolvedWeather& w, const Site& s, const std::filesystem::path& folder = {}) {
  const auto result = load_weather(w, s, folder);
  if (const auto* problems = std::get_if<scenario::Diagnostics>(&result))
    for (const auto& problem : *problems) MESSAGE(problem.pointer, " ", problem.message);
  REQUIRE(std::holds_alternative<Record>(result));
  return std::get<Record>(result);
}

scenario::Diagnostics refused(const scenario::ResolvedWeather& w, const Site& s,
                              const std::filesystem::path& folder = {}) {
  const auto result = load_weather(w, s, folder);
  REQUIRE(std::holds_alternative<scenario::Diagnostics>(result));
  return std::get<scenario::Diagnostics>(result);
}

// A folder that lives as long as the test.
struct Folder {
  std::filesystem::path path;
  explicit Folder(const std::string& name)
      : path(std::filesystem::temp_directory_path() /
             (name + std::to_string(std::chrono::steady_clock::now().time_since_epoch().count()))) {
    std::filesystem::create_directory(path);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder() { std::filesystem::remove_all(path); }
  void write(const std::string& name, const std::string& text) const { std::ofstream(path / name) << text; }
};

// The folder with real buoy files, or nothing.
std::filesystem::path buoy_folder() {
  const char* stated = std::getenv("BIDE_SHARED_DATA");
  std::filesystem::path folder =
      stated != nullptr ? stated : std::filesystem::path(BIDE_SOURCE_DIR) / ".." / "shared" / "data";
  folder /= "buoy";
  return std::filesystem::is_directory(folder) ? folder : std::filesystem::path{};
}

}  // namespace

TEST_CASE("steady weather") {
  const Site here = site("2024-07-15T16:30:00Z", 24);
  const Record record = loaded(stated(), here);
  const Forcing<double> f = record.at(0);
  CHECK(f.air_temperature_degC == 12);
  CHECK(f.water_temperature_degC == 14);
  // 0.8 x 1402.59 Pa (psychrolib 1.1.1 at 12 degC) / (461.5 x 285.15) = 0.0085267 kg/m3.
  CHECK(f.vapour_density_kg_m3 == doctest::Approx(0.0085267).epsilon(3e-4));
  CHECK(f.wind_10m_m_s == 10);
  CHECK(f.wind_raft_m_s == doctest::Approx(7.8718741));  // log profile, 2e-4 m
  CHECK(f.rain_kg_m2_s == doctest::Approx(0.001));
  CHECK(f.pressure_Pa == 100000);
  CHECK(f.wave_height_m == doctest::Approx(2.24337).epsilon(1e-5));
  CHECK(f.wave_period_s == doctest::Approx(5.32367).epsilon(1e-5));
  CHECK(f.is_day == 1);
  // Zenith 45.95275803548 deg (nrel-spa 2.0.2), half cloud: 1098 x 0.695172 x exp(-0.059 / 0.695172) x
  // 0.928950785945 = 651.4 W/m2.
  CHECK(f.global_irradiance_W_m2 == doctest::Approx(651.4).epsilon(1e-3));
  // e = 11.2207 hPa: 1.24 (11.2207/285.15)^(1/7) = 0.780926, x (1 + 0.17/4) = 0.814115; 285.15 x
  // 0.814115^0.25 = 270.86 K.
  CHECK(f.sky_temperature_degC == doctest::Approx(-2.29).epsilon(0.01));
  CHECK(record.knots_s().empty());
  CHECK(record.notes().size() == 2);
  // Held outside the run.
  CHECK(record.at(-5).global_irradiance_W_m2 == record.at(0).global_irradiance_W_m2);
  CHECK(record.at(99 * hour).global_irradiance_W_m2 == record.at(24 * hour).global_irradiance_W_m2);
}

TEST_CASE("waves stated in the scenario outrank those of the wind") {
  scenario::SteadyWeather w = stated();
  w.wave_height_m = 1;
  CHECK(loaded(w, site("2024-07-15T16:30:00Z", 1)).at(0).wave_period_s ==
        doctest::Approx(3.55435).epsilon(1e-5));
  w.wave_period_s = 4;
  const Forcing<double> f = loaded(w, site("2024-07-15T16:30:00Z", 1)).at(0);
  CHECK(f.wave_height_m == 1);
  CHECK(f.wave_period_s == 4);
  w.wave_height_m = 2;
  w.wave_period_s = 5.5;
  // Simpson's rule with 60,000 intervals, worked apart from this code, cut at 3.51047 rad/s.
  const Forcing<double> rough = loaded(w, site("2024-07-15T16:30:00Z", 1)).at(0);
  CHECK(rough.vertical_acceleration_m_s2 == doctest::Approx(0.8282698008).epsilon(1e-6));
  CHECK(rough.weighted_acceleration_m_s2 == doctest::Approx(0.5926267434).epsilon(1e-6));
  // The raft is 2.5 m long, cut at 3.51047 rad/s: by quadrature apart from this code, sqrt(A/4 E1(B/w^4)).
  const double B = std::pow(2 * std::numbers::pi / 4, 4) / std::numbers::pi, A = B / 4;
  double integral = 0;
  constexpr int steps = 200000;
  for (int i = 0; i < steps; ++i) {
    const double frequency = 3.51047003 * (i + 0.5) / steps;
    integral += 3.51047003 / steps * A / frequency * std::exp(-B / std::pow(frequency, 4));
  }
  CHECK(f.vertical_acceleration_m_s2 == doctest::Approx(std::sqrt(integral)).epsilon(1e-6));
}

TEST_CASE("day and night follow the sun") {
  // 2024-07-15 at 50 N 20 W: rise 5.46788 h, set 21.38962 h UTC (nrel-spa 2.0.2).
  const Record record = loaded(stated(), site("2024-07-15T00:00:00Z", 24));
  CHECK_FALSE(record.is_day((5.46788 - 0.02) * hour));
  CHECK(record.is_day((5.46788 + 0.02) * hour));
  CHECK(record.is_day((21.38962 - 0.02) * hour));
  CHECK_FALSE(record.is_day((21.38962 + 0.02) * hour));
  CHECK(record.at(2 * hour).global_irradiance_W_m2 == 0);
  CHECK(record.at(2 * hour).is_day == 0);
  // Noon by the sun at 13.4344941 h UTC.
  CHECK(record.local_solar_hour(13.4344941 * hour) == doctest::Approx(12).epsilon(1e-3));
  // The sun does not set at 74 N in June.
  const Record north = loaded(stated(), site("2024-06-21T00:00:00Z", 24, 74, 30));
  for (int h = 0; h <= 24; ++h) CHECK(north.is_day(h * hour));
}

TEST_CASE("interpolated sun stays within 6 W/m2 of the sun itself") {
  // The chord of Haurwitz' curve over 10 min errs most at the equator's sunrise: by
  // 1098 exp(-3) 27 / 0.059 (0.0436)^2 / 8 = 5.9 W/m2 (its largest second derivative, at sin h = 0.059 / 3).
  scenario::SteadyWeather w = stated();
  w.cloud_cover_fraction = 0;
  double worst_W_m2 = 0;
  for (double latitude_deg : {0.0, 35.0, 60.0}) {
    const Site here = site("2024-03-20T00:03:00Z", 48, latitude_deg, 10);
    const Record record = loaded(w, here);
    for (double t = 0; t < here.duration_s; t += 37) {
      const SunPosition sun = sun_position(here.start_unix_s + t, latitude_deg, 10);
      worst_W_m2 = std::max(worst_W_m2, std::abs(record.at(t).global_irradiance_W_m2 -
                                                 clear_sky_irradiance_W_m2(sun.apparent_elevation_deg)));
    }
  }
  MESSAGE("largest difference: ", worst_W_m2, " W/m2");
  CHECK(worst_W_m2 < 6);
}

TEST_CASE("a daily cycle is warmest at its hour of local solar time") {
  scenario::DailyWeather w{stated()};
  w.air_temperature_swing_K = 4;
  w.warmest_hour_local_h = 14;
  // At 20 W on this day the sun's noon is at 13.4344941 h UTC, so 14 h by the sun is 15.4345 h UTC.
  const Record record = loaded(w, site("2024-07-15T00:00:00Z", 48));
  CHECK(record.at(15.4345 * hour).air_temperature_degC == doctest::Approx(16).epsilon(1e-4));
  CHECK(record.at(27.4345 * hour).air_temperature_degC == doctest::Approx(8).epsilon(1e-3));
  CHECK(record.at(21.4345 * hour).air_temperature_degC == doctest::Approx(12).epsilon(1e-3));
  // Relative humidity is held.
  const Forcing<double> night = record.at(27.4345 * hour);
  CHECK(night.vapour_density_kg_m3 ==
        doctest::Approx(0.8 * saturation_density_kg_m3(night.air_temperature_degC)).epsilon(1e-4));
}

TEST_CASE("a table of observations") {
  const Folder folder("bide_csv_");
  folder.write(
      "w.csv",
      "time_utc,air_temperature_degC,water_temperature_degC,relative_humidity_pct,wind_speed_m_s,rain_mm_h\n"
      "2031-02-03T17:50:00Z,10,8,90,10,0\n"
      "2031-02-03T18:50:00Z,12,8,90,12,0\n"
      "2031-02-03T19:50:00Z,12,9,90,12,7.2\n"
      "2031-02-03T20:50:00Z,6,9,90,2,7.2\n");
  const Record record =
      loaded(from_file(WeatherKind::csv, "w.csv"), site("2031-02-03T18:05:00Z", 2), folder.path);
  CHECK(record.at(0).air_temperature_degC == doctest::Approx(10.5));      // a quarter of the way
  CHECK(record.at(45 * 60).air_temperature_degC == doctest::Approx(12));  // on a row
  CHECK(record.at(75 * 60).rain_kg_m2_s == doctest::Approx(0.001));       // half of 7.2 mm/h
  CHECK(record.at(47 * 60).air_temperature_degC == doctest::Approx(12));  // past a row, before the next knot
  CHECK(record.at(75 * 60).water_temperature_degC == doctest::Approx(8.5));
  CHECK(record.at(0).pressure_Pa == doctest::Approx(101325));
  // 90 % of 1227.995 Pa (10 degC) to 1402.591 Pa (12 degC); at 10.5 degC 1269.7 Pa: 0.9 x 1269.7 / (461.5 x
  // 283.65).
  CHECK(record.at(0).vapour_density_kg_m3 == doctest::Approx(0.0087294).epsilon(1e-3));
  CHECK(record.knots_s() == std::vector<double>{45 * 60, 105 * 60});
  REQUIRE(record.notes().size() == 4);
  CHECK(record.notes()[0] == "pressure: not in the file, 1013.25 hPa throughout");
}

TEST_CASE("dew point above air temperature is saturation, and noted") {
  const Folder folder("bide_dew_");
  folder.write("w.csv",
               "time_utc,air_temperature_degC,water_temperature_degC,dew_point_degC,wind_speed_m_s,cloud_"
               "cover_fraction\n"
               "2031-02-03T18:00:00Z,10,8,11,10,1\n2031-02-03T19:00:00Z,10,8,9,10,1\n");
  const Record record =
      loaded(from_file(WeatherKind::csv, "w.csv"), site("2031-02-03T18:00:00Z", 1), folder.path);
  CHECK(record.at(0).vapour_density_kg_m3 == doctest::Approx(saturation_density_kg_m3(10.0)));
  bool noted = false;
  for (const std::string& note : record.notes()) noted = noted || note.find("dew point: 1 values above") == 0;
  CHECK(noted);
}

TEST_CASE("wind is brought to 10 m before a fallback is used") {
  const Folder folder("bide_ndbc_");
  folder.write("b.txt",
               "YY MM DD hh mm WSPD ATMP WTMP DEWP PRES\n"
               "31 02 03 18 00 10.0 5.0 6.0 3.0 1000.0\n31 02 03 19 00 99.0 5.0 6.0 3.0 1000.0\n"
               "31 02 03 23 00 99.0 5.0 6.0 3.0 1000.0\n31 02 04 00 00 10.0 5.0 6.0 3.0 1000.0\n");
  scenario::FileWeather w = from_file(WeatherKind::ndbc, "b.txt");
  w.longest_gap_h = 4;
  const Site here = site("2031-02-03T18:00:00Z", 6);
  const auto problems = refused(w, here, folder.path);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].pointer == "/weather/file");
  CHECK(problems[0].message ==
        "b.txt: wind speed is missing from 2031-02-03T18:00:00Z to 2031-02-04T00:00:00Z (6 h), longer than "
        "/weather/longest_gap_h allows (4 h); give /weather/fallback/wind_speed_m_s");
  w.fallback.wind_speed_m_s = 3;
  const Record record = loaded(w, here, folder.path);
  CHECK(record.at(0).wind_10m_m_s == doctest::Approx(10 / 0.93593703));  // measured at 5 m
  CHECK(record.at(3 * hour).wind_10m_m_s == doctest::Approx(3));
  // Waves follow the wind in use: 0.22 x 3^2 / 9.80665 m.
  CHECK(record.at(3 * hour).wave_height_m == doctest::Approx(0.201904).epsilon(1e-5));
}

TEST_CASE("what cannot be loaded says why") {
  const Folder folder("bide_bad_");
  const Site here = site("2031-02-03T18:00:00Z", 2);
  CHECK(refused(from_file(WeatherKind::csv, "none.csv"), here, folder.path).at(0).message ==
        "none.csv: is no file that can be read");
  folder.write("short.csv", "time_utc,air_temperature_degC\n2031-02-03T18:00Z,5\n2031-02-03T19:00Z,5\n");
  CHECK(
      refused(from_file(WeatherKind::csv, "short.csv"), here, folder.path).at(0).message ==
      "short.csv: covers 2031-02-03T18:00:00Z to 2031-02-03T19:00:00Z; the run needs 2031-02-03T18:00:00Z to "
      "2031-02-03T20:00:00Z");
  // Water, dew point and wind are not there: all three are told.
  folder.write("air.csv", "time_utc,air_temperature_degC\n2031-02-03T18:00Z,5\n2031-02-03T20:00Z,5\n");
  CHECK(refused(from_file(WeatherKind::csv, "air.csv"), here, folder.path).size() == 3);
}

TEST_CASE("real buoy files") {
  const std::filesystem::path folder = buoy_folder();
  if (folder.empty()) {
    MESSAGE("skipped: no buoy files here");
    return;
  }
  SUBCASE("January loads, and gives the file's own values at its own times") {
    const Site here = site("2012-01-10T12:20:00Z", 120, 43.2, -69.1);
    const Record record = loaded(from_file(WeatherKind::ndbc, "44005_2012-01.txt"), here, folder);
    std::ifstream in(folder / "44005_2012-01.txt");
    std::string line;
    int compared = 0;
    std::getline(in, line);
    while (std::getline(in, line)) {
      int year, month, day, hh, mm;
      double direction, wind, gust, height, dominant, period, waves_from, pressure, air, water;
      std::istringstream fields(line);
      fields >> year >> month >> day >> hh >> mm >> direction >> wind >> gust >> height >> dominant >>
          period >> waves_from >> pressure >> air >> water;
      const double t = *unix_s_from_civil({year, month, day, hh, mm, 0}) - here.start_unix_s;
      if (t < 0 || t > here.duration_s) continue;
      const Forcing<double> f = record.at(t);
      CHECK(f.air_temperature_degC == doctest::Approx(air));
      CHECK(f.water_temperature_degC == doctest::Approx(water));
      CHECK(f.pressure_Pa == doctest::Approx(100 * pressure));
      CHECK(f.wind_10m_m_s == doctest::Approx(wind / 0.93593703).epsilon(1e-6));
      if (height < 99) CHECK(f.wave_height_m == doctest::Approx(height));
      ++compared;
    }
    CHECK(compared == 120);
    CHECK(record.knots_s().size() == 120);
  }
  SUBCASE("July loads") {
    loaded(from_file(WeatherKind::ndbc, "44005_2012-07.txt"), site("2012-07-03T00:00:00Z", 240, 43.2, -69.1),
           folder);
  }
  SUBCASE("the failed wind sensor of November is named") {
    const auto problems = refused(from_file(WeatherKind::ndbc, "44005_2012-10_11.txt"),
                                  site("2012-11-26T00:00:00Z", 110, 43.2, -69.1), folder);
    REQUIRE(problems.size() == 2);
    CHECK(problems[0].message ==
          "44005_2012-10_11.txt: wind speed is missing from 2012-11-27T20:50:00Z to 2012-11-28T07:50:00Z (11 "
          "h), "
          "longer than /weather/longest_gap_h allows (3 h); give /weather/fallback/wind_speed_m_s");
    CHECK(problems[1].message.find("from 2012-11-28T22:50:00Z to 2012-11-30T14:00:00Z (39.2 h)") !=
          std::string::npos);
  }
  SUBCASE("earlier in that file only the pressure fails, on 30 October") {
    scenario::FileWeather w = from_file(WeatherKind::ndbc, "44005_2012-10_11.txt");
    const Site here = site("2012-10-28T00:00:00Z", 120, 43.2, -69.1);
    REQUIRE(refused(w, here, folder).size() == 1);
    CHECK(refused(w, here, folder)[0].message.find("pressure is missing from 2012-10-30T12:50:00Z") !=
          std::string::npos);
    w.longest_gap_h = 6;
    loaded(w, here, folder);
  }
}

TEST_CASE("forcing in lanes holds each lane's own values") {
  const Record record = loaded(stated(), site("2024-07-15T00:00:00Z", 24));
  Forcing<Lanes<4>> lanes{};
  for (int i = 0; i < 4; ++i) set_lane(lanes, i, record.at(i * 6 * hour));
  for (int i = 0; i < 4; ++i) {
    CHECK(lanes.is_day[i] == record.at(i * 6 * hour).is_day);
    CHECK(lanes.global_irradiance_W_m2[i] == record.at(i * 6 * hour).global_irradiance_W_m2);
  }
}

TEST_CASE("from a validated scenario") {
  const std::string text = R"({
    "format": "bide scenario 1",
    "name": "Grey week",
    "setting": "An invented night at sea",
    "start_time_utc": "2024-07-15T16:30:00Z",
    "duration_h": 24,
    "position": {"latitude_deg": 50, "longitude_deg": -20},
    "weather": WEATHER,
    "raft": {"kind": "offshore_6", "floor_area_m2": 3.141592653589793},
    "crew": [{"sex": "female", "age_years": 35, "height_m": 1.7, "mass_kg": 70}],
    "boarding": {"kind": "dry"},
    "stores": {"pack": "none"}
  })";
  const Folder folder("bide_valid_");
  const auto validated = [&](const std::string& weather) {
    std::string whole = text;
    whole.replace(whole.find("WEATHER"), 7, weather);
    const scenario::Validated result = scenario::validate_text(whole, "grey_week.json", folder.path);
    if (const auto* problems = std::get_if<scenario::Diagnostics>(&result))
      for (const auto& problem : *problems) MESSAGE(scenario::to_string(problem));
    REQUIRE(std::holds_alternative<scenario::ValidScenario>(result));
    return std::get<scenario::ValidScenario>(result);
  };
  const auto steady = validated(R"({"kind": "constant", "air_temperature_degC": 12,)"
                                R"( "water_temperature_degC": 14, "wind_speed_m_s": 10})");
  // A circle of 3.14159 m2 has a diameter of 2 m.
  CHECK(following_length_m(steady) == doctest::Approx(2));
  const auto record = load(steady);
  REQUIRE(std::holds_alternative<Record>(record));
  CHECK(std::get<Record>(record).at(0).air_temperature_degC == 12);
  CHECK(std::get<Record>(record).at(0).is_day == 1);

  folder.write("w.csv", "time_utc,air_temperature_degC\nnow,3\n");
  const auto broken = load(validated(R"({"kind": "csv", "file": "w.csv"})"));
  REQUIRE(std::holds_alternative<scenario::Diagnostics>(broken));
  CHECK(scenario::to_string(std::get<scenario::Diagnostics>(broken).at(0))
            .find("grey_week.json: /weather/file: w.csv: line 2: time_utc \"now\"") == 0);
}

TEST_CASE("variable weather is that of its hours, on straight lines between them, with a daily cycle") {
  const scenario::VariableWeather w{{stated(), 1.5, 14}, 0.7, 2, 0.2, 5};
  const Site here = site("2031-02-03T18:00:00Z", 30);
  const Record record = loaded(w, here);
  const std::vector<Hour> hours = variable_hours(w, here.duration_s);
  for (const std::size_t i : {0, 7, 29}) {
    const Forcing<double> at = record.at(static_cast<double>(i) * hour);
    CHECK(at.wind_10m_m_s == doctest::Approx(hours[i].wind_10m_m_s).epsilon(1e-9));
    // 1.5 K warmer at 14 h of local solar time, 1.5 K colder at 2 h.
    const double from_warmest = (record.local_solar_hour(static_cast<double>(i) * hour) - 14) / 24;
    CHECK(at.air_temperature_degC ==
          doctest::Approx(hours[i].air_temperature_degC + 1.5 * std::cos(2 * std::acos(-1.0) * from_warmest))
              .epsilon(1e-9));
    CHECK(at.wave_height_m == doctest::Approx(hours[i].sea.wave_height_m).epsilon(1e-9));
    const Forcing<double> half = record.at((static_cast<double>(i) + 0.5) * hour);
    CHECK(half.wind_10m_m_s ==
          doctest::Approx((hours[i].wind_10m_m_s + hours[i + 1].wind_10m_m_s) / 2).epsilon(1e-9));
    CHECK(at.water_temperature_degC == 14);
    CHECK(at.pressure_Pa == doctest::Approx(100000));
  }
  REQUIRE(record.notes().size() == 1);
  CHECK(record.notes()[0].find("one of many") != std::string::npos);
}
