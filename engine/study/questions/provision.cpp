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
  const ToldProvisionProgress& progress;
  std::vector<KitItem> items{};

  KitSearch missing_at_most(std::size_t most) {
    return {items, in.question.limits, [this, most](const Kit& kit) {
              if (progress) progress({futures.kits_run(), cost_of(items, kit).mass_kg});
              return futures.misses_at_most(kit, most);
            }};
  }

  // A kit that fails on fresh futures met the target by luck, and so would its like: the next must do better
  // than it did on the first ones. Runs are kept, so a new search costs little.
  void operator()() {
    const ProvisionQuestion& q = in.question;
    for (const ProvisionItem& each : in.items) items.push_back(each.item);
    std::size_t most = *most_misses(q.futures, q.confidence, sure);
    KitFutures fresh(in.asked, in.items, q.alive, ~q.seed, q.fresh_futures, q.threads);
    for (double error = (1 - sure) / 2;; error /= 2) {  // 1/2 + 1/4 + ... of the chance of error
      KitSearch kits = missing_at_most(most);
      const auto kit = kits.next();
      if (!kit) return;
      const KitTried first = futures.all_of(*kit, sure), again = fresh.all_of(*kit, 1 - error);
      if (again.at_least >= q.confidence) {
        in.least = first;
        in.least_fresh = again;
        return others(kits);
      }
      in.failed_fresh.push_back(again);
      const std::size_t missed = first.of - first.met;
      if (missed == 0) return;
      most = missed - 1;
    }
  }

  void others(KitSearch& kits) {
    constexpr std::size_t wanted = 2;
    while (in.others.size() < wanted) {
      const auto kit = kits.next();
      if (!kit) break;
      in.others.push_back(futures.all_of(*kit, sure));
    }
    in.one_less = changed_by(-1, in, in.least->kit, futures);
    in.one_more = changed_by(+1, in, in.least->kit, futures);
    in.scenario_text = scenario::write_document(*futures.with(in.least->kit).document);
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
    out.without = futures.all_of(Kit(out.items.size(), 0), sure);
    out.all = futures.all_of(as_much_as_there_is(out.items), sure);
    Search{out, futures, progress}();
    out.kits_run = futures.kits_run();
  } catch (KitRefused& refused) {
    return std::move(refused.refusal);
  }
  return out;
}

}  // namespace bide::study
