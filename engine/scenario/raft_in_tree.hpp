// The raft in the tree of a scenario file: taken out of it, reached through water, and what of it can fail.
#pragma once

#include "bide/scenario/document.hpp"
#include "bide/scenario/scenario.hpp"

namespace bide::scenario {

// Makes a tree in which nobody reaches a raft: its pack, its failures and what people would use in it go with
// it. What people do in the water stays.
// @param root a tree that has a raft
void take_raft_away(Node& root);

// Whether people of a tree come into the water, on the way to a raft or for good.
bool enter_water(const Node& root);

// Whether the raft of a tree has what fails.
// @param root    a tree; false if it has no raft
// @param failure floor_not_inflated, tube_leaking or lamp_dead; else throws std::invalid_argument
bool can_fail(const Node& root, FailureKind failure);

}  // namespace bide::scenario
