#include <fmt/format.h>

#include "bide/outcome/cause.hpp"
#include "bide/report/levers/levers_words.hpp"
#include "bide/report/run/range.hpp"
#include "bide/report/run/run_parts.hpp"
#include "bide/report/run/sentences.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report::pages {
namespace {

using outcome::CrewTimes;

html::Table times_table(const RunMaterial& material) {
  const Material& m = material.run;
  const double h = m.outcome.horizon_s;
  const int zone_h = zone_hours(m.scenario.scenario.position.longitude_deg);
  html::Table out;
  out.caption = "Until when";
  out.columns = {{"", false}, {"over what is not known", false}, {"as computed", false}, {"evidence", false}};
  const auto add = [&](const std::string& name, CrewState state, CrewTime which,
                       const outcome::Evidence& evidence) {
    const auto one = (m.outcome.*state).*which;
    out.rows.push_back(
        {name,
         material.unmeasured.empty()
             ? "all stated: no range"
             : range_words(range_over(m.outcome, material.unmeasured, state, which), h),
         one ? duration(*one) + ", " + both_clocks(m.timeline.start_unix_s, *one, zone_h) : not_reached(h),
         std::string(outcome::to_string(evidence.grade))});
  };
  const bool crew = m.outcome.persons.size() > 1;
  const struct {
    const char* word;
    CrewTime which;
  } rows[] = {{"first person", &CrewTimes::first_s},
              {"half of the crew", &CrewTimes::half_s},
              {"last person", &CrewTimes::last_s}};
  for (const auto& [name, state, evidence] :
       {std::tuple{"able until", &outcome::Outcome::able, &m.outcome.able_evidence},
        std::tuple{"alive until", &outcome::Outcome::alive, &m.outcome.alive_evidence}})
    for (const auto& row : rows) {
      if (!crew && row.which != &CrewTimes::first_s) continue;
      add(crew ? fmt::format("{}, {}", name, row.word) : name, state, row.which, *evidence);
    }
  return out;
}

}  // namespace

html::Section answer_section(const RunMaterial& material) {
  const Material& m = material.run;
  html::Section out{"The answer", {}};
  const auto lead = [&](const char* name, CrewState state) {
    out.blocks.push_back(html::Paragraph{range_sentence(name, m.outcome, material.unmeasured, state), true});
  };
  lead("Able until", &outcome::Outcome::able);
  lead("Alive until", &outcome::Outcome::alive);
  out.blocks.push_back(html::Paragraph{what_the_range_is(material.unmeasured.size())});
  out.blocks.push_back(html::Paragraph{"What ends it, as computed, with the middle of what is not known:"});
  html::List ends;
  for (const std::string& sentence : person_sentences(m)) ends.items.push_back(sentence);
  out.blocks.push_back(ends);
  if (material.levers) out.blocks.push_back(html::Paragraph{most_bought_words(*material.levers)});
  out.blocks.push_back(times_table(material));
  return out;
}

}  // namespace bide::report::pages
