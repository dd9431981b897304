#include "bide/report/choose/choose_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/words/words.hpp"
#include "bide/scenario/catalogue.hpp"

namespace bide::report {
namespace {

using study::ChoiceCell;

// "2 is ahead of 1: in 31 of 200 futures all are able with 2 alone, in 2 with 1 alone", of each choice that
// is apart.
std::string apart_words(const study::Water& water, std::vector<ChoiceCell> study::Choice::*cells,
                        std::size_t hour, const char* state) {
  std::string out;
  for (std::size_t c = 1; c < water.choices.size(); ++c) {
    const study::AgainstFirst& against = (water.choices[c].*cells)[hour].against_first;
    if (!against.apart) continue;
    out += fmt::format("{}{} is {} 1: in {} of {} futures all are {} only with {}, in {} only with 1",
                       out.empty() ? "" : "; ", c + 1, against.more > against.fewer ? "ahead of" : "behind",
                       against.more, water.futures, state, c + 1, against.fewer);
  }
  return out;
}

}  // namespace

std::string choose_title(const study::Chosen& chosen) {
  return "Raft and pack for " + people(chosen.waters.front().scenario.scenario.crew.size());
}

std::string choice_words(const study::Choice& choice) {
  return fmt::format("{}; {} ({}, {})", scenario::find_raft(choice.raft.kind)->title,
                     scenario::find_pack(choice.pack)->title,
                     choice.raft.one_of_two ? "two of " + choice.raft.kind + ", one lost" : choice.raft.kind,
                     choice.pack);
}

std::string choice_name(const study::Choice& choice) {
  const auto until = [](const std::string& text, const char* mark) {
    return text.substr(0, text.find(mark));
  };
  return fmt::format("{}{}, {}", until(scenario::find_raft(choice.raft.kind)->title, ", "),
                     choice.raft.one_of_two ? ", one of two lost" : "",
                     until(scenario::find_pack(choice.pack)->title, " ("));
}

std::string water_words(const study::Water& water) {
  const std::string& name = water.scenario.scenario.name;
  const auto means = [&](const auto& w) {
    if constexpr (requires { w.water_temperature_degC; })
      return fmt::format("{}: sea {}, air {}, wind {} m/s", name, temperature(w.water_temperature_degC),
                         temperature(w.air_temperature_degC), two_figures(w.wind_speed_m_s));
    else
      return fmt::format("{}: weather of {}", name, w.file);
  };
  return std::visit(means, water.scenario.weather);
}

std::string range_words(const study::Chance& chance) {
  const double low = std::floor(pct * chance.interval.low), high = std::ceil(pct * chance.interval.high);
  return fmt::format("{:.0f}-{:.0f} %", low, high);
}

std::string cause_words(const ChoiceCell& cell) {
  return cell.ended_by.limit == system::Limit::none ? "nothing" : outcome::short_cause(cell.ended_by.limit);
}

std::string help_words(double help_h) {
  return horizon(help_h * hour_s);
}

std::vector<std::string> verdict_sentences(const study::Chosen& chosen, const study::Water& water) {
  std::vector<std::string> out;
  if (water.choices.size() == 1) return out;
  for (std::size_t h = 0; h < chosen.question.help_h.size(); ++h) {
    const std::string able = apart_words(water, &study::Choice::able, h, "able"),
                      alive = apart_words(water, &study::Choice::alive, h, "alive");
    if (able.empty() && alive.empty()) continue;
    out.push_back(fmt::format("Help after {}: {}{}{}.", help_words(chosen.question.help_h[h]), able,
                              able.empty() || alive.empty() ? "" : "; ", alive));
  }
  if (out.empty()) return {"Here the model cannot separate the choices, whenever help comes."};
  if (out.size() < chosen.question.help_h.size())
    out.push_back("At the other hours the model cannot separate them.");
  return out;
}

std::vector<std::string> about_choices(const study::Chosen& chosen) {
  std::vector<std::string> out;
  out.push_back(fmt::format(
      "Each range is that of {} futures, at 95 %; all choices meet the same ones. Ahead or behind: the exact "
      "sign test at 5 %.",
      chosen.question.futures));
  out.emplace_back("What ends it is what most often ended it first by that hour.");
  const bool made_uncertain = std::any_of(chosen.waters.begin(), chosen.waters.end(),
                                          [](const study::Water& each) { return each.made_uncertain; });
  if (made_uncertain)
    out.emplace_back(
        "The file says nothing of what is uncertain: how people differ and what nobody has measured are "
        "drawn. "
        "Its weather is one case, as entered.");
  const auto& rafts = chosen.question.rafts;
  if (std::any_of(rafts.begin(), rafts.end(), [](const study::RaftChoice& each) { return each.one_of_two; }))
    out.emplace_back("Two rafts, one lost: the whole crew is in the other, with the pack of that one alone.");
  out.emplace_back(
      "When help comes is your statement: the model knows nothing of it. Prices and launching are not in "
      "it.");
  return out;
}

}  // namespace bide::report
