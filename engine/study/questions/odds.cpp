#include "bide/study/questions/odds.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <limits>
#include <stdexcept>
#include <tuple>
#include <utility>

#include "bide/core/units.hpp"
#include "bide/study/statistics/ranked.hpp"

namespace bide::study {

namespace {

std::vector<double> equal_parts(double horizon_h) {
  constexpr int points = 12;
  std::vector<double> out;
  for (int i = 1; i <= points; ++i) out.push_back(horizon_h * i / points);
  return out;
}

using Is = std::function<bool(const Future&)>;
using Hours = std::array<float, who_count> Future::*;

double hour(const Future& f, Hours hours, std::size_t who) {
  return static_cast<double>((f.*hours)[who]);
}

// Questions to every future, answered in one pass over them.
class Questions {
 public:
  // `answer` must stay where it is.
  void ask(Chance& answer, Is is) { asked_.push_back({&answer, std::move(is)}); }
  // The number of futures.
  std::size_t answer(const Futures& futures, double confidence) {
    std::size_t cases = 0;
    futures([&](const Future& f) {
      ++cases;
      for (auto& [chance, is] : asked_) chance->count += is(f) ? 1 : 0;
    });
    if (cases == 0) throw std::invalid_argument("odds_of: no futures");
    for (auto& [chance, is] : asked_) *chance = chance_of(chance->count, cases, confidence);
    return cases;
  }

