#include "bide/weather/sea.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>
#include <numbers>

using namespace bide::weather;

namespace {
constexpr double pi = std::numbers::pi;
}

TEST_CASE("wind profile over the sea") {
  struct Row {
    double height_m, ratio;
  };
  // ln(z / 2e-4) / ln(10 / 2e-4).
  for (const Row& row : {Row{0.5, 0.72312443}, Row{1, 0.78718741}, Row{2, 0.85125038}, Row{5, 0.93593703},
                         Row{19.5, 1.06172302}}) {
    CHECK(wind_at_height_m_s(1, 10, row.height_m) == doctest::Approx(row.ratio).epsilon(1e-7));
    CHECK(wind_at_height_m_s(row.ratio, row.height_m, 10) == doctest::Approx(1).epsilon(1e-7));
  }
}

TEST_CASE("fully developed sea of a wind") {
  struct Row {
    double wind_m_s, height_m, period_s;
  };
  // Period: T_z = 0.518876 U19.5. Height by the spectrum's own integral, 0.0213371 U19.5^2; the rounded 0.22
  // U10^2/g agrees with it within 1 %.
  for (const Row& row : {Row{4.8733, 0.533428, 2.594381}, Row{9.7466, 2.133713, 5.188763},
                         Row{14.6199, 4.800854, 7.783144}, Row{24.3665, 13.335705, 12.971906}}) {
    const SeaState sea = fully_developed_sea(row.wind_m_s);
    CHECK(sea.wave_height_m == doctest::Approx(row.height_m).epsilon(0.01));
    CHECK(sea.wave_period_s == doctest::Approx(row.period_s).epsilon(1e-4));
    CHECK(period_of_height_s(sea.wave_height_m) == doctest::Approx(sea.wave_period_s).epsilon(1e-12));
  }
  // 0.22 x 10^2 / 9.80665 = 2.24337 m.
  CHECK(fully_developed_sea(10).wave_height_m == doctest::Approx(2.24337).epsilon(1e-5));
}

TEST_CASE("vertical acceleration of what follows the surface") {
  struct Row {
    double height_m, period_s, half_Hz, one_Hz;
  };
  // sqrt(A/4 E1(B / w^4)) with the cut at 0.5 Hz and at 1 Hz, worked apart from this code.
  for (const Row& row :
       {Row{0.5, 3, .464159, .689368}, Row{1, 4, .637923, .860528}, Row{2, 5.5, .791272, 1.000597},
        Row{3, 6.5, .908953, 1.122146}, Row{4, 7.5, .958227, 1.163049}, Row{6, 9, 1.058414, 1.261673},
        Row{9, 11, 1.125672, 1.320109}, Row{2.133713, 5.188763, 0.924406, 1.180336},
        Row{13.335705, 12.971906, 1.251786, 1.451510}}) {
    CHECK(vertical_acceleration_m_s2({row.height_m, row.period_s}, pi) ==
          doctest::Approx(row.half_Hz).epsilon(2e-6));
    CHECK(vertical_acceleration_m_s2({row.height_m, row.period_s}, 2 * pi) ==
          doctest::Approx(row.one_Hz).epsilon(2e-6));
  }
  // With the cut at five times the peak frequency it is the same for every wind: 1.047971 m/s2 with the
  // spectrum's own height; w_p = 0.877 g / U19.5 (Stewart), rounded from 2 pi / 0.730430 per U19.5.
  for (double wind : {5.0, 15.0, 25.0}) {
    const SeaState sea{0.0213371 * wind * wind, 0.518876 * wind};
    CHECK(vertical_acceleration_m_s2(sea, 5 * 2 * pi / (0.730430 * wind)) ==
          doctest::Approx(1.047971).epsilon(1e-5));
  }
}

TEST_CASE("a calm, or waves shorter than the raft, do not move it") {
  CHECK(vertical_acceleration_m_s2({0, 0}, pi) == 0);
  CHECK(vertical_acceleration_m_s2({0, 5}, pi) == 0);
  CHECK(vertical_acceleration_m_s2(fully_developed_sea(0.2), cut_off_rad_s(3)) == 0);
  CHECK(weighted_acceleration_m_s2({0, 0}, motion_band(pi)) == 0);
  CHECK(weighted_acceleration_m_s2(fully_developed_sea(0.2), motion_band(cut_off_rad_s(3))) == 0);
  // w^2 = g k with the wavelength twice 2.5 m: k = 2 pi / 5, w = sqrt(9.80665 x 1.256637) = 3.51047 rad/s.
  CHECK(cut_off_rad_s(2.5) == doctest::Approx(3.51047).epsilon(1e-6));
}

TEST_CASE("W_f by one-third octaves") {
  struct Row {
    double frequency_Hz, weight;
  };
  // ISO 2631-1 table 3 (second hand), three digits.
  for (const Row& row :
       {Row{0.1, .695}, Row{0.125, .895}, Row{0.16, 1.006}, Row{0.2, .992}, Row{0.25, .854}, Row{0.315, .619},
        Row{0.4, .384}, Row{0.5, .224}, Row{0.63, .116}, Row{0.8, .053}, Row{1.0, .0235}})
    CHECK(std::abs(motion_weight(row.frequency_Hz) - row.weight) < 6e-4);
  // The filter evaluated at lower bands: 0.0242 at 0.02 Hz, 0.1566 at 0.05 Hz.
  CHECK(motion_weight(0.02) == doctest::Approx(0.02418716).epsilon(1e-6));
  CHECK(motion_weight(0.05) == doctest::Approx(0.15664171).epsilon(1e-6));
}

TEST_CASE("weighted acceleration") {
  struct Row {
    double height_m, period_s, cut_rad_s, weighted;
  };
  // Simpson's rule with 60,000 intervals in frequency over the complex filter, worked apart from this code.
  for (const Row& row :
       {Row{1, 4, 2 * pi, 0.4312853195753957}, Row{3, 6.5, 2 * pi, 0.6997703350552655},
        Row{6, 9, 2 * pi, 0.8137453979754865}, Row{2, 5.5, 3.51047003099735, 0.59262674338392},
        Row{4, 12, 5.550540477856759, 0.3190598057543583}})
    CHECK(weighted_acceleration_m_s2({row.height_m, row.period_s}, motion_band(row.cut_rad_s)) ==
          doctest::Approx(row.weighted).epsilon(1e-6));
  // Twice as high at the same period shakes twice as much.
  CHECK(weighted_acceleration_m_s2({2, 5}, motion_band(pi)) ==
        doctest::Approx(2 * weighted_acceleration_m_s2({1, 5}, motion_band(pi))));
}
