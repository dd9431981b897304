// Which kits meet a target at the least cost: an exact search over all numbers of doses of some items.
//
// Kits are looked at in the order of their cost, so the first that meets the target is the least, whatever
// the target is. Knowledge saves runs: of an item of which more never harms, a kit that misses the target
// rules out all kits with as much of the other items and no more of this one. Other items are never ruled out
// so. Same items, same answers of `meets`: same search.
#pragma once

#include <cmath>
#include <compare>
#include <functional>
#include <limits>
#include <map>
#include <optional>
#include <queue>
#include <vector>

namespace bide::study {

// Compared in this order.
struct Cost {
  double mass_kg = 0, volume_L = 0;
  int count = 0;  // doses
  auto operator<=>(const Cost&) const = default;
};

struct KitItem {
  int most = 1;  // doses, at least 0
  Cost each;     // of one dose: at least one part above 0, none below
  bool more_never_harms = false;
};

// Doses by item.
using Kit = std::vector<int>;

Cost cost_of(const std::vector<KitItem>& items, const Kit& kit);

struct KitLimits {
  double mass_kg = std::numeric_limits<double>::infinity();
  double volume_L = std::numeric_limits<double>::infinity();
  bool any() const { return std::isfinite(mass_kg) || std::isfinite(volume_L); }
};

class KitSearch {
 public:
  // Whether a kit meets the target; may be costly, and is asked once for each kit.
  using Meets = std::function<bool(const Kit&)>;

  KitSearch(std::vector<KitItem> items, KitLimits limits, Meets meets);

  // The next kit that meets the target, in the order of cost; kits with as much of everything as one found
  // before are passed over. Empty: there is none.
  std::optional<Kit> next();

  // Kits that were seen to meet the target on the way, without those that hold all of a lighter one or of one
  // found, in the order of cost. There may be others.
  std::vector<Kit> also_meet() const;

  // Parts of items that may harm which may still have to be learnt about before next() returns: those that
  // are no heavier than a kit known to meet the target. Counted up to 1,000.
  std::size_t parts_left() const;

 private:
  struct Waiting {
    Cost cost;
    Kit kit;
    bool operator>(const Waiting& other) const;
  };
  Kit part_that_may_harm(const Kit& kit) const;
  bool meets(const Kit& kit);
  void add_miss(const Kit& kit);
  bool ruled_out(const Kit& kit) const;
  bool passed_over(const Kit& kit) const;
  void add_children(const Kit& kit);
  void learn_about(const Kit& kit);
  Cost lightest_known() const;

  std::vector<KitItem> items_;
  KitLimits limits_;
  Meets meets_;
  std::map<Kit, bool> known_;
  struct Part {
    bool learnt = false;
    std::vector<Kit> misses;  // none with no more of anything than another
  };
  std::map<Kit, Part> parts_;  // by the doses of items that may harm
  std::vector<Kit> found_;
  std::priority_queue<Waiting, std::vector<Waiting>, std::greater<>> waiting_;
};

}  // namespace bide::study
