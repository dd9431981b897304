// From the tree to the structs, checked against describe(): every wrong field is reported, none stops the
// rest.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <string>
#include <type_traits>

#include "bide/scenario/describe.hpp"
#include "bide/scenario/document.hpp"
#include "bide/scenario/nearest.hpp"
#include "bide/scenario/words.hpp"

namespace bide::scenario {

namespace detail {
template <class T>
struct Unwrapped {
  using type = T;
};
template <class T>
struct Unwrapped<std::optional<T>> {
  using type = T;
};
template <class T>
inline constexpr bool is_list = false;
template <class T>
inline constexpr bool is_list<std::vector<T>> = true;
template <class T>
inline constexpr bool is_numbers = false;
template <std::size_t N>
inline constexpr bool is_numbers<std::array<double, N>> = true;
template <class T>
inline constexpr bool is_named = false;
template <class T>
inline constexpr bool is_named<Named<T>> = true;
// A struct with fields of its own.
template <class T>
inline constexpr bool is_described =
    std::is_class_v<T> && !std::is_same_v<T, std::string> && !std::is_same_v<T, Value> && !is_list<T> &&
    !is_numbers<T> && !is_named<T>;
// An entry of a list or of Named, which has no field of its own.
template <class T>
constexpr Field entry_field() {
  if constexpr (std::is_same_v<T, std::string>)
    return text({}, required, {});
  else
    return number({}, {}, -largest_stated, largest_stated, required, {});
}
}  // namespace detail

// The type of a member without its optional.
template <class T>
using Plain = typename detail::Unwrapped<T>::type;

std::string range_words(const Field& field);  // "0.6 to 2.3 m"
std::string joined(const std::vector<std::string_view>& words);

template <class E>
std::vector<std::string_view> enum_words() {
  return {words_of<E>.begin(), words_of<E>.end()};
}

// What a member of type T may be, in words.
template <class T>
std::string allowed_words(const Field& field) {
  if constexpr (std::is_same_v<T, bool>) {
    return "true or false";
  } else if constexpr (std::is_same_v<T, int>) {
    return "a whole number from " + range_words(field);
  } else if constexpr (std::is_same_v<T, double>) {
    return "a number from " + range_words(field);
  } else if constexpr (std::is_same_v<T, std::string>) {
    return fmt::format("a string of at most {} bytes", field.high);
  } else if constexpr (std::is_enum_v<T>) {
    return joined(enum_words<T>());
  } else if constexpr (detail::is_numbers<T>) {
    return fmt::format("an array of {} numbers from {}", std::tuple_size_v<T>, range_words(field));
  } else if constexpr (detail::is_list<T>) {
    return fmt::format("an array of {} to {} entries", field.low, field.high);
  } else if constexpr (std::is_same_v<T, Value>) {
    return "a number, a word, true, false or null";
  } else {
    return "an object";
  }
}

class Reader {
 public:
  Reader(const std::string& file, Diagnostics& wrong) : file_(file), wrong_(wrong) {}

  // Fields not stated keep the values they had in `out`.
  template <class S>
  void read(const Node& node, const std::string& pointer, S& out) {
    if (node.kind != Node::Kind::object) return report(pointer, node, "an object");
    std::vector<std::string_view> keys;
    describe(As<S>{}, [&](auto member, const Field& field) {
      keys.push_back(field.key);
      using T = Plain<std::remove_reference_t<decltype(out.*member)>>;
      const std::string here = child(pointer, field.key);
      if (const Node* value = find(node, field.key))
        read_member(*value, here, field, out.*member);
      else if (field.absent.kind == Absent::Kind::required)
        report(here, fmt::format("missing; allowed {}", allowed_words<T>(field)));
    });
    for (const auto& [key, value] : node.members)
      if (std::find(keys.begin(), keys.end(), key) == keys.end())
        report(child(pointer, key), fmt::format("found unknown key {}; allowed {}{}", in_quotes(key),
                                                joined(keys), did_you_mean(key, keys)));
  }

  void report(const std::string& pointer, std::string message) {
    unsound_.insert(pointer);
    wrong_.push_back({file_, pointer, std::move(message)});
  }

