// Three integrators on the same slopes and events: CVODE (implicit, by SUNDIALS), Dormand-Prince (explicit,
// by Odeint), and the production stepper. The first two at a tolerance of 1e-11, restarted at every stop;
// they must meet within a thousandth of the step error that production is allowed (0.02 K in the core).
#include "support/cvode.hpp"

#include "scenarios/shipped.hpp"
#include "support/cores.hpp"

using namespace bide;

namespace {

constexpr double core_bar_K = 0.02;
constexpr double tolerance = 1e-11;  // at 1e-9 CVODE itself is off by 2e-5 K after 61 h

struct Shipped {
  scenario::ValidScenario scenario;
  weather::Record weather;
  system::Compiled<double> compiled;
  system::Forcings<double> forcings;

  explicit Shipped(const std::string& name)
      : scenario(test::valid(test::shipped(name))),
        weather(test::loaded(scenario)),
        compiled(system::compile(scenario, weather)),
        forcings(weather) {}
};

test::Cores by_cvode(const Shipped& run, test::LinearSolver solver) {
  test::Cvode cvode(run.compiled, run.forcings, {tolerance, solver});
  return test::cores_by(cvode, run.compiled, run.forcings, test::stop_to_stop);
}

test::Cores by_production(const Shipped& run) {
  test::Stepper<double> stepper{march::Sdirk2<double>()};
  return test::cores_by(stepper, run.compiled, run.forcings, march::StepPlan{});
}

void compare(const std::string& name, test::LinearSolver solver) {
  const Shipped run(name);
  const test::Cores cvode = by_cvode(run, solver);
  const test::Cores explicit_ =
      test::cores_by(test::DormandPrince{tolerance}, run.compiled, run.forcings, test::stop_to_stop);
  const test::Apart references = test::apart(cvode, explicit_);
  const test::Apart production = test::apart(cvode, by_production(run));
  MESSAGE(name << ", worst core difference from CVODE: Dormand-Prince " << references.worst_K
               << " K, production " << production.worst_K << " K, over " << production.compared << " values");
  CHECK(production.compared > 0);
  CHECK(references.compared > 0);
  CHECK(references.worst_K <= core_bar_K / 1000);
  CHECK(production.worst_K <= core_bar_K);
}

}  // namespace

TEST_CASE("CVODE, Dormand-Prince and production agree on a crew in a cold sea") {
  compare("cold_sea_wet_floor_flat", test::LinearSolver::krylov);
}

TEST_CASE("CVODE, Dormand-Prince and production agree on people who stay in the water") {
  compare("immersion_only", test::LinearSolver::dense);
}
