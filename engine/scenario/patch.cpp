#include "bide/scenario/patch.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <utility>

#include "bide/scenario/writer.hpp"

namespace bide::scenario {
namespace {

// The next step of a pointer (no input has an escaped key).
Node* step(Node& from, std::string_view key) {
  if (from.kind == Node::Kind::array) {
    std::size_t index = 0;
    const auto [end, error] = std::from_chars(key.data(), key.data() + key.size(), index);
    const bool whole = error == std::errc() && end == key.data() + key.size();
    return whole && index < from.items.size() ? &from.items[index] : nullptr;
  }
  if (from.kind != Node::Kind::object) return nullptr;
  if (Node* found = member(from, key)) return found;
  from.members.push_back({std::string(key), empty_object()});
  return &from.members.back().value;
}

Node node_of(const Value& value) {
  if (const auto* number = std::get_if<double>(&value)) return number_node(*number);
  if (const auto* word = std::get_if<std::string>(&value)) return word_node(*word);
  Node node;
  if (const auto* truth = std::get_if<bool>(&value)) {
    node.kind = Node::Kind::truth;
    node.truth = *truth;
  }
  return node;
}

Json json_of(const Node& node) {
  switch (node.kind) {
    case Node::Kind::null:
      return nullptr;
    case Node::Kind::truth:
      return node.truth;
    case Node::Kind::number:
      return to_json(node.number);
    case Node::Kind::string:
      return node.string;
    case Node::Kind::array: {
      Json out = Json::array();
      for (const Node& item : node.items) out.push_back(json_of(item));
      return out;
    }
    case Node::Kind::object: {
      Json out = Json::object();
      for (const auto& [key, value] : node.members) out[key] = json_of(value);
      return out;
    }
  }
  return nullptr;
}

}  // namespace

const Node* member(const Node* object, std::string_view key) {
  if (!object) return nullptr;
  const auto at = std::find_if(object->members.begin(), object->members.end(),
                               [&](const Member& each) { return each.key == key; });
  return at == object->members.end() ? nullptr : &at->value;
}
Node* member(Node& object, std::string_view key) {
  return const_cast<Node*>(member(&std::as_const(object), key));
}

Node empty_object() {
  Node node;
  node.kind = Node::Kind::object;
  return node;
}

Node number_node(double value) {
  Node node;
  node.kind = Node::Kind::number;
  node.number = value;
  node.string = fmt::format("{}", value);
  return node;
}

Node word_node(std::string_view word) {
  Node node;
  node.kind = Node::Kind::string;
  node.string = std::string(word);
  return node;
}

bool put(Node& root, std::string_view pointer, const Value& value) {
  if (pointer.empty() || pointer.front() != '/') return false;
  const bool removal = std::holds_alternative<std::monostate>(value);
  Node* at = &root;
  pointer.remove_prefix(1);
  for (std::size_t slash; (slash = pointer.find('/')) != std::string_view::npos;
       pointer.remove_prefix(slash + 1)) {
    const std::string_view key = pointer.substr(0, slash);
    if (removal && at->kind == Node::Kind::object && !member(*at, key)) return true;
    at = step(*at, key);
    if (!at) return false;
  }
  if (removal) {
    if (at->kind != Node::Kind::object) return false;
    std::erase_if(at->members, [&](const Member& each) { return each.key == pointer; });
    return true;
  }
  at = step(*at, pointer);
  if (!at) return false;
  *at = node_of(value);
  return true;
}

void append(Node& root, std::string_view list, Node entry) {
  Node* at = member(root, list);
  if (!at) {
    root.members.push_back({std::string(list), {}});
    at = &root.members.back().value;
    at->kind = Node::Kind::array;
  }
  at->items.push_back(std::move(entry));
}

std::string write_document(const Node& root) {
  return json_of(root).dump(2) + "\n";
}

}  // namespace bide::scenario
