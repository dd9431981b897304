#include "bide/study/search/least_kit.hpp"

#include <algorithm>
#include <stdexcept>
#include <tuple>
#include <utility>

namespace bide::study {

namespace {

// At least as much of everything.
bool holds(const Kit& kit, const Kit& other) {
  return std::equal(kit.begin(), kit.end(), other.begin(), std::greater_equal<>());
}

}  // namespace

Cost cost_of(const std::vector<KitItem>& items, const Kit& kit) {
  Cost out;
  for (std::size_t i = 0; i < items.size(); ++i) {
    out.mass_kg += kit[i] * items[i].each.mass_kg;
    out.volume_L += kit[i] * items[i].each.volume_L;
    out.count += kit[i] * items[i].each.count;
  }
  return out;
}

bool KitSearch::Waiting::operator>(const Waiting& other) const {
  return std::tie(cost, kit) > std::tie(other.cost, other.kit);
}

KitSearch::KitSearch(std::vector<KitItem> items, KitLimits limits, Meets meets)
    : items_(std::move(items)), limits_(limits), meets_(std::move(meets)) {
  for (const KitItem& item : items_) {
    const Cost& each = item.each;
    if (item.most < 0 || each.mass_kg < 0 || each.volume_L < 0 || each.count < 0 || each == Cost{})
      throw std::invalid_argument("each dose of an item costs something, and there are no fewer than none");
  }
  const Kit nothing(items_.size(), 0);
  waiting_.push({cost_of(items_, nothing), nothing});
}

bool KitSearch::meets(const Kit& kit) {
  const auto [at, is_new] = known_.try_emplace(kit, false);
  if (is_new) {
    at->second = meets_(kit);
    if (!at->second) add_miss(kit);
  }
  return at->second;
}

Kit KitSearch::part_that_may_harm(const Kit& kit) const {
  Kit out = kit;
  for (std::size_t i = 0; i < kit.size(); ++i)
    if (items_[i].more_never_harms) out[i] = 0;
  return out;
}

void KitSearch::add_miss(const Kit& kit) {
  std::vector<Kit>& misses = parts_[part_that_may_harm(kit)].misses;
  std::erase_if(misses, [&](const Kit& miss) { return holds(kit, miss); });
  misses.push_back(kit);
}

bool KitSearch::ruled_out(const Kit& kit) const {
  const auto part = parts_.find(part_that_may_harm(kit));
  return part != parts_.end() && std::any_of(part->second.misses.begin(), part->second.misses.end(),
                                             [&](const Kit& miss) { return holds(miss, kit); });
}

bool KitSearch::passed_over(const Kit& kit) const {
  return std::any_of(found_.begin(), found_.end(), [&](const Kit& found) { return holds(kit, found); });
}

// Each kit has one parent: itself with one dose less of the last item it holds.
void KitSearch::add_children(const Kit& kit) {
  std::size_t last = 0;
  for (std::size_t i = 0; i < kit.size(); ++i)
    if (kit[i] > 0) last = i;
  for (std::size_t i = last; i < kit.size(); ++i) {
    if (kit[i] == items_[i].most) continue;
    Kit child = kit;
    ++child[i];
    const Cost cost = cost_of(items_, child);
    if (cost.mass_kg <= limits_.mass_kg && cost.volume_L <= limits_.volume_L)
      waiting_.push({cost, std::move(child)});
  }
}

// The lightest kit that is known to meet the target and may still be given out: nothing heavier needs to be
// known about.
Cost KitSearch::lightest_known() const {
  Cost out{limits_.mass_kg, limits_.volume_L, std::numeric_limits<int>::max()};
  for (const auto& [kit, met] : known_)
    if (met && !passed_over(kit)) out = std::min(out, cost_of(items_, kit));
  return out;
}

// With as much as there is of all that never harms, and each of it no heavier than a kit that is known to
// meet the target: does it meet the target at all, and how much of each does it take at least? A few runs in
// place of one for each dose.
void KitSearch::learn_about(const Kit& kit) {
  Part& part = parts_[part_that_may_harm(kit)];
  if (std::exchange(part.learnt, true)) return;
  const Cost bound = lightest_known();
  const Kit bare = part_that_may_harm(kit);
  Kit most = bare;
  for (std::size_t i = 0; i < kit.size(); ++i) {
    if (!items_[i].more_never_harms) continue;
    Kit one = bare;
    for (one[i] = items_[i].most; one[i] > kit[i] && bound < cost_of(items_, one);) --one[i];
    most[i] = one[i];
  }
  if (!meets(most)) return;
  for (std::size_t i = 0; i < kit.size(); ++i) {
    if (!items_[i].more_never_harms) continue;
    int misses = -1, enough = most[i];
    while (enough - misses > 1) {
      Kit tried = most;
      tried[i] = misses + (enough - misses) / 2;
      (meets(tried) ? enough : misses) = tried[i];
    }
  }
}

std::vector<Kit> KitSearch::also_meet() const {
  std::vector<Kit> met, out;
  for (const auto& [kit, meets] : known_)
    if (meets && !passed_over(kit)) met.push_back(kit);
  std::stable_sort(met.begin(), met.end(),
                   [&](const Kit& a, const Kit& b) { return cost_of(items_, a) < cost_of(items_, b); });
  for (const Kit& kit : met)
    if (std::none_of(out.begin(), out.end(), [&](const Kit& lighter) { return holds(kit, lighter); }))
      out.push_back(kit);
  return out;
}

std::size_t KitSearch::parts_left() const {
  constexpr std::size_t most = 1000;
  const Cost lightest = lightest_known();
  std::size_t left = 0;
  Kit part(items_.size(), 0);
  for (std::size_t i = 0; i < part.size() && left < most;) {
    const auto known = parts_.find(part);
    const bool learnt = known != parts_.end() && known->second.learnt;
    if (!learnt && cost_of(items_, part) <= lightest) ++left;
    // The next one, as an odometer counts.
    const auto full = [&](std::size_t at) {
      return items_[at].more_never_harms || part[at] == items_[at].most;
    };
    for (i = 0; i < part.size() && full(i); ++i) part[i] = 0;
    if (i < part.size()) ++part[i], i = 0;
  }
  return left;
}

std::optional<Kit> KitSearch::next() {
  while (!waiting_.empty()) {
    const Kit kit = waiting_.top().kit;
    waiting_.pop();
    add_children(kit);
    if (passed_over(kit) || ruled_out(kit)) continue;
    learn_about(kit);
    if (ruled_out(kit) || !meets(kit)) continue;
    found_.push_back(kit);
    return kit;
  }
  return std::nullopt;
}

}  // namespace bide::study
