// The record of a block of lanes during the march: a few columns, and the end of each lane.
//
// States: the rows. Inputs: the state at output times. A lane ends at the first output time at which
// everybody in it is dead, or with the run; later rows are not used.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include "bide/study/ensemble/sample_result.hpp"
#include "bide/timeline/watch.hpp"

namespace bide::study {

class BlockRecord {
 public:
  using T = BlockLanes;
  static constexpr int lanes = lane_count<T>;

  // @param system must outlive the record
  // @param start  the state at the start
  // @param near_margin share of the margin left where somebody is near a limit, [0, 1]
  BlockRecord(system::System<T>& system, std::vector<T> start, double near_margin);

  // Adds a row.
  // @param t_s s since the scenario's start, ascending from call to call
  // @param x   the state at that time
  void row(double t_s, const std::vector<T>& x);
  // Whether everybody is dead in every lane.
  bool all_ended() const;
  // The result of one lane after the march.
  // @param lane_index [0, lanes)
  // @param watch      the limits that were passed
  // @param signals_at_s when signals are counted, s since the start
  SampleResult read(int lane_index, const timeline::Watch<T>& watch, double signals_at_s) const;

 private:
  struct End {
    bool reached = false;
    std::size_t rows = 0;
    std::string failure;
  };
  std::vector<double> column(int lane_index, std::size_t place, std::size_t rows) const;
  PersonResult read_person(int lane_index, std::size_t person, const std::vector<double>& time_s,
                           const timeline::Fate& fate) const;
  void read_cabin(int lane_index, const std::vector<double>& time_s, double until_s, SampleResult& out) const;
  void read_signals(int lane_index, const std::vector<double>& time_s, double at_s, SampleResult& out) const;
  void balance(const std::vector<T>& x);
  void nearness(double t_s, const std::vector<T>& x);
  void end_lanes(double t_s, const std::vector<T>& x);

  system::System<T>* system_;
  std::vector<T> start_, rate_;
  std::size_t most_rows_;
  std::vector<double> time_s_;
  std::vector<T> columns_;     // one after the other, each with room for all rows
  std::vector<T> shivered_J_;  // by person, at the last row
  std::array<End, lanes> ends_;
  std::vector<Balance<T>> balances_;            // by person, of those living at the last row
  std::vector<system::Levels<T>> levels_;       // by person
  std::vector<system::Quantities<T>> started_;  // by person, at the start
  double near_margin_;
  std::array<T, system::level_count> near_s_;
};

}  // namespace bide::study
