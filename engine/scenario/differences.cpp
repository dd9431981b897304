#include "bide/scenario/differences.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "bide/core/printable.hpp"
#include "bide/scenario/document.hpp"
#include "bide/scenario/write.hpp"
#include "bide/scenario/writer.hpp"

namespace bide::scenario {
namespace {

using Leaves = std::vector<std::pair<std::string, std::string>>;

void add_leaves(const Json& node, const std::string& pointer, Leaves& leaves) {
  if (pointer == "/name" || pointer == "/setting" || pointer == "/uncertain" || pointer == "/stores/extra")
    return;
  if (!node.is_structured()) {
    leaves.emplace_back(pointer, node.is_number()   ? fmt::format("{:.6g}", node.get<double>())
                                 : node.is_string() ? printable(node.get<std::string>())
                                                    : node.dump());
    return;
  }
  std::size_t index = 0;
  for (const auto& [key, value] : node.items())
    add_leaves(value, node.is_array() ? child(pointer, index++) : child(pointer, key), leaves);
}

const std::string* find_leaf(const Leaves& leaves, const std::string& pointer) {
  const auto at =
      std::find_if(leaves.begin(), leaves.end(), [&](const auto& leaf) { return leaf.first == pointer; });
  return at == leaves.end() ? nullptr : &at->second;
}

bool all_equal(const Difference& difference) {
  return std::all_of(difference.values.begin(), difference.values.end(),
                     [&](const InForce& each) { return each.value == difference.values.front().value; });
}

}  // namespace

std::vector<Difference> differences(const std::vector<const ValidScenario*>& scenarios) {
  std::vector<Leaves> all;
  std::vector<std::string> pointers;
  std::set<std::string> seen;
  for (const ValidScenario* each : scenarios) {
    add_leaves(object_to_json(each->scenario), "", all.emplace_back());
    for (const auto& leaf : all.back())
      if (seen.insert(leaf.first).second) pointers.push_back(leaf.first);
  }
  const std::vector<FieldLine> fields = field_lines();
  std::vector<Difference> out;
  for (const std::string& pointer : pointers) {
    Difference difference{pointer, "", {}};
    for (std::size_t i = 0; i < scenarios.size(); ++i) {
      const std::string* leaf = find_leaf(all[i], pointer);
      const bool filled = is_default(*scenarios[i], pointer);
      difference.values.push_back({leaf ? *leaf : "none", leaf != nullptr && filled});
    }
    if (all_equal(difference)) continue;
    const auto field =
        std::find_if(fields.begin(), fields.end(),
                     [any = any_index(pointer)](const FieldLine& f) { return f.pointer == any; });
    if (field != fields.end() && field->unit != "1") difference.unit = field->unit;
    out.push_back(std::move(difference));
  }
  return out;
}

std::vector<Difference> differences_aboard(const std::vector<const ValidScenario*>& scenarios) {
  std::vector<const ItemKind*> kinds;
  for (const ValidScenario* each : scenarios)
    for (const StockItem& item : each->stock)
      if (std::find(kinds.begin(), kinds.end(), item.kind) == kinds.end()) kinds.push_back(item.kind);
  std::vector<Difference> out;
  for (const ItemKind* kind : kinds) {
    Difference difference{kind->title, "", {}};
    for (const ValidScenario* each : scenarios) {
      const auto at = std::find_if(each->stock.begin(), each->stock.end(),
                                   [&](const StockItem& item) { return item.kind == kind; });
      difference.values.push_back(
          {at == each->stock.end() ? "none" : fmt::format("{:.6g}", at->quantity), false});
    }
    if (!all_equal(difference)) out.push_back(std::move(difference));
  }
  return out;
}

}  // namespace bide::scenario
