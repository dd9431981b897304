// Joins compiled scenarios of one structure, one per lane.
//
// States: none. Inputs: one compiled scenario per lane; only numbers of the scalar type may differ between
// them. Validity: structures equal in every member. Source: none, copying.
#pragma once

#include <array>
#include <cstddef>
#include <stdexcept>

#include "bide/system/compiled.hpp"

namespace bide::system {

// Joins the scenarios of a block. Throws std::invalid_argument when the structures differ: they cannot march
// in lock step.
// @param from one per lane, none null
template <int W>
Compiled<Lanes<W>> gather(const std::array<const Compiled<double>*, W>& from) {
  Compiled<Lanes<W>> out;
  out.structure = from[0]->structure;
  out.persons.resize(from[0]->persons.size());
  for (int i = 0; i < W; ++i) {
    const Compiled<double>& one = *from[static_cast<std::size_t>(i)];
    if (one.structure != out.structure)
      throw std::invalid_argument("gather: these scenarios do not march in lock step");
    set_lane(out.raft, i, one.raft);
    set_lane(out.amounts, i, one.amounts);
    set_lane(out.limits, i, one.limits);
    set_lane(out.fitted, i, one.fitted);
    set_lane(out.stock, i, one.stock);
    for (std::size_t p = 0; p < one.persons.size(); ++p) set_lane(out.persons[p], i, one.persons[p]);
  }
  return out;
}

}  // namespace bide::system
