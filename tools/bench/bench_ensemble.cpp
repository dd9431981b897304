// How many simulations a second an ensemble makes: the full model, nobody's end stopping anything early.
//
//   bench_ensemble [simulations] [threads]
//
// Samples are the built-in scenario with other people, rafts, amounts and weather of their own in every lane.
// Where the time goes is measured in processor time of one thread; so is the scalar run beside it, in turn,
// because on a shared machine time on the wall says little.
#include <fmt/format.h>

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <string>
#include <thread>
#include <variant>
#include <vector>

#include "bide/scenario/validate.hpp"
#include "bide/study/ensemble/ensemble.hpp"
#include "bide/timeline/simulate.hpp"
#include "built_in.hpp"

namespace {

using namespace bide;

double processor_s() {
  constexpr double ns = 1e-9;
  std::timespec time{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
  return static_cast<double>(time.tv_sec) + ns * static_cast<double>(time.tv_nsec);
}

struct Base {
  scenario::ValidScenario scenario;
  system::Compiled<double> compiled;
  std::vector<weather::Record> weather;  // equal, but not shared: every lane looks up its own
};

study::Sample varied(const Base& base, std::uint64_t k) {
  study::Sample s{base.compiled, base.weather[k % base.weather.size()]};
  constexpr std::uint64_t kinds = 17;
  const double u = static_cast<double>(k % kinds) / kinds;
  s.compiled.raft.canopy_position = u;
  s.compiled.raft.leakage_position = 1 - u;
  s.compiled.amounts.water_shipped_kg *= 1 + u;
  for (auto& p : s.compiled.persons) p.shivering_ceiling_W *= 1 - u / 4;
  return s;
}

struct Times {
  study::BlockTimes lanes;
  double lanes_s = 1e9, scalar_s = 1e9;  // the least of one block, of one simulation
};

// One thread: a block of lanes and a scalar run in turn; the least of each counts.
Times in_turn(const Base& base, int repetitions) {
  Times out;
  for (int r = 0; r < repetitions; ++r) {
    std::vector<study::Sample> samples;
    for (std::uint64_t k = 0; k < block_width; ++k) samples.push_back(varied(base, k));
    std::array<const study::Sample*, block_width> each;
    for (std::size_t i = 0; i < each.size(); ++i) each[i] = &samples[i];
    study::BlockTimes times;
    double start = processor_s();
    study::run_block(each, {true, &times});
    const double lanes_s = processor_s() - start;
    if (lanes_s < out.lanes_s) out.lanes = times, out.lanes_s = lanes_s;
    start = processor_s();
    timeline::simulate(base.scenario, base.weather[0]);
    out.scalar_s = std::min(out.scalar_s, processor_s() - start);
  }
  return out;
}

int bench(const Base& base, std::uint64_t simulations, int threads) {
  constexpr double ms = 1e3;
  const Times t = in_turn(base, 12);
  fmt::print("one thread, processor time, ms (least of 12, in turn)\n");
  fmt::print("  {:<44}{:8.2f}\n", "one simulation alone, scalar, all recorded", ms * t.scalar_s);
  fmt::print("  {:<44}{:8.2f}  ({} steps)\n", fmt::format("{} in lanes", block_width), ms * t.lanes_s,
             t.lanes.steps);
  fmt::print("    {:<42}{:8.2f}\n", "gathered and started", ms * t.lanes.gather_s);
  fmt::print("    {:<42}{:8.2f}\n", "steps and events", ms * t.lanes.march_s);
  fmt::print("    {:<42}{:8.2f}\n", "limits watched, columns kept (and clocks)", ms * t.lanes.watch_s);
  fmt::print("    {:<42}{:8.2f}\n", "results read", ms * t.lanes.read_s);
  fmt::print("  {:<44}{:8.2f}\n", "lanes, times as fast a simulation", block_width * t.scalar_s / t.lanes_s);

  study::EnsembleOptions options;
  options.threads = threads, options.to_the_end = true;
  std::uint64_t failed = 0;
  const auto start = std::chrono::steady_clock::now();
  const double processor_start = processor_s();
  study::run_ensemble(
      {0, simulations}, [&](std::uint64_t k) { return varied(base, k); },
      [&](const study::SampleResult& r) { failed += r.failure.empty() ? 0 : 1; }, options);
  const std::chrono::duration<double> wall = std::chrono::steady_clock::now() - start;
  const double processor = processor_s() - processor_start, count = static_cast<double>(simulations);
  fmt::print(
      "\n{} simulations of {} persons and {:g} h on {} threads, {} failed: {:.2f} s, {:.2f} s of "
      "processors\n",
      simulations, base.compiled.structure.persons, base.compiled.structure.end_s / 3600, threads, failed,
      wall.count(), processor);
  fmt::print("{:.0f} simulations/s with the processors to itself\n", count * threads / processor);
  fmt::print("{:.0f} simulations/s\n", count / wall.count());
  return failed == 0 ? 0 : 1;
}

}  // namespace

int main(int argc, char** argv) {
  const int simulations = argc > 1 ? std::atoi(argv[1]) : 1024;
  const int threads = argc > 2 ? std::atoi(argv[2]) : static_cast<int>(std::thread::hardware_concurrency());
  if (argc > 3 || simulations < 1 || threads < 1) {
    fmt::print(stderr, "bench_ensemble [simulations] [threads]\n");
    return 2;
  }
  auto validated = scenario::validate_text(built_in_scenario, "built-in", ".");
  if (const auto* errors = std::get_if<scenario::Diagnostics>(&validated)) {
    for (const auto& e : *errors) fmt::print(stderr, "{}\n", scenario::to_string(e));
    return 1;
  }
  Base base{std::get<scenario::ValidScenario>(std::move(validated)), {}, {}};
  for (int i = 0; i < block_width; ++i) {
    auto loaded = weather::load(base.scenario);
    if (std::holds_alternative<scenario::Diagnostics>(loaded)) return 1;
    base.weather.push_back(std::get<weather::Record>(std::move(loaded)));
  }
  base.compiled = system::compile(base.scenario, base.weather[0]);
  return bench(base, static_cast<std::uint64_t>(simulations), threads);
}
