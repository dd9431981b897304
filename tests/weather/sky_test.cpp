#include "bide/weather/sky.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>
#include <numbers>

using namespace bide;
using namespace bide::weather;

TEST_CASE("clear-sky irradiance by apparent elevation") {
  struct Row {
    double elevation_deg, irradiance_W_m2;
  };
  // pvlib test values of the Haurwitz model (elevations 5 to 90), the rest by hand from its formula.
  for (const Row& row : {Row{5, 48.6298687941956}, Row{10, 135.741748091813}, Row{30, 487.894132885425},
                         Row{50, 778.766689344363}, Row{90, 1035.09203253450}, Row{80, 1018.4392837646},
                         Row{20, 316.0358060394}, Row{2, 7.0667024632}})
    CHECK(clear_sky_irradiance_W_m2(row.elevation_deg) == doctest::Approx(row.irradiance_W_m2).epsilon(1e-9));
  for (double elevation_deg : {-20.0, -0.05, -0.001, 0.0})
    CHECK(clear_sky_irradiance_W_m2(elevation_deg) == 0);
}

TEST_CASE("cloud transmission by oktas") {
  // 1 - 0.75 (N/8)^3.4, N = 0..8.
  const double expected[] = {1,
                             0.9993623897241484,
                             0.9932693455761893,
                             0.9732842375194898,
                             0.928950785944825,
                             0.8482763358616023,
                             0.7179867205170971,
                             0.5236911579799112,
                             0.25};
  for (int oktas = 0; oktas <= 8; ++oktas)
    CHECK(cloud_transmission(oktas / 8.0) == doctest::Approx(expected[oktas]).epsilon(1e-10));
  // Zenith 40 deg, N = 0.75: 559.14414133 W/m2.
  CHECK(clear_sky_irradiance_W_m2(50) * cloud_transmission(0.75) == doctest::Approx(559.14414133));
}

TEST_CASE("diffuse share by clearness") {
  CHECK(diffuse_share(0) == 1);
  CHECK(diffuse_share(0.1) == doctest::Approx(0.991));
  // 0.9511 - 0.0802 + 1.097 - 2.07975 + 0.771
  CHECK(diffuse_share(0.5) == doctest::Approx(0.65915));
  CHECK(diffuse_share(0.9) == 0.165);
  // The three pieces meet.
  CHECK(diffuse_share(0.2199) == doctest::Approx(diffuse_share(0.2201)).epsilon(2e-3));
  CHECK(diffuse_share(0.7999) == doctest::Approx(diffuse_share(0.8001)).epsilon(5e-3));
}

TEST_CASE("sun and sky on a seated person") {
  // Sun overhead, 1000 of 1361 W/m2: clearness 0.73475, diffuse 0.95110 - 0.11785 + 2.36889 - 6.59956
  // + 3.59528 = 0.19786, beam 802.14 W/m2: 0.177 x 802.14 + 0.5 x 197.86.
  CHECK(seated_irradiance_W_m2(90, 1, 1000) == doctest::Approx(240.9).epsilon(1e-3));
  // 30 deg, thick cloud: 100 of 680.5 W/m2, diffuse 1 - 0.09 x 0.14695 = 0.98677, beam 2.645 W/m2.
  CHECK(seated_irradiance_W_m2(30, 1, 100) == doctest::Approx(0.246 * 2.645 + 0.5 * 98.677).epsilon(1e-3));
  // Midway between the rows of 30 and 45 deg.
  const double sine = std::sin(37.5 * std::numbers::pi / 180), clear_W_m2 = 1361 * sine * 0.9;
  CHECK(seated_irradiance_W_m2(37.5, 1, clear_W_m2) ==
        doctest::Approx(0.241 * 0.835 * 0.9 * 1361 + 0.5 * 0.165 * clear_W_m2).epsilon(1e-6));
  CHECK(seated_irradiance_W_m2(0, 1, 5) == 0);
  CHECK(seated_irradiance_W_m2(-5, 1, 5) == 0);
  // From all directions a convex body shows a quarter of its surface on the mean (Cauchy): what a beam of 1
  // W/m2 brings, weighted by the cosine of the elevation.
  double mean = 0;
  constexpr int steps = 900;
  for (int i = 0; i < steps; ++i) {
    const double deg = (i + 0.5) * 90 / steps, s = std::sin(deg * std::numbers::pi / 180);
    const double beam_W_m2 = 0.835 * 0.9 * 1361, global = 0.9 * 1361 * s;
    mean += (seated_irradiance_W_m2(deg, 1, global) - 0.5 * 0.165 * global) / beam_W_m2 *
            std::cos(deg * std::numbers::pi / 180) * (std::numbers::pi / 2 / steps);
  }
  CHECK(mean == doctest::Approx(0.25).epsilon(0.02));
}

TEST_CASE("clear-sky emissivity and long-wave") {
  struct Row {
    double t_degC, e_Pa, emissivity, longwave_W_m2;
  };
  // Brutsaert 1975 worked by hand, vapour pressures from psychrolib 1.1.1.
  constexpr double sigma = 5.670374419e-8;
  for (const Row& row :
       {Row{30, 3184.522683, 0.8987104586, 430.389654}, Row{20, 1637.162590, 0.8211489815, 343.869209},
        Row{10, 982.396220, 0.7671651126, 279.619108}, Row{0, 519.480535, 0.7040257646, 222.231240},
        Row{-5, 341.499504, 0.6648277722, 194.909091}}) {
    const double emissivity = sky_emissivity(row.t_degC, row.e_Pa, 0);
    CHECK(emissivity == doctest::Approx(row.emissivity).epsilon(1e-8));
    const double sky_K = sky_temperature_degC(row.t_degC, emissivity) + 273.15;
    CHECK(sigma * std::pow(sky_K, 4) == doctest::Approx(row.longwave_W_m2).epsilon(1e-7));
  }
}

TEST_CASE("long-wave under mean cloud of two climates") {
  constexpr double sigma = 5.670374419e-8;
  struct Climate {
    double t_degC, specific_humidity, pressure_Pa, cloud, longwave_W_m2;
  };
  // January means of a ship atlas. 50 N 20 W by hand: e = 0.006567 x 1012 / (0.622 + 0.378 x 0.006567)
  // = 10.642 hPa, 1.24 (10.642/283.813)^(1/7) = 0.77572, x (1 + 0.17 x 0.76^2) = 0.85189, x sigma T^4
  // (367.91) = 313.42 W/m2. 15 N 70 W: 415.56 W/m2 (worked in a reference table, same formulas).
  for (const Climate& c :
       {Climate{10.663, 6.567e-3, 101200, 0.76, 313.42}, Climate{26.253, 16.767e-3, 101430, 0.47, 415.56}}) {
    const double e_Pa = c.specific_humidity * c.pressure_Pa / (0.622 + 0.378 * c.specific_humidity);
    const double sky_K = sky_temperature_degC(c.t_degC, sky_emissivity(c.t_degC, e_Pa, c.cloud)) + 273.15;
    CHECK(sigma * std::pow(sky_K, 4) == doctest::Approx(c.longwave_W_m2).epsilon(1e-3));
  }
}

TEST_CASE("the sky is never warmer than a black body at air temperature") {
  // 30 degC, saturated (4246 Pa), overcast: 1.24 (42.46/303.15)^(1/7) 1.17 = 1.095 is held at 1.
  CHECK(sky_emissivity(30, 4246, 1) == 1);
  CHECK(sky_temperature_degC(30, 1) == doctest::Approx(30));
  CHECK(sky_emissivity(5, 700, 1) > sky_emissivity(5, 700, 0.5));
}
