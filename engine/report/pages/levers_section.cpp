#include "report/pages/levers_section.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "outcome/cause.hpp"
#include "report/levers_words.hpp"
#include "report/words.hpp"

namespace bide::report::pages {
namespace {

using study::LeversTried;
using study::LeverTried;

constexpr std::size_t most_bars = 12;

bool tried(const LeverTried& each) {
  return each.state == LeverTried::State::tried;
}

// Levers that do something, the largest gain first and the largest loss last.
std::vector<const LeverTried*> that_matter(const LeversTried& levers) {
  std::vector<const LeverTried*> out;
  for (const LeverTried& each : levers.tried)
    if (tried(each) && study::direction(each) != 0) out.push_back(&each);
  if (out.size() > most_bars) out.erase(out.begin() + most_bars / 2, out.end() - most_bars / 2);
  return out;
}

html::Chart chart_of(const std::vector<const LeverTried*>& levers, const char* title) {
  html::Chart out;
  out.title = title;
  out.x = {"change"};
  for (const LeverTried* each : levers) out.categories.push_back(each->lever->title);
  return out;
}

bool in_hours(const LeverTried* each) {
  return !each->able.unreached || !each->alive.unreached;
}

html::Chart hours_chart(const std::vector<const LeverTried*>& levers, double horizon_s) {
  html::Chart out = chart_of(levers, "Time that each change wins");
  out.sentence = fmt::format(
      "Hours by which the first person is able and alive longer with each change, up to the end of the run "
      "at "
      "{}; a bar that ends there may be longer. Below zero is lost.",
      horizon(horizon_s));
  out.y = {"hours gained by the first person", "h", true};
  html::Series able{"able", html::Kind::bars, {}, 0}, alive{"alive", html::Kind::points, {}, 1};
  const auto add = [](html::Series& series, std::size_t place, const study::Gain& gain) {
    if (!gain.unreached)
      series.points.push_back({static_cast<double>(place), gain.hours, html::Point::none, html::Point::none,
                               gain.at_least ? "or more" : ""});
  };
  for (std::size_t i = 0; i < levers.size(); ++i) {
    add(able, i, levers[i]->able);
    add(alive, i, levers[i]->alive);
  }
  for (html::Series* each : {&able, &alive})
    if (!each->points.empty()) out.series.push_back(std::move(*each));
  return out;
}

html::Chart margin_chart(const std::vector<const LeverTried*>& levers, double horizon_s) {
  html::Chart out = chart_of(levers, "Margin that each change wins");
  out.sentence = fmt::format(
      "No limit is reached within {} with or without these changes; the bars are what they add to the way "
      "that "
      "is left to the nearest limit. Below zero is lost.",
      horizon(horizon_s));
  out.y = {"of the way to the nearest limit", "points", true};
  html::Series bars{"margin", html::Kind::bars, {}, 0};
  for (std::size_t i = 0; i < levers.size(); ++i)
    bars.points.push_back({static_cast<double>(i), 100 * levers[i]->margin_gain});
  out.series = {bars};
  return out;
}

// A raft of another kind brings a weight of its own, which no catalogue of kinds can say.
std::string amount(const LeverTried& lever, double value) {
  if (lever.lever->raft != scenario::LeverRaft::as_it_is) return "another raft: not known";
  return value > 0 ? two_figures(value) : "none";
}

html::Table table(const LeversTried& levers, const std::vector<const LeverTried*>& shown) {
  html::Table out;
  out.caption = "What each change brings and costs";
  out.columns = {{"change", false}, {"kg", true}, {"L", true}, {"able, alive", false}};
  for (const LeverTried* each : shown)
    out.rows.push_back({each->lever->title, amount(*each, each->burden.mass_kg),
                        amount(*each, each->burden.volume_L),
                        bought_words(*each, levers.base.horizon_s) + air_words(levers, *each)});
  return out;
}

html::List reasons(const LeversTried& levers, LeverTried::State state) {
  html::List out;
  for (const LeverTried& each : levers.tried)
    if (each.state == state) out.items.push_back(each.lever->title + ": " + each.reason + ".");
  return out;
}

std::string listed(const LeversTried& levers) {
  std::string out;
  for (const LeverTried& each : levers.tried)
    if (tried(each) && study::direction(each) == 0) out += (out.empty() ? "" : "; ") + each.lever->title;
  return out;
}

}  // namespace

html::Section levers_section(const LeversTried& levers) {
  html::Section out{"What would buy more time", {}};
  out.blocks.push_back(
      html::Paragraph{"Practical changes, tried one at a time with everything else as entered. Each is one "
                      "case, not a forecast: "
                      "a single run with one change, without a range."});
  const std::vector<const LeverTried*> shown = that_matter(levers);
  if (shown.empty()) {
    out.blocks.push_back(html::Paragraph{"None of the changes could be told apart from doing nothing."});
  } else {
    std::vector<const LeverTried*> by_hours, by_margin;
    for (const LeverTried* each : shown) (in_hours(each) ? by_hours : by_margin).push_back(each);
    if (!by_hours.empty()) out.blocks.push_back(hours_chart(by_hours, levers.base.horizon_s));
    if (!by_margin.empty()) out.blocks.push_back(margin_chart(by_margin, levers.base.horizon_s));
    out.blocks.push_back(table(levers, shown));
  }
  if (const std::string same = listed(levers); !same.empty())
    out.blocks.push_back(html::Paragraph{"Not told apart from doing nothing: " + same + "."});
  if (html::List held = reasons(levers, LeverTried::State::withheld); !held.items.empty()) {
    out.blocks.push_back(html::Paragraph{"Withheld:"});
    out.blocks.push_back(std::move(held));
  }
  std::string senseless;
  for (const LeverTried& each : levers.tried)
    if (each.state == LeverTried::State::makes_no_sense)
      senseless += (senseless.empty() ? "" : "; ") + each.lever->title + " (" + each.reason + ")";
  if (!senseless.empty()) out.blocks.push_back(html::Paragraph{"Makes no sense here: " + senseless + "."});
  return out;
}

}  // namespace bide::report::pages
