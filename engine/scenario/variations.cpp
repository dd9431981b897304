#include "bide/scenario/variations.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "bide/core/csv.hpp"
#include "bide/core/printable.hpp"
#include "bide/core/text.hpp"
#include "bide/scenario/nearest.hpp"
#include "bide/scenario/other_raft.hpp"
#include "bide/scenario/patch.hpp"
#include "bide/scenario/write.hpp"

namespace bide::scenario {
namespace {

// Empty when the text is of another kind than the field.
std::optional<Value> value_of(const std::string& text, FieldLine::Holds holds) {
  switch (holds) {
    case FieldLine::Holds::number:
    case FieldLine::Holds::whole:
      if (const std::optional<double> number = parse_number(text)) return *number;
      return std::nullopt;
    case FieldLine::Holds::truth:
      if (text == "true") return true;
      if (text == "false") return false;
      return std::nullopt;
    case FieldLine::Holds::word:
    case FieldLine::Holds::text:
      return text;
    case FieldLine::Holds::parts:
      break;
  }
  return std::nullopt;
}

// A single run does not use the uncertain block of its scenario.
bool can_vary(const FieldLine& line) {
  return line.holds != FieldLine::Holds::parts && line.pointer.rfind("/uncertain", 0) != 0;
}

}  // namespace

std::variant<Variation, Diagnostic> read_variation(const std::string& text, const std::string& option) {
  if (const auto bad = why_not_utf8(text)) return Diagnostic{option, "", *bad};
  const std::size_t equals = text.find('=');
  if (equals == std::string::npos || equals + 1 == text.size())
    return Diagnostic{option, "", fmt::format("found {}; allowed POINTER=value,value...", in_quotes(text))};
  Variation out;
  out.pointer = text.substr(0, equals);
  const std::vector<FieldLine> lines = field_lines();
  const auto line =
      std::find_if(lines.begin(), lines.end(), [any = any_index(out.pointer)](const FieldLine& each) {
        return each.pointer == any && can_vary(each);
      });
  if (line == lines.end()) {
    std::vector<std::string_view> pointers;
    for (const FieldLine& each : lines)
      if (can_vary(each)) pointers.push_back(each.pointer);
    return Diagnostic{option, out.pointer,
                      fmt::format("found no such field; allowed the pointer of a field that holds a value{}",
                                  did_you_mean(out.pointer, pointers))};
  }
  for (const std::string& written : split(text.substr(equals + 1), ',')) {
    const auto value = value_of(written, line->holds);
    if (!value)
      return Diagnostic{option, out.pointer,
                        fmt::format("found {}; allowed {}", in_quotes(written), line->allowed)};
    if (std::find(out.values.begin(), out.values.end(), *value) != out.values.end())
      return Diagnostic{option, out.pointer, fmt::format("found {} twice; allowed once", in_quotes(written))};
    out.values.push_back(*value);
    out.written.push_back(written);
  }
  return out;
}

std::variant<std::vector<Version>, Diagnostics> versions(const ValidScenario& base,
                                                         const std::vector<Variation>& variations) {
  std::size_t count = 1;
  for (std::size_t i = 0; i < variations.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j)
      if (variations[j].pointer == variations[i].pointer)
        return Diagnostics{{base.file, variations[i].pointer, "varied twice; allowed once"}};
    count = std::min(count * variations[i].values.size(), most_versions + 1);
  }
  if (count > most_versions)
    return Diagnostics{
        {base.file, "",
         fmt::format("the values make more than {} combinations; allowed at most that", most_versions)}};
  const auto varies = [&](std::string_view pointer) {
    return std::any_of(variations.begin(), variations.end(),
                       [&](const Variation& each) { return each.pointer == pointer; });
  };
  std::vector<Version> out;
  Diagnostics wrong;
  for (std::size_t k = 0; k < count; ++k) {
    Node document = *base.document;
    std::string name = base.file + " with";
    std::vector<Version::PutIn> put_in;
    std::size_t left = k, block = count;
    bool placed = true;
    for (const Variation& variation : variations) {
      block /= variation.values.size();
      const std::size_t at = left / block;
      left %= block;
      name += fmt::format(" {}={}", variation.pointer, variation.written[at]);
      put_in.push_back({variation.pointer, variation.written[at]});
      if (!put(document, variation.pointer, variation.values[at])) {
        wrong.push_back({base.file, variation.pointer, "the scenario has no such entry; allowed one it has"});
        placed = false;
      }
    }
    if (!placed) return wrong;
    const bool raft_alone = base.raft_kind && varies("/raft/kind") && !varies("/stores/pack");
    if (raft_alone) carry_own_pack(document, base.scenario);
    Validated validated = validate_document(std::move(document), name, base.folder);
    if (const auto* refused = std::get_if<Diagnostics>(&validated)) {
      wrong.insert(wrong.end(), refused->begin(), refused->end());
      continue;
    }
    Version& made =
        out.emplace_back(Version{std::move(std::get<ValidScenario>(validated)), std::move(put_in)});
    if (!raft_alone || made.raft_kind == base.raft_kind) continue;
    if (std::string words = pack_words(base.scenario, *made.raft_kind); !words.empty())
      made.cautions.push_back({name, "/stores/pack", std::move(words)});
  }
  if (!wrong.empty()) return wrong;
  return out;
}

Validated with_stores_of(const ValidScenario& first, const ValidScenario& other) {
  Node list;
  list.kind = Node::Kind::array;
  for (const StockItem& item : first.stock) {
    Node entry = empty_object();
    entry.members.push_back({"kind", word_node(item.kind->key)});
    entry.members.push_back({"quantity", number_node(item.quantity)});
    list.items.push_back(std::move(entry));
  }
  Node stores = empty_object();
  stores.members.push_back({"pack", word_node("none")});
  stores.members.push_back({"extra", std::move(list)});
  Node document = *other.document;
  std::erase_if(document.members, [](const Member& each) { return each.key == "stores"; });
  document.members.push_back({"stores", std::move(stores)});
  return validate_document(std::move(document), other.file + " with the stores of " + first.file,
                           other.folder);
}

}  // namespace bide::scenario