 private:
  std::vector<std::pair<Chance*, Is>> asked_;
};

void read_quantiles(const Futures& futures, std::size_t cases, Hours hours, std::size_t who, double horizon_h,
                    double confidence, Window& window) {
  std::vector<std::size_t> ranks;
  for (const double p : quantiles) {
    const Ranks around = quantile_ranks(cases, p, confidence);
    ranks.push_back(rank_of(p, cases));
    ranks.push_back(around.low.value_or(1));
    ranks.push_back(around.high.value_or(1));
  }
  const auto until = at_ranks<float>(
      [&](const std::function<void(float)>& visit) {
        futures([&](const Future& f) {
          visit(hour(f, hours, who) < horizon_h ? (f.*hours)[who] : std::numeric_limits<float>::infinity());
        });
      },
      ranks);
  const auto within = [&](float h) {
    return std::isinf(h) ? std::nullopt : std::optional(static_cast<double>(h));
  };
  for (std::size_t q = 0; q < quantiles.size(); ++q) {
    const Ranks around = quantile_ranks(cases, quantiles[q], confidence);
    QuantileByRank& out = window.until[q];
    out.time = within(until[3 * q]);
    out.low_known = around.low.has_value(), out.high_known = around.high.has_value();
    if (around.low) out.low = within(until[3 * q + 1]);
    if (around.high) out.high = within(until[3 * q + 2]);
  }
}

using CauseCounts = std::array<std::size_t, static_cast<std::size_t>(system::Limit::none) + 1>;

CauseShares shares_of(const CauseCounts& counts, std::size_t cases) {
  CauseShares out;
  for (std::size_t cause = 0; cause < counts.size(); ++cause)
    if (counts[cause] > 0)
      out.emplace_back(static_cast<system::Limit>(cause),
                       static_cast<double>(counts[cause]) / static_cast<double>(cases));
  std::stable_sort(out.begin(), out.end(), [](const auto& a, const auto& b) { return a.second > b.second; });
  return out;
}

void read_causes(const Futures& futures, Odds& o) {
  std::vector<CauseCounts> able(o.causes.size());
  CauseCounts alive{};
  futures([&](const Future& f) {
    for (std::size_t i = 0; i < o.causes.size(); ++i)
      if (hour(f, &Future::able_h, first_person) <= o.causes[i].by_h)
        ++able[i][static_cast<std::size_t>(f.able_cause[first_person])];
    if (hour(f, &Future::alive_h, first_person) < o.horizon_h)
      ++alive[static_cast<std::size_t>(f.alive_cause[first_person])];
  });
  for (std::size_t i = 0; i < o.causes.size(); ++i) o.causes[i].ended = shares_of(able[i], o.futures);
  o.alive_ended = shares_of(alive, o.futures);
}

void read_first_unable(const Futures& futures, Odds& o) {
  std::array<std::size_t, largest_crew> counts{};
  futures([&](const Future& f) {
    if (f.first_unable.none()) return;
    for (std::size_t p = 0; p < counts.size(); ++p) counts[p] += f.first_unable[p] ? 1 : 0;
  });
  for (std::size_t p = 0; p < counts.size(); ++p)
    o.first_unable[p] = chance_of(counts[p], o.futures, o.confidence);
}

// Tenth, half and nine tenths of a number that some futures have; empty where none has it.
using Spread = std::optional<std::array<double, 3>>;
Spread spread_of(const Futures& futures, const std::function<std::optional<float>(const Future&)>& number) {
  std::size_t cases = 0;
  futures([&](const Future& f) { cases += number(f) ? 1 : 0; });
  if (cases == 0) return std::nullopt;
  const std::array ranks{rank_of(low_share, cases), rank_of(0.5, cases), rank_of(high_share, cases)};
  const auto read = at_ranks<float>(
      [&](const std::function<void(float)>& visit) {
        futures([&](const Future& f) {
          if (const auto value = number(f)) visit(*value);
        });
      },
      ranks);
  return std::array{static_cast<double>(read[0]), static_cast<double>(read[1]), static_cast<double>(read[2])};
}

bool runs_out(const Future& f, double horizon_h) {
  return f.water_out_h > 0 && static_cast<double>(f.water_out_h) < horizon_h;
}

void read_aboard(const Futures& futures, double horizon_h, Aboard& aboard) {
  if (const Spread coldest = spread_of(futures, [](const Future& f) {
        return std::isnan(f.coldest_inside_degC) ? std::nullopt : std::optional(f.coldest_inside_degC);
      }))
    std::tie(aboard.coldest_low_degC, aboard.coldest_middle_degC, aboard.coldest_high_degC) =
        std::tie((*coldest)[0], (*coldest)[1], (*coldest)[2]);
  if (const Spread out = spread_of(futures, [&](const Future& f) {
        return runs_out(f, horizon_h) ? std::optional(f.water_out_h) : std::nullopt;
      }))
    aboard.water_out_middle_h = (*out)[1];
}

void read_hours_held_back(const Futures& futures, HeldBack& held_back) {
  if (const Spread hours = spread_of(futures, [](const Future& f) {
        return f.held_back_h > 0 ? std::optional(f.held_back_h) : std::nullopt;
      }))
    std::tie(held_back.low_h, held_back.middle_h, held_back.high_h) =
        std::tie((*hours)[0], (*hours)[1], (*hours)[2]);
}

void ask_about_help(Questions& questions, HelpOdds& help, double horizon_h) {
  const auto before = [horizon_h](Hours hours, Who who) {
    return [=](const Future& f) {
      return static_cast<double>(f.rescue_h) <= horizon_h && f.rescue_h <= (f.*hours)[who];
    };
  };
  questions.ask(help.all_able, before(&Future::able_h, first_person));
  questions.ask(help.some_able, before(&Future::able_h, last_person));
  questions.ask(help.all_alive, before(&Future::alive_h, first_person));
  questions.ask(help.some_alive, before(&Future::alive_h, last_person));
  questions.ask(help.none_by_horizon,
                [=](const Future& f) { return static_cast<double>(f.rescue_h) > horizon_h; });
  questions.ask(help.held_back.at_all, [](const Future& f) { return f.held_back_h > 0; });
  questions.ask(help.held_back.no_weather, [](const Future& f) { return f.no_weather_for_help; });
}

}  // namespace

bool agrees(const Future& f, const KnownSoFar& known) {
  const bool alive = !known.alive_at_h || hour(f, &Future::alive_h, first_person) > *known.alive_at_h;
  const bool still_waiting = !known.now_h || static_cast<double>(f.rescue_h) > *known.now_h;
  return alive && still_waiting;
}

Odds odds_of(const Futures& futures, double horizon_h, bool with_help, double confidence,
             std::span<const double> at_h) {
  Odds o;
  o.horizon_h = horizon_h;
  o.confidence = confidence;
  Questions questions;
  const auto later_than = [](Hours hours, std::size_t who, double when_h) {
    return [=](const Future& f) { return hour(f, hours, who) > when_h; };
  };
  const auto not_before = [](Hours hours, std::size_t who, double when_h) {
    return [=](const Future& f) { return !(hour(f, hours, who) < when_h); };
  };
  for (std::size_t who = 0; who < who_count; ++who) {
    questions.ask(o.able[who].beyond, not_before(&Future::able_h, who, horizon_h));
    questions.ask(o.alive[who].beyond, not_before(&Future::alive_h, who, horizon_h));
  }
  const std::vector<double> hours =
      at_h.empty() ? equal_parts(horizon_h) : std::vector<double>(at_h.begin(), at_h.end());
  o.times.resize(hours.size());
  for (std::size_t i = 0; i < hours.size(); ++i) {
    AtTime& t = o.times[i];
    t.at_h = hours[i];
    questions.ask(t.all_able, later_than(&Future::able_h, first_person, t.at_h));
    questions.ask(t.some_able, later_than(&Future::able_h, last_person, t.at_h));
    questions.ask(t.all_alive, later_than(&Future::alive_h, first_person, t.at_h));
    questions.ask(t.some_alive, later_than(&Future::alive_h, last_person, t.at_h));
    if (i % 2 == 1) o.causes.push_back({t.at_h, {}});
  }
  questions.ask(o.aboard.no_water, [](const Future& f) { return f.water_out_h <= 0; });
  questions.ask(o.aboard.water_out, [horizon_h](const Future& f) { return runs_out(f, horizon_h); });
  if (with_help) ask_about_help(questions, o.help.emplace(), horizon_h);
  o.futures = questions.answer(futures, confidence);
  for (std::size_t who = 0; who < who_count; ++who) {
    read_quantiles(futures, o.futures, &Future::able_h, who, horizon_h, confidence, o.able[who]);
    read_quantiles(futures, o.futures, &Future::alive_h, who, horizon_h, confidence, o.alive[who]);
  }
  read_causes(futures, o);
  read_first_unable(futures, o);
  read_aboard(futures, horizon_h, o.aboard);
  if (with_help) read_hours_held_back(futures, o.help->held_back);
  return o;
}

std::optional<Odds> odds_given(const Futures& futures, const KnownSoFar& known, double horizon_h,
                               bool with_help, double confidence, std::span<const double> at_h) {
  std::size_t all = 0, left = 0;
  futures([&](const Future& f) {
    ++all;
    left += agrees(f, known) ? 1 : 0;
  });
  if (left == 0) return std::nullopt;
  const Futures those_left = [&](const VisitFuture& visit) {
    futures([&](const Future& f) {
      if (agrees(f, known)) visit(f);
    });
  };
  Odds o = odds_of(those_left, horizon_h, with_help, confidence, at_h);
  o.ruled_out = all - left;
  return o;
}

std::vector<double> hours_from_now(double now_h, double horizon_h) {
  constexpr std::array first_h{0.0, 1.0, 2.0, 3.0, 6.0, 12.0, 24.0, 36.0, 48.0};
  std::vector<double> out;
  for (const double each : first_h)
    if (now_h + each <= horizon_h) out.push_back(now_h + each);
  for (double later = first_h.back() + day_h; now_h + later <= horizon_h; later += day_h)
    out.push_back(now_h + later);
  return out;
}

}  // namespace bide::study
