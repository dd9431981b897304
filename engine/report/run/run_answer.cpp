#include <algorithm>

#include "bide/report/document/window_chart.hpp"
#include "bide/report/run/answer_lines.hpp"
#include "bide/report/run/range.hpp"
#include "bide/report/run/run_parts.hpp"

namespace bide::report::pages {
namespace {

using outcome::CrewTimes;

document::Chart picture(const RunMaterial& material) {
  const Material& m = material.run;
  std::vector<WindowRow> rows;
  const bool crew = m.outcome.persons.size() > 1;
  const auto add = [&](const std::string& name, const CrewTimes& central, study::CrewState state) {
    const auto row = [&](const char* who, study::CrewTime which) {
      rows.push_back(window_row(name + who, central, material.unmeasured, state, which));
    };
    row(crew ? ": first person" : "", &CrewTimes::first_s);
    if (crew) row(": last person", &CrewTimes::last_s);
  };
  add("able", m.outcome.able, &outcome::Endurance::able);
  add("alive", m.outcome.alive, &outcome::Endurance::alive);
  document::Chart out = window_chart(rows, m.outcome.horizon_s);
  out.told = true;
  return out;
}

}  // namespace

document::Section answer_section(const RunMaterial& material) {
  const Material& m = material.run;
  constexpr std::ptrdiff_t large = 2;  // able, alive
  Answer all = run_answer(m, material.unmeasured,
                          material.levers_to_come ? "being tried"
                          : material.drawn ? "not tried; --dump writes this future, bide levers asks of it"
                                           : buys_line(material.levers, m.scenario));
  // Before the picture: what ends it, who first, help, what buys most.
  const auto after_picture =
      std::find_if(all.begin(), all.end(), [](const AnswerLine& each) { return each.asks == "Inside"; });
  document::Section out{"The answer", {}, false, true};
  out.blocks.push_back(document::Facts{{all.begin(), all.begin() + large}, true});
  out.blocks.push_back(document::Facts{{all.begin() + large, after_picture}});
  out.blocks.push_back(picture(material));
  out.blocks.push_back(document::Facts{{after_picture, all.end()}});
  return out;
}

}  // namespace bide::report::pages
