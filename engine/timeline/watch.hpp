// Watches every limit through every step, locates its passing, and reads people's fates from the passings.
//
// States: the last values and slopes of what is watched. Inputs: states at both ends of each step. Accuracy:
// the cubic through both ends; see the step-error test. Lanes are asked together whether anything was passed;
// where, is worked out lane by lane, by the same arithmetic as in a single run.
#pragma once

#include <array>
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

  // In the order they were found: by step, person and limit.
  const std::vector<Passing>& passings(int lane_index = 0) const {
    return passings_[static_cast<std::size_t>(lane_index)];
  }
  // A lethal limit has been passed, or the airway lost.
  bool died(int person, int lane_index = 0) const {
    return persons_[static_cast<std::size_t>(person)].died[static_cast<std::size_t>(lane_index)];
  }
  // One per person.
  std::vector<Fate> fates(double end_s, int lane_index = 0) const;

 private:
  static constexpr int lanes = lane_count<T>;
  struct Person {
    std::array<T, quantity_count> value{}, before{};  // at the start of this step and of the one before
    T core_slope{};                                   // at the start of this step
    double before_s = 0;                              // length of the step before; 0 right after a stop
    std::array<T, quantity_count> at_stop{};          // at the last stop
    std::array<bool, lanes> living, died{};
    std::array<AtStops, lanes> kept;  // the first stop, those before a passing, the last one alive
  };

  void read(int person, const std::vector<T>& x, std::array<T, quantity_count>& values) const;
  void locate(int person, int lane_index, double t0, double t1, const std::array<T, quantity_count>& now,
              const T* core_slope, const system::HeldPerson<T>& held);
  void keep_stop(const Person& person, int lane_index, AtStops& kept) const;

  const system::Compiled<T>* compiled_;
  std::vector<Levels<T>> levels_;  // by person
  std::vector<Person> persons_;
  std::array<std::vector<Passing>, lanes> passings_;
  double stop_s_ = -1;  // of the last stop; none yet
};

extern template class Watch<double>;
extern template class Watch<BlockLanes>;

}  // namespace bide::timeline
