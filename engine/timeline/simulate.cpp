#include "bide/timeline/simulate.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>
#include <tuple>
#include <utility>

#include "bide/core/units.hpp"
#include "bide/march/reference.hpp"
#include "bide/march/sdirk2.hpp"
#include "bide/system/assumptions.hpp"
#include "bide/system/crew_order.hpp"
#include "bide/system/ready.hpp"
#include "bide/timeline/balance.hpp"
#include "bide/timeline/drive.hpp"
#include "bide/timeline/record.hpp"
#include "bide/timeline/watch.hpp"

namespace bide::timeline {

namespace {

using System = system::System<double>;
using State = std::vector<double>;

class Production {
 public:
  explicit Production(std::size_t size) : stepper_(size) {}
  void step(System& system, State& x, double t, double h) { stepper_.do_step(system, x, t, h); }
  void restart() { stepper_.restart(); }
  const State& end_slopes() const { return stepper_.end_slopes(); }

 private:
  march::Sdirk2<double> stepper_;
};

class Reference {
 public:
  void step(System& system, State& x, double t, double h) {
    constexpr double relative = 1e-9, absolute = 1e-9;
    const auto slope = [&](double at, const State& y, State& dydt) { system.slope(at, y, dydt); };
    march::reference_advance(slope, x, t, t + h, relative, absolute);
    slopes_.resize(x.size());
    system.slope(t + h, x, slopes_);
  }
  void restart() {}
  const State& end_slopes() const { return slopes_; }

 private:
  State slopes_;
};

class Observer {
 public:
  Observer(System& system, Timeline& timeline, const Options& options)
      : system_(&system), recorder_(system, timeline), options_(&options), watch_(system.compiled()) {}

  system::Notes notes() { return &notes_; }

  template <class Advance>
  void after_step(double t0, double t1, const State& x, const Advance& advance) {
    watch_.after_step(t0, t1, x, advance.end_slopes(), system_->held);
  }

  void at_stop(double t, const State& x) {
    watch_.after_stop(t, x, system_->held);
    const system::Structure& s = system_->compiled().structure;
    if (is_output_time(t, s)) {
      recorder_.row(t, x);
      flags_.look(*system_, x);
      if (options_->progress) options_->progress(t / s.end_s);
    }
  }

  const std::vector<system::Note>& noted() const { return notes_; }
  const Watch<double>& watch() const { return watch_; }
  const system::RangeFlags& flags() const { return flags_; }

 private:
  System* system_;
  Recorder recorder_;
  const Options* options_;
  Watch<double> watch_;
  system::RangeFlags flags_;
  std::vector<system::Note> notes_;
};

template <class Advance>
void march(System& system, State& x, Advance& advance, Observer& observer, double step_scale) {
  march::StepPlan plan;
  for (double& step : plan.graded_s) step *= step_scale;
  plan.longest_s *= step_scale;
  plan.longest_settling_s *= step_scale;
  drive(system, x, plan, advance, observer);
}

// Notes and crossings by the places of the file; what befalls several people at one time, in that order.
void to_file_order(const std::vector<std::size_t>& file_place, std::vector<system::Note>& notes,
                   std::vector<Crossing>& crossings) {
  const auto rename = [&](int& person) {
    if (person >= 0) person = static_cast<int>(file_place.at(static_cast<std::size_t>(person)));
  };
  for (system::Note& note : notes) rename(note.person);
  for (auto begin = notes.begin(); begin != notes.end();) {
    const auto end = std::find_if(std::next(begin), notes.end(), [&](const system::Note& note) {
      return note.person < 0 || begin->person < 0 || note.time_s != begin->time_s;
    });
    std::stable_sort(begin, end,
                     [](const system::Note& a, const system::Note& b) { return a.person < b.person; });
    begin = end;
  }
  for (Crossing& crossing : crossings) rename(crossing.person);
  std::stable_sort(crossings.begin(), crossings.end(), [](const Crossing& a, const Crossing& b) {
    return std::tie(a.time_s, a.person) < std::tie(b.time_s, b.person);
  });
}

}  // namespace

Simulated simulate(const scenario::ValidScenario& scenario, const weather::Record& weather,
                   const Options& options) {
  auto ready = system::make_ready(scenario, weather);
  if (auto* refused = std::get_if<scenario::Diagnostics>(&ready)) return std::move(*refused);
  const auto& compiled = std::get<system::Compiled<double>>(ready);
  const system::Forcings<double> forcings(weather);
  System system(compiled, forcings);
  const system::Structure& structure = compiled.structure;

  Timeline timeline;
  timeline.scenario_name = scenario.scenario.name;
  timeline.start_unix_s = scenario.start_unix_s;
  timeline.horizon_s = structure.end_s;
  timeline.boarded_s = structure.has_raft ? structure.boarding_s : 0;
  timeline.in_raft = structure.has_raft;
  timeline.persons.resize(static_cast<std::size_t>(structure.persons));

  State x = system.start();
  const State start = x;
  Observer observer(system, timeline, options);
  if (options.integrator == Integrator::production) {
    Production production(x.size());
    march(system, x, production, observer, options.step_scale);
  } else {
    Reference reference;
    march(system, x, reference, observer, options.step_scale);
  }

  for (const double value : x)
    if (!std::isfinite(value)) return Failure{"state", "a state variable is no longer a finite number"};
  timeline.ledgers = ledgers(system, start, x)[0];
  if (auto failure = broken(timeline.ledgers, structure.end_s / day_s)) return *failure;
  const std::vector<std::size_t>& file_place = compiled.file_place;
  std::vector<system::Note> notes = observer.noted();
  timeline.crossings = observer.watch().crossings();
  to_file_order(file_place, notes, timeline.crossings);
  timeline.events = events_from(notes, structure);
  timeline.persons = system::in_file_order(std::move(timeline.persons), file_place);
  timeline.fates = system::in_file_order(observer.watch().fates(structure.end_s), file_place);
  timeline.flags = observer.flags().sentences();
  timeline.assumptions = system::assumptions(scenario, weather);
  return timeline;
}

}  // namespace bide::timeline
