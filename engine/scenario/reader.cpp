#include "bide/scenario/reader.hpp"

#include <algorithm>
#include <cmath>

#include "bide/scenario/uncertain.hpp"

namespace bide::scenario {

void Reader::report(const std::string& pointer, std::string message) {
  unsound_.insert(pointer);
  wrong_.push_back({file_, pointer, std::move(message)});
}

bool Reader::sound(std::string_view pointer) const {
  for (std::size_t end = pointer.size();; end = pointer.rfind('/', end - 1)) {
    if (unsound_.contains(pointer.substr(0, end))) return false;
    if (end == 0 || end == std::string_view::npos) return true;
  }
}

void Reader::read_parts(const Node& node, const std::string& pointer, const Shape& shape, void* out) {
  if (node.kind != Node::Kind::object)
    return report(pointer, fmt::format("found {}; allowed an object", found(node)));
  std::vector<std::string_view> keys;
  for (const Part& part : shape.parts) {
    const Field& field = part.field;
    keys.push_back(field.key);
    const std::string here = child(pointer, field.key);
    const auto at = std::find_if(node.members.begin(), node.members.end(),
                                 [&](const Member& each) { return each.key == field.key; });
    if (at != node.members.end())
      read_value(at->value, here, *part.shape, field, part.engaged_in(out));
    else if (field.absent.kind == Absent::Kind::required)
      report(here, fmt::format("missing; allowed {}", allowed_words(*part.shape, field)));
  }
  for (const auto& [key, value] : node.members)
    if (std::find(keys.begin(), keys.end(), key) == keys.end())
      report(child(pointer, key), fmt::format("found unknown key {}; allowed {}{}", in_quotes(key),
                                              joined(keys), did_you_mean(key, keys)));
}

void Reader::read_value(const Node& node, const std::string& pointer, const Shape& shape, const Field& field,
                        void* out) {
  using Kind = Shape::Kind;
  const auto refuse = [&] {
    report(pointer, fmt::format("found {}; allowed {}{}{}", found(node), allowed_words(shape, field),
                                field.refusal.empty() ? "" : ": ", field.refusal));
  };
  switch (shape.kind) {
    case Kind::truth:
      if (node.kind != Node::Kind::truth) return refuse();
      as<bool>(out) = node.truth;
      return;
    case Kind::whole:
    case Kind::number: {
      const bool fits = shape.kind == Kind::number || node.number == std::floor(node.number);
      if (node.kind != Node::Kind::number || !fits ||
          !(node.number >= field.low && node.number <= field.high))
        return refuse();
      if (shape.kind == Kind::number)
        as<double>(out) = node.number;
      else
        as<int>(out) = static_cast<int>(node.number);
      return;
    }
    case Kind::text: {
      if (node.kind != Node::Kind::string) return refuse();
      const auto length = static_cast<double>(node.string.size());
      if (length < field.low || length > field.high)
        return report(pointer, fmt::format("found a string of {} bytes; allowed {}", length,
                                           allowed_words(shape, field)));
      as<std::string>(out) = node.string;
      return;
    }
    case Kind::word:
      if (node.kind != Node::Kind::string) return refuse();
      return read_word(node, pointer, shape, out);
    case Kind::numbers:
      if (node.kind != Node::Kind::array || node.items.size() != shape.size(out)) return refuse();
      for (std::size_t i = 0; i < node.items.size(); ++i)
        read_value(node.items[i], child(pointer, i), *shape.entry, field, shape.at(out, i));
      return;
    case Kind::list: {
      const auto count = static_cast<double>(node.items.size());
      if (node.kind != Node::Kind::array || count < field.low || count > field.high) return refuse();
      return read_entries(node, pointer, shape, out);
    }
    case Kind::named:
      if (node.kind != Node::Kind::object) return refuse();
      if (static_cast<double>(node.members.size()) > field.high)
        return report(pointer, fmt::format("found an object of {} members; allowed {}", node.members.size(),
                                           allowed_words(shape, field)));
      return read_named(node, pointer, shape, out);
    case Kind::value:
      if (node.kind == Node::Kind::array || node.kind == Node::Kind::object) return refuse();
      if (node.kind == Node::Kind::null) as<Value>(out) = std::monostate{};
      if (node.kind == Node::Kind::truth) as<Value>(out) = node.truth;
      if (node.kind == Node::Kind::number) as<Value>(out) = node.number;
      if (node.kind == Node::Kind::string) as<Value>(out) = node.string;
      return;
    case Kind::parts:
      return read_parts(node, pointer, shape, out);
  }
}

void Reader::read_word(const Node& node, const std::string& pointer, const Shape& shape, void* out) {
  const auto at = std::find(shape.words.begin(), shape.words.end(), node.string);
  if (at != shape.words.end()) return shape.set_word(out, static_cast<std::size_t>(at - shape.words.begin()));
  const std::vector<std::string_view> words(shape.words.begin(), shape.words.end());
  report(pointer,
         fmt::format("found {}; allowed {}{}", found(node), joined(words), did_you_mean(node.string, words)));
}

void Reader::read_entries(const Node& node, const std::string& pointer, const Shape& shape, void* out) {
  shape.resize(out, node.items.size());
  const Field field = entry_field(*shape.entry);
  for (std::size_t i = 0; i < node.items.size(); ++i)
    read_value(node.items[i], child(pointer, i), *shape.entry, field, shape.at(out, i));
}

void Reader::read_named(const Node& node, const std::string& pointer, const Shape& shape, void* out) {
  shape.resize(out, node.members.size());
  const Field field = entry_field(*shape.entry);
  for (std::size_t i = 0; i < node.members.size(); ++i) {
    const auto& [key, value] = node.members[i];
    shape.key_at(out, i) = key;
    read_value(value, child(pointer, key), *shape.entry, field, shape.at(out, i));
  }
}

}  // namespace bide::scenario
