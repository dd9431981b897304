// One simulation, for whoever writes of it.
#pragma once

#include "bide/outcome/outcome.hpp"
#include "bide/scenario/validate.hpp"

namespace bide::report {

struct Material {
  const outcome::Outcome& outcome;
  const timeline::Timeline& timeline;
  const scenario::ValidScenario& scenario;
};

}  // namespace bide::report
