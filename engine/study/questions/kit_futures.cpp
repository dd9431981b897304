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

void KitFutures::infer(const Kit& kit, Known& known) const {
  for (const auto& [other, of_other] : known_) {
    bool less = true, more = true;  // than the kit, or the same
    for (std::size_t i = 0; i < kit.size(); ++i) {
      const bool free = items_[i].item.more_never_harms;
      less = less && (free ? other[i] <= kit[i] : other[i] == kit[i]);
      more = more && (free ? other[i] >= kit[i] : other[i] == kit[i]);
    }
    if (less == more) continue;  // neither, or the kit itself
    for (std::size_t k = 0; k < known.seen.size(); ++k) {
      if (known.seen[k] != Seen::no) continue;
      const Seen seen = of_other.seen[k];
      if (less && seen == Seen::met) known.seen[k] = Seen::met;
      if (more && (seen == Seen::missed || seen == Seen::follows)) known.seen[k] = Seen::follows;
      known.missed += known.seen[k] == Seen::follows ? 1 : 0;
    }
  }
}

const KitFutures::Known& KitFutures::learn(const Kit& kit, std::size_t most, bool causes) {
  Known& known = known_[kit];
  if (known.seen.empty())
    known.seen.assign(count_, Seen::no), known.cause.assign(count_, system::Limit::none);
  infer(kit, known);
  std::vector<std::uint64_t> order;
  for (std::uint64_t k = 0; k < count_; ++k)
    if (known.seen[k] == Seen::no || (causes && known.seen[k] == Seen::follows)) order.push_back(k);
  if (order.empty() || known.missed > most) return known;
  std::stable_sort(order.begin(), order.end(),
                   [&](std::uint64_t a, std::uint64_t b) { return times_missed_[a] > times_missed_[b]; });

  const scenario::ValidScenario scenario = with(kit);
  const Sampler sampler(scenario);
  const MakeSample make = drawing(sampler, seed_);
  EnsembleOptions options;
  options.threads = threads_;
  // A block of lanes or two for each of a few cores between looks at the count.
  constexpr std::uint64_t batch = 32;
  for (std::uint64_t from = 0; from < order.size() && known.missed <= most; from += batch) {
    const std::uint64_t to = std::min<std::uint64_t>(from + batch, order.size());
    run_ensemble(
        {from, to}, [&](std::uint64_t k) { return make(order[k]); },
        [&](const SampleResult& r) {
          const std::uint64_t k = order[r.index];
          if (known.seen[k] == Seen::follows) --known.missed;
          known.seen[k] = Seen::without_result;
          if (r.failure.empty()) {
            const Future future = future_of(r);
            const bool met = std::isinf((alive_ ? future.alive_h : future.able_h)[first_person]);
            known.seen[k] = met ? Seen::met : Seen::missed;
            if (!met) known.cause[k] = (alive_ ? future.alive_cause : future.able_cause)[first_person];
          } else {
            ++known.without_result;
            if (known.why.empty()) known.why = r.failure;
          }
          if (known.seen[k] == Seen::met) return;
          ++known.missed;
          ++times_missed_[k];
        },
        options);
    futures_run_ += to - from;
    if (told_) told_();
    if (static_cast<double>(known.without_result) >
        std::max(1.0, bearable_failures * static_cast<double>(count_)))
      throw KitRefused({Refusal::Why::run, {{scenario_.file, "", known.why}}});
  }
  return known;
}

bool KitFutures::misses_at_most(const Kit& kit, std::size_t most) {
  return learn(kit, most, false).missed <= most;
}

KitTried KitFutures::all_of(const Kit& kit, double confidence) {
  const Known& known = learn(kit, std::numeric_limits<std::size_t>::max(), true);
  KitTried out;
  out.kit = kit;
  std::vector<KitItem> items;
  for (const ProvisionItem& each : items_) items.push_back(each.item);
  out.cost = cost_of(items, kit);
  out.of = count_;
  out.met = count_ - known.missed;
  out.at_least = least_share(out.met, out.of, confidence);
  for (std::size_t k = 0; k < known.seen.size(); ++k) {
    if (known.seen[k] == Seen::met) continue;
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
