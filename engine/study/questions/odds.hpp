// The endurance window of a crew, read off many futures: how long first, middle and last person are able and
// alive, what ends it, and the chance that help comes inside it, given what is known so far.
//
// States: none. Memory: the same for any number of futures, which are gone over several times. What is known
// only takes futures away: the odds given it are those of the futures that agree with it, all equally likely.
// Intervals are the sampling error of the number of futures alone.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <vector>

#include "bide/study/questions/future.hpp"
#include "bide/study/statistics/proportion.hpp"

namespace bide::study {

inline constexpr std::array quantiles{0.05, 0.10, 0.25, 0.50, 0.75, 0.90, 0.95};
enum QuantilePlace : std::size_t { q05, q10, q25, q50, q75, q90, q95 };  // in `quantiles`

inline constexpr double low_share = 0.1, high_share = 0.9;  // between them eight in ten futures lie

// Everybody was alive at `alive_at_h`; it is now `now_h`, and no help has come yet.
struct KnownSoFar {
  std::optional<double> alive_at_h, now_h;
};

// A quantile of times that were all followed to one horizon, with order statistics for its interval
// (quantile_ranks). A time left out lies beyond the horizon; `low_known` and `high_known` are false when
// there are too few cases for that end.
struct QuantileByRank {
  std::optional<double> time, low, high;  // h
  bool low_known = false, high_known = false;
};

// Of one person in the order of the crew: able or alive until.
struct Window {
  std::array<QuantileByRank, quantiles.size()> until;  // h
  Chance beyond;                                       // not reached within the horizon
};

// Share of futures, by what ended the first person's ability or life; largest first.
using CauseShares = std::vector<std::pair<system::Limit, double>>;
struct CausesBy {
  double by_h = 0;
  CauseShares ended;  // ability, by then
};

// Air inside and drinking water, over the futures.
struct Aboard {
  // The coldest inside: a tenth, half and nine tenths of the futures with a cabin come lower. Left out where
  // none has one.
  std::optional<double> coldest_low_degC, coldest_middle_degC, coldest_high_degC;
  Chance no_water;                           // none aboard at the start
  Chance water_out;                          // what there was runs out within the horizon
  std::optional<double> water_out_middle_h;  // of those in which it does, the hour by which half have
};

// Shares at one time: the first person still able, somebody still able, everybody alive, somebody alive.
struct AtTime {
  double at_h = 0;
  Chance all_able, some_able, all_alive, some_alive;
};

// What weather does to help, where the scenario says that it holds it back.
struct HeldBack {
  Chance at_all;      // before help comes, or within the horizon
  Chance no_weather;  // within the horizon there is none that help can work in
  // Hours of it, in the futures that have any: the least by which a tenth, half and nine tenths of these
  // futures are not exceeded. Left out where there are none.
  std::optional<double> low_h, middle_h, high_h;
};

// Help comes while so.
struct HelpOdds {
  Chance all_able, some_able, all_alive, some_alive;
  Chance none_by_horizon;  // no help within the horizon
  HeldBack held_back;
};

struct Odds {
  std::size_t futures = 0;    // that agree with what is known
  std::size_t ruled_out = 0;  // by what is known
  double horizon_h = 0, confidence = 0;
  std::array<Window, who_count> able, alive;
  std::vector<CausesBy> causes;
  CauseShares alive_ended;  // the first person's life, within the horizon
  // By place in the crew: whose ability ends first, within the horizon. Several may at the same moment.
  std::array<Chance, largest_crew> first_unable{};
  Aboard aboard;
  std::vector<AtTime> times;
  std::optional<HelpOdds> help;
};

bool agrees(const Future& future, const KnownSoFar& known);

// `with_help`: the futures say when help comes. Throws std::invalid_argument without futures.
// @param horizon_h  end of every future, h, above 0
// @param confidence of the intervals, (0, 1)
// @param at_h       hours of the table against time, ascending; empty: twelve equal parts of the horizon
Odds odds_of(const Futures& futures, double horizon_h, bool with_help, double confidence,
             std::span<const double> at_h = {});
// The same of those futures that agree with what is known; left out when none does.
std::optional<Odds> odds_given(const Futures& futures, const KnownSoFar& known, double horizon_h,
                               bool with_help, double confidence, std::span<const double> at_h = {});

// Hours after the start at which to tell how things stand from now on: closely in the first hours, then
// further apart, up to the horizon.
// @param now_h     the time of asking, h, at least 0
// @param horizon_h hours followed, h, at least now_h
// @return now, and 1, 2, 3, 6, 12, 24, 36, 48, 72, 96, 120... h later, none beyond the horizon
std::vector<double> hours_from_now(double now_h, double horizon_h);

}  // namespace bide::study
