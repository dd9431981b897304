// One simulation: scenario and weather in, timeline out.
#pragma once

#include <functional>
#include <string>
#include <variant>

#include "bide/scenario/validate.hpp"
#include "bide/timeline/failure.hpp"
#include "bide/timeline/series.hpp"
#include "bide/weather/weather.hpp"

namespace bide::timeline {

enum class Integrator {
  production,  // linearly implicit, fixed plan
  reference    // Odeint Dormand-Prince at tight tolerance: slow, for checks
};

struct Options {
  std::function<void(double fraction)> progress;  // called at output times with the share done, [0, 1]
  Integrator integrator = Integrator::production;
  double step_scale = 1;  // factor on all steps, above 0: for convergence checks
};

using Simulated = std::variant<Timeline, Failure, scenario::Diagnostics>;

// Runs one scenario.
// @param scenario a validated scenario
// @param weather  of this scenario
// @param options  progress, integrator, step scale
// @return the timeline; or why it cannot be trusted: a ledger that does not close, or a state not finite; or
//         why it was not begun (system/ready.hpp)
Simulated simulate(const scenario::ValidScenario& scenario, const weather::Record& weather,
                   const Options& options = {});

}  // namespace bide::timeline
