#include "variable.hpp"

#include <algorithm>

#include "axes.hpp"
#include "refused.hpp"

namespace bide::tool::cf {
namespace {

// Of a day's or a month's highest or lowest, which is no state of the weather at a time.
bool is_extreme(const File& file, const Head& head) {
  const std::string methods = file.text(&head, "cell_methods").value_or("");
  return methods.find("maximum") != std::string::npos || methods.find("minimum") != std::string::npos;
}

std::string names(const std::vector<std::string_view>& words, const char* between = ", ") {
  std::string out;
  for (const std::string_view word : words) out += (out.empty() ? "" : between) + std::string(word);
  return out;
}

// By name, else by standard name.
const Head* find(const File& file, const FieldFacts& facts) {
  for (const std::string_view name : facts.names)
    if (const Head* head = file.find(name); head != nullptr && !is_extreme(file, *head)) return head;
  std::vector<const Head*> found;
  for (const Head& head : file.variables()) {
    const std::string name = file.text(&head, "standard_name").value_or("");
    const auto& known = facts.standard_names;
    if (std::find(known.begin(), known.end(), name) != known.end() && !is_extreme(file, head))
      found.push_back(&head);
  }
  if (found.size() > 1)
    found.erase(
        std::remove_if(found.begin(), found.end(),
                       [&](const Head* head) { return wrong_height(file, facts.field, *head).has_value(); }),
        found.end());
  if (found.empty()) return nullptr;
  if (found.size() == 1) return found.front();
  std::vector<std::string_view> several;
  several.reserve(found.size());
  for (const Head* head : found) several.push_back(head->name);
  refuse("found {} for {}; allowed one variable, or one of them named {}", names(several, " and "),
         facts.words, names(facts.names, " or "));
}

std::string all_names() {
  std::string out;
  for (const FieldFacts& each : fields())
    out += (out.empty() ? "" : "; ") + std::string(each.words) + ": " + names(each.names);
  return out;
}

Variable variable(const File& file, Field field, const Head& head) {
  Variable out{};
  out.field = field;
  out.head = head;
  if (const auto wrong = wrong_height(file, field, head)) {
    const FieldFacts& f = facts(field);
    refuse("{}: found {} at {}; allowed {}", head.name, f.words, *wrong,
           f.lowest_height_m == f.highest_height_m
               ? fmt::format("{} m", f.lowest_height_m)
               : fmt::format("at most {} m above the surface", f.highest_height_m));
  }
  if (head.type == Head::Type::text) refuse("{}: found text; allowed numbers", head.name);
  const std::optional<std::string> units = file.text(&head, "units");
  try {
    out.to_field = read_units(field, units);
  } catch (const Refused& wrong) {
    refuse("{}:{}", head.name, wrong.what());
  }
  out.units = units.value_or("1");
  out.packing = read_packing(file, head);
  read_axes(file, out);
  return out;
}

}  // namespace

std::vector<Variable> variables(const File& file) {
  std::vector<Variable> out;
  for (const FieldFacts& each : fields())
    if (const Head* head = find(file, each)) out.push_back(variable(file, each.field, *head));
  if (!out.empty()) return out;
  constexpr std::size_t most_named = 12;
  std::vector<std::string_view> found;
  for (const Head& head : file.variables())
    if (found.size() < most_named) found.emplace_back(head.name);
  const std::string more = found.size() < file.variables().size() ? " and others" : "";
  refuse("found {}{}; allowed {}; or variables with their CF standard names",
         found.empty() ? "no variables" : "the variables " + names(found), more, all_names());
}

}  // namespace bide::tool::cf
