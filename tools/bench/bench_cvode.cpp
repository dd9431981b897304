// The production stepper beside SUNDIALS' CVODE, on the same slopes and events at the same error.
//
//   bench_cvode [scenario.json] [repetitions]
//
// The error is the worst difference in anyone's core temperature, over the recorded times at which they live,
// from Dormand-Prince at a tolerance of 1e-9. CVODE gets the loosest tolerance of a ladder at which its error
// is no larger than production's, and every help: it restarts only where something jumps, and its Krylov
// solver is preconditioned with the model's own factorisation. Then all are timed in turn, in processor
// time.
#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "bide/scenario/validate.hpp"
#include "bide/system/gather.hpp"
#include "bide/weather/weather.hpp"
#include "built_in.hpp"
#include "support/cores.hpp"
#include "support/cvode.hpp"

namespace {

using namespace bide;

// Processor time: other programs on the machine do not count.
double since_ms(std::clock_t start) {
  constexpr double ms_per_s = 1000;
  return ms_per_s * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

struct Problem {
  system::Compiled<double> compiled;
  system::Forcings<double> forcings;
  test::Cores reference;
};

test::Cores by_production(const Problem& p) {
  test::Stepper<double> stepper{march::Sdirk2<double>()};
  return test::cores_by(stepper, p.compiled, p.forcings, march::StepPlan{});
}

// One integrator: its simulations a march, its error and its times.
struct Row {
  std::string what;
  int simulations;
  double error_K;
  std::vector<double> ms;
  double least_ms() const { return *std::min_element(ms.begin(), ms.end()) / simulations; }
  double median_ms() const {
    std::vector<double> sorted = ms;
    std::sort(sorted.begin(), sorted.end());
    return 0.5 * (sorted[(sorted.size() - 1) / 2] + sorted[sorted.size() / 2]) / simulations;
  }
};

struct CvodeRun {
  test::CvodeOptions options;
  Row row;
};

test::Cores by_cvode(const Problem& p, const test::CvodeOptions& options, test::CvodeCounts& counts) {
  test::Cvode cvode(p.compiled, p.forcings, options);
  test::Cores cores = test::cores_by(cvode, p.compiled, p.forcings, test::stop_to_stop);
  counts = cvode.counts();
  return cores;
}

// The loosest tolerance, halved from `loosest`, whose error is at most `error_K`.
std::optional<CvodeRun> at_error(const Problem& p, test::LinearSolver solver, double error_K,
                                 double loosest) {
  constexpr double tightest = 1e-9;
  const char* name = solver == test::LinearSolver::dense ? "dense" : "Krylov";
  for (double tolerance = loosest; tolerance >= tightest; tolerance /= 2) {
    const test::CvodeOptions options{tolerance, solver, false};
    test::CvodeCounts counts;
    const test::Apart apart = test::apart(by_cvode(p, options, counts), p.reference);
    fmt::print("  CVODE {:<7} tolerance {:.1e}: {:.5f} K, {} steps, {} slopes, {} factorisations\n", name,
               tolerance, apart.worst_K, counts.steps, counts.slopes, counts.factorisations);
    if (apart.worst_K <= error_K)
      return CvodeRun{options, {fmt::format("CVODE {}", name), 1, apart.worst_K, {}}};
  }
  return std::nullopt;
}

void print(const Row& row, const Row& scalar) {
  fmt::print("{:<22}{:>10.2f}{:>10.2f}{:>12.5f}{:>10.2f}\n", row.what, row.median_ms(), row.least_ms(),
             row.error_K, row.median_ms() / scalar.median_ms());
}

int bench(const Problem& p, const weather::Record& weather, int repetitions) {
  const auto& one = p.compiled;
  std::array<const system::Compiled<double>*, block_width> same;
  same.fill(&one);
  const system::Compiled<BlockLanes> block = system::gather<block_width>(same);
  const system::Forcings<BlockLanes> block_forcings(weather);
  const double error_K = test::apart(by_production(p), p.reference).worst_K;
  fmt::print("worst core error\n  production: {:.5f} K\n", error_K);
  Row scalar{"production", 1, error_K, {}},
      lanes{fmt::format("production, {} lanes", block_width), block_width, error_K, {}};
  std::vector<CvodeRun> runs;
  // Dense starts where Krylov ended: the same formulas at the same tolerance, and a run takes seconds.
  double loosest = 1e-2;
  for (const auto solver : {test::LinearSolver::krylov, test::LinearSolver::dense}) {
    auto run = at_error(p, solver, error_K, loosest);
    if (!run) {
      fmt::print(stderr, "CVODE does not reach production's error at any tolerance\n");
      return 1;
    }
    loosest = run->options.tolerance;
    runs.push_back(std::move(*run));
  }
  for (int r = 0; r < repetitions; ++r) {
    auto start = std::clock();
    by_production(p);
    scalar.ms.push_back(since_ms(start));
    start = std::clock();
    system::System<BlockLanes> system(block, block_forcings);
    test::march_through(system);
    lanes.ms.push_back(since_ms(start));
    for (CvodeRun& run : runs) {
      test::CvodeCounts counts;
      start = std::clock();
      by_cvode(p, run.options, counts);
      run.row.ms.push_back(since_ms(start));
    }
  }
  fmt::print("\n{:<22}{:>10}{:>10}{:>12}{:>10}\n", "a simulation", "median ms", "least ms", "core err K",
             "ratio");
  print(scalar, scalar), print(lanes, scalar);
  for (const CvodeRun& run : runs) print(run.row, scalar);
  const auto faster = [](const CvodeRun& a, const CvodeRun& b) {
    return a.row.median_ms() < b.row.median_ms();
  };
  const Row& best = std::min_element(runs.begin(), runs.end(), faster)->row;
  fmt::print("\n{} takes {:.2f} times as long as production, {:.2f} times as long as production in lanes\n",
             best.what, best.median_ms() / scalar.median_ms(), best.median_ms() / lanes.median_ms());
  return 0;
}

int refuse(const scenario::Diagnostics& errors) {
  for (const auto& e : errors) fmt::print(stderr, "{}\n", scenario::to_string(e));
  return 1;
}

}  // namespace

int main(int argc, char** argv) {
  constexpr int usual = 5;
  const int repetitions = argc > 2 ? std::atoi(argv[2]) : usual;
  if (argc > 3 || repetitions < 1) {
    fmt::print(stderr, "usage: bench_cvode [scenario.json] [repetitions]\n");
    return 2;
  }
  const auto validated = argc > 1 ? scenario::validate_file(argv[1])
                                  : scenario::validate_text(built_in_scenario, "built in", ".");
  if (const auto* errors = std::get_if<scenario::Diagnostics>(&validated)) return refuse(*errors);
  const auto& scenario = std::get<scenario::ValidScenario>(validated);
  const auto loaded = weather::load(scenario);
  if (const auto* errors = std::get_if<scenario::Diagnostics>(&loaded)) return refuse(*errors);
  const auto& weather = std::get<weather::Record>(loaded);
  Problem problem{system::compile(scenario, weather), system::Forcings<double>(weather), {}};
  const auto start = std::clock();
  problem.reference =
      test::cores_by(test::DormandPrince{}, problem.compiled, problem.forcings, test::stop_to_stop);
  constexpr double h_per_s = 1.0 / 3600;
  const system::Structure& structure = problem.compiled.structure;
  fmt::print("{} persons, {:g} h, {} repetitions; the reference took {:.0f} ms\n", structure.persons,
             structure.end_s * h_per_s, repetitions, since_ms(start));
  return bench(problem, weather, repetitions);
}
