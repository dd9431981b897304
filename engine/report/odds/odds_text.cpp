#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

#include "bide/core/notice.hpp"
#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/odds/odds.hpp"
#include "bide/report/odds/odds_words.hpp"
#include "bide/report/words/input.hpp"
#include "bide/report/words/page.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {

namespace {

using enum study::QuantilePlace;

std::string upper(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char letter) { return static_cast<char>(std::toupper(letter)); });
  return text;
}

void windows(Page& page, const std::array<study::Window, study::who_count>& windows, double horizon_h) {
  for (std::size_t who = 0; who < study::who_count; ++who) {
    const std::vector<std::string> sentences = window_sentences(windows[who], crew_order[who], horizon_h);
    page.item(sentences.front());
    for (std::size_t i = 1; i < sentences.size(); ++i) page.paragraph(sentences[i], "      ", "      ");
  }
}

void clocks(Page& page, const study::OddsAnswer& m) {
  const int zone = zone_hours(m.scenario.scenario.position.longitude_deg);
  const auto at = [&](const std::optional<double>& h) {
    return h ? "by " + both_clocks(m.scenario.start_unix_s, *h * hour_s, zone)
             : odds_hours(h, m.odds.horizon_h);
  };
  const study::Window& w = m.odds.able[study::first_person];
  page.item(fmt::format("by the clock, first person able until: 5 % {}; half: {}; 95 %: {} (local is {}).",
                        at(w.until[q05].time), at(w.until[q50].time), at(w.until[q95].time),
                        zone_name(zone)));
}

void chart(Page& page, const study::OddsAnswer& m) {
  page.heading("WHO IS STILL ABLE, AND ALIVE, AGAINST TIME");
  page.line("   time   all able         somebody able    all alive        somebody alive");
  constexpr int bar_columns = 10;
  const bool utf8 = page.letters() == Letters::utf8;
  const auto cell = [&](const study::Chance& c) {
    const int full = static_cast<int>(std::lround(c.share * bar_columns));
    std::string bar;
    for (int i = 0; i < bar_columns; ++i) bar += i < full ? (utf8 ? "█" : "#") : (utf8 ? "·" : ".");
    return fmt::format("{} {:>3.0f} % ", bar, pct * c.share);
  };
  for (const study::AtTime& t : m.odds.times)
    page.line(fmt::format("{:>7}   {} {} {} {}", duration(t.at_h * hour_s), cell(t.all_able),
                          cell(t.some_able), cell(t.all_alive), cell(t.some_alive)));
}

void causes(Page& page, const study::OddsAnswer& m) {
  page.heading("WHAT ENDS THE FIRST PERSON'S ABILITY, BY WHEN (share of all futures)");
  for (const study::CausesBy& c : m.odds.causes) {
    std::string text;
    for (const auto& [limit, part] : c.ended)
      text += fmt::format("{}{} {}", text.empty() ? "" : ", ", outcome::short_cause(limit), share(part));
    page.item(fmt::format("by {}: {}", duration(c.by_h * hour_s), text.empty() ? "none ended" : text));
  }
}

void unknowns(Page& page, const study::OddsAnswer& m) {
  page.heading("WHICH UNKNOWNS MAKE THE RANGE WIDE");
  if (m.unknowns.empty()) {
    page.paragraph("Too few futures, or too little spread, to tell.", "  ", "  ");
    return;
  }
  page.paragraph(
      "How much of the variance of the first person's able until would go, on average, if it were known. "
      "Some of it nobody can be asked for:",
      "  ", "  ");
  constexpr std::size_t most = 6;
  for (std::size_t i = 0; i < std::min(most, m.unknowns.size()); ++i) {
    const study::Unknown& u = m.unknowns[i];
    page.item(fmt::format("{}: {:.0f} % ({:.0f} to {:.0f}){}", page.outside(input_words(u.name)),
                          pct * u.reduction.of_variance, pct * u.reduction.of_variance_interval.low,
                          pct * u.reduction.of_variance_interval.high,
                          u.kind == study::FactorKind::epistemic ? ", which nobody has measured" : ""));
  }
}

void rest(Page& page, const study::OddsAnswer& m) {
  const double horizon_h = m.odds.horizon_h;
  if (!m.scenario.scenario.setting.empty()) {
    page.line();
    page.paragraph(page.outside(m.scenario.scenario.setting));
  }
  page.heading("ABLE UNTIL");
  windows(page, m.odds.able, horizon_h);
  clocks(page, m);
  page.heading("ALIVE UNTIL");
  windows(page, m.odds.alive, horizon_h);
  chart(page, m);
  causes(page, m);
  page.heading("HELP, AS THE SCENARIO STATES IT");
  for (const std::string& sentence : help_sentences(m)) page.item(sentence);
  if (m.launch) page.heading("HOW THE RAFT WAS REACHED");
  for (const std::string& sentence : launch_sentences(m)) page.item(sentence);
  if (m.signals) page.heading("SIGNALS LEFT WHEN HELP COMES");
  for (const std::string& sentence : signals_left_sentences(m)) page.item(sentence);
  unknowns(page, m);
  if (m.nested) page.heading(upper(nested_title(m)));
  for (const std::string& sentence : nested_sentences(m)) page.item(sentence);
  page.heading("EVIDENCE");
  for (const std::string& sentence : about_sentences(m)) page.item(page.outside(sentence, 2000));
}

}  // namespace

std::string odds_text(const study::OddsAnswer& m, int width, Letters letters, bool full) {
  Page page(width, letters);
  const scenario::Scenario& s = m.scenario.scenario;
  const double horizon_h = m.odds.horizon_h;
  page.paragraph(page.outside(s.name));
  page.paragraph(fmt::format("{} possible futures followed for {} from {}; not a forecast.", m.odds.futures,
                             horizon(horizon_h * hour_s),
                             both_clocks(m.scenario.start_unix_s, 0, zone_hours(s.position.longitude_deg))));
  for (const std::string& sentence : given_sentences(m)) page.paragraph(sentence);
  page.line();
  page.answer(odds_answer(m));
  if (full)
    rest(page, m);
  else
    page.paragraph("Shares against time, causes, help, all unknowns, chance and ignorance: --full.");
  page.line();
  page.paragraph(standing_notice);
  page.paragraph(standing_advice);
  return page.text();
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

}  // namespace bide::report
