#include "bide/scenario/other_raft.hpp"

#include <fmt/format.h>

#include "bide/scenario/patch.hpp"
#include "bide/scenario/resolve.hpp"

namespace bide::scenario {
namespace {

bool goes_with_raft(const Scenario& written) {
  const RaftKind* kind = raft_kind_of(written);
  return kind && written.stores.pack == kind->pack;
}

}  // namespace

void carry_own_pack(Node& root, const Scenario& written) {
  if (!goes_with_raft(written)) return;
  const Node* raft = member(&root, "raft");
  const Node* key = member(raft, "kind");
  const RaftKind* kind = key ? find_raft(key->string) : nullptr;
  if (kind) put(root, "/stores/pack", kind->pack);
}

void change_raft(Node& root, const std::string& kind) {
  if (Node* raft = member(root, "raft"))
    std::erase_if(raft->members, [](const Member& each) {
      return each.key != "canopy_heat_loss_position" && each.key != "leakage_position";
    });
  put(root, "/raft/kind", kind);
}

std::string pack_words(const Scenario& written, const RaftKind& other) {
  const std::string& pack = written.stores.pack;
  if (pack == other.pack) return {};
  if (goes_with_raft(written))
    return fmt::format("another raft carries its own pack: {} in place of {}", other.pack, pack);
  return fmt::format("another raft keeps {}, which is not what {} usually carries, in place of its own, {}",
                     pack, written.raft->kind, other.pack);
}

}  // namespace bide::scenario
