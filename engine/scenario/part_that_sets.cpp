#include "bide/scenario/part_that_sets.hpp"

#include <algorithm>

namespace bide::scenario {

std::string part_that_sets(const Uncertain& uncertain,
                           const std::function<bool(const std::string&)>& sought) {
  const auto sets = [&](const auto& entries) {
    return std::any_of(entries.begin(), entries.end(), [&](const auto& each) { return sought(each.first); });
  };
  if (sets(uncertain.inputs.entries)) return "/uncertain/inputs";
  for (const SharedInput& group : uncertain.groups)
    if (std::any_of(group.pointers.begin(), group.pointers.end(), sought)) return "/uncertain/groups";
  for (const Alternative& one : uncertain.alternatives)
    if (sets(one.set.entries)) return "/uncertain/alternatives";
  return {};
}

}  // namespace bide::scenario
