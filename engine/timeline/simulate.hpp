// One simulation: scenario and weather in, timeline out.
#pragma once

#include <functional>
#include <string>
#include <variant>

#include "bide/scenario/validate.hpp"
#include "bide/timeline/balance.hpp"
#include "bide/timeline/series.hpp"
#include "bide/weather/weather.hpp"

namespace bide::timeline {

enum class Integrator {
  production,  // linearly implicit, fixed plan
  reference    // Odeint Dormand-Prince at tight tolerance: slow, for checks
};

struct Options {
  std::function<void(double fraction)> progress;
  Integrator integrator = Integrator::production;
  double step_scale = 1;  // all steps times this: for convergence checks
};

std::variant<Timeline, Failure> simulate(const scenario::ValidScenario& scenario,
                                         const weather::Record& weather, const Options& options = {});

}  // namespace bide::timeline
