#include "bide/scenario/levers.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "bide/scenario/differences.hpp"
#include "bide/scenario/embedded.hpp"
#include "bide/scenario/other_raft.hpp"
#include "bide/scenario/patch.hpp"
#include "bide/scenario/resolve.hpp"
#include "bide/scenario/words.hpp"

namespace bide::scenario {

namespace embedded {
extern const std::string_view levers;
}

namespace {

// The value of `key`, made if it is not there.
Node& member_or_new(Node& object, std::string_view key, Node::Kind kind) {
  if (Node* found = member(object, key)) return *found;
  object.members.push_back({std::string(key), {}});
  object.members.back().value.kind = kind;
  return object.members.back().value;
}

void set_values(Node& document, const Lever& lever, std::size_t persons) {
  for (const auto& [pointer, value] : lever.set.entries) {
    const std::size_t star = pointer.find('*');
    if (star == std::string::npos) {
      put(document, pointer, value);
      continue;
    }
    for (std::size_t i = 0; i < persons; ++i)
      put(document, pointer.substr(0, star) + fmt::format("{}", i) + pointer.substr(star + 1), value);
  }
}

// People whose hands neither clothing nor gloves cover.
std::vector<std::size_t> bare_handed(const ValidScenario& scenario) {
  constexpr std::size_t hands = 3;  // of an Ensemble's segments
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < scenario.scenario.crew.size(); ++i)
    if (!(find_gloves(scenario.scenario.crew[i].gloves)->covered_fraction > 0) &&
        !(scenario.ensembles[i]->covered_fraction[hands] > 0))
      out.push_back(i);
  return out;
}

// Whether a raft with another floor would have the floor that this one has.
bool brings_floor_of(const Lever& lever, const ValidScenario& scenario) {
  if (!scenario.scenario.raft) return false;
  for (const auto& [pointer, value] : lever.set.entries)
    if (pointer == "/raft/floor") return std::get<std::string>(value) == word(scenario.scenario.raft->floor);
  return false;
}

double count_of(const LeverItem& item, const ValidScenario& scenario) {
  const double wanted = item.per_person * static_cast<double>(scenario.scenario.crew.size()) + item.in_all;
  if (!item.top_up) return wanted;
  return std::max(0.0, wanted - quantity_of(scenario.stock, find_item(item.kind)->role));
}

void add_items(Node& document, const Lever& lever, const ValidScenario& scenario) {
  if (lever.add.empty()) return;
  Node& stores = member_or_new(document, "stores", Node::Kind::object);
  Node& extra = member_or_new(stores, "extra", Node::Kind::array);
  for (const LeverItem& item : lever.add) {
    const double count = count_of(item, scenario);
    if (count <= 0) continue;
    Node entry = empty_object();
    entry.members.push_back({"kind", word_node(item.kind)});
    entry.members.push_back({"quantity", number_node(count)});
    extra.items.push_back(std::move(entry));
  }
}

const RaftKind* fitting_raft(const ValidScenario& scenario) {
  const RaftKind* best = nullptr;
  for (const RaftKind& raft : catalogue().rafts)
    if (raft.floor == scenario.scenario.raft->floor && raft.canopy == scenario.scenario.raft->canopy &&
        raft.pack == scenario.raft_kind->pack &&
        raft.capacity_persons >= static_cast<int>(scenario.scenario.crew.size()) &&
        (!best || raft.capacity_persons < best->capacity_persons))
      best = &raft;
  return best;
}

// The crew of one of two rafts: the first, third... or the second, fourth...
void keep_half(Node& document, std::size_t half) {
  Node& crew = *member(document, "crew");
  std::vector<Node> kept;
  for (std::size_t i = half; i < crew.items.size(); i += 2) kept.push_back(crew.items[i]);
  crew.items = std::move(kept);
}

// A file of the program's own format may hold rain of its own; an NDBC file never does.
bool no_rain(const ResolvedWeather& weather) {
  const auto* file = std::get_if<FileWeather>(&weather);
  if (file && file->kind == WeatherKind::csv) return false;
  return !(std::visit([](const auto& w) { return w.rain_mm_h; }, weather) > 0);
}

}  // namespace

