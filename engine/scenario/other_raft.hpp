// Which pack another kind of raft carries, in the place of the one that is written.
//
// A pack belongs to its raft: where the pack written is the one that the raft written usually carries,
// another kind carries its own. Any other pack was chosen apart from the raft, and is kept.
#pragma once

#include <string>

#include "bide/scenario/document.hpp"

namespace bide::scenario {

// Puts the new raft's own pack into a tree in which another kind of raft was put, and no pack.
// @param root    the tree; nothing is changed in it where the pack is kept, or the kind is not known
// @param written the scenario before
void carry_own_pack(Node& root, const Scenario& written);

// Puts another kind of raft into a tree. Sizes stated for the raft there was do not pass to it.
// @param root the tree
// @param kind catalogue key of the new raft
void change_raft(Node& root, const std::string& kind);

// Says what becomes of the pack, for those who read the results.
// @param written the scenario before; it has a raft
// @param other   another kind of raft
// @return empty when the pack written is the one that the other kind usually carries
std::string pack_words(const Scenario& written, const RaftKind& other);

}  // namespace bide::scenario
