#include "bide/weather/variable.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <boost/math/distributions/non_central_chi_squared.hpp>
#include <cmath>
#include <functional>

#include "bide/climate/month.hpp"
#include "bide/weather/sea.hpp"

using namespace bide::weather;
using doctest::Approx;

namespace {

// The January wind of the open North Atlantic.
bide::scenario::VariableWeather winter() {
  bide::scenario::VariableWeather c{};
  c.air_temperature_degC = 10.7;
  c.water_temperature_degC = 12;
  c.relative_humidity_pct = 82;
  c.wind_speed_m_s = 11.5;
  c.wind_spread_fraction = 8.6 / 11.5;
  c.cloud_cover_fraction = 0.76;
  c.pressure_hPa = 1012;
  c.rain_mm_h = 0.13;
  c.rain_hours_fraction = 0.15;
  c.air_temperature_spread_K = 2;
  c.air_temperature_swing_K = 0.5;
  c.warmest_hour_local_h = 14;
  c.seed = 7;
  return c;
}

constexpr double five_days_s = 120 * 3600.0;
// 20 years of hours: the sample error of a mean with a memory of a day is about 1 % of its spread.
constexpr double long_stay_s = 175200 * 3600.0;

double mean_of(const std::vector<Hour>& hours, const std::function<double(const Hour&)>& f) {
  double sum = 0;
  for (const Hour& h : hours) sum += f(h);
  return sum / static_cast<double>(hours.size());
}

double correlation(const std::vector<Hour>& hours, std::size_t lag,
                   const std::function<double(const Hour&)>& f) {
  const double mean = mean_of(hours, f);
  double together = 0, alone = 0;
  for (std::size_t i = 0; i < hours.size(); ++i) {
    const double here = f(hours[i]) - mean;
    alone += here * here;
    if (i + lag < hours.size()) together += here * (f(hours[i + lag]) - mean);
  }
  return together / alone;
}

double wind(const Hour& h) {
  return h.wind_10m_m_s;
}

}  // namespace

TEST_CASE("variable weather has the month's means") {
  const auto c = winter();
  const std::vector<Hour> hours = variable_hours(c, long_stay_s);
  CHECK(mean_of(hours, wind) == Approx(c.wind_speed_m_s).epsilon(0.02));
  CHECK(mean_of(hours, [](const Hour& h) { return h.air_temperature_degC; }) == Approx(10.7).epsilon(0.01));
  CHECK(mean_of(hours, [](const Hour& h) { return h.cloud_cover_fraction; }) == Approx(0.76).epsilon(0.02));
  CHECK(mean_of(hours, [](const Hour& h) { return h.rain_mm_h; }) == Approx(0.13).epsilon(0.06));
  CHECK(mean_of(hours, [](const Hour& h) { return h.rain_mm_h > 0 ? 1.0 : 0.0; }) ==
        Approx(0.15).epsilon(0.05));
  // Saturation cuts the damp end off: the mean falls a little short.
  CHECK(std::abs(mean_of(hours, [](const Hour& h) { return h.relative_humidity_pct; }) - 82) < 1);
  const double mean = mean_of(hours, [](const Hour& h) { return h.air_temperature_degC; });
  const double variance =
      mean_of(hours, [&](const Hour& h) { return std::pow(h.air_temperature_degC - mean, 2); });
  CHECK(variance == Approx(2.0 * 2.0).epsilon(0.05));
}

TEST_CASE("wind speed follows the Rice law, and forgets in a day") {
  auto c = winter();
  std::vector<Hour> hours = variable_hours(c, long_stay_s);
  const double spread_m_s = c.wind_spread_fraction * c.wind_speed_m_s;
  const double v = bide::climate::vector_speed_m_s(c.wind_speed_m_s, spread_m_s);
  // (speed / spread)^2 is non-central chi-squared with two degrees of freedom.
  const boost::math::non_central_chi_squared law(2, std::pow(v / spread_m_s, 2));
  for (const double share : {0.05, 0.5, 0.95}) {
    const double expected = spread_m_s * std::sqrt(boost::math::quantile(law, share));
    const double below =
        mean_of(hours, [&](const Hour& h) { return h.wind_10m_m_s <= expected ? 1.0 : 0.0; });
    CHECK(below == Approx(share).epsilon(0.1));
  }
  // Without a prevailing wind the square of the speed is correlated by the square of the components' own
  // correlation: exp(-1) after half the memory of a day.
  c.wind_spread_fraction = 1 / std::sqrt(std::acos(-1.0) / 2);
  hours = variable_hours(c, long_stay_s);
  CHECK(correlation(hours, 12, [](const Hour& h) { return h.wind_10m_m_s * h.wind_10m_m_s; }) ==
        Approx(std::exp(-1)).epsilon(0.08));
}

