// JSON text as a tree that remembers where everything stood: the strict first step of reading.
//
// Refused here: not UTF-8 (names the byte), a byte order mark, nothing at all, more than 1 MiB, nesting
// deeper than 32, the same key twice, a number too large for a double, anything that is not JSON (names line
// and column). Types, ranges and keys are checked by reader.hpp.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "bide/scenario/validate.hpp"

namespace bide::scenario {

inline constexpr std::size_t largest_file_bytes = 1024 * 1024;
inline constexpr int deepest_nesting = 32;

struct Member;

struct Node {
  enum class Kind { null, truth, number, string, array, object };
  Kind kind = Kind::null;
  bool truth = false;
  double number = 0;
  std::string string;           // of a number: as it was written
  std::vector<Node> items;      // of an array
  std::vector<Member> members;  // of an object, in file order
};
struct Member {
  std::string key;
  Node value;
};

// The tree, or nothing once the text cannot be read to its end; what is wrong is appended to `wrong`.
bool parse_document(std::string_view text, const std::string& file, Node& root, Diagnostics& wrong);

// Words for messages: a value as it was found, shortened, control characters escaped.
std::string found(const Node& node);
std::string in_quotes(std::string_view text);

// `pointer` extended by one key or index, escaped as RFC 6901 wants it.
std::string child(const std::string& pointer, std::string_view key);
std::string child(const std::string& pointer, std::size_t index);

}  // namespace bide::scenario
