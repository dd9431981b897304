// Watches every limit through every step, locates its passing, and reads people's fates from the passings.
//
// States: the last values and slopes of what is watched. Inputs: states at both ends of each step. Accuracy:
// the cubic through both ends; see the step-error test. Source: limits from constants/limits.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "system/system.hpp"
#include "timeline/series.hpp"

namespace bide::timeline {

class Watch {
 public:
  explicit Watch(const system::Compiled<double>& compiled);

  // `slopes` may be empty: then the chord is used. Conditions are those held during the step.
  void begin(double t, const std::vector<double>& x, const system::Held<double>& held);
  void after_step(double t0, double t1, const std::vector<double>& x, const std::vector<double>& slopes,
                  const system::Held<double>& held);
  // A stop may have changed the state: take it as the new start.
  void after_stop(double t, const std::vector<double>& x, const system::Held<double>& held) {
    begin(t, x, held);
  }

  std::vector<Crossing> crossings;
  std::vector<PersonFate> fates(double end_s) const;

 private:
  enum class Meaning { unable, unconscious, lethal };
  struct Level {
    std::string name;
    Meaning meaning;
    int quantity;
    double level;
    bool bad_above;
    double normal;  // value of a well person, for margins
  };
  static constexpr int quantity_count = 6;
  using Quantities = std::array<double, quantity_count>;
  struct Person {
    Quantities value{}, slope{};
    bool has_slope = false;
    bool living = true;
  };

  bool passed_lethal(int person) const;
  void read(int person, const std::vector<double>& x, Quantities& values) const;

  const system::Compiled<double>* compiled_;
  std::vector<Level> levels_;
  std::vector<Person> persons_;
  // By person: at each stop, the share of the way from normal to each level that is left.
  std::vector<std::vector<std::pair<double, std::vector<double>>>> history_;
};

}  // namespace bide::timeline
