#include "bide/report/run/run_page.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "bide/core/units.hpp"
#include "bide/report/document/window_chart.hpp"
#include "bide/report/levers/levers_section.hpp"
#include "bide/report/run/foot.hpp"
#include "bide/report/run/run_parts.hpp"
#include "bide/report/run/sentences.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report::pages {

double drawn_s(const Material& material) {
  constexpr double beyond_the_last = 1.1;
  return std::min(beyond_the_last * material.outcome.watched_s, material.timeline.horizon_s);
}

document::Axis hours_axis(const Material& material) {
  return time_axis(drawn_s(material));
}

std::vector<std::vector<int>> alike(const Material& m) {
  const auto same = [&](int a, int b) {
    const auto &x = m.timeline.persons[static_cast<std::size_t>(a)],
               &y = m.timeline.persons[static_cast<std::size_t>(b)];
    return x.core_degC == y.core_degC && x.water_deficit_pct == y.water_deficit_pct &&
           x.finger_degC == y.finger_degC && x.mean_skin_degC == y.mean_skin_degC &&
           x.fine_work == y.fine_work && x.grip == y.grip;
  };
  std::vector<std::vector<int>> out;
  for (int p = 0; p < static_cast<int>(m.timeline.persons.size()); ++p) {
    const auto known =
        std::find_if(out.begin(), out.end(), [&](const auto& group) { return same(group.front(), p); });
    if (known == out.end())
      out.push_back({p});
    else
      known->push_back(p);
  }
  return out;
}

document::Series nights(const Material& material) {
  document::Series out{"night", document::Kind::spans, {}, {}};
  bool dark = false, first = true;
  double from_s = 0;
  const auto add = [&out, end_s = drawn_s(material)](double from, double to) {
    to = std::min(to, end_s);
    if (to > from)
      out.points.push_back({from / hour_s, document::Point::none, from / hour_s, to / hour_s, ""});
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

document::Page run_page(const RunMaterial& material) {
  const Material& m = material.run;
  document::Page page;
  page.title = m.scenario.scenario.name;
  page.lead = head_sentence(m.scenario, m.timeline.in_raft, m.timeline.horizon_s);
  page.foot = foot_of(m.scenario);
  page.rest = "charts, events, evidence";
  if (const std::size_t count = caution_sentences(m.scenario).size(); count > 0)
    page.rest = fmt::format("{} {}, ", count, count == 1 ? "caution" : "cautions") + page.rest;
  page.sections.push_back(answer_section(material));
  if (material.levers) page.sections.push_back(levers_section(*material.levers, false));
  page.sections.push_back(people_section(m));
  page.sections.push_back(stay_section(m));
  page.sections.push_back(course_section(m));
  page.sections.push_back(hands_section(m));
  page.sections.push_back(warmth_section(m));
  page.sections.push_back(margins_section(m));
  page.sections.push_back(basis_section(m));
  page.sections.push_back(ration_card(m));
  page.sections.push_back(first_hour(m, material.levers ? &*material.levers : nullptr));
  return page;
}

}  // namespace bide::report::pages
