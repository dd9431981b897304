#include "bide/report/odds/night_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "bide/core/notice.hpp"
#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/odds/odds_words.hpp"
#include "bide/report/words/page.hpp"
#include "bide/report/words/words.hpp"
#include "bide/scenario/priors.hpp"
#include "bide/scenario/write.hpp"
#include "bide/study/questions/ask_next.hpp"

namespace bide::report {
namespace {

enum Place : std::size_t { q05, q10, q25, q50, q75, q90, q95 };

struct Now {
  double h = 0, unix_s = 0;  // after the start, and as an instant
  int zone_h = 0;
};

Now now_of(const study::OddsAnswer& m) {
  const double h = m.known.now_h.value_or(0);
  return {h, m.scenario.start_unix_s + h * hour_s, zone_hours(m.scenario.scenario.position.longitude_deg)};
}

std::string later(const Now& now, double at_h) {
  return both_clocks(now.unix_s, (at_h - now.h) * hour_s, now.zone_h);
}

// "by 30 Nov 08:00 UTC (07:00 local), 11 h from now".
std::string by(const Now& now, double at_h) {
  if (at_h <= now.h) return "before now";
  return fmt::format("by {}, {} from now", later(now, at_h), duration((at_h - now.h) * hour_s));
}

// When it ends in a tenth, half and nine tenths of futures, as far as that is within the time followed.
std::string end_of(const Now& now, const study::Window& window) {
  std::string out;
  for (const auto& [place, futures] : {std::pair{q10, "1 of 10 futures"}, {q50, "half"}, {q90, "9 of 10"}}) {
    const std::optional<double>& at_h = window.until[place].time;
    if (!at_h)
      return fmt::format("{}{}in {}, after the time followed.", out, out.empty() ? "ends " : "; ", futures);
    out += fmt::format("{}{} {}", out.empty() ? "ends in " : "; in ", futures, by(now, *at_h));
  }
  return out + ".";
}

void known(Page& page, const study::OddsAnswer& m, const Now& now) {
  const std::size_t persons = m.scenario.scenario.crew.size();
  page.paragraph(fmt::format("{} {}. Abandoned {}, {} ago. Now {} (local is {}).", persons,
                             persons == 1 ? "person" : "people", later(now, 0), duration(now.h * hour_s),
                             later(now, now.h), zone_name(now.zone_h)));
  if (m.known.alive_at_h)
    page.paragraph(fmt::format("Last contact {}, all alive: {} of {} futures drawn agree with that.",
                               later(now, *m.known.alive_at_h), m.odds.futures,
                               m.odds.futures + m.odds.ruled_out));
}

void ends(Page& page, const study::OddsAnswer& m, const Now& now) {
  const study::Window &able = m.odds.able[study::first_person], &alive = m.odds.alive[study::last_person];
  page.item("first person able: " + end_of(now, able));
  page.item("last person alive: " + end_of(now, alive));
  page.item(fmt::format("somebody is still alive at {}, where the futures end, in {}.",
                        later(now, m.odds.horizon_h), share(alive.beyond)));
}

void table(Page& page, const study::OddsAnswer& m, const Now& now) {
  page.heading("FROM NOW (share of futures)");
  page.line("        all   any    all    any");
  page.line("       able  able  alive  alive   at");
  double widest = 0;
  for (const study::AtTime& t : m.odds.times) {
    const double ahead_h = t.at_h - now.h;
    page.line(fmt::format("{:>5} {:>4.0f}% {:>4.0f}% {:>5.0f}% {:>5.0f}%   {}",
                          ahead_h > 0 ? fmt::format("{:.0f} h", ahead_h) : "now", pct * t.all_able.share,
                          pct * t.some_able.share, pct * t.all_alive.share, pct * t.some_alive.share,
                          later(now, t.at_h)));
    for (const study::Chance* c : {&t.all_able, &t.some_able, &t.all_alive, &t.some_alive})
      widest = std::max({widest, c->interval.high - c->share, c->share - c->interval.low});
  }
  page.paragraph(fmt::format("Sampling error of these shares: {:.0f} points at most either way.",
                             std::ceil(pct * widest)),
                 "  ", "  ");
}

void causes(Page& page, const study::OddsAnswer& m, const Now& now) {
  if (m.odds.causes.empty()) return;
  const study::CausesBy& last = m.odds.causes.back();
  std::string text;
  for (const auto& [limit, part] : last.ended)
    text += fmt::format("{}{} {}", text.empty() ? "" : ", ", outcome::short_cause(limit), share(part));
  page.heading("WHAT ENDS THE FIRST PERSON'S ABILITY");
  page.item(fmt::format("by {}: {}", later(now, last.by_h), text.empty() ? "nothing" : text));
}

void questions(Page& page, const study::OddsAnswer& m) {
  constexpr double least = 0.02;
  constexpr std::size_t most = 4;
  page.heading("ASK NEXT");
  const std::vector<study::Ask> asks = study::ask_next(m.unknowns, least);
  if (asks.empty()) page.item("Nothing that can be asked narrows this much, as far as these futures show.");
  for (std::size_t i = 0; i < std::min(most, asks.size()); ++i)
    page.item(fmt::format("{} ({:.0f} % of the variance of the first person's able until)", asks[i].question,
                          std::min(pct, pct * asks[i].of_variance)));
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

void drawn(Page& page, const study::OddsAnswer& m) {
  page.heading("NOT KNOWN, AND DRAWN");
  const scenario::Uncertain& u = *m.scenario.scenario.uncertain;
  std::string titles;
  for (const scenario::Prior& prior : scenario::priors().priors)
    if (is_drawn(prior, u)) titles += prior.title + "; ";
  page.item(titles +
            "weather from hour to hour; what differs from person to person; what nobody has "
            "measured, the model's own error too.");
  double sum = 0;
  std::string ways;
  for (const scenario::Alternative& way : u.alternatives) sum += way.weight;
  for (const scenario::Alternative& way : u.alternatives)
    ways += fmt::format("{}{} {}", ways.empty() ? "" : ", ", page.outside(way.name), share(way.weight / sum));
  if (!ways.empty()) page.item("How the raft was reached: " + ways + ".");
  page.item(
      "Chances of this kind are priors, most of them judgement (scenarios/catalogue/priors.json): what "
      "is known on the spot goes before them.");
}

}  // namespace

std::string night_text(const study::OddsAnswer& m, int width, Letters letters) {
  Page page(width, letters);
  const Now now = now_of(m);
  page.paragraph(page.outside(m.scenario.scenario.name));
  known(page, m, now);
  page.paragraph(fmt::format("{} possible futures; not a forecast.", m.odds.futures));
  ends(page, m, now);
  table(page, m, now);
  causes(page, m, now);
  questions(page, m);
  drawn(page, m);
  page.heading("WHAT THIS RESTS ON");
  for (const std::string& sentence : about_sentences(m)) page.item(page.outside(sentence, 2000));
  page.line();
  page.paragraph(standing_notice);
  page.paragraph(standing_advice);
  return page.text();
}

std::string night_so_far(const study::Odds& odds, double now_h) {
  std::string out = fmt::format("{} futures so far, somebody alive (all able):", odds.futures);
  for (const study::AtTime& t : odds.times) {
    const double ahead_h = t.at_h - now_h;
    out += fmt::format(" {} {:.0f} % ({:.0f} %);", ahead_h > 0 ? fmt::format("in {:.0f} h", ahead_h) : "now",
                       pct * t.some_alive.share, pct * t.all_able.share);
  }
  out.back() = '.';
  return out;
}

}  // namespace bide::report
