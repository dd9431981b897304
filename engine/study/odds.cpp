#include "study/odds.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

namespace bide::study {

namespace {

constexpr int points = 12;  // of the table against time

template <class Is>
Chance chance(std::span<const Future> futures, double confidence, Is is) {
  Chance c;
  for (const Future& f : futures) c.count += is(f) ? 1 : 0;
  c.share = static_cast<double>(c.count) / static_cast<double>(futures.size());
  c.interval = wilson(c.count, futures.size(), confidence);
  return c;
}

using Hours = std::array<float, who_count> Future::*;

double hour(const Future& f, Hours hours, std::size_t who) {
  return static_cast<double>((f.*hours)[who]);
}

Window window(std::span<const Future> futures, Hours hours, std::size_t who, double horizon_h,
              double confidence) {
  std::vector<Observed> seen;
  seen.reserve(futures.size());
  for (const Future& f : futures) {
    const double at = hour(f, hours, who);
    seen.push_back({std::min(at, horizon_h), at < horizon_h});
  }
  Window w;
  for (std::size_t q = 0; q < quantiles.size(); ++q)
    w.until[q] = quantile_by_rank(seen, horizon_h, quantiles[q], confidence);
  w.beyond = chance(futures, confidence, [&](const Future& f) { return !(hour(f, hours, who) < horizon_h); });
  return w;
}

CausesBy causes_by(std::span<const Future> futures, double by_h) {
  std::array<std::size_t, static_cast<std::size_t>(timeline::Limit::none) + 1> counts{};
  for (const Future& f : futures)
    if (hour(f, &Future::able_h, first_person) <= by_h)
      ++counts[static_cast<std::size_t>(f.able_cause[first_person])];
  CausesBy out{by_h, {}};
  for (std::size_t i = 0; i < counts.size(); ++i)
    if (counts[i] > 0)
      out.ended.emplace_back(static_cast<timeline::Limit>(i),
                             static_cast<double>(counts[i]) / static_cast<double>(futures.size()));
  std::stable_sort(out.ended.begin(), out.ended.end(),
                   [](const auto& a, const auto& b) { return a.second > b.second; });
  return out;
}

HeldBack held_back(std::span<const Future> futures, double confidence) {
  HeldBack out;
  out.at_all = chance(futures, confidence, [](const Future& f) { return f.held_back_h > 0; });
  out.no_weather = chance(futures, confidence, [](const Future& f) { return f.no_weather_for_help; });
  std::vector<float> hours;
  for (const Future& f : futures)
    if (f.held_back_h > 0) hours.push_back(f.held_back_h);
  if (hours.empty()) return out;
  std::sort(hours.begin(), hours.end());
  const auto at = [&](double p) {
    const auto rank = static_cast<std::size_t>(std::ceil(p * static_cast<double>(hours.size())));
    return static_cast<double>(hours[std::max(rank, std::size_t{1}) - 1]);
  };
  constexpr double low = 0.1, high = 0.9;
  out.low_h = at(low), out.middle_h = at(0.5), out.high_h = at(high);
  return out;
}

}  // namespace

bool agrees(const Future& f, const KnownSoFar& known) {
  const bool alive = !known.alive_at_h || hour(f, &Future::alive_h, first_person) > *known.alive_at_h;
  const bool still_waiting = !known.now_h || static_cast<double>(f.rescue_h) > *known.now_h;
  return alive && still_waiting;
}

Odds odds_of(std::span<const Future> futures, double horizon_h, bool with_help, double confidence) {
  if (futures.empty()) throw std::invalid_argument("odds_of: no futures");
  Odds o;
  o.futures = futures.size();
  o.horizon_h = horizon_h;
  o.confidence = confidence;
  for (std::size_t who = 0; who < who_count; ++who) {
    o.able[who] = window(futures, &Future::able_h, who, horizon_h, confidence);
    o.alive[who] = window(futures, &Future::alive_h, who, horizon_h, confidence);
  }
  for (int i = 1; i <= points; ++i) {
    const double at = horizon_h * i / points;
    const auto beyond = [&](Hours hours, Who who) {
      return chance(futures, confidence, [&](const Future& f) { return hour(f, hours, who) > at; });
    };
    o.times.push_back({at, beyond(&Future::able_h, first_person), beyond(&Future::able_h, last_person),
                       beyond(&Future::alive_h, first_person), beyond(&Future::alive_h, last_person)});
    if (i % 2 == 0) o.causes.push_back(causes_by(futures, at));
  }
  if (with_help) {
    const auto before = [&](Hours hours, Who who) {
      return chance(futures, confidence, [&](const Future& f) {
        return static_cast<double>(f.rescue_h) <= horizon_h && f.rescue_h <= (f.*hours)[who];
      });
    };
    o.help = HelpOdds{before(&Future::able_h, first_person),
                      before(&Future::able_h, last_person),
                      before(&Future::alive_h, first_person),
                      before(&Future::alive_h, last_person),
                      chance(futures, confidence,
                             [&](const Future& f) { return static_cast<double>(f.rescue_h) > horizon_h; }),
                      held_back(futures, confidence)};
  }
  return o;
}

std::optional<Odds> odds_given(std::span<const Future> futures, const KnownSoFar& known, double horizon_h,
                               bool with_help, double confidence) {
  if (!known.alive_at_h && !known.now_h) return odds_of(futures, horizon_h, with_help, confidence);
  std::vector<Future> left;
  std::copy_if(futures.begin(), futures.end(), std::back_inserter(left),
               [&](const Future& f) { return agrees(f, known); });
  if (left.empty()) return std::nullopt;
  Odds o = odds_of(left, horizon_h, with_help, confidence);
  o.ruled_out = futures.size() - left.size();
  return o;
}

}  // namespace bide::study
