// What people do in the water: how much skin it meets, how fast it passes, how much heat they make.
#include <doctest/doctest.h>

#include "bide/system/system.hpp"
#include "support/near.hpp"
#include "support/runs.hpp"

using namespace bide;
using bide::test::Near;

namespace {

struct InTheSea {
  test::Run run;
  system::Forcings<double> forcings;
  system::System<double> system;

  explicit InTheSea(const std::string& habit)
      : run(test::load_run(R"({
          "format": "bide scenario 1", "start_time_utc": "2031-02-03T18:00:00Z", "duration_h": 1,
          "position": {"latitude_deg": 49, "longitude_deg": -21},
          "weather": {"kind": "constant", "air_temperature_degC": 12, "water_temperature_degC": 12,
            "wind_speed_m_s": 1, "wave_height_m": 0, "wave_period_s": 5},
          "crew": [{"sex": "male", "age_years": 35, "height_m": 1.75, "mass_kg": 75, "clothing": "nude"}],
          "boarding": {"kind": "none", "in_water": ")" +
                           habit + "\"}}")),
        forcings(run.weather),
        system(run.compiled, forcings) {
    const auto x = system.start();
    system.freeze(0, x);
  }
  const body::PersonCoefficients<double>& person() const { return system.coefficients().persons[0]; }
  // Film times the share of the skin that the water meets.
  double film_W_m2K(int segment) const {
    return person().skin_surface[segment].to_sea / run.compiled.persons[0].area_m2[segment];
  }
};

}  // namespace

// Nude, flat water: the still film of 100 W/(m2 K) on all skin but the head's.
TEST_CASE("floating still, the water meets all skin but the head's") {
  const InTheSea still("still");
  CHECK(still.film_W_m2K(body::trunk) == Near(100));
  CHECK(still.film_W_m2K(body::legs) == Near(100));
  CHECK(still.film_W_m2K(body::head) == 0);
}

TEST_CASE("a folded posture keeps the stated share of trunk, arms and legs from the water, and no more") {
  const InTheSea knees("knees_drawn_up"), huddle("huddled");
  CHECK(knees.film_W_m2K(body::trunk) == Near(60));
  CHECK(knees.film_W_m2K(body::arms) == Near(65));
  CHECK(knees.film_W_m2K(body::legs) == Near(75));
  CHECK(knees.film_W_m2K(body::feet) == Near(100));
  CHECK(huddle.film_W_m2K(body::trunk) == Near(55));
  CHECK(huddle.film_W_m2K(body::arms) == Near(75));
}

// 580 W/(m2 K) whatever the speed (Nadel et al. 1974, from memory); 6 met instead of 1 (Ainsworth et al.
// 2011, from memory), so five times the seated rate on top.
TEST_CASE("a swimmer loses more to the water and makes six times the seated heat") {
  const InTheSea still("still"), swimming("swimming");
  CHECK(swimming.film_W_m2K(body::trunk) == Near(580));
  const double seated_W = still.run.compiled.persons[0].basal_total_W * 1.15;
  CHECK(swimming.person().metabolic_W - swimming.person().shivering_W == Near(6 * seated_W));
}

TEST_CASE("spent arms no longer swim, and the water then passes as past the still") {
  InTheSea swimming("swimming");
  auto x = swimming.system.start();
  x[static_cast<std::size_t>(system::person_offset(0) + body::at::arms_used)] = 1.1;
  swimming.system.freeze(0, x);
  CHECK(swimming.film_W_m2K(body::trunk) == Near(100));
  CHECK(swimming.person().metabolic_W - swimming.person().shivering_W < 200);
}

TEST_CASE("who can no longer help themselves no longer swims") {
  InTheSea swimming("swimming");
  swimming.system.held.persons[0].able = 0;
  swimming.system.freeze(0, swimming.system.start());
  CHECK(swimming.person().metabolic_W - swimming.person().shivering_W < 200);
}
