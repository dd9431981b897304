#include "bide/report/levers/levers_page.hpp"

#include "bide/report/levers/levers.hpp"
#include "bide/report/levers/levers_section.hpp"
#include "bide/report/run/evidence_words.hpp"
#include "bide/report/run/foot.hpp"
#include "bide/report/run/sentences.hpp"

namespace bide::report::pages {

document::Page levers_page(const study::LeversTried& levers, const scenario::ValidScenario& scenario) {
  document::Page page;
  page.title = scenario.scenario.name;
  page.lead = head_sentence(scenario, levers.base.in_raft, levers.base.horizon_s);
  page.foot = foot_of(scenario);
  page.rest = "Every change tried, with weight, room and price in air";
  constexpr std::ptrdiff_t large = 2,
                           before_picture = 5;  // able, alive; what ends it, who first, what buys most
  const Answer all = levers_answer(levers, scenario);
  document::Section answer{
      "The answer", {document::Facts{{all.begin(), all.begin() + large}, true}}, false, true};
  answer.blocks.push_back(document::Facts{{all.begin() + large, all.begin() + before_picture}});
  if (auto picture = levers_picture(levers))
    picture->told = true, answer.blocks.push_back(std::move(*picture));
  answer.blocks.push_back(document::Facts{{all.begin() + before_picture, all.end()}});
  page.sections = {std::move(answer), levers_section(levers, true)};
  document::Section evidence{"Evidence", evidence_blocks(judged(levers.base))};
  if (!scenario.scenario.setting.empty())
    evidence.blocks.insert(evidence.blocks.begin(), document::Paragraph{scenario.scenario.setting});
  page.sections.push_back(std::move(evidence));
  document::List sources;
  for (const study::LeverTried& each : levers.tried)
    sources.items.push_back(each.lever->title + ": " + each.lever->source);
  page.sections.push_back({"Where the changes come from", {std::move(sources)}});
  return page;
}

}  // namespace bide::report::pages
