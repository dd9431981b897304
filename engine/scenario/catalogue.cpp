#include "bide/scenario/catalogue.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "bide/scenario/embedded.hpp"
#include "bide/scenario/sea_areas.hpp"

namespace bide::scenario {

// scenarios/catalogue/*.json, compiled in.
namespace embedded {
extern const std::string_view rafts, packs, ensembles, items, sea_areas;
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
      read_embedded<Catalogue>({embedded::rafts, embedded::packs, embedded::ensembles, embedded::items});
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
const ItemKind* find_item(std::string_view key) {
  return find_key(catalogue().items, key);
}

double pack_quantity(const PackItem& item, int capacity_persons) {
  constexpr int large_raft_persons = 13;  // the packs' own threshold
  const double more = capacity_persons >= large_raft_persons ? item.more_from_13_persons : 0;
  return std::max(item.at_least, std::ceil(item.per_person * capacity_persons + item.per_raft + more));
}

const std::vector<SeaArea>& sea_areas() {
  static const SeaAreas all = read_embedded<SeaAreas>({embedded::sea_areas});
  return all.sea_areas;
}

const SeaArea* find_sea_area(std::string_view key) {
  return find_key(sea_areas(), key);
}

NearestArea nearest_sea_area(double latitude_deg, double longitude_deg) {
  constexpr double earth_radius_km = 6371, rad = std::numbers::pi / 180;
  NearestArea best;
  for (const SeaArea& area : sea_areas()) {
    // Haversine: exact on the sphere, well conditioned for short distances.
    const double south_north = std::sin((area.latitude_deg - latitude_deg) * rad / 2);
    const double west_east = std::sin((area.longitude_deg - longitude_deg) * rad / 2);
    const double h = south_north * south_north +
                     std::cos(latitude_deg * rad) * std::cos(area.latitude_deg * rad) * west_east * west_east;
    const double distance_km = 2 * earth_radius_km * std::asin(std::sqrt(std::min(h, 1.0)));
    if (!best.area || distance_km < best.distance_km) best = {&area, distance_km};
  }
  return best;
}

}  // namespace bide::scenario