TEST_CASE("a steady wind and a dry month stay so") {
  auto c = winter();
  c.wind_spread_fraction = 0;
  c.rain_mm_h = 0;
  for (const Hour& h : variable_hours(c, five_days_s)) {
    CHECK(h.wind_10m_m_s == Approx(11.5).epsilon(1e-6));
    CHECK(h.rain_mm_h == 0);
    // Four days of it before the start: the sea is fully developed.
    CHECK(h.sea.wave_height_m == Approx(fully_developed_sea(11.5).wave_height_m).epsilon(1e-6));
  }
}

TEST_CASE("the same seed gives the same weather, however long the run; another gives another") {
  auto c = winter();
  const std::vector<Hour> first = variable_hours(c, five_days_s);
  CHECK(first.size() == 121);
  const std::vector<Hour> second = variable_hours(c, 2 * five_days_s);
  for (std::size_t i = 0; i < first.size(); ++i) {
    CHECK(first[i].wind_10m_m_s == second[i].wind_10m_m_s);
    CHECK(first[i].sea == second[i].sea);
  }
  c.seed = 8;
  CHECK(variable_hours(c, five_days_s)[5].wind_10m_m_s != first[5].wind_10m_m_s);
}

TEST_CASE("waves grow with time and outlast their wind") {
  // Shore Protection Manual 1984: 15 m/s for 10 h. t* = 9.80665 x 36000 / 15 = 23536, H* = 0.0016 x
  // (t* / 68.8)^0.75 = 0.12727, H = H* 15^2 / 9.80665 = 2.920 m.
  const Waves ten = blown({}, 15, 10);
  CHECK(ten.wind_sea_m == Approx(2.920).epsilon(1e-3));
  // Ten hours at once or one by one are the same.
  Waves steps;
  for (int i = 0; i < 10; ++i) steps = blown(steps, 15, 1);
  CHECK(steps.wind_sea_m == Approx(ten.wind_sea_m).epsilon(1e-9));
  CHECK(ten.together(15).wave_period_s < fully_developed_sea(15).wave_period_s);
  // The wind drops: the height does not, at first; later it does.
  Waves after = blown(ten, 3, 1);
  CHECK(after.together(3).wave_height_m == Approx(ten.wind_sea_m).epsilon(0.01));
  CHECK(after.together(3).wave_period_s > 4);
  for (int i = 0; i < 48; ++i) after = blown(after, 3, 1);
  CHECK(after.together(3).wave_height_m < 0.5 * ten.wind_sea_m);
  // A calm from the start is flat.
  CHECK(blown({}, 0, 5).together(0).wave_height_m == 0);
}

TEST_CASE("it rains when the sky is overcast, and the air is colder after a front than before it") {
  const std::vector<Hour> hours = variable_hours(winter(), long_stay_s);
  double before = 0, behind = 0;
  int fronts = 0;
  for (std::size_t i = 12; i + 12 < hours.size(); ++i) {
    if (hours[i].rain_mm_h > 0) CHECK(hours[i].cloud_cover_fraction > 0.76);
    if (!(hours[i].rain_mm_h > 0 && hours[i + 1].rain_mm_h == 0)) continue;
    ++fronts;
    before += hours[i].air_temperature_degC;
    behind += hours[i + 12].air_temperature_degC;
  }
  REQUIRE(fronts > 100);
  CHECK(before / fronts > behind / fronts + 0.5);
}
