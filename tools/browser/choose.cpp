#include "bide/study/questions/choose.hpp"
#include "bide/report/choose/choose_page.hpp"
#include "reading.hpp"

namespace bide::browser {

Json choose(const Json& question) {
  const auto read = scenarios_in(question);
  if (const auto* errors = std::get_if<scenario::Diagnostics>(&read)) return refused(*errors);
  study::ChooseQuestion asked;
  for (const Json& raft : question.value("rafts", Json::array()))
    asked.rafts.push_back({raft.value("kind", ""), raft.value("one_of_two", false)});
  asked.packs = question.value("packs", asked.packs);
  asked.help_h = question.value("help_h", asked.help_h);
  const auto chosen = study::choose(std::get<std::vector<scenario::ValidScenario>>(read), asked);
  if (const auto* refusal = std::get_if<study::Refusal>(&chosen)) return refused(refusal->reasons);
  return sections_of(report::pages::choose_page(std::get<study::Chosen>(chosen)));
}

}  // namespace bide::browser
