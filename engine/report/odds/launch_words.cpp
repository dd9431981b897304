// Launch, and signals left when help comes, in words.
#include <fmt/format.h>

#include <array>

#include "bide/core/units.hpp"
#include "bide/report/odds/odds_words.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

constexpr std::array<const char*, study::ways_to_reach> reached_words{
    "aboard straight from the deck", "aboard out of the water", "never aboard"};

constexpr std::array<const char*, study::ways_to_lose> lost_words{
    "",
    "the painter was not fast",
    "the sea took it first",
    "lashings or a painter without a weak link held it down",
    "the water was too shallow for release and painter",
    "its lift was too small to pull the painter",
    "it did not inflate",
    "the weak link held and pulled it under",
    "nobody righted it",
    "nobody climbed in"};

std::string hours(const std::optional<double>& h, double horizon_h) {
  return h ? "until " + duration(*h * hour_s) : "after " + horizon(horizon_h * hour_s);
}

}  // namespace

std::vector<std::string> launch_sentences(const study::OddsAnswer& m) {
  if (!m.launch) return {};
  const study::LaunchOdds& l = *m.launch;
  std::vector<std::string> out;
  for (std::size_t i = 0; i < study::ways_to_reach; ++i) {
    const study::ReachedOdds& r = l.reached[i];
    std::string text = fmt::format("{}: {}", reached_words[i], share(r.share));
    if (r.share.count > 0)
      text += fmt::format("; in half of these the first person is able {}, somebody alive {}",
                          hours(r.first_able_h, m.odds.horizon_h), hours(r.last_alive_h, m.odds.horizon_h));
    out.push_back(text + ".");
  }
  std::string by;
  for (std::size_t i = 0; i < study::aboard_by_min.size(); ++i)
    by += fmt::format("{}{:.0f} min {}", by.empty() ? "" : ", ", study::aboard_by_min[i],
                      share(l.aboard_by[i]));
  out.push_back("Aboard, after the order to launch or after the raft floated free, within " + by + ".");
  if (l.middle_min)
    out.push_back(
        fmt::format("Minutes in the water before boarding: {:.0f} to {:.0f} (8 in 10), half {:.0f}.",
                    *l.low_min, *l.high_min, *l.middle_min));
  for (std::size_t i = 1; i < study::ways_to_lose; ++i)
    if (l.lost[i].count > 0)
      out.push_back(fmt::format("No raft because {}: {}.", lost_words[i], share(l.lost[i])));
  out.emplace_back(
      "Steps without a published count are as the scenario states them. Climbing in is that of a trial in "
      "warm calm water; whoever is aboard is taken to haul in the rest.");
  return out;
}

std::vector<std::string> signals_left_sentences(const study::OddsAnswer& m) {
  if (!m.signals) return {};
  const study::SignalsLeft& s = *m.signals;
  return {fmt::format("When help comes while somebody is alive ({} futures):", s.futures),
          fmt::format("flares and rockets left: {:.0f} to {:.0f} (8 in 10), half {:.0f}; any at all: {}.",
                      s.low, s.high, s.middle, share(s.some_flares)),
          fmt::format("a lamp with hours left: {}; a beacon: {}.", share(s.lamp), share(s.beacon)),
          "People in the water are taken to have none of them. What is left says nothing of whether they are "
          "seen; how a search covers an area is not modelled."};
}

}  // namespace bide::report
