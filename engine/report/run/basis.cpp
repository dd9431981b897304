#include <fmt/format.h>

#include <cmath>
#include <limits>
#include <map>

#include "bide/report/run/events.hpp"
#include "bide/report/run/sections.hpp"
#include "bide/report/run/sentences.hpp"
#include "bide/report/words/chart.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

using timeline::PersonSeries;

constexpr double gap = std::numeric_limits<double>::quiet_NaN();

// The worst value among those alive at each time: the smallest for sign -1, the largest for +1.
std::vector<double> worst_alive(const Material& m, std::vector<double> PersonSeries::*column, double sign) {
  const auto& time_s = m.timeline.time_s;
  std::vector<double> worst(time_s.size(), gap);
  for (std::size_t p = 0; p < m.timeline.persons.size(); ++p) {
    const std::vector<double>& values = m.timeline.persons[p].*column;
    const double until_s = m.outcome.persons[p].alive.at_s.value_or(m.outcome.horizon_s);
    for (std::size_t i = 0; i < values.size() && i < time_s.size() && time_s[i] <= until_s; ++i) {
      if (std::isnan(worst[i]) || sign * values[i] > sign * worst[i]) worst[i] = values[i];
    }
  }
  return worst;
}

// A column while anybody is alive.
std::vector<double> watched(const Material& m, const std::vector<double>& column) {
  std::vector<double> values = column;
  for (std::size_t i = 0; i < values.size(); ++i) {
    if (m.timeline.time_s[i] > m.outcome.watched_s) values[i] = gap;
  }
  return values;
}

}  // namespace

void print_charts(Page& page, const Material& m) {
  const ChartArea area{page.width(), 3, page.letters(), m.timeline.horizon_s};
  // The smallest spans worth a chart.
  constexpr double degrees = 5, core_degrees = 2, deficit_pct = 2, co2_ppm = 1000;
  std::vector<Chart> charts;
  if (m.timeline.in_raft) {
    charts.push_back({"Inside air", "°C", watched(m, m.timeline.inside_air_degC), degrees});
    charts.push_back({"Outside air", "°C", watched(m, m.timeline.outside_air_degC), degrees});
  } else {
    charts.push_back({"Sea", "°C", watched(m, m.timeline.sea_degC), degrees});
  }
  charts.push_back({"Core, coldest person alive", "°C", worst_alive(m, &PersonSeries::core_degC, -1),
                    core_degrees, Bin::lowest});
  charts.push_back({"Water deficit, driest person alive", "% of body mass",
                    worst_alive(m, &PersonSeries::water_deficit_pct, 1), deficit_pct, Bin::highest, true});
  if (m.timeline.in_raft) {
    charts.push_back({"CO2 inside", "ppm", watched(m, m.timeline.co2_ppm), co2_ppm, Bin::highest, true});
  }
  page.heading("HOW IT GOES");
  for (const Chart& chart : charts) {
    if (chart.values.size() != m.timeline.time_s.size()) continue;  // a column this run does not have
    for (const std::string& line : draw(chart, m.timeline.time_s, area)) page.line(line);
  }
  for (const std::string& line : draw_axis(area)) page.line(line);
}

void print_events(Page& page, const Material& m) {
  constexpr std::size_t most_events = 16;
  const auto picked = pick_events(m.timeline.events, most_events);
  if (picked.empty()) return;
  const int zone_h = zone_hours(m.scenario.scenario.position.longitude_deg);
  page.heading(fmt::format("EVENTS ({} of {}; UTC, {} in brackets)", picked.size(), m.timeline.events.size(),
                           zone_h == 0 ? "same" : zone_name(zone_h)));
  for (const PickedEvent& pick : picked) {
    const timeline::Event& event = *pick.event;
    const std::string when = clock(m.timeline.start_unix_s, event.time_s, 0);
    const std::string local = clock(m.timeline.start_unix_s, event.time_s, zone_h);
    std::string text = page.outside(event.text);
    if (pick.of_its_kind > 1) text += fmt::format(" (first of {})", pick.of_its_kind);
    page.paragraph(text, fmt::format("  {:>12} ({})  ", when, local.substr(local.size() - 5)), "    ");
  }
}

void print_evidence(Page& page, const Material& m) {
  page.heading("EVIDENCE");
  for (const GradeWords& each : evidence_words(m))
    page.paragraph(each.results, fmt::format("  {:<13} ", each.grade + ":"), "                ");
  if (const std::vector<std::string> left_out = left_out_sentences(m); !left_out.empty()) {
    page.line("  Studies like this, forecast without themselves:");
    for (const std::string& each : left_out) page.item(page.outside(each));
  }
  const std::vector<std::string> ends = data_ends(m);
  if (ends.empty()) return;
  page.line("  Where the measurements end:");
  for (const std::string& each : ends) page.item(page.outside(each));
}

void print_basis(Page& page, const Material& m) {
  if (!m.timeline.assumptions.empty()) {
    page.heading("ASSUMED");
    for (const std::string& text : m.timeline.assumptions) page.item(page.outside(text));
  }
  page.heading("NOT IN THE MODEL");
  page.paragraph(not_in_the_model, "  ", "  ");
  const std::vector<std::string> cautions = caution_sentences(m.scenario);
  if (cautions.empty()) return;
  page.heading("CAUTIONS");
  for (const std::string& each : cautions) page.item(page.outside(each));
}

}  // namespace bide::report
