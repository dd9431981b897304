// The lines of a comparison that hold for all options, or stand for each.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <utility>
#include <vector>

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
      out += fmt::format("{}in option {}, {}", out.empty() ? "" : "; ", i + 1, most_bought_words(*levers, 1));
  return out.empty() ? buys_line(std::nullopt, *comparison.options.front().own.scenario) : out;
}

// Lines of one thing asked: options that say the same share one, which names them unless it is all of them.
template <class Says>
void add_by_option(Answer& to, const char* asks, const Comparison& comparison, const Says& says) {
  std::vector<std::pair<std::string, std::vector<std::size_t>>> lines;
  for (std::size_t i = 0; i < comparison.options.size(); ++i) {
    std::string words = says(comparison.options[i].own);
    auto known =
        std::find_if(lines.begin(), lines.end(), [&](const auto& each) { return each.first == words; });
    if (known == lines.end()) known = lines.insert(lines.end(), {std::move(words), {}});
    known->second.push_back(i + 1);
  }
  for (const auto& [words, options] : lines)
    to.push_back({&words == &lines.front().first ? asks : "",
                  lines.size() == 1 ? words
                                    : fmt::format("option{} {}: {}", options.size() > 1 ? "s" : "",
                                                  fmt::join(options, ", "), words)});
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
  add_by_option(out, "Not in it", comparison,
                [](const Compared& own) { return not_in_the_model(*own.scenario, Told::as_written); });
  return out;
}

}  // namespace bide::report
