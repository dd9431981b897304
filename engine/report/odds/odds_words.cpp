#include "bide/report/odds/odds_words.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "bide/core/notice.hpp"
#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/odds/night.hpp"
#include "bide/report/run/answer_lines.hpp"
#include "bide/report/run/first_hour.hpp"
#include "bide/report/run/sentences.hpp"
#include "bide/report/words/input.hpp"
#include "bide/report/words/words.hpp"
#include "bide/study/questions/ask_next.hpp"

namespace bide::report {
namespace {

using enum study::QuantilePlace;

}  // namespace

std::string odds_hours(const std::optional<double>& h, double horizon_h) {
  if (!h) return "after " + horizon(horizon_h * hour_s);
  return *h < 0 ? "before now" : duration(*h * hour_s);
}

std::string share(double value) {
  constexpr double least = 0.01;
  if (value <= 0) return "0 %";
  if (value < least) return "under 1 %";
  if (value < 1 && value > 1 - least) return "over 99 %";
  return fmt::format("{:.0f} %", pct * value);
}

std::string share(const study::Chance& c) {
  return fmt::format("{} ({} to {})", share(c.share), share(c.interval.low), share(c.interval.high));
}

// "14 h to 41 h (8 in 10 futures)".
std::string odds_range(const study::Window& w, double horizon_h) {
  const auto &low = w.until[q10].time, &high = w.until[q90].time;
  if (!low) return fmt::format("after {} (9 in 10 futures or more)", horizon(horizon_h * hour_s));
  return fmt::format("{} to {} (8 in 10 futures)", odds_hours(low, horizon_h), odds_hours(high, horizon_h));
}

namespace {

std::vector<std::string> given_by_the_clock(const study::OddsAnswer& m) {
  const int zone_h = zone_hours(m.scenario.scenario.position.longitude_deg);
  const auto at = [&](double h) { return both_clocks(m.scenario.start_unix_s, h * hour_s, zone_h); };
  const std::size_t persons = m.scenario.scenario.crew.size();
  std::vector<std::string> out{fmt::format("{}. Abandoned {}, {} ago. Now {} (local is {}).", people(persons),
                                           at(-*m.started_h_ago), duration(*m.started_h_ago * hour_s), at(0),
                                           zone_name(zone_h))};
  if (m.known.alive_at_h)
    out.push_back(fmt::format("Last contact {}, all alive: {} of {} futures drawn agree with that.",
                              at(*m.known.alive_at_h), m.odds.futures, m.odds.futures + m.odds.ruled_out));
  return out;
}

}  // namespace

std::vector<std::string> given_sentences(const study::OddsAnswer& m) {
  if (m.started_h_ago) return given_by_the_clock(m);
  std::vector<std::string> out;
  if (m.known.alive_at_h)
    out.push_back(
        fmt::format("Given: all alive {} after the start.", duration(*m.known.alive_at_h * hour_s)));
  if (m.known.now_h)
    out.push_back(fmt::format("Given: it is now {} after the start, and no help has come.",
                              duration(*m.known.now_h * hour_s)));
  if (m.known.alive_at_h || m.known.now_h)
    out.push_back(fmt::format("What is known rules out {} of the futures drawn.", m.odds.ruled_out));
  return out;
}

std::string nested_title(const study::OddsAnswer& m) {
  return m.known.alive_at_h || m.known.now_h ? "Chance and ignorance, before anything was known"
                                             : "Chance and ignorance";
}

std::vector<std::string> nested_sentences(const study::OddsAnswer& m) {
  if (!m.nested) return {};
  const study::NestedBands& n = *m.nested;
  const auto h = [&](double at) {
    return at < n.horizon_h ? duration(at * hour_s) : odds_hours({}, n.horizon_h);
  };
  return {
      fmt::format(
          "Chance: people, weather and failures differ. With what nobody has measured held fixed, 8 in 10 "
          "cases lie between {} and {} (first person able until, mean of {} fixed sets).",
          h(n.cases_low), h(n.cases_high), n.outer),
      fmt::format(
          "Ignorance: what nobody has measured, and the model's own error, move the median case between {} "
          "and {} (8 in 10 fixed sets, {} cases each).",
          h(n.truths_low), h(n.truths_high), n.inner)};
}

std::vector<std::string> about_sentences(const study::OddsAnswer& m) {
  std::vector<std::string> out{fmt::format(
      "{} futures drawn with seed {}; intervals are the sampling error of that number of futures, not the "
      "error of the model.",
      m.samples, m.seed)};
  if (const std::size_t least = study::cases_for_quantile(study::quantiles[q05], m.odds.confidence);
      m.odds.futures < least)
    out.push_back(fmt::format(
        "Too few futures for the 5 and 95 % times: below {} futures they have no interval.", least));
  constexpr double wide = 0.05;
  if (const std::size_t least = study::cases_for_share(wide, m.odds.confidence); m.odds.futures < least)
    out.push_back(fmt::format(
        "Below {} futures shares are no better known than 5 percentage points up or down.", least));
  if (!m.failed.empty()) {
    std::string text =
        fmt::format("{} of {} samples left out, without a result:", m.failed.size(), m.samples);
    constexpr std::size_t most = 5;
    for (std::size_t i = 0; i < std::min(most, m.failed.size()); ++i)
      text += fmt::format(" sample {}: {};", m.failed[i].index, m.failed[i].reason);
    text.back() = '.';
    if (m.failed.size() > most) text += " All are listed in the JSON output.";
    out.push_back(text);
  }
  const auto& uncertain = m.scenario.scenario.uncertain;
  if (uncertain && uncertain->readiness)
    out.push_back(
        "Chances that a neglected raft fails rest on a handful of published cases, two to five rafts each; "
        "they are drawn from the wide interval of so few.");
  out.push_back("To see one future: --sample and its number runs it, --dump writes it as a plain scenario.");
  out.push_back("Not in the model: " + not_in_the_model(m.scenario, Told::futures));
  return out;
}

namespace {

std::string clock_at(const study::OddsAnswer& m, double at_h) {
  return clock(m.scenario.start_unix_s, as_shown_s(at_h * hour_s), 0) + " UTC";
}

// "no longer able by 17 h (21 Feb 22:30 UTC) in 10 % of futures, by 30 h in 50 %, still able after 41 h in
// 10 %"; "..., still able after 6 d in 80 %".
// @param state "able", "alive"
std::string when_ended(const study::OddsAnswer& m, const study::Window& window, const char* state,
                       bool clocked) {
  const auto &early = window.until[q10].time, &half = window.until[q50].time, &late = window.until[q90].time;
  const std::string beyond = fmt::format("still {} after {} in {}", state, horizon(m.odds.horizon_h * hour_s),
                                         share(window.beyond.share));
  if (window.beyond.share >= 1) return "limit " + not_reached(m.odds.horizon_h * hour_s) + " in any future";
  if (!early) return beyond + " of futures";
  std::string out = fmt::format("no longer {} by {}{} in 10 % of futures", state, duration(*early * hour_s),
                                clocked ? " (" + clock_at(m, *early) + ")" : "");
  if (half) out += fmt::format(", by {} in 50 %", duration(*half * hour_s));
  return out + ", " +
         (late ? fmt::format("still {} after {} in 10 %", state, duration(*late * hour_s)) : beyond);
}

std::string window_line(const study::OddsAnswer& m,
                        const std::array<study::Window, study::who_count>& windows, const char* state) {
  const std::string first = when_ended(m, windows[study::first_person], state, true);
  if (m.scenario.scenario.crew.size() == 1) return first;
  return fmt::format("first person: {}; last person: {}", first,
                     when_ended(m, windows[study::last_person], state, false));
}

}  // namespace

std::string ends_by(const study::OddsAnswer& m, const std::string& end) {
  if (m.odds.causes.empty() || m.odds.causes.back().ended.empty()) return "nothing in any future " + end;
  const auto listed = [](const study::CauseShares& shares) {
    std::string out;
    for (const auto& [limit, part] : shares)
      out += fmt::format("{}{} in {}", out.empty() ? "" : ", ", outcome::short_cause(limit), share(part));
    return out;
  };
  const std::string alive = listed(m.odds.alive_ended);
  return fmt::format("the first person is no longer able: {} of futures {}; no longer alive: {}",
                     listed(m.odds.causes.back().ended), end, alive.empty() ? "in none" : alive);
}

namespace {

// Whether age or sex of a person of the crew is drawn.
bool age_or_sex_drawn(const scenario::ValidScenario& scenario, int person) {
  const std::string of = fmt::format("/crew/{}/", person);
  const auto& drawn = scenario.scenario.uncertain->inputs.entries;
  const auto& groups = scenario.scenario.uncertain->groups;
  const auto is = [&](const std::string& pointer) {
    return pointer == of + "age_years" || pointer == of + "sex";
  };
  return std::any_of(drawn.begin(), drawn.end(), [&](const auto& each) { return is(each.first); }) ||
         std::any_of(groups.begin(), groups.end(), [&](const scenario::SharedInput& each) {
           return std::any_of(each.pointers.begin(), each.pointers.end(), is);
         });
}

}  // namespace

std::string who_first(const study::OddsAnswer& m) {
  const std::vector<scenario::Person>& crew = m.scenario.scenario.crew;
  if (crew.size() == 1) return "one person alone";
  bool all_drawn = true;  // people of whom nothing is known differ by chance alone
  for (std::size_t p = 0; p < crew.size(); ++p)
    all_drawn = all_drawn && age_or_sex_drawn(m.scenario, static_cast<int>(p));
  if (all_drawn) return "not told: who they are is drawn";
  const auto end = m.odds.first_unable.begin() + std::ssize(crew);
  const study::Chance& most =
      *std::max_element(m.odds.first_unable.begin(), end,
                        [](const study::Chance& a, const study::Chance& b) { return a.share < b.share; });
  if (most.count == 0) return "nobody in any future";
  std::vector<int> alike;  // as often as the most often, as far as so many futures tell
  for (std::size_t p = 0; p < crew.size(); ++p)
    if (m.odds.first_unable[p].interval.high >= most.interval.low) alike.push_back(static_cast<int>(p));
  if (alike.size() == crew.size()) return "no one more often than the others";
  return fmt::format(
      "most often {}: {}first in {} of all futures",
      age_or_sex_drawn(m.scenario, alike.front()) ? person_names(alike) : names_with_age(alike, m.scenario),
      alike.size() > 1 ? "each is " : "", share(most.share));
}

std::string inside_line(const study::OddsAnswer& m) {
  const study::Aboard& a = m.odds.aboard;
  if (!a.coldest_low_degC) return "no cabin: in the water";
  const std::string low = temperature(*a.coldest_low_degC), high = temperature(*a.coldest_high_degC);
  return "coldest " + (low == high ? low : low + " to " + high) + " (8 in 10 futures)";
}

std::string water_line(const study::OddsAnswer& m) {
  const study::Aboard& a = m.odds.aboard;
  if (a.no_water.count == m.odds.futures) return "no drinking water aboard";
  const std::string within = "within " + horizon(m.odds.horizon_h * hour_s);
  const std::string none = a.no_water.count == 0 ? "" : "; none aboard in " + share(a.no_water.share);
  if (!a.water_out_middle_h) return "not out " + within + " in any future" + none;
  return fmt::format("out {} in {} of futures, half of these by {}{}", within, share(a.water_out.share),
                     odds_hours(a.water_out_middle_h, m.odds.horizon_h), none);
}

std::string first_minutes_line(const study::OddsAnswer& m) {
  const auto& range = m.scenario.scenario.uncertain->lost_in_first_minutes;
  if (!range) return "";
  double somebody = 0;
  for (const auto& [limit, part] : m.odds.alive_ended)
    if (limit == system::Limit::first_minutes) somebody = part;
  return fmt::format(
      "{} of those who enter the water are lost in the first minutes: a share that was entered, none is "
      "published; somebody in {} of futures",
      share_lost(*range), share(somebody));
}

std::string ask_words(const study::OddsAnswer& m, std::size_t most) {
  constexpr double least = 0.05;
  const std::vector<study::Ask> asks = study::ask_next(m.unknowns, least);
  if (asks.empty()) return "no one answer would narrow the range by much, as far as these futures show";
  std::string out;
  for (std::size_t i = 0; i < std::min(most, asks.size()); ++i)
    out += fmt::format("{} (knowing it takes {:.0f} % off the spread) ", asks[i].question,
                       std::min(pct, pct * asks[i].of_variance));
  out.pop_back();
  return out;
}

document::Section help_section(const HelpDrawn& drawn, const study::Help& help) {
  return {"Help in this future, as the scenario states it", {document::List{help_sentences(drawn, help)}}};
}

std::string odds_line(const study::OddsAnswer& m, Letters letters) {
  return fmt::format("{}: first person able: {}; last person alive: {}{}. {} futures, not a forecast. {}\n",
                     plain(m.scenario.scenario.name, letters),
                     odds_range(m.odds.able[study::first_person], m.odds.horizon_h),
                     odds_range(m.odds.alive[study::last_person], m.odds.horizon_h),
                     m.started_h_ago ? ", from now" : "", m.odds.futures, standing_notice);
}

// Sampling error of the shares in the answer, the largest, whole points.
std::string widest_points(const study::OddsAnswer& m) {
  double widest = 0;
  for (const auto* windows : {&m.odds.able, &m.odds.alive})
    for (const study::Window& each : *windows)
      widest = std::max({widest, each.beyond.interval.high - each.beyond.share,
                         each.beyond.share - each.beyond.interval.low});
  return fmt::format("{:.0f}", std::ceil(pct * widest));
}

Answer odds_answer(const study::OddsAnswer& m) {
  if (m.started_h_ago) return night_answer(m);
  Answer out{{"Able until", window_line(m, m.odds.able, "able")},
             {"Alive until", window_line(m, m.odds.alive, "alive")},
             {"Ends it", ends_by(m, "within " + horizon(m.odds.horizon_h * hour_s))},
             {"Who first", who_first(m)}};
  if (m.odds.help)
    out.push_back({"Help", fmt::format("if it comes as stated, after {}: all able then in {} of futures",
                                       rescue_words(*m.scenario.scenario.uncertain->rescue),
                                       share(m.odds.help->all_able.share))});
  out.push_back({"Ask first", ask_words(m, 1)});
  out.push_back(
      {"Buys most", buys_line(m.levers, m.scenario) +
                        (m.levers ? "; worked out for the file's own case, not for each future" : "")});
  std::string sure =
      fmt::format("shares good to {1} percentage points for the number of futures, {0}; not a forecast",
                  m.odds.futures, widest_points(m));
  if (m.as_written) sure += "; " + how_sure(*m.as_written);
  if (const std::string lost = first_minutes_line(m); !lost.empty()) out.push_back({"Into water", lost});
  out.push_back({"Inside", inside_line(m)});
  out.push_back({"Water", water_line(m)});
  out.push_back({"First hour", first_hour_line(m.scenario)});
  out.push_back({"How sure", sure});
  out.push_back({"Not in it", not_in_the_model(m.scenario, Told::futures)});
  return out;
}

}  // namespace bide::report
