#include "bide/scenario/nearest.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace bide::scenario {

int edit_distance(std::string_view a, std::string_view b) {
  std::vector<int> before_last(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = static_cast<int>(j);
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = static_cast<int>(i);
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const int substitution = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, substitution});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        row[j] = std::min(row[j], before_last[j - 2] + 1);
    }
    before_last.swap(last);
    last.swap(row);
  }
  return last[b.size()];
}

std::string did_you_mean(std::string_view found, const std::vector<std::string_view>& words) {
  constexpr std::size_t longest_word = 64;
  if (found.size() > longest_word) return {};
  std::string_view best;
  int best_distance = 0;
  for (const std::string_view word : words) {
    const int distance = edit_distance(found, word);
    if (best.empty() || distance < best_distance) best = word, best_distance = distance;
  }
  if (best.empty() || best_distance > static_cast<int>(best.size() + 1) / 2) return {};
  return fmt::format("; did you mean \"{}\"?", best);
}

}  // namespace bide::scenario
