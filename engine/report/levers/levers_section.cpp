#include "bide/report/levers/levers_section.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "bide/outcome/cause.hpp"
#include "bide/report/levers/levers_words.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report::pages {
namespace {

using study::LeversTried;
using study::LeverTried;

constexpr std::size_t most_bars = 12, most_bars_beside_a_run = 6;

bool tried(const LeverTried& each) {
  return each.state == LeverTried::State::tried;
}

// Levers that do something, the largest gain first and the largest loss last.
std::vector<const LeverTried*> that_matter(const LeversTried& levers) {
  std::vector<const LeverTried*> out;
  for (const LeverTried& each : levers.tried)
    if (tried(each) && study::direction(each) != 0) out.push_back(&each);
  return out;
}

// Of many the largest gains and losses.
std::vector<const LeverTried*> drawn(std::vector<const LeverTried*> levers, std::size_t most) {
  if (levers.size() > most)
    levers.erase(levers.begin() + static_cast<std::ptrdiff_t>(most / 2),
                 levers.end() - static_cast<std::ptrdiff_t>(most / 2));
  return levers;
}

document::Chart chart_of(const std::vector<const LeverTried*>& levers) {
  document::Chart out;
  out.x = {"change"};
  for (const LeverTried* each : levers) out.categories.push_back(each->lever->title);
  return out;
}

bool in_hours(const LeverTried* each) {
  const auto any_told = [&](study::Gain study::Gains::*which) {
    const auto [low, high] = study::gain_range(*each, which);
    return study::told(low) || study::told(high);
  };
  return any_told(&study::Gains::able) || any_told(&study::Gains::alive);
}

// Hours gained: the central case where it comes to a limit, and the range. Empty where no run comes to one.
struct HoursGained {
  std::optional<double> central_h;
  study::GainRange range;
};
std::optional<HoursGained> hours_gained(const LeverTried& lever, study::Gain study::Gains::*which) {
  const study::Gain& gain = lever.gained.*which;
  const auto reached = [&](const study::Gains& each) { return !(each.*which).unreached; };
  if (!reached(lever.gained) && std::none_of(lever.members.begin(), lever.members.end(), reached))
    return std::nullopt;
  return HoursGained{gain.unreached ? std::nullopt : std::optional(gain.hours),
                     study::gain_range(lever, which)};
}

// "Time that each change wins", or loses where one does.
std::string title_of(const char* what, const std::vector<document::Series>& series) {
  const auto below = [](const document::Point& point) { return point.y < 0 || point.low < 0; };
  const bool loses = std::any_of(series.begin(), series.end(), [&](const document::Series& each) {
    return std::any_of(each.points.begin(), each.points.end(), below);
  });
  return fmt::format("{} that each change wins{}", what, loses ? " or loses" : "");
}

document::Chart hours_chart(const std::vector<const LeverTried*>& levers, double horizon_s) {
  document::Chart out;
  out.x = {"change"};
  out.sentence = fmt::format(
      "Hours by which the first person is able and alive longer with each change: the bar is the range, the "
      "dot the central case. A bar that ends in an arrow may be longer: the runs end at {}. Below zero is "
      "lost.",
      horizon(horizon_s));
  out.y = {"hours gained by the first person", "h", true};
  document::Series range{"range", document::Kind::spans, {}, 0},
      central{"central case", document::Kind::points, {}, 1};
  for (const LeverTried* lever : levers)
    for (const auto& [name, which] :
         {std::pair{"able", &study::Gains::able}, {"alive", &study::Gains::alive}}) {
      const auto gained = hours_gained(*lever, which);
      if (!gained) continue;
      const double row = static_cast<double>(out.categories.size());
      out.categories.push_back(fmt::format("{}: {}", name, lever->lever->title));
      const auto& [low, high] = gained->range;
      if (low.hours < high.hours || high.at_least)
        range.points.push_back({row, document::Point::none, low.hours, high.hours, "", high.at_least});
      if (high.at_least) range.name = "range, arrow: or more";
      if (gained->central_h) central.points.push_back({row, *gained->central_h});
    }
  for (document::Series* each : {&range, &central})
    if (!each->points.empty()) out.series.push_back(std::move(*each));
  out.title = title_of("Time", out.series);
  return out;
}

document::Chart told(document::Chart chart) {
  chart.told = true;
  return chart;
}

document::Point margin_point(std::size_t place, const LeverTried& lever) {
  document::Point out{static_cast<double>(place), 100 * lever.gained.margin};
  const study::MarginRange range = study::margin_range(lever);
  if (range.low < range.high) out.low = 100 * range.low, out.high = 100 * range.high;
  return out;
}

document::Chart margin_chart(const std::vector<const LeverTried*>& levers, double horizon_s) {
  document::Chart out = chart_of(levers);
  out.sentence = fmt::format(
      "No limit is reached within {} with or without these changes; the bars are what they add to the "
      "margin left to the nearest limit, in % of the whole margin; the whiskers reach over the range. Below "
      "zero is lost.",
      horizon(horizon_s));
  out.y = {"margin gained", "% of the margin", true};
  document::Series bars{"margin", document::Kind::bars, {}, 0};
  for (std::size_t i = 0; i < levers.size(); ++i) bars.points.push_back(margin_point(i, *levers[i]));
  out.series = {bars};
  out.title = title_of("Margin", out.series);
  return out;
}

// A raft of another kind brings a weight of its own, which no catalogue of kinds can say.
std::string amount(const LeverTried& lever, double value) {
  if (lever.lever->raft != scenario::LeverRaft::as_it_is) return "another raft: not known";
  return value > 0 ? two_figures(value) : "none";
}

std::string with_items(const LeverTried& lever) {
  const std::string& items = lever.burden.items;
  return lever.lever->title + (items.empty() ? "" : fmt::format(" ({})", items));
}

document::Table table(const LeversTried& levers, const std::vector<const LeverTried*>& shown) {
  document::Table out;
  out.caption = "What each change brings and costs";
  out.columns = {{"change", false}, {"more, kg", true}, {"room, L", true}, {"brings", false}, {"why", false}};
  for (const LeverTried* each : shown)
    out.rows.push_back(
        {with_items(*each), amount(*each, each->burden.mass_kg), amount(*each, each->burden.volume_L),
         bought_words(*each, levers.base.horizon_s) + air_words(levers, *each), reason_words(levers, *each)});
  return out;
}

document::List reasons(const LeversTried& levers, LeverTried::State state) {
  document::List out;
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

// The largest gains, in hours where there are any.
std::optional<document::Chart> levers_picture(const LeversTried& levers) {
  constexpr std::size_t most = 4;
  const std::vector<const LeverTried*> gains = most_bought(levers, most);
  std::vector<const LeverTried*> by_hours;
  if (gains.empty()) return std::nullopt;
  for (const LeverTried* each : gains)
    if (in_hours(each)) by_hours.push_back(each);
  if (by_hours.empty()) return margin_chart(gains, levers.base.horizon_s);
  return hours_chart(by_hours, levers.base.horizon_s);
}

document::Section levers_section(const LeversTried& levers, bool all_on_paper) {
  document::Section out{"What would buy more time", {}};
  out.blocks.push_back(document::Paragraph{one_change_each});
  out.blocks.push_back(document::Paragraph{what_gains_are, false, all_on_paper});
  const std::vector<const LeverTried*> shown = that_matter(levers);
  if (shown.empty()) {
    out.blocks.push_back(
        document::Paragraph{"The model can separate none of the changes from doing nothing."});
  } else {
    std::vector<const LeverTried*> by_hours, by_margin;
    for (const LeverTried* each : drawn(shown, all_on_paper ? most_bars : most_bars_beside_a_run))
      (in_hours(each) ? by_hours : by_margin).push_back(each);
    if (!by_hours.empty()) out.blocks.push_back(told(hours_chart(by_hours, levers.base.horizon_s)));
    if (!by_margin.empty()) out.blocks.push_back(told(margin_chart(by_margin, levers.base.horizon_s)));
    out.blocks.push_back(table(levers, shown));
    std::get<document::Table>(out.blocks.back()).on_paper = all_on_paper;
  }
  if (const std::string same = listed(levers); !same.empty())
    out.blocks.push_back(
        document::Paragraph{"No gain or loss that the model can separate from doing nothing: " + same + ".",
                            false, all_on_paper});
  if (document::List held = reasons(levers, LeverTried::State::withheld); !held.items.empty()) {
    out.blocks.push_back(document::Paragraph{"Withheld:"});
    out.blocks.push_back(std::move(held));
  }
  std::string not_applicable;
  for (const LeverTried& each : levers.tried)
    if (each.state == LeverTried::State::not_applicable)
      not_applicable += (not_applicable.empty() ? "" : "; ") + each.lever->title + " (" + each.reason + ")";
  if (!not_applicable.empty())
    out.blocks.push_back(
        document::Paragraph{"Already done, or does not apply: " + not_applicable + ".", false, all_on_paper});
  return out;
}

}  // namespace bide::report::pages
