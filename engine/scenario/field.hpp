// What describe() says of one field: key, range, unit, sentence, and what stands when it is left out.
//
// Ranges are inclusive. For a string they bound its length in bytes, for an array or named members
// their number.
#pragma once

#include <limits>
#include <string_view>

#include "bide/core/people.hpp"

namespace bide::scenario {

inline constexpr int longest_string_bytes = 200;
inline constexpr int longest_array = 200;
inline constexpr int most_uncertain_inputs = 1000;
inline constexpr int longest_sample = 2000;  // values of a distribution

// Names the struct that is described: describe(As<S>{}, visitor).
template <class S>
struct As {};

// What a field is when the file does not state it.
struct Absent {
  enum class Kind {
    required,  // leaving it out is an error
    number,    // `number`
    truth,     // `truth`
    word,      // `words` is the value itself, of a string or an enumeration
    rule,      // worked out from the rest of the scenario; `words` says how
    empty      // stays empty; `words` says what that means
  };
  Kind kind = Kind::required;
  double number = 0;
  bool truth = false;
  std::string_view words{};
};

inline constexpr Absent required{};
constexpr Absent otherwise(double value) {
  return {Absent::Kind::number, value, false, {}};
}
constexpr Absent otherwise_true() {
  return {Absent::Kind::truth, 0, true, {}};
}
constexpr Absent otherwise_false() {
  return {Absent::Kind::truth, 0, false, {}};
}
constexpr Absent otherwise_word(std::string_view value) {
  return {Absent::Kind::word, 0, false, value};
}
constexpr Absent by_rule(std::string_view how) {
  return {Absent::Kind::rule, 0, false, how};
}
constexpr Absent stays_empty(std::string_view meaning) {
  return {Absent::Kind::empty, 0, false, meaning};
}

struct Field {
  std::string_view key;
  std::string_view unit;
  double low = -std::numeric_limits<double>::infinity();
  double high = std::numeric_limits<double>::infinity();
  Absent absent;
  std::string_view sentence;
  std::string_view refusal{};  // why nothing beyond the range is run; empty where the range says it
};

// A number with a unit and a range.
constexpr Field number(std::string_view key, std::string_view unit, double low, double high, Absent absent,
                       std::string_view sentence) {
  return {key, unit, low, high, absent, sentence};
}
// The same with the reason of its range, which a refusal then gives.
constexpr Field because(Field field, std::string_view refusal) {
  field.refusal = refusal;
  return field;
}
// A string, an enumeration, a truth value or an object.
constexpr Field text(std::string_view key, Absent absent, std::string_view sentence) {
  return {key, {}, 0, longest_string_bytes, absent, sentence};
}
constexpr Field word_of(std::string_view key, Absent absent, std::string_view sentence) {
  return {key, {}, 0, 0, absent, sentence};
}
constexpr Field yes_or_no(std::string_view key, Absent absent, std::string_view sentence) {
  return {key, {}, 0, 1, absent, sentence};
}
constexpr Field object(std::string_view key, Absent absent, std::string_view sentence) {
  return {key, {}, 0, 0, absent, sentence};
}
// Members whose keys the user chooses.
constexpr Field named(std::string_view key, int most, Absent absent, std::string_view sentence) {
  return {key, {}, 0, static_cast<double>(most), absent, sentence};
}
constexpr Field list(std::string_view key, int fewest, int most, Absent absent, std::string_view sentence) {
  return {key, {}, static_cast<double>(fewest), static_cast<double>(most), absent, sentence};
}

}  // namespace bide::scenario
