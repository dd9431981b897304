#include "bide/study/questions/provision.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "bide/core/units.hpp"
#include "bide/scenario/patch.hpp"
#include "bide/scenario/write.hpp"
#include "bide/study/questions/kit_futures.hpp"
#include "bide/study/statistics/proportion.hpp"

namespace bide::study {
namespace {

constexpr double sure = 0.95;  // that a bound of a share is none too high

std::vector<ProvisionItem> items_for(const scenario::ValidScenario& scenario) {
  std::vector<ProvisionItem> out;
  for (const scenario::KitOffer& offer : scenario::kit_offers()) {
    const scenario::Lever one = scenario::doses_of(offer, 1);
    const scenario::Burden burden = scenario::burden_of(one, scenario);
    ProvisionItem item{&offer, one.title, burden.items, {}, {}};
    item.item = {offer.most, {burden.mass_kg, burden.volume_L, 1}, offer.more_never_harms};
    const auto pulled = scenario::pull(one, scenario);
    if (const auto* no = std::get_if<scenario::NotApplicable>(&pulled)) {
      item.left_out = no->reason;
      item.item.most = 0;
    }
    out.push_back(std::move(item));
  }
  return out;
}

// Followed to the time asked about and no further. Where nothing is uncertain, what is not known is drawn;
// where no rule of rationing is stated, what is aboard is spread over the days, or more water would stay in
// its bags.
scenario::Validated to_the_target(const scenario::ValidScenario& scenario, double until_h, Provision& out) {
  scenario::Node document = *scenario.document;
  scenario::put(document, "/duration_h", until_h);
  out.made_uncertain = !scenario.scenario.uncertain.has_value();
  if (out.made_uncertain) {
    scenario::put(document, "/uncertain/person_spread", true);
    scenario::put(document, "/uncertain/unmeasured", true);
  }
  const double days = until_h * hour_s / day_s;
  constexpr double fewest_days = 0.5;  // that a spread may have
  out.spread_water = days >= fewest_days && scenario::is_default(scenario, "/rationing/rule") &&
                     scenario::is_default(scenario, "/rationing/water_L_per_day");
  if (out.spread_water) {
    scenario::put(document, "/rationing/rule", std::string("spread"));
    scenario::put(document, "/rationing/spread_days", days);
  }
  return scenario::validate_document(std::move(document), scenario.file, scenario.folder);
}

Kit as_much_as_there_is(const std::vector<ProvisionItem>& items) {
  Kit out;
  for (const ProvisionItem& each : items) out.push_back(each.item.most);
  return out;
}

std::vector<DoseChanged> changed_by(int doses, const Provision& in, const Kit& kit, KitFutures& futures) {
  std::vector<DoseChanged> out;
  for (std::size_t i = 0; i < kit.size(); ++i) {
    Kit other = kit;
    other[i] += doses;
    if (other[i] < 0 || other[i] > in.items[i].item.most) continue;
    out.push_back({i, futures.all_of(other, sure)});
  }
  return out;
}

struct Search {
  Provision& in;
  KitFutures& futures;
  KitFutures& fresh;
  const ToldProvisionProgress& progress;
  std::vector<KitItem> items{};
  double mass_kg = 0;       // of the kit looked at
  std::uint64_t after = 0;  // futures to run once the search is over, as far as can be said
  const KitSearch* now = nullptr;

  // A part of items that may harm is mostly ruled out by this many futures.
  void tell() const {
    constexpr std::uint64_t usual = 64;
    const std::uint64_t left = (now ? now->parts_left() * usual : 0) + after;
    if (progress && left > 0)
      progress({futures.kits_run() + fresh.kits_run(), mass_kg, futures.futures_run() + fresh.futures_run(),
                left});
  }

  KitSearch missing_at_most(std::size_t most, std::vector<KitItem> of) {
    return missing_at_most(most, std::move(of), in.question.limits);
  }
  KitSearch missing_at_most(std::size_t most, std::vector<KitItem> of, const KitLimits& limits) {
    return {std::move(of), limits, [this, most](const Kit& kit) {
              mass_kg = cost_of(items, kit).mass_kg;
              return futures.misses_at_most(kit, most);
            }};
  }

  // A kit that fails on fresh futures met the target by luck, and so would its like: the next must do better
  // than it did on the first ones. Runs are kept, so a new search costs little.
  void operator()() {
    const ProvisionQuestion& q = in.question;
    for (const ProvisionItem& each : in.items) items.push_back(each.item);
    std::size_t most = *most_misses(q.futures, q.confidence, sure);
    after = q.fresh_futures + items.size() * q.futures / 2;
    for (double error = (1 - sure) / 2;; error /= 2) {  // 1/2 + 1/4 + ... of the chance of error
      KitSearch kits = missing_at_most(most, items);
      now = &kits;
      const auto kit = kits.next();
      now = nullptr;
      if (!kit) return look_for_nearest();
      const KitTried first = futures.all_of(*kit, sure), again = fresh.all_of(*kit, 1 - error);
      if (again.at_least >= q.confidence) {
        in.least = first;
        in.least_fresh = again;
        after = items.size() * q.futures / 2;
        return others(kits);
      }
      in.failed_fresh.push_back(again);
      const std::size_t missed = first.of - first.met;
      if (missed == 0) return look_for_nearest();
      most = missed - 1;
    }
  }

