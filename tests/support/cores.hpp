// Core temperatures of a march by one integrator or another, and how far two of them are apart.
#pragma once

#include <cmath>
#include <optional>
#include <stdexcept>
#include <vector>

#include "bide/march/reference.hpp"
#include "bide/system/readings.hpp"
#include "bide/timeline/drive.hpp"
#include "support/marching.hpp"

namespace bide::test {

// Row by row at output times, person by person; none once dead.
using Cores = std::vector<std::optional<double>>;

// One long step from stop to stop: for integrators that choose their own steps between.
inline const march::StepPlan stop_to_stop{{}, 1e9, 0};

// Dormand-Prince at a tight tolerance, as timeline::Integrator::reference.
struct DormandPrince {
  double tolerance = 1e-9;
  void step(system::System<double>& system, std::vector<double>& x, double t, double h) const {
    const auto slope = [&](double at, const std::vector<double>& y, std::vector<double>& dydt) {
      system.slope(at, y, dydt);
    };
    march::reference_advance(slope, x, t, t + h, tolerance, tolerance);
  }
  void restart() {}
};

class CoreWatcher : public NobodyWatches {
 public:
  explicit CoreWatcher(const system::System<double>& system) : system_(&system) {}
  void at_stop(double t, const std::vector<double>& x) {
    const system::Structure& structure = system_->compiled().structure;
    if (!timeline::is_output_time(t, structure)) return;
    for (int p = 0; p < structure.persons; ++p) {
      const bool living = system_->held.persons[static_cast<std::size_t>(p)].living > 0;
      const double core = system::core_degC(x.data() + system::person_offset(p));
      cores.push_back(living ? std::optional(core) : std::nullopt);
    }
  }
  Cores cores;

 private:
  const system::System<double>* system_;
};

template <class Advance>
Cores cores_by(Advance&& advance, const system::Compiled<double>& compiled,
               const system::Forcings<double>& forcings, const march::StepPlan& plan) {
  system::System<double> system(compiled, forcings);
  std::vector<double> x = system.start();
  CoreWatcher watcher(system);
  timeline::drive(system, x, plan, advance, watcher);
  return std::move(watcher.cores);
}

struct Apart {
  double worst_K = 0;
  std::size_t compared = 0;
};

// Where both live.
inline Apart apart(const Cores& a, const Cores& b) {
  if (a.size() != b.size()) throw std::invalid_argument("two marches with different rows");
  Apart out;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (!a[i] || !b[i]) continue;
    const double difference = std::abs(*a[i] - *b[i]);
    if (!(difference <= out.worst_K)) out.worst_K = difference;
    ++out.compared;
  }
  return out;
}

}  // namespace bide::test
