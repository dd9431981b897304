#include <fmt/format.h>

#include <algorithm>

#include "bide/core/people.hpp"
#include "bide/outcome/margins.hpp"
#include "bide/report/run/run_parts.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report::pages {
namespace {

std::string title_of(system::Limit limit) {
  const system::LimitRow& row = system::row_of(limit);
  const bool lethal = row.meaning == system::Meaning::lethal, hunger = row.of >= system::quantity::fat;
  return fmt::format("{}: {}", lethal ? "alive" : "able", hunger ? row.clause : row.cause);
}

}  // namespace

document::Section margins_section(const Material& m) {
  constexpr double percent = 100;
  document::Chart chart;
  chart.title = "The most of the margin used, by limit";
  chart.sentence =
      "How much of the margin each person used, at the worst moment while alive: 0 is a well person (of fat, "
      "the "
      "fat at the start), 100 the limit.";
  chart.x = {"limit"};
  chart.y = {"margin used", "%", true};
  // Limits that nobody came near would be empty rows.
  constexpr double worth_a_row = 0.05;
  std::vector<outcome::Margin> all = outcome::margins(m.timeline, m.outcome, m.scenario);
  std::erase_if(all, [](const outcome::Margin& each) {
    return std::all_of(each.used_fraction.begin(), each.used_fraction.end(),
                       [](double used) { return used < worth_a_row; });
  });
  if (all.empty())
    return {"How near to each limit",
            {document::Paragraph{"Nobody came a twentieth of the way to any limit."}}};
  for (const outcome::Margin& each : all) chart.categories.push_back(title_of(each.limit));
  const std::size_t persons = m.outcome.persons.size();
  const std::vector<std::vector<int>> groups = alike(m);
  if (persons <= most_lines || groups.size() == 1) {
    for (const std::vector<int>& group : groups) {
      const auto p = static_cast<std::size_t>(group.front());
      document::Series series{person_names(group), document::Kind::points, {}, group.front()};
      for (std::size_t i = 0; i < all.size(); ++i)
        series.points.push_back({static_cast<double>(i), percent * all[i].used_fraction[p]});
      chart.series.push_back(std::move(series));
    }
  } else {
    document::Series series{"least to most of the crew", document::Kind::spans, {}, 0};
    for (std::size_t i = 0; i < all.size(); ++i) {
      const auto [least, most] =
          std::minmax_element(all[i].used_fraction.begin(), all[i].used_fraction.end());
      series.points.push_back(
          {static_cast<double>(i), document::Point::none, percent * *least, percent * *most, ""});
    }
    chart.series.push_back(std::move(series));
  }
  chart.series.push_back({"the limit", document::Kind::points, {}, 5});
  for (std::size_t i = 0; i < all.size(); ++i)
    chart.series.back().points.push_back({static_cast<double>(i), percent});
  chart.folded = true;
  return {"How near to each limit", {std::move(chart)}};
}

}  // namespace bide::report::pages
