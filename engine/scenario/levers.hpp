// Practical changes to a scenario, tried one at a time.
//
// The list is data, scenarios/catalogue/levers.json, compiled in; each entry carries its source. Never among
// them: sea water, urine, withholding from one person, doses of medicine.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "bide/scenario/validate.hpp"

namespace bide::scenario {

struct LeverItem {
  std::string kind;  // catalogue key of an item
  double per_person = 0, in_all = 0;
  bool top_up = false;  // no more than is lacking
  double volume_L = 0;  // of one
};

// A change that values at pointers do not express.
enum class LeverRaft {
  as_it_is,
  fitting,  // the smallest raft of the catalogue with the same floor and canopy that holds the crew
  two       // the crew parted over two rafts of the kind, each with its own stores
};

struct Lever {
  std::string key, title, source;
  Named<Value> set;  // by pointer; "*" stands for every person, null takes a value away
  std::vector<LeverItem> add;
  LeverRaft raft = LeverRaft::as_it_is;
  double mass_kg = 0, volume_L = 0;     // besides the items'
  bool needs_rain = false;              // does not apply where no rain falls
  bool closes_openings = false;         // shown with its price in carbon dioxide
  std::string gains_by{}, loses_by{};   // the physical reason where it gains, and where it loses
  std::optional<std::string> of{};      // key of the lever of which this is another dose, or a pair
  std::optional<std::string> gloves{};  // catalogue key, for each whose hands are bare
  double pair_volume_L = 0;             // of one pair
};

// A lever that may stand on a packing list, in doses.
struct KitOffer {
  std::string lever;              // key of a lever that brings items and changes no raft
  double dose = 1;                // share of what the lever brings, (0, 1]
  int most = 1;                   // doses
  bool more_never_harms = false;  // in no future does one dose more end anything earlier
  std::string why;                // it never harms, or may
};

struct LeverList {
  std::vector<Lever> levers;
  std::vector<KitOffer> kit;
};

const std::vector<Lever>& levers();
const std::vector<KitOffer>& kit_offers();
// The lever with so many doses of an offer.
// @param doses number, [1, most of the offer]
Lever doses_of(const KitOffer& offer, int doses);

// Weight and room of what a lever brings aboard.
struct Burden {
  double mass_kg = 0, volume_L = 0;
  std::string items{};  // "2 x foam pad"; empty: none is added
};
Burden burden_of(const Lever& lever, const ValidScenario& scenario);

// The scenario with the lever pulled: one part for each raft; or why it does not apply there.
struct NotApplicable {
  std::string reason;
};
std::variant<std::vector<ValidScenario>, NotApplicable> pull(const Lever& lever,
                                                             const ValidScenario& scenario);

}  // namespace bide::scenario
