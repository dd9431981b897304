#include <fmt/format.h>

#include <algorithm>

#include "bide/core/people.hpp"
#include "bide/outcome/margins.hpp"
#include "bide/report/run/run_parts.hpp"

namespace bide::report::pages {
namespace {

std::string title_of(system::Limit limit) {
  const system::LimitRow& row = system::row_of(limit);
  const bool lethal = row.meaning == system::Meaning::lethal, hunger = row.of >= system::quantity::fat;
  return fmt::format("{}: {}", lethal ? "alive" : "able", hunger ? row.clause : row.cause);
}

}  // namespace

html::Section margins_section(const Material& m) {
  constexpr double percent = 100;
  html::Chart chart;
  chart.title = "The most of the way to each limit";
  chart.sentence =
      "How far each person came, at the worst moment while alive, from the value of a well person, or "
      "from the body fat at the start (0), to each limit (100).";
  chart.x = {"limit"};
  chart.y = {"of the way to the limit", "%", true};
  const std::vector<outcome::Margin> all = outcome::margins(m.timeline, m.outcome, m.scenario);
  for (const outcome::Margin& each : all) chart.categories.push_back(title_of(each.limit));
  const std::size_t persons = m.outcome.persons.size();
  if (persons <= most_lines) {
    for (std::size_t p = 0; p < persons; ++p) {
      html::Series series{person_label(static_cast<int>(p)), html::Kind::points, {}, static_cast<int>(p)};
      for (std::size_t i = 0; i < all.size(); ++i)
        series.points.push_back({static_cast<double>(i), percent * all[i].used_fraction[p]});
      chart.series.push_back(std::move(series));
    }
  } else {
    html::Series series{"least to most of the crew", html::Kind::spans, {}, 0};
    for (std::size_t i = 0; i < all.size(); ++i) {
      const auto [least, most] =
          std::minmax_element(all[i].used_fraction.begin(), all[i].used_fraction.end());
      series.points.push_back(
          {static_cast<double>(i), html::Point::none, percent * *least, percent * *most, ""});
    }
    chart.series.push_back(std::move(series));
  }
  chart.series.push_back({"the limit", html::Kind::points, {}, 5});
  for (std::size_t i = 0; i < all.size(); ++i)
    chart.series.back().points.push_back({static_cast<double>(i), percent});
  return {"How near to each limit", {chart}};
}

}  // namespace bide::report::pages
