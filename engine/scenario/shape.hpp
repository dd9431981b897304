// What the described structs are made of, as data.
//
// Each describe() is visited once, in shapes.cpp; reading, filling in, writing, listing and the schema go
// over the table made there, so that only shapes.cpp is compiled for every field. A `void*` here always
// points to a value of the type that its shape was made from: shape_of() and Part::shape see to that.
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "bide/scenario/field.hpp"

namespace bide::scenario {

struct Shape;

// One field of a struct.
struct Part {
  Field field;
  const Shape* shape = nullptr;  // of the value, without its optional
  std::ptrdiff_t offset = 0;     // in bytes, from the beginning of the struct to the member
  // Address of the member's value: null if it is an empty optional. `engage` fills an empty optional.
  const void* (*look)(const void* member) = nullptr;
  void* (*engage)(void* member) = nullptr;

  const void* value_in(const void* owner) const { return look(static_cast<const char*>(owner) + offset); }
  void* engaged_in(void* owner) const { return engage(static_cast<char*>(owner) + offset); }
};

// A type of value.
struct Shape {
  enum class Kind {
    truth,    // bool
    whole,    // int
    number,   // double
    text,     // std::string
    word,     // an enumeration
    value,    // Value
    numbers,  // std::array of double
    list,     // std::vector
    named,    // Named
    parts     // a struct with fields of its own
  };
  Kind kind = Kind::parts;

  // A word
  std::span<const std::string_view> words{};
  std::size_t (*word_index)(const void*) = nullptr;
  void (*set_word)(void*, std::size_t) = nullptr;

  // Numbers, a list, named: `resize` is null for numbers, `key_at` for all but named
  const Shape* entry = nullptr;
  std::size_t (*size)(const void*) = nullptr;
  void (*resize)(void*, std::size_t) = nullptr;
  void* (*at)(void*, std::size_t) = nullptr;
  std::string& (*key_at)(void*, std::size_t) = nullptr;

  // A struct
  std::string_view name{};  // for the schema
  std::vector<Part> parts{};

  const void* at_const(const void* list, std::size_t index) const {
    return at(const_cast<void*>(list), index);  // `at` does not change the list
  }
  bool is_number() const { return kind == Kind::number || kind == Kind::whole; }
};

// Of Scenario, Uncertain, StudyFile, Catalogue, SeaAreas, LeverList and Priors, and of what they hold.
template <class S>
const Shape& shape_of();

template <class T>
const T& as(const void* value) {
  return *static_cast<const T*>(value);
}
template <class T>
T& as(void* value) {
  return *static_cast<T*>(value);
}

// "0.6 to 2.3 m"
std::string range_words(const Field& field);
// What a value may be, in words.
std::string allowed_words(const Shape& shape, const Field& field);
// An entry of a list or of named values, which has no field of its own.
Field entry_field(const Shape& entry);

std::string joined(std::span<const std::string_view> words);

}  // namespace bide::scenario
