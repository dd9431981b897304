#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "core/notice.hpp"
#include "outcome/cause.hpp"
#include "report/odds.hpp"
#include "report/page.hpp"
#include "report/words.hpp"

namespace bide::report {

namespace {

constexpr double hour_s = 3600;
enum Place : std::size_t { q05, q10, q25, q50, q75, q90, q95 };

constexpr std::array names{"first person", "middle person", "last person"};

std::string hours(const std::optional<double>& h, double horizon_h) {
  return h ? duration(*h * hour_s) : fmt::format("beyond {}", horizon(horizon_h * hour_s));
}

std::string share(double value) {
  constexpr double pct = 100, least = 0.01;
  if (value <= 0) return "0 %";
  if (value < least) return "under 1 %";
  if (value < 1 && value > 1 - least) return "over 99 %";
  return fmt::format("{:.0f} %", pct * value);
}

std::string share(const study::Chance& c) {
  return fmt::format("{} ({} to {})", share(c.share), share(c.interval.low), share(c.interval.high));
}

// "8 in 10 futures between 14 h and 41 h".
std::string range(const study::Window& w, double horizon_h) {
  const auto &low = w.until[q10].time, &high = w.until[q90].time;
  if (!low) return fmt::format("9 in 10 futures or more: {}", not_reached(horizon_h * hour_s));
  if (!high)
    return fmt::format("8 in 10 futures between {} and beyond the {} followed", duration(*low * hour_s),
                       horizon(horizon_h * hour_s));
  return fmt::format("8 in 10 futures between {} and {}", duration(*low * hour_s), duration(*high * hour_s));
}

void windows(Page& page, const std::array<study::Window, study::who_count>& windows, double horizon_h) {
  for (std::size_t who = 0; who < study::who_count; ++who) {
    page.item(fmt::format("{}: {}.", names[who], range(windows[who], horizon_h)));
    std::string times;
    for (const auto& [place, word] :
         {std::pair{q05, "5"}, {q25, "25"}, {q50, "50"}, {q75, "75"}, {q95, "95"}})
      if (const auto& at = windows[who].until[place].time)
        times += fmt::format("{} % by {}, ", word, duration(*at * hour_s));
    page.paragraph(
        fmt::format("{}{} within {}: {}.", times, times.empty() ? "not reached" : "and not reached",
                    horizon(horizon_h * hour_s), share(windows[who].beyond)),
        "      ", "      ");
    const study::QuantileByRank& half = windows[who].until[q50];
    const auto end = [&](const std::optional<double>& h, bool known_end) {
      return known_end ? hours(h, horizon_h) : std::string("unknown");
    };
    if (half.time)
      page.paragraph(fmt::format("Sampling error of the middle time: {} to {}.",
                                 end(half.low, half.low_known), end(half.high, half.high_known)),
                     "      ", "      ");
  }
}

void clocks(Page& page, const OddsMaterial& m) {
  const int zone = zone_hours(m.scenario.scenario.position.longitude_deg);
  const auto at = [&](const std::optional<double>& h) {
    return h ? both_clocks(m.scenario.start_unix_s, *h * hour_s, zone)
             : std::string("beyond the time followed");
  };
  const study::Window& w = m.odds.able[study::first_person];
  page.item(
      fmt::format("by the clock, first person able until: 5 % by {}; half by {}; 95 % by {} (local is {}).",
                  at(w.until[q05].time), at(w.until[q50].time), at(w.until[q95].time), zone_name(zone)));
}

void chart(Page& page, const OddsMaterial& m) {
  page.heading("WHO IS STILL ABLE, AND ALIVE, AGAINST TIME");
  page.line("   time   all able         somebody able    all alive        somebody alive");
  constexpr int bar_columns = 10;
  const bool utf8 = page.letters() == Letters::utf8;
  const auto cell = [&](const study::Chance& c) {
    constexpr double pct = 100;
    const int full = static_cast<int>(std::lround(c.share * bar_columns));
    std::string bar;
    for (int i = 0; i < bar_columns; ++i) bar += i < full ? (utf8 ? "█" : "#") : (utf8 ? "·" : ".");
    return fmt::format("{} {:>3.0f} % ", bar, pct * c.share);
  };
  for (const study::AtTime& t : m.odds.times)
    page.line(fmt::format("{:>7}   {} {} {} {}", duration(t.at_h * hour_s), cell(t.all_able),
                          cell(t.some_able), cell(t.all_alive), cell(t.some_alive)));
}

void causes(Page& page, const OddsMaterial& m) {
  page.heading("WHAT ENDS THE FIRST PERSON'S ABILITY, BY WHEN (share of all futures)");
  for (const study::CausesBy& c : m.odds.causes) {
    std::string text;
    for (const auto& [limit, part] : c.ended)
      text +=
          fmt::format("{}{} {}", text.empty() ? "" : ", ", outcome::short_cause(name_of(limit)), share(part));
    page.item(fmt::format("by {}: {}", duration(c.by_h * hour_s), text.empty() ? "none ended" : text));
  }
}

void help(Page& page, const OddsMaterial& m) {
  page.heading("HELP, AS THE SCENARIO STATES IT");
  if (!m.odds.help) {
    page.paragraph("The scenario states no time of rescue, so nothing is said about help.", "  ", "  ");
    return;
  }
  const study::HelpOdds& h = *m.odds.help;
  page.item(fmt::format("comes while all are able: {}", share(h.all_able)));
  page.item(fmt::format("comes while somebody is able: {}", share(h.some_able)));
  page.item(fmt::format("comes while all are alive: {}", share(h.all_alive)));
  page.item(fmt::format("comes while somebody is alive: {}", share(h.some_alive)));
  page.item(fmt::format("none within {}: {}", horizon(m.odds.horizon_h * hour_s), share(h.none_by_horizon)));
  page.paragraph(
      "The time of rescue was drawn apart from weather and crew: that they have no bearing on it is "
      "an assumption.",
      "  ", "  ");
}

void unknowns(Page& page, const OddsMaterial& m) {
  page.heading("WHICH UNKNOWN TO ASK FOR FIRST");
  if (m.unknowns.empty()) {
    page.paragraph("Too few futures, or too little spread, to tell.", "  ", "  ");
    return;
  }
  page.paragraph(
      "How much of the variance of the first person's able until (within the time followed) would go, "
      "on average, if it were known:",
      "  ", "  ");
  constexpr std::size_t most = 6;
  constexpr double pct = 100;
  for (std::size_t i = 0; i < std::min(most, m.unknowns.size()); ++i) {
    const Unknown& u = m.unknowns[i];
    page.item(fmt::format("{}: {:.0f} % ({:.0f} to {:.0f}){}", page.outside(u.name),
                          pct * u.narrowing.of_variance, pct * u.narrowing.of_variance_interval.low,
                          pct * u.narrowing.of_variance_interval.high,
                          u.kind == study::FactorKind::ignorance ? ", which nobody has measured" : ""));
  }
}

void nested(Page& page, const OddsMaterial& m) {
  if (!m.nested) return;
  const study::NestedBands& n = *m.nested;
  page.heading(m.known.alive_at_h || m.known.now_h ? "TWO KINDS OF NOT KNOWING, BEFORE ANYTHING WAS KNOWN"
                                                   : "TWO KINDS OF NOT KNOWING");
  const auto h = [&](double at) { return at < n.horizon_h ? duration(at * hour_s) : hours({}, n.horizon_h); };
  page.item(
      fmt::format("people, weather and failures differ: under one and the same truth about the unmeasured, 8 "
                  "in 10 cases lie between {} and {} (first person able until, averaged over {} truths).",
                  h(n.cases_low), h(n.cases_high), n.outer));
  page.item(
      fmt::format("what nobody has measured: it moves the middle case between {} and {} (8 in 10 truths, {} "
                  "cases each).",
                  h(n.truths_low), h(n.truths_high), n.inner));
}

void about(Page& page, const OddsMaterial& m) {
  page.heading("WHAT THIS RESTS ON");
  page.item(
      fmt::format("{} futures drawn with seed {}; intervals are the sampling error of that number, not doubt "
                  "about the model.",
                  m.samples, m.seed));
  if (const std::size_t least = study::cases_for_quantile(study::quantiles[q05], m.odds.confidence);
      m.odds.futures < least)
    page.item(fmt::format("too few futures for the 5 and 95 % times: they have no interval below {} futures.",
                          least));
  constexpr double wide = 0.05;
  if (const std::size_t least = study::cases_for_share(wide, m.odds.confidence); m.odds.futures < least)
    page.item(fmt::format("shares are known no better than 5 points either way below {} futures.", least));
  if (!m.failed.empty()) {
    page.item(fmt::format("{} of {} samples left out, without a result:", m.failed.size(), m.samples));
    constexpr std::size_t most = 5;
    for (std::size_t i = 0; i < std::min(most, m.failed.size()); ++i)
      page.paragraph(fmt::format("sample {}: {}", m.failed[i].index, page.outside(m.failed[i].reason)),
                     "      ", "        ");
    if (m.failed.size() > most) page.paragraph("all are listed in the JSON output.", "      ", "      ");
  }
  page.item(
      "any one of them: bide odds with --sample and its number replays it, --dump writes it as a plain "
      "scenario.");
  page.item(
      "not modelled: drowning once aboard, injury, illness, despair, capsize unless entered, collapse after "
      "rescue.");
}

}  // namespace

std::string odds_text(const OddsMaterial& m, int width, Letters letters) {
  Page page(width, letters);
  const scenario::Scenario& s = m.scenario.scenario;
  const double horizon_h = m.odds.horizon_h;
  page.paragraph(page.outside(s.name));
  if (!s.setting.empty()) page.paragraph(page.outside(s.setting));
  page.paragraph(fmt::format("{} possible futures followed for {} from {}; not a forecast.", m.odds.futures,
                             horizon(horizon_h * hour_s),
                             both_clocks(m.scenario.start_unix_s, 0, zone_hours(s.position.longitude_deg))));
  if (m.known.alive_at_h)
    page.paragraph(
        fmt::format("Given: all alive {} after the start.", duration(*m.known.alive_at_h * hour_s)));
  if (m.known.now_h)
    page.paragraph(fmt::format("Given: it is now {} after the start, and no help has come.",
                               duration(*m.known.now_h * hour_s)));
  if (m.known.alive_at_h || m.known.now_h)
    page.paragraph(fmt::format("What is known rules out {} of the futures drawn.", m.odds.ruled_out));
  page.heading("ABLE UNTIL");
  windows(page, m.odds.able, horizon_h);
  clocks(page, m);
  page.heading("ALIVE UNTIL");
  windows(page, m.odds.alive, horizon_h);
  chart(page, m);
  causes(page, m);
  help(page, m);
  unknowns(page, m);
  nested(page, m);
  about(page, m);
  page.line();
  page.paragraph(standing_notice);
  page.paragraph(standing_advice);
  return page.text();
}

std::string odds_line(const OddsMaterial& m, Letters letters) {
  return fmt::format(
      "{}: first person able: {}; last person alive: {}. {} futures, not a forecast. {}\n",
      plain(m.scenario.scenario.name, letters), range(m.odds.able[study::first_person], m.odds.horizon_h),
      range(m.odds.alive[study::last_person], m.odds.horizon_h), m.odds.futures, standing_notice);
}

}  // namespace bide::report
