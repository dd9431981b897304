#include "bide/report/odds/night.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

#include "bide/core/units.hpp"
#include "bide/report/odds/odds_words.hpp"
#include "bide/report/run/answer_lines.hpp"
#include "bide/report/run/evidence_words.hpp"
#include "bide/report/run/first_hour.hpp"
#include "bide/report/run/sentences.hpp"
#include "bide/report/words/words.hpp"
#include "bide/scenario/priors.hpp"
#include "bide/scenario/write.hpp"

namespace bide::report {
namespace {

using enum study::QuantilePlace;

std::string clock_of(const study::OddsAnswer& m, double at_h) {
  return both_clocks(m.scenario.start_unix_s, at_h * hour_s,
                     zone_hours(m.scenario.scenario.position.longitude_deg));
}

// "before now"; "by 30 Nov 08:00 UTC (07:00 local), 11 h from now".
std::string by(const study::OddsAnswer& m, double at_h) {
  if (at_h <= 0) return "before now";
  return fmt::format("by {}, {} from now", clock_of(m, as_shown_s(at_h * hour_s) / hour_s),
                     duration(at_h * hour_s));
}

// "1 in 10 futures before now; half of them by ...; 17 % of them after ..., where the futures end".
std::string end_of(const study::OddsAnswer& m, const study::Window& window) {
  const std::string after = fmt::format("after {}, where the futures end", clock_of(m, m.odds.horizon_h));
  std::string out;
  for (const auto& [place, ended] :
       {std::pair{q10, "1 in 10 futures"}, std::pair{q50, "half of them"}, std::pair{q90, "9 in 10"}}) {
    const std::string between = out.empty() ? "" : "; ";
    const std::optional<double>& at_h = window.until[place].time;
    if (!at_h)
      return fmt::format("{}{}{} of {} {}", out, between, share(window.beyond),
                         out.empty() ? "futures" : "them", after);
    out += fmt::format("{}{} {}", between, ended, by(m, *at_h));
  }
  return out;
}

bool is_drawn(const scenario::Prior& prior, const scenario::Uncertain& u) {
  const auto of_prior = [&](const std::string& name) {
    return std::find(prior.inputs.begin(), prior.inputs.end(), scenario::any_index(name)) !=
           prior.inputs.end();
  };
  return std::any_of(u.inputs.entries.begin(), u.inputs.entries.end(),
                     [&](const auto& each) { return of_prior(each.first); }) ||
         std::any_of(u.groups.begin(), u.groups.end(),
                     [&](const scenario::SharedInput& each) { return each.name == prior.key; }) ||
         (!u.alternatives.empty() && of_prior("alternatives")) ||
         std::any_of(u.unknown_persons.begin(), u.unknown_persons.end(),
                     [&](const auto& each) { return of_prior(each.pointer + "/height_m"); });
}

}  // namespace

Answer night_answer(const study::OddsAnswer& m) {
  constexpr std::size_t most_asked = 2;
  const study::Window &able = m.odds.able[study::first_person], &alive = m.odds.alive[study::last_person];
  Answer out{{"Able until", "first person, " + end_of(m, able)},
             {"Alive until", "last person, " + end_of(m, alive)},
             {"Ends it", ends_by(m, "by " + clock_of(m, m.odds.horizon_h))},
             {"Who first", who_first(m)},
             {"Ask next", ask_words(m, most_asked)},
             {"Inside", inside_line(m)},
             {"Water", water_line(m)}};
  if (const std::string lost = first_minutes_line(m); !lost.empty()) out.push_back({"Into water", lost});
  if (m.started_h_ago && *m.started_h_ago < 1) out.push_back({"First hour", first_hour_line(m.scenario)});
  std::string sure = fmt::format(
      "{} futures, not a forecast; what is not known is drawn from priors, most of them judgement: what is "
      "known on the spot goes before them",
      m.odds.futures);
  if (m.as_written)
    for (const std::string& each : left_out_sentences(judged(*m.as_written))) sure += "; " + each;
  out.push_back({"How sure", sure});
  out.push_back({"Not in it", not_in_the_model(m.scenario, Told::futures)});
  return out;
}

document::Section from_now_section(const study::OddsAnswer& m) {
  document::Table table{
      "Share of futures",
      {{"", true}, {"able: all", true}, {"any", true}, {"alive: all", true}, {"any", true}, {"at", false}},
      {}};
  double widest = 0;
  for (const study::AtTime& t : m.odds.times) {
    std::vector<std::string> row{t.at_h > 0 ? fmt::format("{:.0f} h", t.at_h) : "now"};
    for (const study::Chance* c : {&t.all_able, &t.some_able, &t.all_alive, &t.some_alive}) {
      row.push_back(fmt::format("{:.0f} %", pct * c->share));
      widest = std::max({widest, c->interval.high - c->share, c->share - c->interval.low});
    }
    row.push_back(clock_of(m, t.at_h));
    table.rows.push_back(std::move(row));
  }
  document::Section out{"From now", {std::move(table)}};
  out.brief = true;
  out.blocks.push_back(document::Paragraph{
      fmt::format("Sampling error of these shares: {:.0f} percentage points at most either way.",
                  std::ceil(pct * widest))});
  return out;
}

document::Section drawn_section(const study::OddsAnswer& m) {
  const scenario::Uncertain& u = *m.scenario.scenario.uncertain;
  std::string titles;
  for (const scenario::Prior& prior : scenario::priors().priors)
    if (is_drawn(prior, u)) titles += prior.title + "; ";
  document::List list{{titles +
                       "weather from hour to hour; what differs from person to person; what nobody has "
                       "measured, the model's own error too."}};
  double sum = 0;
  std::string ways;
  for (const scenario::Alternative& way : u.alternatives) sum += way.weight;
  for (const scenario::Alternative& way : u.alternatives)
    ways += fmt::format("{}{} {}", ways.empty() ? "" : ", ", way.name, share(way.weight / sum));
  if (!ways.empty()) list.items.push_back("How the raft was reached: " + ways + ".");
  list.items.emplace_back("The priors and their sources: scenarios/catalogue/priors.json.");
  return {"Not known, and drawn", {std::move(list)}};
}

std::string night_so_far(const study::Odds& odds, double now_h) {
  // Not "somebody alive": what is not in the model would have to stand beside it.
  std::string out = fmt::format("{} futures so far, all able:", odds.futures);
  for (const study::AtTime& t : odds.times) {
    const double ahead_h = t.at_h - now_h;
    out += fmt::format(" {} {:.0f} %;", ahead_h > 0 ? fmt::format("in {:.0f} h", ahead_h) : "now",
                       pct * t.all_able.share);
  }
  out.back() = '.';
  return out;
}

}  // namespace bide::report
