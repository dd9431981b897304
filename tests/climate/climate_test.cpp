#include "bide/climate/climate.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <string>

#include "bide/climate/month.hpp"

using namespace bide::climate;
using doctest::Approx;

namespace {

double value(Field field, const Point& place, int month) {
  const auto found = mean(field, place, month, 1000);
  REQUIRE(found.has_value());
  return found->value;
}

const Month& month_of(const std::variant<Month, std::string>& result) {
  if (const std::string* words = std::get_if<std::string>(&result)) MESSAGE(*words);
  return std::get<Month>(result);
}

}  // namespace

TEST_CASE("means of a cell are those of the ship climatology") {
  // COADS cell 49 N 21 W, read with ncdump: January 11.959 and 10.663 degC, 11.50 m/s; July 16.076 degC. A
  // byte holds half a step: 0.075 K of the sea, 0.16 K of the air, 0.05 m/s.
  const Point north{49, -21};
  CHECK(std::abs(value(Field::sea_temperature, north, 1) - 11.959) <= 0.0751);
  CHECK(std::abs(value(Field::air_temperature, north, 1) - 10.663) <= 0.161);
  CHECK(std::abs(value(Field::wind_speed, north, 1) - 11.50) <= 0.051);
  CHECK(std::abs(value(Field::sea_temperature, north, 7) - 16.076) <= 0.0751);
  // The month before January is December, not another field.
  CHECK(std::abs(value(Field::pressure, {-50, 90}, 1) - 1000) < 3);
}

TEST_CASE("where ships are few one gale is not the month") {
  // 50 S 120 W in July: the ships' cell has 19.0 m/s, and those beside it no report; the atlas of Esbensen
  // and Kushnir has 10.3 m/s at its node there (230 reports; both read with Python's netCDF4).
  CHECK(std::abs(value(Field::wind_speed, {-50, -120}, 7) - 10.3) <= 0.1);
}

TEST_CASE("the nearest cell is found across the date line and near the poles") {
  const auto west = mean(Field::sea_temperature, {0, -179.999}, 6, 1000);
  const auto east = mean(Field::sea_temperature, {0, 179.999}, 6, 1000);
  REQUIRE((west && east));
  CHECK(west->distance_km == Approx(distance_km({0, 180}, {1, 179})).epsilon(1e-3));
  CHECK(east->distance_km == Approx(west->distance_km).epsilon(1e-3));
  CHECK(mean(Field::sea_temperature, {89.9, 0}, 6, 3000).has_value());
  // One degree of latitude is 111.19 km on a sphere of 6371 km.
  CHECK(distance_km({49, -21}, {50, -21}) == Approx(111.19).epsilon(1e-3));
  CHECK_FALSE(mean(Field::cloud_cover, {36, 18}, 1, 500).has_value());
}

TEST_CASE("land is told from sea, and the nearest sea is named") {
  CHECK(is_land({52, 13}));
  CHECK(is_land({-25, 135}));
  CHECK(is_land({-85, 0}));
  CHECK_FALSE(is_land({10, -30}));
  CHECK_FALSE(is_land({50.3, -1}));  // a channel of 150 km
  CHECK_FALSE(is_land({0, 180}));
  CHECK_FALSE(is_land({0, -180}));
  CHECK_FALSE(is_land({90, 0}));
  const Point sea = nearest_sea({52, 13});
  CHECK_FALSE(is_land(sea));
  CHECK(distance_km({52, 13}, sea) < 250);
  const Point here{10, -30};
  CHECK(nearest_sea(here) == here);
  const auto refused = month_at({52, 13}, 1);
  CHECK(std::get<std::string>(refused).find("is land; the nearest sea is at 53.8,14.2") == 0);
}

TEST_CASE("spread of the wind follows from its two means") {
  // Rayleigh: a wind without a prevailing direction has mean s sqrt(pi/2).
  CHECK(component_spread_m_s(10, 0) == Approx(10 / std::sqrt(std::numbers::pi / 2)).epsilon(1e-9));
  CHECK(component_spread_m_s(5, 5) == 0);
  // Rice law at v = s = 1 (scipy 1.10.1, stats.rice(1).mean() = 1.5485724605511453).
  CHECK(mean_speed_m_s(1, 1) == Approx(1.5485724605511453).epsilon(1e-12));
  CHECK(component_spread_m_s(1.5485724605511453, 1) == Approx(1).epsilon(1e-9));
  CHECK(vector_speed_m_s(1.5485724605511453, 1) == Approx(1).epsilon(1e-9));
  // Where the series for large arguments takes over, both forms agree.
  CHECK(mean_speed_m_s(1, 34.64) == Approx(mean_speed_m_s(1, 34.642)).epsilon(1e-4));
  // The January wind of 49 N 21 W: mean 11.5, spread 8.6 m/s.
  CHECK(month_of(month_at({49, -21}, 1)).wind_spread_m_s == Approx(8.6).epsilon(0.01));
}

TEST_CASE("the sea has a climate in every month, and thin data are said") {
  // Share of sea cells x months with a climate, by area, south of 60 N and north of 60 S.
  double with = 0, all = 0, least = 1e9, most = -1e9;
  for (int latitude = -58; latitude <= 58; latitude += 4)
    for (int longitude = -178; longitude < 180; longitude += 6) {
      const Point place{latitude + 0.5, longitude + 0.5};
      if (is_land(place)) continue;
      const double area = std::cos(place.latitude_deg * std::numbers::pi / 180);
      for (const int month : {1, 7}) {
        all += area;
        const auto found = month_at(place, month);
        if (const Month* m = std::get_if<Month>(&found)) {
          with += area;
          least = std::min(least, m->sea_temperature_degC);
          most = std::max(most, m->sea_temperature_degC);
        }
      }
    }
  MESSAGE("share of sea x months with a climate: ", with / all);
  CHECK(with / all > 0.99);
  CHECK(least >= -1.95);
  CHECK(most < 35);
}

TEST_CASE("rain over all seas together is what satellites and gauges give") {
  // GPCP V2.3, ocean, 2009 to 2013: 2.89 mm/d (Adler et al. 2018, table 3).
  double rain = 0, area = 0;
  for (int latitude = -89; latitude < 90; latitude += 2)
    for (int longitude = -179; longitude < 180; longitude += 4) {
      const Point place{latitude + 0.1, longitude + 0.1};
      if (is_land(place)) continue;
      const auto found = month_at(place, 6);
      if (const Month* m = std::get_if<Month>(&found)) {
        const double a = std::cos(place.latitude_deg * std::numbers::pi / 180);
        rain += a * m->rain_mm_h * 24;
        area += a;
      }
    }
  CHECK(rain / area == Approx(2.89).epsilon(0.1));
}
