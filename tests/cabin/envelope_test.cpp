#include "bide/cabin/envelope.hpp"

#include <doctest/doctest.h>

#include <numbers>
#include <span>

#include "support/lanes.hpp"

using namespace bide;
using namespace bide::cabin;
using doctest::Approx;
using scenario::CanopyKind;

TEST_CASE("a hemisphere on a cylinder") {
  const double pi = std::numbers::pi;
  const Geometry g = raft_geometry(pi, 1.5, 0.25);  // radius 1, tubes 0.5 high, dome 1 high
  CHECK(g.canopy_area_m2 == Approx(2 * pi));
  CHECK(g.volume_m3 == Approx(0.5 * pi + 2 * pi / 3));
  CHECK(g.perimeter_m == Approx(2 * pi));
  CHECK(g.tube_side_area_m2 == Approx(2 * pi * 2 * (pi * 0.25 / 2)));  // two half circumferences
  CHECK(g.sky_view == Approx(0.75));                                   // mean of (1 + cos) / 2 over it
}

TEST_CASE("flatter and taller domes: closed forms and Thomsen's approximation") {
  const double pi = std::numbers::pi;
  // Half of 8.67188 (a = 1, c = 0.5) and of 21.4784 (c = 2), the textbook spheroid areas.
  CHECK(raft_geometry(pi, 1.0, 0.25).canopy_area_m2 == Approx(4.33594).epsilon(1e-5));
  CHECK(raft_geometry(pi, 2.5, 0.25).canopy_area_m2 == Approx(10.7392).epsilon(1e-5));
  for (const double c : {0.3, 0.9, 0.999999, 1.0, 1.000001, 1.4}) {
    const double p = 1.6075;  // Thomsen: within 1.1 % of the true area
    const double thomsen = 2 * pi * std::pow((1 + 2 * std::pow(c, p)) / 3, 1 / p);
    CHECK(raft_geometry(pi, 0.5 + c, 0.25).canopy_area_m2 == Approx(thomsen).epsilon(0.011));
  }
}

TEST_CASE("flat covers and open rafts") {
  const Geometry flat = raft_geometry(2.0, 0.4, 0.25);
  CHECK(flat.canopy_area_m2 == 2.0);
  CHECK(flat.volume_m3 == Approx(0.8));
  CHECK(flat.sky_view == 1);
  const Geometry open = raft_geometry(2.0, 0, 0.25);
  CHECK(open.canopy_area_m2 == 0);
  CHECK(open.volume_m3 == 0);
  CHECK(open.tube_side_area_m2 > 0);
}

TEST_CASE("bodies are as heavy as water") {
  CHECK(body_volume_m3(300) == Approx(0.3));
}

namespace {
struct TableRow {
  double wind_m_s;
  const Sourced& u_W_m2K;
};
// Reference ranges for stand-in shelters: calm (taken at 0.5 m/s), 2, 5 and 10 m/s.
constexpr TableRow single[]{{0.5, constants::canopy_u_single_calm},
                            {2, constants::canopy_u_single_2_m_s},
                            {5, constants::canopy_u_single_5_m_s},
                            {10, constants::canopy_u_single_10_m_s}};
constexpr TableRow twofold[]{{0.5, constants::canopy_u_double_calm},
                             {5, constants::canopy_u_double_5_m_s},
                             {10, constants::canopy_u_double_10_m_s}};

void check_layers(std::span<const TableRow> table, CanopyKind skins, double within) {
  for (const auto& [wind_m_s, u] : table) {
    CHECK(layered_u_W_m2K(wind_m_s, skins, 0.0) == Approx(u.low).epsilon(within));
    CHECK(layered_u_W_m2K(wind_m_s, skins, 0.5) == Approx(u.value).epsilon(within));
    CHECK(layered_u_W_m2K(wind_m_s, skins, 1.0) == Approx(u.high).epsilon(within));
  }
}
}  // namespace

TEST_CASE("the layers of the model sum to the table: single skin within 1 %, two skins within 7 %") {
  check_layers(single, CanopyKind::one_skin, 0.01);
  check_layers(twofold, CanopyKind::two_skins, 0.07);
}

TEST_CASE("a second skin saves about the third to half that greenhouses and tents report") {
  const double one = layered_u_W_m2K(2.0, CanopyKind::one_skin, 0.5);
  const double two = layered_u_W_m2K(2.0, CanopyKind::two_skins, 0.5);
  CHECK(1 - two / one > 0.34);  // second film 34-37 %, tent liner about half
  CHECK(1 - two / one < 0.52);
}

TEST_CASE("more wind and a higher position never lose less heat") {
  for (int tenth = 0; tenth < 10; ++tenth)
    for (double v = 0; v < 12; v += 0.5) {
      const double p = tenth / 10.0;
      CHECK(layered_u_W_m2K(v, CanopyKind::one_skin, p + 0.1) > layered_u_W_m2K(v, CanopyKind::one_skin, p));
      CHECK(layered_u_W_m2K(v + 0.5, CanopyKind::two_skins, p) >
            layered_u_W_m2K(v, CanopyKind::two_skins, p));
    }
}

TEST_CASE("sun on the canopy") {
  // One skin: 20 % through, 35 % absorbed.
  const CanopySun one = canopy_sun(CanopyKind::one_skin, 0.20, 0.35);
  CHECK(one.transmitted == 0.20);
  CHECK(one.outer_absorbed == 0.35);
  CHECK(one.inner_absorbed == 0);
  // Two, by hand: 1 - 0.45^2 = 0.7975; 0.2 / 0.7975 = 0.250784 reaches the inner skin.
  const CanopySun two = canopy_sun(CanopyKind::two_skins, 0.20, 0.35);
  CHECK(two.transmitted == Approx(0.0501567).epsilon(1e-5));
  CHECK(two.inner_absorbed == Approx(0.0877743).epsilon(1e-5));
  CHECK(two.outer_absorbed == Approx(0.389498).epsilon(1e-5));
  // With 0.45 + 0.2^2 0.45 / 0.7975 reflected, nothing is lost.
  CHECK(two.transmitted + two.inner_absorbed + two.outer_absorbed + 0.45 + 0.04 * 0.45 / 0.7975 == Approx(1));
  CHECK(canopy_sun(CanopyKind::none).transmitted == 1);
  CHECK_THROWS_AS(canopy_sun(CanopyKind::one_skin, 0.7, 0.5), std::invalid_argument);
}

TEST_CASE("canopy in lanes") {
  using test::check_lanes;
  const test::Points wind{0.2, 1.5, 7, 30}, position{0, 0.3, 0.5, 1};
  check_lanes(
      "factor", [](auto p, auto v) { return canopy_film_factor(p, v); }, position, wind);
  check_lanes(
      "gap", [](auto p) { return canopy_gap_W_m2K(decltype(p)(0.16), p); }, position);
  check_lanes(
      "layers", [](auto v, auto p) { return layered_u_W_m2K(v, CanopyKind::two_skins, p); }, wind, position);
  check_lanes(
      "log", [](auto p) { return along_range_log(constants::leakage_calm_L_s_m2, p); }, position);
}
