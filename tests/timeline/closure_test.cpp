// An hour of two wet people in a raft: nothing gets lost, and the reference goes the same way.
#include <doctest/doctest.h>

#include <cmath>

#include "bide/march/reference.hpp"
#include "bide/timeline/balance.hpp"
#include "support/marching.hpp"
#include "support/runs.hpp"

using namespace bide;

namespace {

// Six hours: the swim, boarding, spray and rain, food and water, clothes wrung.
test::Run wet_run() {
  test::Run run = test::load_run(test::cold_swim_text);
  auto& s = run.compiled.structure;
  constexpr double end_s = 6 * 3600;
  s.end_s = end_s;
  std::erase_if(s.stops, [&](const system::ScheduledStop& stop) { return stop.time_s > end_s; });
  return run;
}

}  // namespace

TEST_CASE("heat, water, CO2, food energy and salt close") {
  const test::Run run = wet_run();
  const system::Forcings<double> forcings(run.weather);
  system::System<double> system(run.compiled, forcings);
  const std::vector<double> start = system.start();
  const std::vector<double> end = test::march_through(system);
  const auto ledgers = timeline::ledgers(system, start, end)[0];
  REQUIRE(ledgers.size() == 5);
  for (const auto& ledger : ledgers) {
    CAPTURE(ledger.name);
    CHECK(ledger.throughput > 0);
    CHECK(std::abs(ledger.relative()) < 1e-11);
  }
}

TEST_CASE("the stepper and the reference reach the same state in an hour") {
  const test::Run run = wet_run();
  const system::Forcings<double> forcings(run.weather);
  system::System<double> system(run.compiled, forcings);
  std::vector<double> x = system.start();
  march::Sdirk2<double> stepper(x.size());
  for (int i = 0; i < 360; ++i) stepper.do_step(system, x, 10.0 * i, 10);
  std::vector<double> exact = system.start();
  const auto slope = [&](double t, const std::vector<double>& y, std::vector<double>& k) {
    system.slope(t, y, k);
  };
  march::reference_advance(slope, exact, 0, 3600, 1e-8, 1e-8);
  for (const auto& b : system.blocks())
    for (std::size_t i = b.begin; i < b.implicit_end; ++i) {
      CAPTURE(i);
      CHECK(std::abs(x[i] - exact[i]) < 0.01);
    }
}
