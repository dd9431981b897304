// The stepper with the real system is of second order where the problem is smooth.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "bide/march/reference.hpp"
#include "bide/march/sdirk2.hpp"
#include "bide/system/system.hpp"
#include "support/runs.hpp"

using namespace bide;

namespace {

// Warm enough not to shiver, one dry man, nothing happens: four hours for the start to die away, then the
// window. At 18 degC shivering sets in within the window and the order in the largest error is 1.76: control
// switches cost order.
const std::string mild = R"({
  "format": "bide scenario 1", "start_time_utc": "2031-02-03T18:00:00Z", "duration_h": 24,
  "position": {"latitude_deg": 49, "longitude_deg": -21},
  "weather": {"kind": "constant", "air_temperature_degC": 21, "water_temperature_degC": 20,
    "wind_speed_m_s": 6},
  "raft": {"kind": "offshore_4"},
  "crew": [{"sex": "male", "age_years": 35, "height_m": 1.75, "mass_kg": 75}],
  "boarding": {"kind": "dry"}
})";

constexpr double from_s = 14400, window_s = 2400;

struct Errors {
  double temperature_K = 0, water_kg = 0;
};

}  // namespace

TEST_CASE("half the step, a quarter of the error") {
  const test::Run run = test::load_run(mild);
  const system::Forcings<double> forcings(run.weather);
  system::System<double> system(run.compiled, forcings);
  std::vector<double> start = system.start();
  march::Sdirk2<double> warm(start.size());
  for (double t = 0; t < from_s; t += 30) warm.do_step(system, start, t, 30);

  const auto slope = [&](double t, const std::vector<double>& x, std::vector<double>& k) {
    system.slope(t, x, k);
  };
  std::vector<double> exact = start;
  march::reference_advance(slope, exact, from_s, from_s + window_s, 1e-11, 1e-11);

  const auto error = [&](double h) {
    std::vector<double> x = start;
    march::Sdirk2<double> stepper(x.size());
    for (double t = 0; t < window_s - 0.5 * h; t += h) stepper.do_step(system, x, from_s + t, h);
    Errors e;
    for (const auto& b : system.blocks())
      for (std::size_t i = b.begin; i < b.implicit_end; ++i)
        if (i != system::at::vapour && i != system::at::co2)
          e.temperature_K = std::max(e.temperature_K, std::abs(x[i] - exact[i]));
    const auto water = static_cast<std::size_t>(system::person_offset(0) + body::at::body_water);
    e.water_kg = std::abs(x[water] - exact[water]);
    return e;
  };
  const Errors at_100 = error(100), at_50 = error(50), at_25 = error(25);
  for (const auto& [coarse, fine] : {std::pair{at_100, at_50}, std::pair{at_50, at_25}}) {
    const double thermal = std::log2(coarse.temperature_K / fine.temperature_K);
    const double fluid = std::log2(coarse.water_kg / fine.water_kg);
    CAPTURE(thermal);
    CAPTURE(fluid);
    CHECK(thermal > 1.8);
    CHECK(thermal < 2.2);
    CHECK(fluid > 1.8);
    CHECK(fluid < 2.2);
  }
  CHECK(at_100.temperature_K < 1e-3);
}
