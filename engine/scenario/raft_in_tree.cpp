#include "bide/scenario/raft_in_tree.hpp"

#include <algorithm>
#include <initializer_list>
#include <stdexcept>

#include "bide/scenario/catalogue.hpp"
#include "bide/scenario/patch.hpp"
#include "bide/scenario/words.hpp"

namespace bide::scenario {
namespace {

std::string word_at(const Node* object, std::string_view key) {
  const Node* node = member(object, key);
  return node ? node->string : std::string();
}

void erase(Node* object, std::initializer_list<std::string_view> keys) {
  if (!object) return;
  std::erase_if(object->members, [&](const Member& each) {
    return std::find(keys.begin(), keys.end(), each.key) != keys.end();
  });
}

bool has_lamp(const Node& root) {
  const Node* stores = member(&root, "stores");
  const auto lamp = [](std::string_view key) {
    const ItemKind* kind = find_item(key);
    return kind && kind->role == ItemRole::lamp;
  };
  if (const PackKind* pack = find_pack(word_at(stores, "pack")))
    if (std::any_of(pack->items.begin(), pack->items.end(),
                    [&](const PackItem& each) { return lamp(each.item); }))
      return true;
  const Node* extra = member(stores, "extra");
  return extra && std::any_of(extra->items.begin(), extra->items.end(), [&](const Node& each) {
           const Node *expired = member(&each, "expired"), *quantity = member(&each, "quantity");
           return lamp(word_at(&each, "kind")) && !(expired && expired->truth) && quantity &&
                  quantity->number > 0;
         });
}

}  // namespace

void take_raft_away(Node& root) {
  erase(&root, {"raft", "failures"});
  Node* boarding = member(root, "boarding");
  erase(boarding, {"minutes_in_water", "release_depth_m", "water_shipped_L", "wet_fraction"});
  put(root, "/boarding/kind", std::string(word(BoardingKind::none)));
  put(root, "/stores/pack", std::string("none"));
  if (Node* crew = member(root, "crew"))
    for (Node& person : crew->items) {
      erase(&person, {"thermal_protective_aid"});
      if (word_at(&person, "seat") == word(Seat::foam_pad)) erase(&person, {"seat"});
    }
}

bool enter_water(const Node& root) {
  return word_at(member(&root, "boarding"), "kind") != word(BoardingKind::dry);
}

bool can_fail(const Node& root, FailureKind failure) {
  const Node* raft = member(&root, "raft");
  const RaftKind* kind = raft ? find_raft(word_at(raft, "kind")) : nullptr;
  if (!kind) return false;
  const std::string floor = word_at(raft, "floor");
  switch (failure) {
    case FailureKind::tube_leaking:
      return true;
    case FailureKind::floor_not_inflated:
      return floor.empty() ? kind->floor == FloorKind::inflated : floor == word(FloorKind::inflated);
    case FailureKind::lamp_dead:
      return has_lamp(root);
    default:
      throw std::invalid_argument("can_fail: not a failure of the raft itself");
  }
}

}  // namespace bide::scenario
