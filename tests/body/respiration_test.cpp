#include "bide/body/respiration.hpp"

#include <doctest/doctest.h>

#include "body/lanes_agree.hpp"

using namespace bide::body;
using doctest::Approx;

namespace {

constexpr double mmHg_Pa = 133.322;

double mL_h(double metabolic_W, double vapour_mmHg) {
  return breath_water_kg_s(breath_latent_W(metabolic_W, vapour_mmHg * mmHg_Pa)) * 3600 * 1000;
}

}  // namespace

TEST_CASE("water in the breath: Freund & Sawka, IOM 1996, table 9-2") {
  struct Row {
    double metabolic_W, vapour_mmHg, printed_mL_h;
  };
  // 25 degC 65 %, 0 degC, -20 degC.
  const Row rows[] = {{100, 15, 10}, {100, 5, 13},  {100, 1, 15}, {300, 15, 30}, {300, 5, 40},
                      {300, 1, 45},  {600, 15, 60}, {600, 5, 80}, {600, 1, 90}};
  for (const Row& r : rows) {
    CAPTURE(r.metabolic_W);
    CAPTURE(r.vapour_mmHg);
    CHECK(mL_h(r.metabolic_W, r.vapour_mmHg) == Approx(r.printed_mL_h).epsilon(0.05));
  }
}

TEST_CASE("water in the breath against Mitchell 1972 (from memory)") {
  // 0.019 g/min x VO2 (L/min) x (44 - p mmHg), VO2 = 100 W / 348: 9.5 g/h at 15 mmHg; both fits, 6 %.
  CHECK(mL_h(100, 15) == Approx(9.5).epsilon(0.06));
}

TEST_CASE("heat of the breath after Fanger 1970") {
  // 100 W in air of 0 degC: 0.0014 x 100 x 34 = 4.76 W dry.
  CHECK(breath_dry_W(100.0, 0.0) == Approx(4.76));
  CHECK(breath_dry_W(100.0, 40.0) < 0);
  // The other printed form, 0.0023 M (44 - p mmHg), at 15 mmHg: 6.67 W.
  CHECK(breath_latent_W(100.0, 15 * mmHg_Pa) == Approx(6.67).epsilon(5e-3));
  CHECK(breath_latent_W(100.0, 6500.0) == 0);
}

TEST_CASE("breath in lanes agrees with double") {
  check_lanes(AS_LAMBDA(breath_dry_W), {{100, 0}, {90, 20}, {300, 40}, {500, -10}});
  check_lanes(AS_LAMBDA(breath_latent_W), {{100, 600}, {90, 2300}, {300, 7000}, {500, 100}});
  check_lanes(AS_LAMBDA(breath_water_kg_s), {{0}, {6}, {10}, {50}});
}
