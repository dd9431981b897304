// The lines of a comparison that hold for all options, or stand for each.
#include <fmt/format.h>

#include <algorithm>

#include "bide/report/compare/compare.hpp"
#include "bide/report/compare/compare_futures.hpp"
#include "bide/report/levers/levers_words.hpp"
#include "bide/report/run/answer_lines.hpp"
#include "bide/report/run/first_hour.hpp"
#include "bide/report/run/sentences.hpp"

namespace bide::report {
namespace {

// What buys most in each option that it was tried on.
std::string buys_words(const Comparison& comparison) {
  std::string out;
  for (std::size_t i = 0; i < comparison.options.size(); ++i)
    if (const auto& levers = comparison.options[i].levers)
      out += fmt::format("{}in option {}: {}", out.empty() ? "" : "; ", i + 1, most_bought_words(*levers, 1));
  return out.empty() ? buys_line(std::nullopt, *comparison.options.front().own.scenario)
                     : out + what_ranges_are(out);
}

// Lines of one thing asked: one where all options say the same, else one for each option.
template <class Says>
void add_by_option(Answer& to, const char* asks, const Comparison& comparison, const Says& says) {
  std::vector<std::string> all;
  for (const Option& option : comparison.options) all.push_back(says(option.own));
  if (std::adjacent_find(all.begin(), all.end(), std::not_equal_to<>()) == all.end()) {
    to.push_back({asks, all.front()});
    return;
  }
  for (std::size_t i = 0; i < all.size(); ++i)
    to.push_back({i == 0 ? asks : "", fmt::format("option {}: {}", i + 1, all[i])});
}

}  // namespace

Answer comparison_answer(const Comparison& comparison) {
  std::string futures;
  for (std::size_t i = 1; i < comparison.options.size(); ++i)
    if (const auto& drawn = comparison.options[i].futures)
      futures += (futures.empty() ? "" : " ") +
                 futures_sentences(*drawn, "option 1", fmt::format("option {}", i + 1)).front();
  Answer out{{"Odds", futures.empty() ? comparison.no_futures : futures},
             {"Buys most", buys_words(comparison)}};
  add_by_option(out, "First hour", comparison,
                [](const Compared& own) { return first_hour_line(*own.scenario); });
  add_by_option(out, "How sure", comparison, [](const Compared& own) { return how_sure(own.figures); });
  if (out.back().asks.empty())
    out.push_back({"", runs_of_each(comparison)});
  else
    out.back().says += "; " + runs_of_each(comparison);
  out.push_back({"Not in it", not_in_the_model});
  return out;
}

}  // namespace bide::report
