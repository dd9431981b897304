#include "bide/report/odds/odds_words.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "bide/core/units.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

enum Place : std::size_t { q05, q10, q25, q50, q75, q90, q95 };

}  // namespace

std::string odds_hours(const std::optional<double>& h, double horizon_h) {
  return h ? duration(*h * hour_s) : fmt::format("beyond {}", horizon(horizon_h * hour_s));
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

// "8 in 10 futures between 14 h and 41 h".
std::string odds_range(const study::Window& w, double horizon_h) {
  const auto &low = w.until[q10].time, &high = w.until[q90].time;
  if (!low) return fmt::format("9 in 10 futures or more: {}", not_reached(horizon_h * hour_s));
  if (!high)
    return fmt::format("8 in 10 futures between {} and beyond the {} followed", duration(*low * hour_s),
                       horizon(horizon_h * hour_s));
  return fmt::format("8 in 10 futures between {} and {}", duration(*low * hour_s), duration(*high * hour_s));
}

std::vector<std::string> given_sentences(const study::OddsAnswer& m) {
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

std::vector<std::string> window_sentences(const study::Window& window, const char* who, double horizon_h) {
  std::vector<std::string> out{fmt::format("{}: {}.", who, odds_range(window, horizon_h))};
  std::string times;
  for (const auto& [place, word] : {std::pair{q05, "5"}, {q25, "25"}, {q50, "50"}, {q75, "75"}, {q95, "95"}})
    if (const auto& at = window.until[place].time)
      times += fmt::format("{} % by {}, ", word, duration(*at * hour_s));
  out.push_back(fmt::format("{}{} within {}: {}.", times, times.empty() ? "not reached" : "and not reached",
                            horizon(horizon_h * hour_s), share(window.beyond)));
  const study::QuantileByRank& half = window.until[q50];
  const auto end = [&](const std::optional<double>& h, bool known_end) {
    return known_end ? odds_hours(h, horizon_h) : std::string("unknown");
  };
  if (half.time)
    out.push_back(fmt::format("Sampling error of the middle time: {} to {}.", end(half.low, half.low_known),
                              end(half.high, half.high_known)));
  return out;
}

std::string nested_title(const study::OddsAnswer& m) {
  return m.known.alive_at_h || m.known.now_h ? "Two kinds of not knowing, before anything was known"
                                             : "Two kinds of not knowing";
}

std::vector<std::string> nested_sentences(const study::OddsAnswer& m) {
  if (!m.nested) return {};
  const study::NestedBands& n = *m.nested;
  const auto h = [&](double at) {
    return at < n.horizon_h ? duration(at * hour_s) : odds_hours({}, n.horizon_h);
  };
  return {
      fmt::format("People, weather and failures differ: under one and the same truth about the unmeasured, 8 "
                  "in 10 cases lie between {} and {} (first person able until, averaged over {} truths).",
                  h(n.cases_low), h(n.cases_high), n.outer),
      fmt::format("What nobody has measured: it moves the middle case between {} and {} (8 in 10 truths, {} "
                  "cases each).",
                  h(n.truths_low), h(n.truths_high), n.inner)};
}

std::vector<std::string> about_sentences(const study::OddsAnswer& m) {
  std::vector<std::string> out{
      fmt::format("{} futures drawn with seed {}; intervals are the sampling error of that number, not doubt "
                  "about the model.",
                  m.samples, m.seed)};
  if (const std::size_t least = study::cases_for_quantile(study::quantiles[q05], m.odds.confidence);
      m.odds.futures < least)
    out.push_back(fmt::format(
        "Too few futures for the 5 and 95 % times: they have no interval below {} futures.", least));
  constexpr double wide = 0.05;
  if (const std::size_t least = study::cases_for_share(wide, m.odds.confidence); m.odds.futures < least)
    out.push_back(
        fmt::format("Shares are known no better than 5 points either way below {} futures.", least));
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
  out.push_back(
      "Any one of them: bide odds with --sample and its number replays it, --dump writes it as a plain "
      "scenario.");
  out.push_back(
      "Not modelled: drowning once aboard, injury, illness, despair, capsize unless entered, collapse after "
      "rescue.");
  return out;
}

}  // namespace bide::report
