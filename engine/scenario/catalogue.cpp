#include "bide/scenario/catalogue.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>

#include "bide/scenario/embedded.hpp"
#include "bide/scenario/sea_areas.hpp"

namespace bide::scenario {

// scenarios/catalogue/*.json, compiled in.
namespace embedded {
extern const std::string_view rafts, packs, ensembles, gloves, boots, items, sea_areas;
}

namespace {

template <class Kind>
const Kind* find_key(const std::vector<Kind>& kinds, std::string_view key) {
  const auto at = std::find_if(kinds.begin(), kinds.end(), [&](const Kind& kind) { return kind.key == key; });
  return at == kinds.end() ? nullptr : &*at;
}

}  // namespace

const Catalogue& catalogue() {
  static const Catalogue all =
      read_embedded<Catalogue>({embedded::rafts, embedded::packs, embedded::ensembles, embedded::gloves,
                                embedded::boots, embedded::items});
  return all;
}

const RaftKind* find_raft(std::string_view key) {
  return find_key(catalogue().rafts, key);
}
const PackKind* find_pack(std::string_view key) {
  return find_key(catalogue().packs, key);
}
const Ensemble* find_ensemble(std::string_view key) {
  return find_key(catalogue().ensembles, key);
}
const Covering* find_gloves(std::string_view key) {
  return find_key(catalogue().gloves, key);
}
const Covering* find_boots(std::string_view key) {
  return find_key(catalogue().boots, key);
}
const ItemKind* find_item(std::string_view key) {
  return find_key(catalogue().items, key);
}

double pack_quantity(const PackItem& item, int capacity_persons) {
  constexpr int large_raft_persons = 13;  // the packs' own threshold
  const double more = capacity_persons >= large_raft_persons ? item.more_from_13_persons : 0;
  return std::max(item.at_least, std::ceil(item.per_person * capacity_persons + item.per_raft + more));
}

const SeaAreas& sea_areas() {
  static const SeaAreas all = read_embedded<SeaAreas>({embedded::sea_areas});
  return all;
}

const SeaArea* find_sea_area(std::string_view name) {
  const auto same = [](std::string_view a, std::string_view b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](unsigned char x, unsigned char y) { return std::tolower(x) == std::tolower(y); });
  };
  const auto& all = sea_areas().sea_areas;
  const auto at = std::find_if(all.begin(), all.end(), [&](const SeaArea& area) {
    return same(area.title, name) || same(area.key, name);
  });
  return at == all.end() ? nullptr : &*at;
}

}  // namespace bide::scenario
