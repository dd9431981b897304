#include "bide/weather/gaps.hpp"

#include <doctest/doctest.h>

#include "bide/core/interpolate.hpp"
#include "bide/core/time_utc.hpp"
#include "bide/weather/sea.hpp"

using namespace bide;
using namespace bide::weather;

namespace {

constexpr double hour = 3600;
const double start = parse_time_utc("2031-02-03T00:00Z").value();

Samples at_hours(const std::vector<double>& hours, double value) {
  Samples s;
  for (double h : hours) {
    s.unix_s.push_back(start + h * hour);
    s.value.push_back(value);
  }
  return s;
}

double at(const Samples& s, double h) {
  return interpolate_linear(s.unix_s, s.value, start + h * hour);
}

const Span run{start, start + 24 * hour};
const GapRule three_hours{3 * hour, hour, std::nullopt};

}  // namespace

TEST_CASE("a gap up to the longest is bridged and noted, an ordinary step is not") {
  Samples s = at_hours({0, 1, 4, 5, 6}, 10);
  s.value = {10, 10, 16, 10, 10};
  const Filled filled = fill_gaps(Quantity::wind_speed, s, {start, start + 6 * hour}, three_hours);
  CHECK(filled.problems.empty());
  CHECK(filled.notes ==
        std::vector<std::string>{"wind speed: 1 short gap bridged, the longest from 2031-02-03T01:00:00Z to "
                                 "2031-02-03T04:00:00Z (3 h)"});
  CHECK(at(filled.samples, 2) == doctest::Approx(12));
}

TEST_CASE("a longer gap is a problem that names quantity, times and length") {
  const Samples s = at_hours({0, 1, 12, 24}, 10);
  const Filled filled = fill_gaps(Quantity::wind_speed, s, run, three_hours);
  REQUIRE(filled.problems.size() == 2);
  CHECK(filled.problems[0] ==
        "wind speed is missing from 2031-02-03T01:00:00Z to 2031-02-03T12:00:00Z (11 h), longer than "
        "/weather/longest_gap_h allows (3 h); give /weather/fallback/wind_speed_m_s");
  CHECK(filled.problems[1].find("2031-02-04T00:00:00Z (12 h)") != std::string::npos);
  // The same gap outside the run does not matter.
  CHECK(fill_gaps(Quantity::wind_speed, s, {start, start + hour}, three_hours).problems.empty());
  // One that only reaches into the run does.
  CHECK(fill_gaps(Quantity::wind_speed, s, {start + 11 * hour, start + 12 * hour}, three_hours)
            .problems.size() == 1);
  // A quantity without a fallback key does not offer one.
  CHECK(fill_gaps(Quantity::rain, s, run, three_hours).problems[0].find("fallback") == std::string::npos);
}

TEST_CASE("a fallback fills a long gap, with ramps of an hour") {
  Samples s = at_hours({0, 1, 11, 12}, 10);
  const Filled filled = fill_gaps(Quantity::wind_speed, s, {start, start + 12 * hour}, {3 * hour, hour, 4.0});
  CHECK(filled.problems.empty());
  CHECK(filled.notes == std::vector<std::string>{
                            "wind speed: 4 m/s from 2031-02-03T01:00:00Z to 2031-02-03T11:00:00Z (10 h)"});
  CHECK(at(filled.samples, 1) == 10);
  CHECK(at(filled.samples, 1.5) == doctest::Approx(7));
  CHECK(at(filled.samples, 2) == doctest::Approx(4));
  CHECK(at(filled.samples, 6) == doctest::Approx(4));
  CHECK(at(filled.samples, 10) == doctest::Approx(4));
  CHECK(at(filled.samples, 11) == 10);
}

TEST_CASE("gaps at the ends of the run") {
  const Samples s = at_hours({2, 3, 4}, 10);
  const Filled held = fill_gaps(Quantity::pressure, s, {start, start + 5 * hour}, three_hours);
  CHECK(held.problems.empty());
  CHECK(held.notes.size() == 1);
  CHECK(at(held.samples, 0) == 10);
  CHECK(fill_gaps(Quantity::pressure, s, run, three_hours).problems.size() == 1);  // 4 h to 24 h
  const Filled filled = fill_gaps(Quantity::pressure, s, run, {3 * hour, hour, 1000.0});
  CHECK(filled.problems.empty());
  CHECK(at(filled.samples, 24) == 1000);
  CHECK(at(filled.samples, 5) == doctest::Approx(1000));
  CHECK(at(filled.samples, 4) == 10);
}

TEST_CASE("a quantity missing throughout") {
  const Filled refused = fill_gaps(Quantity::dew_point, {}, run, three_hours);
  CHECK(refused.problems ==
        Problems{"dew point is missing throughout; give /weather/fallback/dew_point_degC"});
  const Filled filled = fill_gaps(Quantity::dew_point, {}, run, {3 * hour, hour, 5.0});
  CHECK(filled.problems.empty());
  CHECK(filled.notes == std::vector<std::string>{"dew point: not in the file, 5 degC throughout"});
  CHECK(at(filled.samples, 12) == 5);
}

TEST_CASE("waves from the wind where the file has none") {
  const Samples wind = at_hours({0, 6, 12, 18, 24}, 10);
  const FilledWaves none = fill_waves({}, {}, wind, run, three_hours);
  CHECK(none.notes.size() == 2);
  // 0.22 x 10^2 / 9.80665 = 2.24337 m; T_z = 0.518876 x 1.026 x 10 = 5.32367 s.
  CHECK(at(none.height, 7) == doctest::Approx(2.24337).epsilon(1e-5));
  CHECK(at(none.period, 7) == doctest::Approx(5.32367).epsilon(1e-5));

  // Height known but for ten hours, period never: the period follows from whatever the height is.
  Samples height = at_hours({0, 2, 4, 14, 16, 18, 20, 22, 24}, 1.0);
  const FilledWaves part = fill_waves(height, {}, wind, run, three_hours);
  CHECK(at(part.height, 4) == 1.0);
  CHECK(at(part.height, 6) == doctest::Approx(2.24337).epsilon(1e-5));
  CHECK(at(part.height, 14) == 1.0);
  CHECK(at(part.period, 6) == doctest::Approx(5.32367).epsilon(1e-5));
  // sqrt(1 x 9.80665 / 0.22) = 6.67650 m/s raises 1 m: T_z = 0.518876 x 1.026 x 6.67650 = 3.55435 s.
  CHECK(at(part.period, 0) == doctest::Approx(3.55435).epsilon(1e-5));
}

TEST_CASE("the rows must cover the run") {
  Observations file;
  file.row_unix_s = {start, start + 24 * hour};
  CHECK_FALSE(coverage_problem(file, run).has_value());
  CHECK(coverage_problem(file, {start - 1, start + 5}).value() ==
        "covers 2031-02-03T00:00:00Z to 2031-02-04T00:00:00Z; the run needs 2031-02-02T23:59:59Z to "
        "2031-02-03T00:00:05Z");
  CHECK(coverage_problem(file, {start, start + 25 * hour}).has_value());
}
