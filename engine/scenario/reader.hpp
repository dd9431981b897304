// From the tree to the structs, checked against describe(): every wrong field is reported, none stops the
// rest.
#pragma once

#include <fmt/format.h>

#include <set>
#include <string>
#include <string_view>

#include "bide/scenario/document.hpp"
#include "bide/scenario/nearest.hpp"
#include "bide/scenario/shape.hpp"

namespace bide::scenario {

class Reader {
 public:
  Reader(const std::string& file, Diagnostics& wrong) : file_(file), wrong_(wrong) {}

  // Fields not stated keep the values they had in `out`.
  template <class S>
  void read(const Node& node, const std::string& pointer, S& out) {
    read_parts(node, pointer, shape_of<S>(), &out);
  }

  void report(const std::string& pointer, std::string message);

  // False if this place, or one that holds it, was reported: rules that need it are then left out.
  bool sound(std::string_view pointer) const;

 private:
  void read_parts(const Node& node, const std::string& pointer, const Shape& shape, void* out);
  void read_value(const Node& node, const std::string& pointer, const Shape& shape, const Field& field,
                  void* out);
  void read_word(const Node& node, const std::string& pointer, const Shape& shape, void* out);
  void read_entries(const Node& node, const std::string& pointer, const Shape& shape, void* out);
  void read_named(const Node& node, const std::string& pointer, const Shape& shape, void* out);

  const std::string& file_;
  Diagnostics& wrong_;
  std::set<std::string, std::less<>> unsound_;
};

}  // namespace bide::scenario
