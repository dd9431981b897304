#include "bide/report/choose/choose_page.hpp"

#include <fmt/format.h>

#include "bide/core/units.hpp"
#include "bide/report/choose/choose_words.hpp"
#include "bide/report/document/window_chart.hpp"
#include "bide/report/run/foot.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report::pages {
namespace {

using study::Choice;
using study::ChoiceCell;
using study::Chosen;
using study::Water;

document::Chart chart_of(const Chosen& chosen, const Water& water, const char* state,
                         std::vector<ChoiceCell> Choice::*cells) {
  document::Chart out;
  out.title = fmt::format("{}: all {} when help comes", water.scenario.scenario.name, state);
  out.sentence = fmt::format(
      "Share of futures in which all are {} when help comes, for every choice; ranges are in the table.",
      state);
  const double last_h = chosen.question.help_h.back();
  out.x = time_axis(last_h * hour_s);
  out.x.label = "help after";
  out.y = {fmt::format("futures with all {}", state), "%", true};
  for (std::size_t c = 0; c < water.choices.size(); ++c) {
    document::Series series{
        fmt::format("{} {}", c + 1, choice_name(water.choices[c])), document::Kind::line, {}, std::nullopt};
    for (std::size_t h = 0; h < chosen.question.help_h.size(); ++h) {
      const study::Chance& chance = (water.choices[c].*cells)[h].chance;
      series.points.push_back({chosen.question.help_h[h], pct * chance.share, pct * chance.interval.low,
                               pct * chance.interval.high});
    }
    out.series.push_back(std::move(series));
  }
  out.told = true;
  return out;
}

document::Table table_of(const Chosen& chosen, const Water& water, const std::string& where,
                         const char* state, std::vector<ChoiceCell> Choice::*cells) {
  document::Table out{
      capitalised(fmt::format("{}all {} when help comes, and what ends it most often", where, state)),
      {{"choice"}},
      {}};
  for (const double help_h : chosen.question.help_h) out.columns.push_back({help_words(help_h)});
  for (std::size_t c = 0; c < water.choices.size(); ++c) {
    std::vector<std::string> row{std::to_string(c + 1)};  // by its place in the list of choices
    for (const ChoiceCell& cell : water.choices[c].*cells)
      row.push_back(fmt::format("{}; {}", range_words(cell.chance), cause_words(cell)));
    out.rows.push_back(std::move(row));
  }
  return out;
}

}  // namespace

// In how many futures each choice does what the first does not, and the other way round.
document::Table against_first(const Chosen& chosen, const Water& water, const std::string& where,
                              const char* state, std::vector<ChoiceCell> Choice::*cells) {
  document::Table out{
      capitalised(fmt::format("{}of {} futures, in how many all are {} with this choice alone, and with "
                              "choice 1 alone",
                              where, water.futures, state)),
      {{"choice"}},
      {}};
  for (const double help_h : chosen.question.help_h) out.columns.push_back({help_words(help_h)});
  for (std::size_t c = 1; c < water.choices.size(); ++c) {
    std::vector<std::string> row{std::to_string(c + 1)};
    for (const ChoiceCell& cell : water.choices[c].*cells)
      row.push_back(fmt::format("{}, {}{}", cell.against_first.more, cell.against_first.fewer,
                                cell.against_first.apart ? "" : "; not separated"));
    out.rows.push_back(std::move(row));
  }
  return out;
}

document::Page choose_page(const Chosen& chosen) {
  document::Page page;
  const study::Water& first = chosen.waters.front();
  const bool several = chosen.waters.size() > 1;
  page.title = choose_title(chosen);
  page.lead =
      fmt::format("The chance that all are able, and alive, when help comes; {} futures of each choice.",
                  chosen.question.futures);
  page.foot = foot_of(first.scenario);
  page.rest = "Each choice against the first, future by future";
  document::Section answer{"The answer", {}, false, true};
  document::List choices;
  for (std::size_t c = 0; c < first.choices.size(); ++c)
    choices.items.push_back(fmt::format("{}: {}", c + 1, choice_words(first.choices[c])));
  for (const Water& water : chosen.waters) {
    answer.blocks.push_back(document::Paragraph{water_words(water) + ".", true});
    answer.blocks.push_back(document::List{verdict_sentences(chosen, water)});
  }
  answer.blocks.push_back(document::Paragraph{"The choices:"});
  answer.blocks.push_back(std::move(choices));
  answer.blocks.push_back(chart_of(chosen, first, "able", &Choice::able));
  for (const Water& water : chosen.waters) {
    const std::string where = several ? water.scenario.scenario.name + ": " : "";
    answer.blocks.push_back(table_of(chosen, water, where, "able", &Choice::able));
    answer.blocks.push_back(table_of(chosen, water, where, "alive", &Choice::alive));
  }
  page.sections.push_back(std::move(answer));
  page.sections.push_back({"How to read it", {document::List{about_choices(chosen)}}});
  page.sections.back().brief = true;
  document::Section drawn{"Each choice against the first, future by future", {}};
  for (const Water& water : chosen.waters) {
    const std::string where = several ? water.scenario.scenario.name + ": " : "";
    if (water.choices.size() > 1) {
      drawn.blocks.push_back(against_first(chosen, water, where, "able", &Choice::able));
      drawn.blocks.push_back(against_first(chosen, water, where, "alive", &Choice::alive));
    }
    if (&water != &first) drawn.blocks.push_back(chart_of(chosen, water, "able", &Choice::able));
    document::Chart alive = chart_of(chosen, water, "alive", &Choice::alive);
    alive.folded = true;
    drawn.blocks.push_back(std::move(alive));
  }
  page.sections.push_back(std::move(drawn));
  return page;
}

}  // namespace bide::report::pages
