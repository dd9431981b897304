// Turns states into rows of a Timeline.
//
// Rates in a row (heat losses, sweat, ventilation heat) are means since the row before, from the running
// totals, so they add up to the ledgers; the first row holds the values at the start.
#pragma once

#include <vector>

#include "bide/system/notes.hpp"
#include "bide/system/system.hpp"
#include "bide/timeline/series.hpp"

namespace bide::timeline {

// Adds rows to a timeline during the march.
class Recorder {
 public:
  // Both must outlive the recorder.
  Recorder(system::System<double>& system, Timeline& timeline) : system_(&system), timeline_(&timeline) {}

  // Adds a row.
  // @param t s since the scenario's start, ascending from call to call
  // @param x state at that time
  void row(double t, const std::vector<double>& x);

 private:
  system::System<double>* system_;
  Timeline* timeline_;
  double last_t_ = 0;
  std::vector<double> last_x_;
};

const char* name_of(system::NoteKind kind);  // "water_issued"

// Turns what events left behind into sentences.
std::vector<Event> events_from(const std::vector<system::Note>& notes, const system::Structure& structure);

}  // namespace bide::timeline
