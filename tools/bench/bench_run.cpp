// How long one simulation takes: the whole of it, its march alone, and the march of a block of lanes.
//
//   bench_run [scenario.json] [repetitions]
//
// Without a scenario it takes four people, five days, every feature in use. The three are measured in turn,
// repetition by repetition, so that a machine that slows down slows all of them. The lanes all carry the same
// scenario: the work does not depend on the numbers, and their states are checked to stay together.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "bide/march/sdirk2.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/system/gather.hpp"
#include "bide/timeline/drive.hpp"
#include "bide/timeline/simulate.hpp"
#include "bide/weather/weather.hpp"
#include "built_in.hpp"

namespace {

using namespace bide;

using Clock = std::chrono::steady_clock;

double since_ms(Clock::time_point start) {
  return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
}

template <class T>
struct Stepper {
  march::Sdirk2<T> sdirk2;
  void step(system::System<T>& system, std::vector<T>& x, double t, double h) {
    sdirk2.do_step(system, x, t, h);
  }
  void restart() { sdirk2.restart(); }
};

// Records nothing and watches nothing: it counts.
struct Counter {
  long steps = 0;
  system::Notes notes() { return nullptr; }
  template <class State, class Advance>
  void after_step(double, double, const State&, const Advance&) {
    ++steps;
  }
  template <class State>
  void at_stop(double, const State&) {}
};

template <class T>
struct March {
  double ms;
  long steps;
  std::vector<T> end;
};

template <class T>
March<T> march_alone(const system::Compiled<T>& compiled, const system::Forcings<T>& forcings) {
  const auto start = Clock::now();
  system::System<T> system(compiled, forcings);
  std::vector<T> x = system.start();
  Stepper<T> stepper{march::Sdirk2<T>(x.size())};
  Counter counter;
  timeline::drive(system, x, march::StepPlan{}, stepper, counter);
  return {since_ms(start), counter.steps, std::move(x)};
}

// Largest difference between a lane and the scalar run, over the larger of 1 and the value.
template <class T>
double apart(const std::vector<T>& lanes, const std::vector<double>& scalar) {
  double most = 0;
  for (std::size_t k = 0; k < scalar.size(); ++k)
    for (int i = 0; i < lane_count<T>; ++i)
      most = std::max(most, std::abs(lane(lanes[k], i) - scalar[k]) / std::max(1.0, std::abs(scalar[k])));
  return most;
}

struct Spread {
  double median, least;
};

Spread spread(std::vector<double> times) {
  std::sort(times.begin(), times.end());
  const std::size_t n = times.size();
  return {0.5 * (times[(n - 1) / 2] + times[n / 2]), times.front()};
}

// A line of the table; one kernel carries `simulations` at a time.
void print(const std::string& what, const std::vector<double>& times, long steps, int persons,
           int simulations) {
  constexpr double ns_per_ms = 1e6;
  const Spread s = spread(times);
  const double person_steps = static_cast<double>(steps) * persons * simulations;
  fmt::print("{:<28}{:>10.2f}{:>10.2f}{:>16.0f}{:>10.0f}\n", what, s.median, s.least,
             ns_per_ms * s.median / person_steps, ns_per_ms * s.least / person_steps);
}

int refuse(const scenario::Diagnostics& errors) {
  for (const auto& e : errors) fmt::print(stderr, "{}\n", scenario::to_string(e));
  return 1;
}

// A whole number above 0, or nothing.
std::optional<int> whole(const char* text) {
  int value = 0;
  const char* end = text + std::strlen(text);
  const auto [rest, error] = std::from_chars(text, end, value);
  if (error != std::errc() || rest != end || value < 1) return std::nullopt;
  return value;
}

int bench(const scenario::ValidScenario& scenario, int repetitions) {
  const auto loaded = weather::load(scenario);
  if (const auto* errors = std::get_if<scenario::Diagnostics>(&loaded)) return refuse(*errors);
  const auto& weather = std::get<weather::Record>(loaded);
  const system::Compiled<double> one = system::compile(scenario, weather);
  std::array<const system::Compiled<double>*, block_width> same;
  same.fill(&one);
  const system::Compiled<BlockLanes> block = system::gather<block_width>(same);
  const system::Forcings<double> forcings(weather);
  const system::Forcings<BlockLanes> block_forcings(weather);

  std::vector<double> whole_ms, scalar_ms, lanes_ms;
  long steps = 0;
  double difference = 0;
  for (int r = -1; r < repetitions; ++r) {  // the first warms up and is not counted
    const auto start = Clock::now();
    const auto result = timeline::simulate(scenario, weather);
    const double ms = since_ms(start);
    if (const auto* failure = std::get_if<timeline::Failure>(&result)) {
      fmt::print(stderr, "{}: {}\n", failure->ledger, failure->message);
      return 1;
    }
    const March<double> scalar = march_alone(one, forcings);
    const March<BlockLanes> lanes = march_alone(block, block_forcings);
    steps = scalar.steps;
    difference = std::max(difference, apart(lanes.end, scalar.end));
    if (r < 0) continue;
    whole_ms.push_back(ms);
    scalar_ms.push_back(scalar.ms);
    lanes_ms.push_back(lanes.ms);
  }
  constexpr double h_per_s = 1.0 / 3600;
  const int persons = one.structure.persons;
  fmt::print("{} persons, {:g} h, {} steps, {} repetitions\n\n", persons, one.structure.end_s * h_per_s,
             steps, repetitions);
  fmt::print("{:<28}{:>10}{:>10}{:>16}{:>10}\n", "", "median", "least", "median", "least");
  fmt::print("{:<28}{:>10}{:>10}{:>16}{:>10}\n", "", "ms", "ms", "ns/person-step", "");
  print("simulate(), whole", whole_ms, steps, persons, 1);
  print("march alone, double", scalar_ms, steps, persons, 1);
  print(fmt::format("march alone, {} lanes", block_width), lanes_ms, steps, persons, block_width);
  const Spread scalar = spread(scalar_ms), lanes = spread(lanes_ms);
  fmt::print("\nPer simulation, lanes are {:.2f} times as fast by medians, {:.2f} by the least.\n",
             block_width * scalar.median / lanes.median, block_width * scalar.least / lanes.least);
  fmt::print("Largest difference of a lane from the scalar end state: {:.1e}.\n", difference);
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  constexpr int usual = 50;
  const std::optional<int> repetitions = argc > 2 ? whole(argv[2]) : usual;
  if (argc > 3 || !repetitions) {
    fmt::print(stderr, "usage: bench_run [scenario.json] [repetitions]\n");
    return 2;
  }
  const auto validated = argc > 1 ? scenario::validate_file(argv[1])
                                  : scenario::validate_text(built_in_scenario, "built in", ".");
  if (const auto* errors = std::get_if<scenario::Diagnostics>(&validated)) return refuse(*errors);
  return bench(std::get<scenario::ValidScenario>(validated), *repetitions);
}
