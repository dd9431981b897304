// Discrete changes at a time event: the only place where discrete states change, each change entered in the
// books.
//
// States: the discrete states, and the entries of the integrated vector that an event moves (water on the
// floor, in clothing, in the gut...). Inputs: the time event. Order: that of the schedule. Source: see
// stores/ and cabin/ for amounts.
#pragma once

#include <vector>

#include "bide/system/notes.hpp"
#include "bide/system/system.hpp"

namespace bide::system {

// Applies one time event.
// @param stop   the time event
// @param system the model; its discrete states change
// @param x      the integrated vector; changes
// @param notes  what happened is appended; null: not recorded
template <class T>
void apply(const ScheduledStop& stop, System<T>& system, std::vector<T>& x, Notes notes);

extern template void apply(const ScheduledStop&, System<double>&, std::vector<double>&, Notes);
extern template void apply(const ScheduledStop&, System<BlockLanes>&, std::vector<BlockLanes>&, Notes);

}  // namespace bide::system
