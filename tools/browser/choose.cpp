#include <algorithm>

#include "bide/report/choose/choose_page.hpp"
#include "bide/scenario/catalogue.hpp"
#include "bide/study/questions/choose.hpp"
#include "reading.hpp"

namespace bide::browser {
namespace {

// A reader of a page does not know the catalogue's keys.
void call_by_title(study::Choice& choice) {
  if (const scenario::RaftKind* const raft = scenario::find_raft(choice.raft.kind))
    choice.raft.kind = raft->title;
  if (const scenario::PackKind* const pack = scenario::find_pack(choice.pack)) choice.pack = pack->title;
}

}  // namespace

Json choose(const Json& question) {
  const auto read = scenarios_in(question);
  if (const auto* errors = std::get_if<scenario::Diagnostics>(&read)) return refused(*errors);
  study::ChooseQuestion asked;
  for (const Json& raft : question.value("rafts", Json::array()))
    asked.rafts.push_back({raft.value("kind", ""), raft.value("one_of_two", false)});
  asked.packs = question.value("packs", asked.packs);
  asked.help_h = question.value("help_h", asked.help_h);
  auto chosen = study::choose(std::get<std::vector<scenario::ValidScenario>>(read), asked);
  if (const auto* refusal = std::get_if<study::Refusal>(&chosen)) return refused(refusal->reasons);
  auto& answer = std::get<study::Chosen>(chosen);
  for (study::Water& water : answer.waters)
    std::for_each(water.choices.begin(), water.choices.end(), call_by_title);
  return sections_of(report::pages::choose_page(answer));
}

}  // namespace bide::browser
