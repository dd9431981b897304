#include "bide/study/questions/launch_odds.hpp"

#include <cmath>
#include <functional>

#include "bide/study/statistics/ranked.hpp"

namespace bide::study {
namespace {

// Quantiles of a number over the futures for which it is a number.
std::vector<float> quantiles_of(const Futures& futures, const std::function<float(const Future&)>& number,
                                std::size_t cases, std::initializer_list<double> shares) {
  std::vector<std::size_t> ranks;
  for (const double share : shares) ranks.push_back(rank_of(share, cases));
  return at_ranks<float>(
      [&](const std::function<void(float)>& visit) {
        futures([&](const Future& f) {
          if (const float value = number(f); !std::isnan(value)) visit(value);
        });
      },
      ranks);
}

}  // namespace

std::optional<LaunchOdds> launch_odds(const Futures& futures, double horizon_h, double confidence) {
  std::size_t all = 0, inverted = 0;
  std::array<std::size_t, ways_to_reach> reached{};
  std::array<std::size_t, ways_to_lose> lost{};
  std::array<std::size_t, aboard_by_min.size()> aboard{};
  futures([&](const Future& f) {
    if (!f.launch) return;
    ++all;
    ++reached[static_cast<std::size_t>(f.launch->reached)];
    ++lost[static_cast<std::size_t>(f.launch->lost_by)];
    inverted += f.launch->inverted ? 1 : 0;
    for (std::size_t i = 0; i < aboard.size(); ++i)
      aboard[i] += f.launch->reached != Reached::never && f.launch->aboard_min <= aboard_by_min[i] ? 1 : 0;
  });
  if (all == 0) return std::nullopt;
  LaunchOdds out;
  for (std::size_t i = 0; i < ways_to_lose; ++i) out.lost[i] = chance_of(lost[i], all, confidence);
  for (std::size_t i = 0; i < aboard.size(); ++i) out.aboard_by[i] = chance_of(aboard[i], all, confidence);
  if (const std::size_t rafts = all - reached[static_cast<std::size_t>(Reached::never)]; rafts > 0)
    out.inverted = chance_of(inverted, rafts, confidence);
  for (std::size_t i = 0; i < ways_to_reach; ++i) {
    out.reached[i].share = chance_of(reached[i], all, confidence);
    if (reached[i] == 0) continue;
    const auto median_h = [&](std::array<float, who_count> Future::*hours, Who who) {
      const float h = quantiles_of(futures,
                                   [&](const Future& f) {
                                     const bool here =
                                         f.launch && static_cast<std::size_t>(f.launch->reached) == i;
                                     return here ? (f.*hours)[who] : std::numeric_limits<float>::quiet_NaN();
                                   },
                                   reached[i], {0.5})[0];
      return static_cast<double>(h) < horizon_h ? std::optional(static_cast<double>(h)) : std::nullopt;
    };
    out.reached[i].first_able_h = median_h(&Future::able_h, first_person);
    out.reached[i].last_alive_h = median_h(&Future::alive_h, last_person);
  }
  if (const std::size_t wet = reached[static_cast<std::size_t>(Reached::wet)]; wet > 0) {
    const auto minutes = quantiles_of(futures,
                                      [](const Future& f) {
                                        return f.launch && f.launch->reached == Reached::wet
                                                   ? static_cast<float>(f.launch->minutes)
                                                   : std::numeric_limits<float>::quiet_NaN();
                                      },
                                      wet, {low_share, 0.5, high_share});
    out.low_min = minutes[0], out.middle_min = minutes[1], out.high_min = minutes[2];
  }
  return out;
}

std::optional<SignalsLeft> signals_left(const Futures& futures, double confidence) {
  SignalsLeft out;
  std::size_t flares = 0, lamp = 0, beacon = 0;
  constexpr float some = 0.5, none = 0;
  futures([&](const Future& f) {
    if (std::isnan(f.flares_left)) return;
    ++out.futures;
    flares += f.flares_left > some ? 1 : 0;
    lamp += f.lamp_left_h > none ? 1 : 0;
    beacon += f.beacon_left_h > none ? 1 : 0;
  });
  if (out.futures == 0) return std::nullopt;
  out.some_flares = chance_of(flares, out.futures, confidence);
  out.lamp = chance_of(lamp, out.futures, confidence);
  out.beacon = chance_of(beacon, out.futures, confidence);
  const auto left = quantiles_of(futures, [](const Future& f) { return f.flares_left; }, out.futures,
                                 {low_share, 0.5, high_share});
  out.low = static_cast<double>(left[0]), out.middle = static_cast<double>(left[1]),
  out.high = static_cast<double>(left[2]);
  return out;
}

}  // namespace bide::study
