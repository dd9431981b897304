// Reading the texts that are compiled in from scenarios/catalogue/.
#pragma once

#include <initializer_list>
#include <stdexcept>
#include <string>
#include <string_view>

#include "bide/scenario/reader.hpp"

namespace bide::scenario {

// The embedded texts are part of the program: one that does not read is a fault of the build, not of an
// input.
template <class S>
S read_embedded(std::initializer_list<std::string_view> texts) {
  const std::string file = "built-in catalogue";
  Diagnostics wrong;
  Node whole;
  whole.kind = Node::Kind::object;
  for (const std::string_view text : texts) {
    Node part;
    if (parse_document(text, file, part, wrong))
      std::move(part.members.begin(), part.members.end(), std::back_inserter(whole.members));
  }
  S out;
  Reader(file, wrong).read(whole, "", out);
  if (wrong.empty()) return out;
  std::string all;
  for (const Diagnostic& each : wrong) all += to_string(each) + "\n";
  throw std::logic_error(all);
}

}  // namespace bide::scenario
