#include "bide/report/odds/odds_page.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/odds/odds_words.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report::pages {
namespace {

using html::Kind;
using html::Point;

enum Place : std::size_t { q05, q10, q25, q50, q75, q90, q95 };

html::Axis hours(const char* label, double horizon_h) {
  constexpr double day_h = 24, long_h = 48;
  return {label, "h", true, horizon_h >= long_h ? day_h : 0};
}

// First person, half of the crew and last person: the span of 8 in 10 futures, of half of them, and the
// middle one.
html::Chart windows_chart(const study::OddsAnswer& m) {
  html::Chart out;
  const double horizon_h = m.odds.horizon_h;
  out.title = "The endurance window";
  out.sentence = fmt::format(
      "Until when the first person, half of the crew and the last person are able and alive: 8 in 10 "
      "futures, the middle "
      "half of "
      "them, and the middle one. A span that reaches {} goes on beyond it.",
      horizon(horizon_h * hour_s));
  out.x = {"person"};
  out.y = hours("time since the start", horizon_h);
  html::Series most{"8 in 10 futures", Kind::spans, {}, 0}, half{"half of the futures", Kind::spans, {}, 3},
      middle{"middle future", Kind::points, {}, 1},
      beyond{"middle future beyond the time followed", Kind::points, {}, 5};
  const auto add = [&](const char* state, const char* who, const study::Window& w) {
    const double row = static_cast<double>(out.categories.size());
    out.categories.push_back(fmt::format("{}: {}", state, who));
    const auto at = [&](std::size_t place) { return w.until[place].time.value_or(horizon_h); };
    most.points.push_back({row, Point::none, at(q10), at(q90), w.until[q90].time ? "" : "and beyond"});
    half.points.push_back({row, Point::none, at(q25), at(q75), w.until[q75].time ? "" : "and beyond"});
    if (w.until[q50].time)
      middle.points.push_back({row, *w.until[q50].time});
    else
      beyond.points.push_back({row, horizon_h, Point::none, Point::none, "or later"});
  };
  for (std::size_t who = 0; who < study::who_count; ++who) add("able", crew_order[who], m.odds.able[who]);
  for (std::size_t who = 0; who < study::who_count; ++who) add("alive", crew_order[who], m.odds.alive[who]);
  out.series = {most, half};
  for (html::Series* each : {&middle, &beyond})
    if (!each->points.empty()) out.series.push_back(std::move(*each));
  return out;
}

html::Section window_section(const study::OddsAnswer& m) {
  const double horizon_h = m.odds.horizon_h;
  const auto sentence = [&](const char* what, const study::Window& w) {
    return html::Paragraph{fmt::format("{}: {}.", what, odds_range(w, horizon_h)), true};
  };
  html::Section out{"The window", {}};
  out.blocks.push_back(sentence("Able until, first person", m.odds.able[study::first_person]));
  out.blocks.push_back(sentence("Alive until, last person", m.odds.alive[study::last_person]));
  for (std::string& given : given_sentences(m)) out.blocks.push_back(html::Paragraph{std::move(given)});
  out.blocks.push_back(windows_chart(m));
  html::Table table{"Share of futures in which it is over by then",
                    {{"", false},
                     {"5 %", false},
                     {"25 %", false},
                     {"50 %", false},
                     {"75 %", false},
                     {"95 %", false},
                     {"not reached", false}},
                    {}};
  const auto add = [&](const char* state, std::size_t who, const study::Window& w) {
    std::vector<std::string> row{fmt::format("{}, {}", state, crew_order[who])};
    for (const std::size_t place : {q05, q25, q50, q75, q95})
      row.push_back(odds_hours(w.until[place].time, horizon_h));
    row.push_back(share(w.beyond));
    table.rows.push_back(std::move(row));
  };
  for (std::size_t who = 0; who < study::who_count; ++who) add("able until", who, m.odds.able[who]);
  for (std::size_t who = 0; who < study::who_count; ++who) add("alive until", who, m.odds.alive[who]);
  out.blocks.push_back(std::move(table));
  const int zone_h = zone_hours(m.scenario.scenario.position.longitude_deg);
  const auto clock = [&](const std::optional<double>& h) {
    return h ? both_clocks(m.scenario.start_unix_s, *h * hour_s, zone_h)
             : std::string("beyond the time followed");
  };
  const study::Window& first = m.odds.able[study::first_person];
  out.blocks.push_back(html::Paragraph{
      fmt::format("By the clock, first person able until: 5 % {}; half {}; 95 % {}.",
                  clock(first.until[q05].time), clock(first.until[q50].time), clock(first.until[q95].time))});
  return out;
}

html::Section still_section(const study::OddsAnswer& m) {
  html::Chart chart;
  chart.title = "Who is still able, and alive";
  chart.sentence =
      "Share of futures in which all are able, somebody is able, all are alive and somebody is alive, "
      "against time; the bands are the sampling error.";
  chart.x = hours("time since the start", m.odds.horizon_h);
  chart.y = {"futures", "%", true};
  static constexpr std::pair<const char*, study::Chance study::AtTime::*> shares[] = {
      {"all able", &study::AtTime::all_able},
      {"somebody able", &study::AtTime::some_able},
      {"all alive", &study::AtTime::all_alive},
      {"somebody alive", &study::AtTime::some_alive}};
  int style = 0;
  for (const auto& [name, which] : shares) {
    html::Series band{fmt::format("{}, sampling error", name), Kind::band, {}, style},
        line{name, Kind::line, {}, style};
    for (const study::AtTime& t : m.odds.times) {
      const study::Chance& c = t.*which;
      band.points.push_back({t.at_h, Point::none, pct * c.interval.low, pct * c.interval.high, ""});
      line.points.push_back({t.at_h, pct * c.share});
    }
    chart.series.push_back(std::move(band));
    chart.series.push_back(std::move(line));
    ++style;
  }
  return {"Against time", {chart}};
}

html::Section causes_section(const study::OddsAnswer& m) {
  html::Chart chart;
  chart.title = "What ends the first person's ability, by when";
  chart.sentence =
      "Share of all futures in which the first person's ability has ended by then, by what ended it.";
  chart.x = {"by"};
  chart.y = {"futures", "%", true};
  std::vector<std::string> names;
  for (const study::CausesBy& by : m.odds.causes)
    for (const auto& [limit, part] : by.ended)
      if (const std::string name = outcome::short_cause(limit);
          std::find(names.begin(), names.end(), name) == names.end())
        names.push_back(name);
  html::Section out{"What ends it", {}};
  if (names.empty()) {
    out.blocks.push_back(
        html::Paragraph{"In no future does the first person's ability end within the time followed."});
    return out;
  }
  std::vector<std::vector<double>> shares(names.size());
  for (const study::CausesBy& by : m.odds.causes) {
    chart.categories.push_back("by " + duration(by.by_h * hour_s));
    for (std::vector<double>& each : shares) each.push_back(0);
    for (const auto& [limit, part] : by.ended) {
      const auto at = std::find(names.begin(), names.end(), outcome::short_cause(limit)) - names.begin();
      shares[static_cast<std::size_t>(at)].back() += pct * part;
    }
  }
  chart.series = html::stack(names, shares);
  out.blocks.push_back(std::move(chart));
  return out;
}

html::Section unknowns_section(const study::OddsAnswer& m) {
  html::Section out{"Which unknown to ask for first", {}};
  if (m.unknowns.empty()) {
    out.blocks.push_back(html::Paragraph{"Too few futures, or too little spread, to tell."});
    return out;
  }
  html::Chart chart;
  constexpr std::size_t most = 10;
  chart.title = "What knowing it would take away";
  chart.sentence =
      "Share of the variance of the first person's able until, within the time followed, that would go "
      "on average if the input were known. Whiskers are the sampling error; below zero is scatter.";
  chart.x = {"input"};
  chart.y = {"of the variance", "%", true};
  html::Series variety{"differs from case to case", Kind::bars, {}, 0},
      ignorance{"nobody has measured it", Kind::bars, {}, 1};
  for (std::size_t i = 0; i < std::min(most, m.unknowns.size()); ++i) {
    const study::Unknown& u = m.unknowns[i];
    chart.categories.push_back(u.name);
    const study::Interval& interval = u.narrowing.of_variance_interval;
    (u.kind == study::FactorKind::ignorance ? ignorance : variety)
        .points.push_back({static_cast<double>(i), pct * u.narrowing.of_variance, pct * interval.low,
                           pct * interval.high, ""});
  }
  for (html::Series* each : {&variety, &ignorance})
    if (!each->points.empty()) chart.series.push_back(std::move(*each));
  out.blocks.push_back(std::move(chart));
  return out;
}

html::Section nested_section(const study::OddsAnswer& m) {
  const study::NestedBands& n = *m.nested;
  html::Chart chart;
  chart.title = "First person able until, two kinds of not knowing apart";
  chart.sentence =
      "The middle eight tenths of cases under one truth about the unmeasured, and of the middle case "
      "over those truths.";
  chart.x = {"kind"};
  chart.y = hours("time since the start", n.horizon_h);
  chart.categories = {"people, weather, failures", "what nobody has measured"};
  chart.series = {
      {"8 in 10",
       Kind::spans,
       {{0, Point::none, n.cases_low, n.cases_high, ""}, {1, Point::none, n.truths_low, n.truths_high, ""}},
       0}};
  return {nested_title(m), {chart, html::List{nested_sentences(m)}}};
}

}  // namespace

html::Page odds_page(const study::OddsAnswer& m) {
  const scenario::Scenario& s = m.scenario.scenario;
  html::Page page;
  page.title = s.name;
  page.lead = fmt::format("{}{} possible futures followed for {} from {}; not a forecast.",
                          s.setting.empty() ? "" : s.setting + " ", m.odds.futures,
                          horizon(m.odds.horizon_h * hour_s),
                          both_clocks(m.scenario.start_unix_s, 0, zone_hours(s.position.longitude_deg)));
  page.sections = {window_section(m),
                   still_section(m),
                   causes_section(m),
                   {"Help, as the scenario states it", {html::List{help_sentences(m)}}},
                   unknowns_section(m)};
  if (m.nested) page.sections.push_back(nested_section(m));
  page.sections.push_back({"What this rests on", {html::List{about_sentences(m)}}});
  return page;
}

}  // namespace bide::report::pages
