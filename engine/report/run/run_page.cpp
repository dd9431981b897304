#include "bide/report/run/run_page.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "bide/core/units.hpp"
#include "bide/report/levers/levers_section.hpp"
#include "bide/report/run/run_parts.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report::pages {
namespace {

constexpr double day_h = 24;

std::string lead(const Material& m) {
  const scenario::Scenario& s = m.scenario.scenario;
  const int zone_h = zone_hours(s.position.longitude_deg);
  std::string where = m.timeline.in_raft ? "in a raft" : "in the water, no raft";
  if (s.raft) where = fmt::format("in a raft for {}", s.raft->capacity_persons);
  const auto& defaults = m.scenario.defaults;
  const bool stated = std::find(defaults.begin(), defaults.end(), "/setting") == defaults.end();
  return fmt::format("{}{} {} {}, from {}, followed for {}.",
                     stated && !s.setting.empty() ? s.setting + " " : "", s.crew.size(),
                     s.crew.size() == 1 ? "person" : "people", where,
                     both_clocks(m.timeline.start_unix_s, 0, zone_h), horizon(m.timeline.horizon_s));
}

}  // namespace

html::Axis hours_axis(const Material& material) {
  constexpr double quarter_day_h = 6, long_h = 48;
  const double hours = material.timeline.horizon_s / hour_s;
  html::Axis axis{"time since the start", "h", true};
  if (hours >= long_h) {
    axis.tick_every = day_h;
  } else if (hours >= day_h) {
    axis.tick_every = quarter_day_h;
  }
  return axis;
}

html::Series nights(const Material& material) {
  html::Series out{"night", html::Kind::spans, {}, {}};
  bool dark = false, first = true;
  double from_s = 0;
  const auto add = [&out](double from, double to) {
    if (to > from) out.points.push_back({from / hour_s, html::Point::none, from / hour_s, to / hour_s, ""});
  };
  for (const timeline::Event& event : material.timeline.events) {
    if (event.kind == system::NoteKind::darkness) {
      dark = true;
      from_s = event.time_s;
    } else if (event.kind == system::NoteKind::daylight) {
      if (dark || first) add(from_s, event.time_s);  // before the first event: since the start
      dark = false;
    } else {
      continue;
    }
    first = false;
  }
  if (dark) add(from_s, material.timeline.horizon_s);
  return out;
}

html::Page run_page(const RunMaterial& material) {
  const Material& m = material.run;
  html::Page page;
  page.title = m.scenario.scenario.name;
  page.lead = lead(m);
  page.sections.push_back(answer_section(material));
  page.sections.push_back(stay_section(m));
  if (material.levers) page.sections.push_back(levers_section(*material.levers));
  page.sections.push_back(course_section(m));
  page.sections.push_back(warmth_section(m));
  page.sections.push_back(margins_section(m));
  page.sections.push_back(basis_section(m));
  page.sections.push_back(ration_card(m));
  page.sections.push_back(first_hour(m));
  return page;
}

}  // namespace bide::report::pages
