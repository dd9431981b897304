#include "bide/study/questions/kit_futures.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "bide/study/sampling/make_sample.hpp"
#include "bide/study/statistics/proportion.hpp"

namespace bide::study {

KitFutures::KitFutures(const scenario::ValidScenario& scenario, const std::vector<ProvisionItem>& items,
                       bool alive, std::uint64_t seed, std::uint64_t count, int threads)
    : scenario_(scenario),
      items_(items),
      alive_(alive),
      seed_(seed),
      count_(count),
      threads_(threads),
      times_missed_(count, 0) {}

scenario::ValidScenario KitFutures::with(const Kit& kit) const {
  scenario::ValidScenario out = scenario_;
  for (std::size_t i = 0; i < kit.size(); ++i) {
    if (kit[i] == 0) continue;
    auto pulled = scenario::pull(scenario::doses_of(*items_[i].offer, kit[i]), out);
    if (const auto* no = std::get_if<scenario::NotApplicable>(&pulled))
      throw KitRefused({Refusal::Why::input, {{scenario_.file, "", items_[i].title + ": " + no->reason}}});
    out = std::move(std::get<std::vector<scenario::ValidScenario>>(pulled).front());
  }
  return out;
}

const KitFutures::Known& KitFutures::learn(const Kit& kit, std::size_t most) {
  Known& known = known_[kit];
  if (known.seen.empty())
    known.seen.assign(count_, Seen::no), known.cause.assign(count_, system::Limit::none);
  std::vector<std::uint64_t> order;
  for (std::uint64_t k = 0; k < count_; ++k)
    if (known.seen[k] == Seen::no) order.push_back(k);
  if (order.empty() || known.missed > most) return known;
  std::stable_sort(order.begin(), order.end(),
                   [&](std::uint64_t a, std::uint64_t b) { return times_missed_[a] > times_missed_[b]; });

  const scenario::ValidScenario scenario = with(kit);
  const Sampler sampler(scenario);
  const MakeSample make = drawing(sampler, seed_);
  EnsembleOptions options;
  options.threads = threads_;
  // A few blocks of lanes for each core between looks at the count.
  constexpr std::uint64_t batch = 64;
  for (std::uint64_t from = 0; from < order.size() && known.missed <= most; from += batch) {
    const std::uint64_t to = std::min<std::uint64_t>(from + batch, order.size());
    run_ensemble(
        {from, to}, [&](std::uint64_t k) { return make(order[k]); },
        [&](const SampleResult& r) {
          const std::uint64_t k = order[r.index];
          bool met = false;
          if (r.failure.empty()) {
            const Future future = future_of(r);
            met = std::isinf((alive_ ? future.alive_h : future.able_h)[first_person]);
            if (!met) known.cause[k] = (alive_ ? future.alive_cause : future.able_cause)[first_person];
          } else {
            ++known.without_result;
            if (known.why.empty()) known.why = r.failure;
          }
          known.seen[k] = met ? Seen::met : Seen::missed;
          if (met) return;
          ++known.missed;
          ++times_missed_[k];
        },
        options);
    constexpr double bearable = 0.01;  // as in odds
    if (static_cast<double>(known.without_result) > std::max(1.0, bearable * static_cast<double>(count_)))
      throw KitRefused({Refusal::Why::run, {{scenario_.file, "", known.why}}});
  }
  return known;
}

bool KitFutures::misses_at_most(const Kit& kit, std::size_t most) {
  return learn(kit, most).missed <= most;
}

KitTried KitFutures::all_of(const Kit& kit, double confidence) {
  const Known& known = learn(kit, std::numeric_limits<std::size_t>::max());
  KitTried out;
  out.kit = kit;
  std::vector<KitItem> items;
  for (const ProvisionItem& each : items_) items.push_back(each.item);
  out.cost = cost_of(items, kit);
  out.of = count_;
  out.met = count_ - known.missed;
  out.at_least = least_share(out.met, out.of, confidence);
  for (std::size_t k = 0; k < known.seen.size(); ++k) {
    if (known.seen[k] != Seen::missed) continue;
    const auto at = std::find_if(out.ended.begin(), out.ended.end(),
                                 [&](const EndedBy& each) { return each.limit == known.cause[k]; });
    if (at == out.ended.end())
      out.ended.push_back({known.cause[k], 1});
    else
      ++at->futures;
  }
  std::sort(out.ended.begin(), out.ended.end(), [](const EndedBy& a, const EndedBy& b) {
    return a.futures != b.futures ? a.futures > b.futures : a.limit < b.limit;
  });
  return out;
}

}  // namespace bide::study
