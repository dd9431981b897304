// Watches every limit through every step, locates its crossings, and reads people's fates from them.
//
// States: the last values and slopes of what is watched. Inputs: states at both ends of each step. Who is
// dead is decided aboard, at checks; the watch says since when, so that the event of a death follows the time
// reported for it by no more than the interval of checks. Accuracy:
// the cubic through both ends; see the step-error test. Lanes are asked together whether anything was passed;
// where, is worked out lane by lane, by the same arithmetic as in a single run.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "bide/system/system.hpp"
#include "bide/timeline/fate.hpp"

namespace bide::timeline {

template <class T>
class Watch {
 public:
  explicit Watch(const system::Compiled<T>& compiled);

  // `slopes` may be empty: then the chord is used. Conditions are those held during the step.
  void begin(double t, const std::vector<T>& x, const system::Held<T>& held);
  void after_step(double t0, double t1, const std::vector<T>& x, const std::vector<T>& slopes,
                  const system::Held<T>& held);
  // A stop may have changed the state: take it as the new start.
  void after_stop(double t, const std::vector<T>& x, const system::Held<T>& held) { begin(t, x, held); }

  // In the order they were found: by step, person and limit; a lost airway when it is found out.
  const std::vector<Crossing>& crossings(int lane_index = 0) const {
    return crossings_[static_cast<std::size_t>(lane_index)];
  }
  // One per person.
  std::vector<Fate> fates(double end_s, int lane_index = 0) const;

 private:
  static constexpr int lanes = lane_count<T>;
  struct Person {
    system::Quantities<T> value{}, before{};  // at the start of this step and of the one before
    T core_slope{};                           // at the start of this step
    double before_s = 0;                      // length of the step before; 0 right after a stop
    system::Quantities<T> at_stop{};          // at the last stop
    // When a limit that takes the airway was last passed, if the sea could reach the mouth then.
    std::array<std::optional<Death>, lanes> went_under;
    std::array<std::optional<Death>, lanes> death;
    std::array<AtStops, lanes> kept;  // the first stop, those before a crossing, the last one alive
  };

  system::Quantities<T> read(int person, const std::vector<T>& x) const;
  void starts_beyond(int person, double t, const system::Quantities<T>& now);
  void carried(int person, double t, const system::Quantities<T>& now);
  void locate(int person, int lane_index, double t0, double t1, const system::Quantities<T>& now,
              const T* core_slope, const system::HeldPerson<T>& held);
  Death date(int person, int lane_index, double t, const system::Quantities<T>& now);

  const system::Compiled<T>* compiled_;
  std::vector<system::Levels<T>> levels_;  // by person
  std::vector<Person> persons_;
  std::array<std::vector<Crossing>, lanes> crossings_;
  double stop_s_ = -1;  // of the last stop; none yet
};

extern template class Watch<double>;
extern template class Watch<BlockLanes>;

}  // namespace bide::timeline