namespace {

const LeverList& all_levers() {
  static const LeverList all = read_embedded<LeverList>({embedded::levers});
  return all;
}

}  // namespace

const std::vector<Lever>& levers() {
  return all_levers().levers;
}

const std::vector<KitOffer>& kit_offers() {
  return all_levers().kit;
}

Lever doses_of(const KitOffer& offer, int doses) {
  Lever out = *std::find_if(levers().begin(), levers().end(),
                            [&](const Lever& each) { return each.key == offer.lever; });
  const double times = offer.dose * doses;
  for (LeverItem& item : out.add) {
    item.per_person *= times;
    item.in_all *= times;
  }
  return out;
}

Burden burden_of(const Lever& lever, const ValidScenario& scenario) {
  Burden burden{lever.mass_kg, lever.volume_L};
  const auto carry = [&burden](double count, double mass_kg, double volume_L, const std::string& title) {
    if (count <= 0) return;
    burden.mass_kg += count * mass_kg;
    burden.volume_L += count * volume_L;
    burden.items += fmt::format("{}{:g} x {}", burden.items.empty() ? "" : ", ", count, title);
  };
  for (const LeverItem& item : lever.add) {
    const ItemKind& kind = *find_item(item.kind);
    carry(count_of(item, scenario), kind.mass_kg, item.volume_L, kind.title);
  }
  if (lever.gloves) {
    const Covering& pair = *find_gloves(*lever.gloves);
    carry(static_cast<double>(bare_handed(scenario).size()), pair.mass_kg, lever.pair_volume_L, pair.title);
  }
  return burden;
}

std::variant<std::vector<ValidScenario>, NotApplicable> pull(const Lever& lever,
                                                             const ValidScenario& scenario) {
  const std::size_t persons = scenario.scenario.crew.size();
  const std::string name = fmt::format("{} with {}", scenario.file, lever.title);
  Node document = *scenario.document;
  if (lever.raft != LeverRaft::as_it_is && !scenario.scenario.raft) return NotApplicable{"there is no raft"};
  if (lever.needs_rain && no_rain(scenario.weather)) return NotApplicable{"no rain is in the weather"};
  if (lever.raft == LeverRaft::two && persons < 2) return NotApplicable{"one person cannot be parted"};
  if (lever.raft == LeverRaft::fitting) {
    const RaftKind* raft = fitting_raft(scenario);
    if (!raft)
      return NotApplicable{"no raft of the catalogue with this floor, canopy and pack holds the crew"};
    if (raft == scenario.raft_kind) return NotApplicable{"already done"};
    change_raft(document, raft->key);
  }
  if (brings_floor_of(lever, scenario)) return NotApplicable{"the raft has such a floor"};
  set_values(document, lever, persons);
  if (lever.gloves) {
    const std::vector<std::size_t> bare = bare_handed(scenario);
    if (bare.empty()) return NotApplicable{"nobody has bare hands"};
    for (const std::size_t i : bare) put(document, fmt::format("/crew/{}/gloves", i), *lever.gloves);
  }
  add_items(document, lever, scenario);

  std::vector<ValidScenario> parts;
  const std::size_t rafts = lever.raft == LeverRaft::two ? 2 : 1;
  for (std::size_t half = 0; half < rafts; ++half) {
    Node part = document;
    if (rafts == 2) keep_half(part, half);
    Validated validated = validate_document(std::move(part), name, scenario.folder);
    if (const auto* refused = std::get_if<Diagnostics>(&validated))
      return NotApplicable{fmt::format("{}: {}", refused->front().pointer, refused->front().message)};
    parts.push_back(std::move(std::get<ValidScenario>(validated)));
  }
  if (rafts == 1 && differences({&scenario, &parts.front()}).empty() &&
      differences_aboard({&scenario, &parts.front()}).empty())
    return NotApplicable{"already done"};
  return parts;
}

}  // namespace bide::scenario