  void others(KitSearch& kits) {
    constexpr std::size_t wanted = 2;
    for (const Kit& kit : kits.also_meet())
      if (in.others.size() < wanted) in.others.push_back(futures.all_of(kit, sure));
    in.one_less = changed_by(-1, in, in.least->kit, futures);
    in.one_more = changed_by(+1, in, in.least->kit, futures);
    after = in.question.futures;
    draw_curve(in.least->kit);
    in.scenario_text = scenario::write_document(*futures.with(in.least->kit).document);
  }

  // With the items of one kit alone: less of them for smaller shares, more for larger ones. A share beyond
  // one that is not reached is not looked for.
  void draw_curve(const Kit& kit_of) {
    bool reached = true;
    for (const double share : {0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.99}) {
      const auto misses = most_misses(in.question.futures, share, sure);
      if (!misses) continue;
      KitForShare point{share, std::nullopt};
      if (reached) {
        std::vector<KitItem> some = items;
        for (std::size_t i = 0; i < some.size(); ++i)
          if (kit_of[i] == 0 || (in.least && share <= in.question.confidence)) some[i].most = kit_of[i];
        if (const auto kit = missing_at_most(*misses, std::move(some)).next())
          point.least = futures.all_of(*kit, sure);
        reached = point.least.has_value();
      }
      in.curve.push_back(std::move(point));
    }
  }

  void look_for_nearest() {
    in.all = futures.all_of(as_much_as_there_is(in.items), sure);
    Kit kit;
    for (const KitItem& item : items) kit.push_back(item.more_never_harms ? item.most : 0);
    in.nearest = futures.all_of(kit, sure);
    for (std::size_t i = 0; i < kit.size(); ++i) {
      if (items[i].more_never_harms || items[i].most == 0) continue;
      Kit with = in.nearest->kit;
      with[i] = items[i].most;
      const KitTried tried = futures.all_of(with, sure);
      if (tried.met > in.nearest->met) in.nearest = tried;
    }
    draw_curve(in.nearest->kit);
    const KitLimits& limits = in.question.limits;
    if (!limits.any()) return;
    const std::size_t most = *most_misses(in.question.futures, in.question.confidence, sure);
    const auto free = missing_at_most(most, items, {}).next();
    if (!free) return;
    const KitTried tried = futures.all_of(*free, sure);
    // One within the limits met the target by luck: it is among those that failed on fresh futures.
    if (tried.cost.mass_kg > limits.mass_kg || tried.cost.volume_L > limits.volume_L)
      in.without_limits = tried;
  }
};

std::optional<Refusal> wrong_with(const scenario::ValidScenario& scenario, const ProvisionQuestion& q) {
  const auto refused = [&](std::string message) {
    return Refusal{Refusal::Why::input, {{scenario.file, "", std::move(message)}}};
  };
  if (!scenario.scenario.raft) return refused("there is no raft to put a kit into");
  if (!(q.confidence > 0 && q.confidence < 1))
    return refused(fmt::format("found a confidence of {}; allowed above 0 and below 1", q.confidence));
  for (const std::uint64_t futures : {q.futures, q.fresh_futures})
    if (futures == 0 || !most_misses(futures, q.confidence, sure))
      return refused(
          fmt::format("found {} futures; a share of {} cannot be shown with so few, whatever happens "
                      "in them: ask for more futures or for less confidence",
                      futures, q.confidence));
  return std::nullopt;
}

}  // namespace

std::variant<Provision, Refusal> provision(const scenario::ValidScenario& scenario,
                                           const ProvisionQuestion& question,
                                           const ToldProvisionProgress& progress) {
  if (auto wrong = wrong_with(scenario, question)) return std::move(*wrong);
  Provision out{scenario, question};
  auto asked = to_the_target(scenario, question.until_h, out);
  if (auto* wrong = std::get_if<scenario::Diagnostics>(&asked))
    return Refusal{Refusal::Why::input, std::move(*wrong)};
  out.asked = std::move(std::get<scenario::ValidScenario>(asked));
  out.items = items_for(out.asked);
  try {
    KitFutures futures(out.asked, out.items, question.alive, question.seed, question.futures,
                       question.threads);
    KitFutures fresh(out.asked, out.items, question.alive, ~question.seed, question.fresh_futures,
                     question.threads);
    Search search{out, futures, fresh, progress};
    for (KitFutures* each : {&futures, &fresh}) each->when_run([&search] { search.tell(); });
    out.without = futures.all_of(Kit(out.items.size(), 0), sure);
    search();
    out.kits_run = futures.kits_run();
    out.futures_run = futures.futures_run() + fresh.futures_run();
  } catch (KitRefused& refused) {
    return std::move(refused.refusal);
  }
  return out;
}

}  // namespace bide::study
