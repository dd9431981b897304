#include "bide/study/ensemble/block.hpp"

#include <ctime>

#include "bide/march/sdirk2.hpp"
#include "bide/study/ensemble/block_record.hpp"
#include "bide/system/crew_order.hpp"
#include "bide/system/gather.hpp"
#include "bide/timeline/drive.hpp"

namespace bide::study {

namespace {

using T = BlockLanes;

// Measures processor time of this thread and adds it to the part where it was spent; does nothing when no
// times are wanted.
class Clock {
 public:
  explicit Clock(bool on) : on_(on), last_s_(now_s()) {}
  void add(double BlockTimes::*place, BlockTimes* times) {
    if (!on_) return;
    const double now = now_s();
    times->*place += now - last_s_;
    last_s_ = now;
  }

 private:
  bool on_;
  double last_s_;

  double now_s() const {
    if (!on_) return 0;
    constexpr double ns = 1e-9;
    std::timespec time{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
    return static_cast<double>(time.tv_sec) + ns * static_cast<double>(time.tv_nsec);
  }
};

struct Stepper {
  march::Sdirk2<T> sdirk2;
  void step(system::System<T>& system, std::vector<T>& x, double t, double h) {
    sdirk2.do_step(system, x, t, h);
  }
  void restart() { sdirk2.restart(); }
};

class Observer {
 public:
  Observer(system::System<T>& system, std::vector<T> start, const BlockOptions& options)
      : system_(&system),
        watch_(system.compiled()),
        record_(system, std::move(start), options.near_margin),
        options_(&options),
        clock_(options.times != nullptr) {}

  static system::Notes notes() { return nullptr; }

  void after_step(double t0, double t1, const std::vector<T>& x, const Stepper& stepper) {
    clock_.add(&BlockTimes::march_s, options_->times);
    watch_.after_step(t0, t1, x, stepper.sdirk2.end_slopes(), system_->held);
    if (options_->times != nullptr) ++options_->times->steps;
    clock_.add(&BlockTimes::watch_s, options_->times);
  }

  void at_stop(double t, const std::vector<T>& x) {
    clock_.add(&BlockTimes::march_s, options_->times);
    watch_.after_stop(t, x, system_->held);
    if (timeline::is_output_time(t, system_->compiled().structure)) record_.row(t, x);
    clock_.add(&BlockTimes::watch_s, options_->times);
  }

  bool done() const { return !options_->to_the_end && record_.all_ended(); }

  const timeline::Watch<T>& watch() const { return watch_; }
  const BlockRecord& record() const { return record_; }
  Clock& clock() { return clock_; }

 private:
  system::System<T>* system_;
  timeline::Watch<T> watch_;
  BlockRecord record_;
  const BlockOptions* options_;
  Clock clock_;
};

}  // namespace

std::array<SampleResult, block_width> run_block(const std::array<const Sample*, block_width>& samples,
                                                const BlockOptions& options) {
  Clock clock(options.times != nullptr);
  std::array<const system::Compiled<double>*, block_width> compiled;
  std::array<const weather::Record*, block_width> weather;
  for (std::size_t i = 0; i < samples.size(); ++i)
    compiled[i] = &samples[i]->compiled, weather[i] = &samples[i]->weather;
  const system::Compiled<T> wide = system::gather<block_width>(compiled);
  const system::Forcings<T> forcings(weather);
  system::System<T> system(wide, forcings);
  std::vector<T> x = system.start();
  Stepper stepper{march::Sdirk2<T>(x.size())};
  Observer observer(system, x, options);
  clock.add(&BlockTimes::gather_s, options.times);
  timeline::drive(system, x, march::StepPlan{}, stepper, observer);
  std::array<SampleResult, block_width> out;
  for (int i = 0; i < block_width; ++i) {
    const auto l = static_cast<std::size_t>(i);
    out[l] = observer.record().read(i, observer.watch(), samples[l]->signals_at_s);
    out[l].persons = system::in_file_order(std::move(out[l].persons), compiled[l]->file_place);
  }
  observer.clock().add(&BlockTimes::read_s, options.times);
  return out;
}

}  // namespace bide::study
