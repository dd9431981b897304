// How people are called: Person A to Z, then AA, AB... by their place in the crew.
#pragma once

#include <string>

namespace bide {

// Bijective base 26 from `first`: "A", "B", ... "Z", "AA".
inline std::string crew_letters(int index, char first) {
  constexpr int alphabet = 26;
  std::string out;
  for (int n = index; n >= 0; n = n / alphabet - 1)
    out.insert(out.begin(), static_cast<char>(first + n % alphabet));
  return out;
}

inline std::string person_label(int index) {
  return "Person " + crew_letters(index, 'A');
}

}  // namespace bide
