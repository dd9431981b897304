// What happens at a stop: the only place where held state changes, each change entered in the books.
//
// States: held state, and the entries of the integrated vector that an event moves (water on the floor, in
// clothing, in the gut...). Inputs: the stop. Order: as the schedule has it. Source: see stores/ and cabin/
// for amounts.
#pragma once

#include <vector>

#include "bide/system/notes.hpp"
#include "bide/system/system.hpp"

namespace bide::system {

template <class T>
void apply(const ScheduledStop& stop, System<T>& system, std::vector<T>& x, Notes notes);

extern template void apply(const ScheduledStop&, System<double>&, std::vector<double>&, Notes);
extern template void apply(const ScheduledStop&, System<BlockLanes>&, std::vector<BlockLanes>&, Notes);

}  // namespace bide::system
