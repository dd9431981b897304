// Simulations in lock step give what each gives alone.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <cstdint>

#include "bide/system/gather.hpp"
#include "support/marching.hpp"
#include "support/runs.hpp"

using namespace bide;

namespace {

using Block = std::array<system::Compiled<double>, block_width>;

Block alike(const system::Compiled<double>& base) {
  Block out;
  out.fill(base);
  return out;
}

// Different rafts, people and limits; the same march.
Block varied(const system::Compiled<double>& base) {
  Block out = alike(base);
  for (int lane = 1; lane < block_width; ++lane) {
    const int i = lane % 4;
    auto& c = out[static_cast<std::size_t>(lane)];
    c.raft.canopy_position = 0.3 * i;
    c.raft.leakage_position = 1 - 0.25 * i;
    c.raft.floor_area_m2 *= 1 + 0.05 * i;
    for (auto& p : c.persons) {
      p.mass_kg *= 1 + 0.04 * i;
      p.shivering_ceiling_W *= 1 - 0.05 * i;
      p.insulation_m2K_W[body::trunk] *= 1 - 0.1 * i;
      p.body_fat_pct += 2 * i;
    }
    c.stock.water_L *= 1 + 0.5 * i;
    c.fitted.soaked_insulation -= 0.05 * i;
    c.fitted.wet_skin_withholds -= 0.1 * i;
  }
  return out;
}

system::Compiled<BlockLanes> gathered(const Block& block) {
  std::array<const system::Compiled<double>*, block_width> each;
  for (std::size_t i = 0; i < block.size(); ++i) each[i] = &block[i];
  return system::gather<block_width>(each);
}

std::vector<BlockLanes> together(const Block& block, const weather::Record& weather) {
  const auto wide = gathered(block);
  const system::Forcings<BlockLanes> forcings(weather);
  system::System<BlockLanes> system(wide, forcings);
  return test::march_through(system);
}

// Largest |a - b| over the larger of |b| and 1 (the unit of the entry: kelvin, kilogram, joule...).
double apart(const std::vector<BlockLanes>& wide, int lane, const std::vector<double>& alone) {
  double worst = 0;
  for (std::size_t i = 0; i < alone.size(); ++i)
    worst = std::max(worst, std::abs(wide[i][lane] - alone[i]) / std::max(std::abs(alone[i]), 1.0));
  return worst;
}

// Exponentials of lanes are not those of a scalar: they differ in the last bits, and a
// day of steps carries that along. An error in the model would be many orders larger.
constexpr double tolerance = 1e-9;

}  // namespace

TEST_CASE("each lane ends where its own run ends") {
  for (const std::string& text : {test::minimal_text, test::cold_swim_text}) {
    const test::Run run = test::load_run(text);
    const Block block = varied(run.compiled);
    const auto wide = together(block, run.weather);
    for (int lane = 0; lane < block_width; ++lane) {
      CAPTURE(lane);
      const system::Forcings<double> forcings(run.weather);
      system::System<double> system(block[static_cast<std::size_t>(lane)], forcings);
      const std::vector<double> alone = test::march_through(system);
      const double difference = apart(wide, lane, alone);
      CAPTURE(difference);
      CHECK(difference < tolerance);
    }
    // They are different runs: somebody's core temperature tells.
    const auto core = static_cast<std::size_t>(system::person_offset(0));
    CHECK(std::abs(wide[core][0] - wide[core][3]) > 1e-3);
  }
}

TEST_CASE("a lane does not feel its neighbours, to the last bit") {
  const test::Run run = test::load_run(test::cold_swim_text);
  const auto a = together(varied(run.compiled), run.weather), b = together(alike(run.compiled), run.weather);
  for (std::size_t i = 0; i < a.size(); ++i) {
    CAPTURE(i);
    CHECK(std::bit_cast<std::uint64_t>(a[i][0]) == std::bit_cast<std::uint64_t>(b[i][0]));
  }
}

TEST_CASE("scenarios that would part ways are not gathered") {
  const test::Run run = test::load_run(test::minimal_text);
  const auto refused = [&](auto&& change) {
    Block block = alike(run.compiled);
    change(block[2].structure);
    CHECK_THROWS_AS(gathered(block), std::invalid_argument);
  };
  refused([](system::Structure& s) { s.stops.pop_back(); });
  refused([](system::Structure& s) { s.stops[3].index += 1; });
  refused([](system::Structure& s) { s.boarding_s += 60; });
  refused([](system::Structure& s) { s.ration_plan.injured_first = !s.ration_plan.injured_first; });
  refused([](system::Structure& s) { s.huddle = !s.huddle; });
  refused([](system::Structure& s) { s.aid[0] = !s.aid[0]; });
  refused([](system::Structure& s) { s.gear.bailer_L += 1; });
  refused([](system::Structure& s) { s.gear.food.sodium_mmol_kJ += 1; });
  refused([](system::Structure& s) { s.two_skin_sun.transmitted += 0.1; });
  refused([](system::Structure& s) { s.failures.push_back({scenario::FailureKind::capsize, 2}); });
}

TEST_CASE("amounts differ from lane to lane") {
  const test::Run run = test::load_run(test::cold_swim_text);
  Block block = alike(run.compiled);
  for (int lane = 0; lane < block_width; ++lane) {
    const int i = lane % 4;
    block[static_cast<std::size_t>(lane)].amounts = {10.0 * i, 0.2 + 0.2 * i, 0.3 * i, 1000.0 * i, 0};
  }
  const auto wide = together(block, run.weather);
  for (int i = 0; i < block_width; ++i) {
    const system::Forcings<double> forcings(run.weather);
    system::System<double> system(block[static_cast<std::size_t>(i)], forcings);
    CHECK(apart(wide, i, test::march_through(system)) < tolerance);
  }
  // They are different runs: what is left of the fat tells.
  const auto fat = static_cast<std::size_t>(system::person_offset(0) + body::at::fat_mass);
  CHECK(std::abs(wide[fat][3] - wide[fat][0]) > 1e-3);
}