  // False if this place, or one that holds it, was reported: rules that need it are then left out.
  bool sound(std::string_view pointer) const;

 private:
  void report(const std::string& pointer, const Node& node, const std::string& allowed) {
    report(pointer, fmt::format("found {}; allowed {}", found(node), allowed));
  }
  static const Node* find(const Node& node, std::string_view key) {
    for (const Member& member : node.members)
      if (member.key == key) return &member.value;
    return nullptr;
  }

  template <class T>
  void read_member(const Node& node, const std::string& pointer, const Field& field, std::optional<T>& out) {
    out.emplace();
    read_member(node, pointer, field, *out);
  }

  template <class T>
  void read_member(const Node& node, const std::string& pointer, const Field& field, T& out) {
    if constexpr (std::is_same_v<T, bool>) {
      if (node.kind != Node::Kind::truth) return report(pointer, node, allowed_words<T>(field));
      out = node.truth;
    } else if constexpr (std::is_arithmetic_v<T>) {
      const bool whole = std::is_floating_point_v<T> || node.number == std::floor(node.number);
      if (node.kind != Node::Kind::number || !whole ||
          !(node.number >= field.low && node.number <= field.high))
        return report(pointer, node, allowed_words<T>(field));
      out = static_cast<T>(node.number);
    } else if constexpr (std::is_same_v<T, std::string>) {
      if (node.kind != Node::Kind::string) return report(pointer, node, allowed_words<T>(field));
      const auto length = static_cast<double>(node.string.size());
      if (length < field.low || length > field.high)
        return report(pointer,
                      fmt::format("found a string of {} bytes; allowed {}", length, allowed_words<T>(field)));
      out = node.string;
    } else if constexpr (std::is_enum_v<T>) {
      const std::vector<std::string_view> words = enum_words<T>();
      const auto at = std::find(words.begin(), words.end(), node.string);
      if (node.kind != Node::Kind::string) return report(pointer, node, allowed_words<T>(field));
      if (at == words.end())
        return report(pointer, fmt::format("found {}; allowed {}{}", found(node), joined(words),
                                           did_you_mean(node.string, words)));
      out = static_cast<T>(at - words.begin());
    } else if constexpr (detail::is_numbers<T>) {
      if (node.kind != Node::Kind::array || node.items.size() != out.size())
        return report(pointer, node, allowed_words<T>(field));
      for (std::size_t i = 0; i < out.size(); ++i)
        read_member(node.items[i], child(pointer, i), field, out[i]);
    } else if constexpr (detail::is_list<T>) {
      const auto count = static_cast<double>(node.items.size());
      if (node.kind != Node::Kind::array || count < field.low || count > field.high)
        return report(pointer, node, allowed_words<T>(field));
      out.resize(node.items.size());
      using Entry = typename T::value_type;
      for (std::size_t i = 0; i < out.size(); ++i)
        read_member(node.items[i], child(pointer, i), detail::entry_field<Entry>(), out[i]);
    } else if constexpr (detail::is_named<T>) {
      if (node.kind != Node::Kind::object) return report(pointer, node, allowed_words<T>(field));
      for (const auto& [key, value] : node.members) {
        auto& entry = out.entries.emplace_back();
        entry.first = key;
        read_member(value, child(pointer, key), detail::entry_field<decltype(entry.second)>(), entry.second);
      }
    } else if constexpr (std::is_same_v<T, Value>) {
      switch (node.kind) {
        case Node::Kind::null:
          out = std::monostate{};
          break;
        case Node::Kind::truth:
          out = node.truth;
          break;
        case Node::Kind::number:
          out = node.number;
          break;
        case Node::Kind::string:
          out = node.string;
          break;
        case Node::Kind::array:
        case Node::Kind::object:
          return report(pointer, node, allowed_words<T>(field));
      }
    } else {
      read(node, pointer, out);
    }
  }

  const std::string& file_;
  Diagnostics& wrong_;
  std::set<std::string, std::less<>> unsound_;
};

}  // namespace bide::scenario
