#include "bide/report/odds/odds_page.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/document/values.hpp"
#include "bide/report/document/window_chart.hpp"
#include "bide/report/odds/night.hpp"
#include "bide/report/odds/odds_words.hpp"
#include "bide/report/run/evidence_words.hpp"
#include "bide/report/run/foot.hpp"
#include "bide/report/run/sentences.hpp"
#include "bide/report/words/input.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report::pages {
namespace {

using document::Kind;
using document::Point;

using enum study::QuantilePlace;

document::Axis axis_of(const study::OddsAnswer& m) {
  document::Axis out = time_axis(m.odds.horizon_h * hour_s);
  if (m.started_h_ago) out.label = "time from now";
  return out;
}

// First person, half of the crew and last person: the span of 8 in 10 futures, of half of them, and the
// middle one.
document::Chart windows_chart(const study::OddsAnswer& m) {
  document::Chart out;
  const double horizon_h = m.odds.horizon_h;
  out.title = "The endurance window";
  out.sentence = fmt::format(
      "Until when the first person, half of the crew and the last person are able and alive: 8 in 10 "
      "futures, half of them, and the median. A bar that ends in an arrow goes on after {}; where no dot is, "
      "the median does too.",
      horizon(horizon_h * hour_s));
  out.x = {"person"};
  out.y = axis_of(m);
  document::Series most{"8 in 10 futures", Kind::spans, {}, 0},
      half{"middle half of the futures", Kind::spans, {}, 3}, middle{"median future", Kind::points, {}, 1};
  const std::string after = horizon(horizon_h * hour_s);
  const auto add = [&](const char* state, const char* who, const study::Window& w) {
    const double row = static_cast<double>(out.categories.size());
    out.categories.push_back(fmt::format("{}: {}", state, who));
    const auto at = [&](std::size_t place) {
      return std::max(0.0, w.until[place].time.value_or(horizon_h));  // before now: at now
    };
    most.points.push_back({row, Point::none, at(q10), at(q90), "", !w.until[q90].time});
    half.points.push_back({row, Point::none, at(q25), at(q75), "", !w.until[q75].time});
    if (!w.until[q90].time) most.name = "8 in 10 futures, arrow: goes on after " + after;
    if (w.until[q50].time) middle.points.push_back({row, at(q50)});
  };
  for (std::size_t who = 0; who < study::who_count; ++who) add("able", crew_order[who], m.odds.able[who]);
  for (std::size_t who = 0; who < study::who_count; ++who) add("alive", crew_order[who], m.odds.alive[who]);
  out.series = {most, half};
  if (!middle.points.empty()) out.series.push_back(std::move(middle));
  out.told = true;
  return out;
}

// The first screen.
document::Section answer_section(const study::OddsAnswer& m) {
  constexpr std::ptrdiff_t read_first = 2;  // able, alive
  const Answer all = odds_answer(m);
  document::Section out{"The answer", {}, false, true};
  for (std::string& given : given_sentences(m)) out.blocks.push_back(document::Paragraph{std::move(given)});
  out.blocks.push_back(document::Facts{{all.begin(), all.begin() + read_first}, true});
  out.blocks.push_back(windows_chart(m));
  out.blocks.push_back(document::Facts{{all.begin() + read_first, all.end()}});
  return out;
}

// " (26 h to 31 h)"
std::string median_error(const study::QuantileByRank& half, double horizon_h) {
  const auto end = [&](const std::optional<double>& h, bool known) {
    return known ? odds_hours(h, horizon_h) : std::string("unknown");
  };
  return fmt::format(" ({} to {})", end(half.low, half.low_known), end(half.high, half.high_known));
}

document::Section window_section(const study::OddsAnswer& m) {
  const double horizon_h = m.odds.horizon_h;
  document::Section out{"The window", {}};
  document::Table table{"Share of futures in which it is over by then; in brackets the sampling error",
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
    for (const std::size_t place : {q05, q25, q50, q75, q95}) {
      row.push_back(odds_hours(w.until[place].time, horizon_h));
      if (place == q50 && w.until[place].time) row.back() += median_error(w.until[place], horizon_h);
    }
    row.push_back(share(w.beyond));
    table.rows.push_back(std::move(row));
  };
  for (std::size_t who = 0; who < study::who_count; ++who) add("able until", who, m.odds.able[who]);
  for (std::size_t who = 0; who < study::who_count; ++who) add("alive until", who, m.odds.alive[who]);
  out.blocks.push_back(std::move(table));
  const int zone_h = zone_hours(m.scenario.scenario.position.longitude_deg);
  const auto clock = [&](const std::optional<double>& h) {
    return h && *h >= 0 ? both_clocks(m.scenario.start_unix_s, *h * hour_s, zone_h)
                        : odds_hours(h, m.odds.horizon_h);
  };
  const study::Window& first = m.odds.able[study::first_person];
  out.blocks.push_back(document::Paragraph{
      fmt::format("By the clock, first person able until: 5 %: {}; half: {}; 95 %: {}.",
                  clock(first.until[q05].time), clock(first.until[q50].time), clock(first.until[q95].time))});
  return out;
}

document::Section still_section(const study::OddsAnswer& m) {
  document::Chart chart;
  chart.title = "Who is still able, and alive";
  chart.sentence =
      "Share of futures in which all are able, somebody is able, all are alive and somebody is alive, "
      "against time; the bands are the sampling error.";
  chart.x = axis_of(m);
  chart.y = {"futures", "%", true};
  static constexpr std::pair<const char*, study::Chance study::AtTime::*> shares[] = {
      {"all able", &study::AtTime::all_able},
      {"somebody able", &study::AtTime::some_able},
      {"all alive", &study::AtTime::all_alive},
      {"somebody alive", &study::AtTime::some_alive}};
  int style = 0;
  for (const auto& [name, which] : shares) {
    document::Series band{fmt::format("{}, sampling error", name), Kind::band, {}, style},
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
  chart.told = m.started_h_ago.has_value();  // by the table from now on
  return {"Against time", {chart}};
}

document::Section causes_section(const study::OddsAnswer& m) {
  document::Chart chart;
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
  document::Section out{"What ends it", {}};
  if (names.empty()) {
    out.blocks.push_back(document::Paragraph{"In no future does the first person's ability end within " +
                                             horizon(m.odds.horizon_h * hour_s) + "."});
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
  chart.series = document::stack(names, shares);
  out.blocks.push_back(std::move(chart));
  return out;
}

document::Section unknowns_section(const study::OddsAnswer& m) {
  document::Section out{"Which unknowns make the range wide", {}};
  if (m.unknowns.empty()) {
    out.blocks.push_back(document::Paragraph{"Too few futures, or too little spread, to tell."});
    return out;
  }
  document::Chart chart;
  constexpr std::size_t most = 10;
  chart.title = "What knowing it would take away";
  chart.sentence =
      "Share of the variance of the first person's able until that would go "
      "on average if the input were known. What nobody has measured cannot be asked for. Whiskers are the "
      "sampling error; below zero is scatter.";
  chart.x = {"input"};
  chart.y = {"of the variance", "%", true};
  document::Series aleatory{"differs from case to case", Kind::bars, {}, 0},
      epistemic{"nobody has measured it", Kind::bars, {}, 1};
  for (std::size_t i = 0; i < std::min(most, m.unknowns.size()); ++i) {
    const study::Unknown& u = m.unknowns[i];
    chart.categories.push_back(input_words(u.name));
    const study::Interval& interval = u.reduction.of_variance_interval;
    (u.kind == study::FactorKind::epistemic ? epistemic : aleatory)
        .points.push_back({static_cast<double>(i), pct * u.reduction.of_variance, pct * interval.low,
                           pct * interval.high, ""});
  }
  for (document::Series* each : {&aleatory, &epistemic})
    if (!each->points.empty()) chart.series.push_back(std::move(*each));
  out.blocks.push_back(std::move(chart));
  return out;
}

std::vector<document::Block> about_blocks(const study::OddsAnswer& m) {
  std::vector<document::Block> out;
  if (!m.scenario.scenario.setting.empty()) out.push_back(document::Paragraph{m.scenario.scenario.setting});
  out.push_back(document::List{about_sentences(m)});
  if (!m.as_written) return out;
  out.push_back(document::Paragraph{"Of the one case, nothing drawn:"});
  for (document::Block& block : evidence_blocks(judged(*m.as_written))) out.push_back(std::move(block));
  return out;
}

document::Section nested_section(const study::OddsAnswer& m) {
  const study::NestedBands& n = *m.nested;
  document::Chart chart;
  chart.title = "First person able until: chance, and ignorance";
  chart.sentence =
      "Chance: 8 in 10 cases with what nobody has measured held fixed. Ignorance: 8 in 10 median cases, over "
      "fixed sets of what nobody has measured.";
  chart.x = {"kind"};
  chart.y = time_axis(n.horizon_h * hour_s);
  chart.told = true;
  chart.categories = {"chance: people, weather, failures", "ignorance: what nobody has measured"};
  chart.series = {
      {"8 in 10",
       Kind::spans,
       {{0, Point::none, n.cases_low, n.cases_high, ""}, {1, Point::none, n.truths_low, n.truths_high, ""}},
       0}};
  return {nested_title(m), {chart, document::List{nested_sentences(m)}}};
}

}  // namespace

document::Page odds_page(const study::OddsAnswer& m) {
  const scenario::Scenario& s = m.scenario.scenario;
  document::Page page;
  page.title = s.name;
  page.lead = fmt::format("{}{} possible futures followed for {} from {}{}; not a forecast. {}",
                          m.started_h_ago ? "" : people(s.crew.size()) + ", ", m.odds.futures,
                          horizon(m.odds.horizon_h * hour_s), m.started_h_ago ? "now, " : "",
                          both_clocks(m.scenario.start_unix_s, 0, zone_hours(s.position.longitude_deg)),
                          what_able_means);
  scenario::ValidScenario as_started = m.scenario;  // the foot names the file's own start
  as_started.start_unix_s -= m.started_h_ago.value_or(0) * hour_s;
  page.foot = fmt::format("{}, seed {}, {} futures", foot_of(as_started), m.seed, m.samples);
  page.rest = m.started_h_ago ? "All questions, what was drawn and what this rests on"
                              : "Shares against time, causes, help, all unknowns, chance and ignorance";
  page.sections = {answer_section(m)};
  if (m.started_h_ago) page.sections.push_back(from_now_section(m));
  for (auto section : {window_section, still_section, causes_section}) page.sections.push_back(section(m));
  page.sections.push_back({"Help, as the scenario states it", {document::List{help_sentences(m)}}});
  if (m.launch) page.sections.push_back({"How the raft was reached", {document::List{launch_sentences(m)}}});
  if (m.signals)
    page.sections.push_back({"Signals left when help comes", {document::List{signals_left_sentences(m)}}});
  page.sections.push_back(unknowns_section(m));
  constexpr std::size_t all = 100;
  page.sections.push_back({"All questions", {document::Paragraph{capitalised(ask_words(m, all)) + "."}}});
  if (m.started_h_ago) page.sections.push_back(drawn_section(m));
  if (m.nested) page.sections.push_back(nested_section(m));
  page.sections.push_back({"Evidence", about_blocks(m)});
  return page;
}

}  // namespace bide::report::pages
