// Compiled scenarios of one structure, side by side in the lanes of one.
//
// States: none. Inputs: one compiled scenario per lane; only numbers may differ between them. Validity: equal
// numbers of persons, equal stops. Source: none, copying.
#pragma once

#include <array>
#include <cstddef>
#include <stdexcept>

#include "system/compiled.hpp"

namespace bide::system {

// What must be equal for two runs to march in lock step: people, and what happens when.
inline bool same_march(const Structure& a, const Structure& b) {
  if (a.persons != b.persons || a.has_raft != b.has_raft || a.starts_in_water != b.starts_in_water ||
      a.end_s != b.end_s || a.stops.size() != b.stops.size())
    return false;
  for (std::size_t i = 0; i < a.stops.size(); ++i)
    if (a.stops[i].time_s != b.stops[i].time_s || a.stops[i].kind != b.stops[i].kind ||
        a.stops[i].index != b.stops[i].index)
      return false;
  return true;
}

// The structure is the first one's. Throws std::invalid_argument when the marches would part.
template <int W>
Compiled<Lanes<W>> gather(const std::array<Compiled<double>, W>& from) {
  Compiled<Lanes<W>> out;
  out.structure = from[0].structure;
  out.persons.resize(from[0].persons.size());
  for (int i = 0; i < W; ++i) {
    const Compiled<double>& one = from[static_cast<std::size_t>(i)];
    if (!same_march(one.structure, out.structure))
      throw std::invalid_argument("gather: these scenarios do not march in lock step");
    set_lane(out.raft, i, one.raft);
    set_lane(out.limits, i, one.limits);
    set_lane(out.stock, i, one.stock);
    for (std::size_t p = 0; p < one.persons.size(); ++p) set_lane(out.persons[p], i, one.persons[p]);
  }
  return out;
}

}  // namespace bide::system
