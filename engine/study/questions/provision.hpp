// The least kit with which a crew lasts: what to add to the raft's own stores, so that in enough of the
// possible futures the first person is still able, or alive, at a stated time.
//
// Inputs: a validated scenario; where nothing is uncertain in it, people's spread and what nobody has
// measured are drawn. Method: every kit of the catalogue's offers (scenario/levers.hpp) is run on the same
// futures, in the order of mass, then room, then doses (study/search), until the exact lower bound of the
// share that meets the target (Clopper & Pearson, at 95 %) is the confidence asked for. The kit found is then
// run on fresh futures, because a share is too good on the futures that chose it; kits that fail there are
// passed by, and the chance of error is shared out over all that are tried. Same scenario, question and seed:
// same answer, whatever the threads.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "bide/scenario/levers.hpp"
#include "bide/study/ensemble/refusal.hpp"
#include "bide/study/search/least_kit.hpp"
#include "bide/system/limits.hpp"

namespace bide::study {

struct ProvisionQuestion {
  double until_h = 0;       // of the scenario's start, above 0
  double confidence = 0.9;  // share of futures wanted, (0, 1)
  bool alive = false;       // else able
  KitLimits limits;
  std::uint64_t futures = 300, fresh_futures = 1000, seed = 1;
  int threads = 0;  // 0: one to a core
};

// An offer of the catalogue as it stands for this crew.
struct ProvisionItem {
  const scenario::KitOffer* offer = nullptr;
  std::string title,
      one_dose;  // "one more litre of drinking water each", "20 x drinking water sachet, 100 mL"
  KitItem item;
  std::string left_out;  // why it cannot be added here; else empty
};

// Futures that a limit ended before the target's time; none: without a result.
struct EndedBy {
  system::Limit limit = system::Limit::none;
  std::size_t futures = 0;
};

// How a kit did.
struct KitTried {
  Kit kit;  // doses by item
  Cost cost;
  std::size_t met = 0, of = 0;  // futures
  double at_least = 0;          // exact lower bound of the share, at 95 %
  std::vector<EndedBy> ended;   // the others; most first
};

// The least kit of some items for a share of futures.
struct KitForShare {
  double share = 0;
  std::optional<KitTried> least;  // empty: none of these items reaches it
};

// One dose more or less of an item.
struct DoseChanged {
  std::size_t item = 0;
  KitTried tried;
};

struct Provision {
  scenario::ValidScenario asked;  // to the target's time, with what is drawn
  ProvisionQuestion question;
  bool made_uncertain = false;  // the scenario had nothing uncertain
  bool spread_water = false;    // the scenario had no rule of rationing: spread over the days to the target
  std::vector<ProvisionItem> items{};
  KitTried without{};  // nothing added
  // Where no kit is found: as much of everything as is offered, and as much of what never harms with what of
  // the rest gains, tried one by one, both whatever they weigh; and where a limit is set, the least kit that
  // would meet the target on the first futures without one.
  std::optional<KitTried> all{}, nearest{}, without_limits{};
  // Left out when no kit within the limits meets the target.
  std::optional<KitTried> least{}, least_fresh{};
  std::vector<KitTried> failed_fresh{};  // lighter kits that met the target on the first futures alone
  std::vector<KitTried> others{};        // the lightest others seen to meet it, each with less of something
  std::vector<DoseChanged> one_less{}, one_more{};
  // Of the items of the least kit, or of the nearest where none is found, within the limits and on the first
  // futures; ascending.
  std::vector<KitForShare> curve{};
  std::string scenario_text{};  // the scenario asked about, with the kit aboard, as a file
  std::size_t kits_run = 0;
  std::uint64_t futures_run = 0;
};

struct ProvisionProgress {
  std::size_t kits_run = 0;
  double mass_kg = 0;                               // of the kit looked at
  std::uint64_t futures_run = 0, futures_left = 0;  // those left are an estimate
};
using ToldProvisionProgress = std::function<void(const ProvisionProgress&)>;

// @param scenario as validated
// @param question what is asked
// @param progress may be empty
// @return the least kit, or that there is none; refused where the time or the share cannot be asked for, or a
//         kit has no result
std::variant<Provision, Refusal> provision(const scenario::ValidScenario& scenario,
                                           const ProvisionQuestion& question,
                                           const ToldProvisionProgress& progress = {});

}  // namespace bide::study
