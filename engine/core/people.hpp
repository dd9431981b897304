// How people are called: Person A to Z, then AA, AB... by their place in the crew.
#pragma once

#include <string>

namespace bide {

inline constexpr int largest_crew = 100;

// The letters of a place: "A", "B", ... "Z", "AA" (bijective base 26).
// @param index place in the crew, from 0; negative: an empty string
// @param first letter of place 0, 'A' or 'a'
inline std::string crew_letters(int index, char first) {
  constexpr int alphabet = 26;
  std::string out;
  for (int n = index; n >= 0; n = n / alphabet - 1)
    out.insert(out.begin(), static_cast<char>(first + n % alphabet));
  return out;
}

// "Person A" and so on.
// @param index place in the crew, from 0
inline std::string person_label(int index) {
  return "Person " + crew_letters(index, 'A');
}

}  // namespace bide
