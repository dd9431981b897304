#include "bide/scenario/document.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>

#include "bide/core/printable.hpp"

namespace bide::scenario {
namespace {

std::string line_and_column(std::string_view text, std::size_t position) {
  const std::string_view before = text.substr(0, std::min(position, text.size()));
  const auto line = std::count(before.begin(), before.end(), '\n') + 1;
  const std::size_t start = before.rfind('\n') == std::string_view::npos ? 0 : before.rfind('\n') + 1;
  return fmt::format("line {}, column {}", line, std::max<std::size_t>(before.size() - start, 1));
}

// The library's explanation without its own name and position, which stand in front of it.
std::string reason(std::string_view what) {
  const std::size_t at = what.find("syntax error");
  if (at != std::string_view::npos) what = what.substr(at);
  std::string out;
  for (const char c : what) out += static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
  return out;
}

// Builds the tree from the parser's events; the parser itself keeps no stack of calls, so depth is ours to
// bound.
class Builder : public nlohmann::json_sax<nlohmann::json> {
 public:
  Builder(std::string_view text, const std::string& file, Node& root, Diagnostics& wrong)
      : text_(text), file_(file), root_(root), wrong_(wrong) {}

  bool null() override { return place({}); }
  bool boolean(bool value) override {
    Node node;
    node.kind = Node::Kind::truth;
    node.truth = value;
    return place(std::move(node));
  }
  bool number_integer(number_integer_t value) override {
    return place_number(static_cast<double>(value), fmt::format("{}", value));
  }
  bool number_unsigned(number_unsigned_t value) override {
    return place_number(static_cast<double>(value), fmt::format("{}", value));
  }
  bool number_float(number_float_t value, const string_t& written) override {
    return place_number(value, written);
  }
  bool string(string_t& value) override {
    Node node;
    node.kind = Node::Kind::string;
    node.string = std::move(value);
    return place(std::move(node));
  }
  bool binary(binary_t&) override { return false; }  // not part of JSON text

  bool start_object(std::size_t) override { return open(Node::Kind::object); }
  bool start_array(std::size_t) override { return open(Node::Kind::array); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }

  bool key(string_t& value) override {
    Level& level = levels_.back();
    level.key = value;
    level.skip = !level.keys.insert(value).second;
    if (level.skip) wrong_.push_back({file_, pointer(), "found the same key twice; allowed once"});
    return true;
  }

  bool parse_error(std::size_t position, const std::string& token,
                   const nlohmann::detail::exception& e) override {
    if (e.id == 406)
      wrong_.push_back({file_, pointer(),
                        fmt::format("{}: found {}, which is too large; allowed finite numbers",
                                    line_and_column(text_, position), in_quotes(token))});
    else
      wrong_.push_back(
          {file_, "", fmt::format("{}: {}", line_and_column(text_, position), reason(e.what()))});
    return false;
  }

 private:
  struct Level {
    Node node;
    std::string key;             // of the member being read
    std::set<std::string> keys;  // seen so far
    bool skip = false;           // this member is a repetition
  };

  bool place_number(double value, std::string written) {
    Node node;
    node.kind = Node::Kind::number;
    node.number = value;
    node.string = std::move(written);
    return place(std::move(node));
  }

  bool place(Node node) {
    if (levels_.empty()) {
      root_ = std::move(node);
      return true;
    }
    Level& level = levels_.back();
    if (level.node.kind == Node::Kind::array)
      level.node.items.push_back(std::move(node));
    else if (!level.skip)
      level.node.members.push_back({level.key, std::move(node)});
    return true;
  }

  bool open(Node::Kind kind) {
    if (levels_.size() >= static_cast<std::size_t>(deepest_nesting)) {
      wrong_.push_back(
          {file_, "",
           fmt::format("found nesting deeper than {} levels; allowed {}", deepest_nesting, deepest_nesting)});
      return false;
    }
    levels_.emplace_back();
    levels_.back().node.kind = kind;
    return true;
  }

  bool close() {
    Node done = std::move(levels_.back().node);
    levels_.pop_back();
    return place(std::move(done));
  }

  std::string pointer() const {
    std::string out;
    for (const Level& level : levels_)
      out =
          level.node.kind == Node::Kind::array ? child(out, level.node.items.size()) : child(out, level.key);
    return out;
  }

  std::string_view text_;
  const std::string& file_;
  Node& root_;
  Diagnostics& wrong_;
  std::vector<Level> levels_;
};

}  // namespace

bool parse_document(std::string_view text, const std::string& file, Node& root, Diagnostics& wrong) {
  const auto refuse = [&](std::string message) {
    wrong.push_back({file, "", std::move(message)});
    return false;
  };
  if (text.size() > largest_file_bytes)
    return refuse(fmt::format("found {} bytes; allowed at most {}", text.size(), largest_file_bytes));
  if (text.substr(0, 3) == "\xEF\xBB\xBF")
    return refuse("found a byte order mark at the start; allowed UTF-8 without one");
  if (const auto bad = why_not_utf8(text)) return refuse(*bad + "; allowed UTF-8");
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos)
    return refuse("found an empty file; allowed a JSON object");
  Builder builder(text, file, root, wrong);
  return nlohmann::json::sax_parse(text.begin(), text.end(), &builder);
}

std::string in_quotes(std::string_view text) {
  constexpr std::size_t longest = 60;
  std::size_t length = std::min(text.size(), longest);
  while (length < text.size() && length > 0 && (static_cast<unsigned char>(text[length]) & 0xC0) == 0x80)
    --length;
  return fmt::format("\"{}{}\"", printable(text.substr(0, length)), length < text.size() ? "..." : "");
}

std::string found(const Node& node) {
  switch (node.kind) {
    case Node::Kind::null:
      return "null";
    case Node::Kind::truth:
      return node.truth ? "true" : "false";
    case Node::Kind::number:
      return node.string.substr(0, 40);
    case Node::Kind::string:
      return in_quotes(node.string);
    case Node::Kind::array:
      return fmt::format("an array of {}", node.items.size());
    case Node::Kind::object:
      return "an object";
  }
  return {};
}

std::string child(const std::string& pointer, std::string_view key) {
  std::string out = pointer + "/";
  for (const char c : key) {
    if (c == '~')
      out += "~0";
    else if (c == '/')
      out += "~1";
    else
      out += c;
  }
  return out;
}

std::string child(const std::string& pointer, std::size_t index) {
  return fmt::format("{}/{}", pointer, index);
}

}  // namespace bide::scenario
