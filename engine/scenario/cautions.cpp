#include "bide/scenario/cautions.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <string>

#include "bide/constants/boarding.hpp"
#include "bide/constants/first_minutes.hpp"
#include "bide/constants/injury.hpp"
#include "bide/constants/limits.hpp"
#include "bide/constants/people.hpp"
#include "bide/constants/swimming.hpp"
#include "bide/core/units.hpp"
#include "bide/scenario/document.hpp"
#include "bide/scenario/first_minutes.hpp"
#include "bide/scenario/limits.hpp"
#include "bide/scenario/month_weather.hpp"
#include "bide/scenario/other_raft.hpp"
#include "bide/scenario/resolve.hpp"
#include "bide/scenario/write.hpp"

namespace bide::scenario {
namespace {

struct Cautions {
  const ValidScenario& valid;
  Diagnostics out;
  void say(std::string pointer, std::string message) {
    out.push_back({valid.file, std::move(pointer), std::move(message)});
  }
};

// The letter by which results name a person: A, B ... Z, AA, AB ...
std::string letter(std::size_t index) {
  constexpr std::size_t letters = 26;
  std::string out;
  for (std::size_t n = index + 1; n > 0; n = (n - 1) / letters)
    out.insert(out.begin(), static_cast<char>('A' + (n - 1) % letters));
  return out;
}

// The value with as many decimals as it takes to tell it from the limits it lies outside of.
std::string outside_words(double value, double low, double high) {
  constexpr int most_decimals = 6;
  int decimals = 0;
  std::string out;
  do {
    out = fmt::format("{:.{}f}", value, decimals);
  } while (std::stod(out) >= low && std::stod(out) <= high && ++decimals <= most_decimals);
  return out;
}

void raft_and_pack(Cautions& c) {
  const Scenario& s = c.valid.scenario;
  if (!s.raft) return;
  const int capacity = s.raft->capacity_persons;
  if (static_cast<int>(s.crew.size()) > capacity)
    c.say("/crew",
          fmt::format("{} persons in a raft for {}: overloaded; floor space, freeboard and air are outside "
                      "what was measured",
                      s.crew.size(), capacity));
  const PackKind* pack = find_pack(s.stores.pack);
  if (pack && (capacity < pack->smallest_capacity_persons || capacity > pack->largest_capacity_persons))
    c.say("/stores/pack",
          fmt::format("{} is carried by rafts for {} to {} persons, not by one for {}", pack->key,
                      pack->smallest_capacity_persons, pack->largest_capacity_persons, capacity));
  if (s.stores.pack == "none" && c.valid.raft_kind && c.valid.raft_kind->pack != "none")
    c.say("/stores/pack",
          fmt::format("no pack, although such a raft usually carries {}", c.valid.raft_kind->pack));
}

void stores(Cautions& c) {
  const Scenario& s = c.valid.scenario;
  if (s.raft) {
    double water_L = 0;
    for (const StockItem& item : c.valid.stock) water_L += item.kind->water_L * item.quantity;
    if (!(water_L > 0)) c.say("/stores", "no drinking water is aboard");
  } else if (!s.stores.extra.empty()) {
    c.say("/stores/extra", "items are listed, but nobody reaches a raft: they are not used");
  }
  for (const StockItem& item : c.valid.expired)
    c.say("/stores/extra",
          fmt::format("expired and counted as absent: {:g} x {}", item.quantity, item.kind->title));
}

// What an injury or illness does, and what of it is not computed.
void injuries(Cautions& c, const Person& p, const std::string& here, const std::string& name) {
  namespace k = constants;
  if (p.injured) c.say(here + "/injured", name + " is injured: the measurements are of the unhurt");
  if (p.blood_loss_pct > 0) {
    const bool two = p.blood_loss_pct >= k::blood_class_two_pct,
               edge = p.blood_loss_pct >= k::blood_class_three_pct;
    c.say(
        here + "/blood_loss_pct",
        fmt::format("{} has lost {:g} % of all blood, class {}: computed are water, salt and oxygen uptake; "
                    "not computed are shock, shivering weaker than oxygen uptake explains, and bleeding that "
                    "goes on{}",
                    name, p.blood_loss_pct, two ? "II" : "I",
                    edge ? "; any more is class III: pressure falls and people are confused" : ""));
  }
  if (p.burned_pct > 0)
    c.say(here + "/burned_pct",
          fmt::format("{} has burns of {:g} % of the skin: computed are water and heat that evaporate from "
                      "them; not computed are shock, infection and the heat made from the second day on",
                      name, p.burned_pct));
  if (p.fever_K > 0)
    c.say(here + "/fever_K",
          fmt::format(
              "{} has a fever of {:g} K, taken to last: computed are set point and resting heat, and a "
              "core of up to {:g} °C counts as fever, not as heat; not computed are what causes it, "
              "how ill it makes, its sweats (some {:g} L a day above {:g} °C) and the protein it wastes",
              name, p.fever_K,
              own_core_level(ByPerson::fevered, c.valid.scenario.limits.able_core_high_degC, 0.0, p.fever_K),
              k::fever_sweat_L_day.value, k::fever_sweat_from_degC.value));
  if (p.hands != Hands::sound)
    c.say(here + "/hands",
          fmt::format("{} has hurt hands: cannot open sachets or use signals{}; give these "
                      "tasks to somebody else",
                      name, p.hands == Hands::useless ? ", pump, bail or close entrances" : ""));
  if (!p.fit_for_work)
    c.say(here + "/fit_for_work", name +
                                      " is unfit for work: cannot pump or bail; pain and fractures "
                                      "themselves are not computed");
}

// Where the fat is left out it follows from the body mass index, which has a caution of its own.
void lean_index(Cautions& c, const Person& p, const std::string& pointer, const std::string& name,
                double bmi) {
  namespace k = constants;
  const auto& defaults = c.valid.defaults;
  if (p.age_years < k::youngest_measured_years ||
      std::find(defaults.begin(), defaults.end(), pointer) != defaults.end())
    return;
  const double lean = bmi * (1 - p.body_fat_pct / pct);
  const double least = k::least_lean_index_kg_m2, most = k::greatest_lean_index_kg_m2;
  if (lean < least || lean > most)
    c.say(
        pointer,
        fmt::format("{} has {:g} % body fat at a body mass index of {:.3g} kg/m²: {} kg/m² of it is not fat; "
                    "people have {:g} to {:g} (recalled)",
                    name, p.body_fat_pct, bmi, outside_words(lean, least, most), least, most));
}

void people(Cautions& c) {
  namespace k = constants;
  constexpr double thin_bmi = 16, heavy_bmi = 40;  // ends of the class names used for adults, from memory
  const std::vector<Person>& crew = c.valid.scenario.crew;
  for (std::size_t i = 0; i < crew.size(); ++i) {
    const Person& p = crew[i];
    const std::string here = child("/crew", i), name = "Person " + letter(i);
    if (p.age_years < k::youngest_measured_years)
      c.say(here + "/age_years", fmt::format("{} is under {}: the measurements are of adults", name,
                                             k::youngest_measured_years.value));
    if (p.age_years > k::oldest_measured_years)
      c.say(here + "/age_years", fmt::format("{} is over {}: hardly anybody of that age was measured", name,
                                             k::oldest_measured_years.value));
    injuries(c, p, here, name);
    if (!p.lifejacket && c.valid.scenario.boarding.kind != BoardingKind::dry)
      c.say(
          here + "/lifejacket",
          fmt::format("{} is in the water without a lifejacket: for how long people keep afloat was measured "
                      "on adults who swam for 30 to 90 min in water of 5 to {:g} °C; children count as "
                      "adults, and above {:g} °C only the body's sugar counts",
                      name, k::swim_warmest_degC.value, k::swim_no_cold_degC.value));
    if (p.body_fat_pct < k::leanest_measured_pct || p.body_fat_pct > k::fattest_measured_pct)
      c.say(here + "/body_fat_pct",
            fmt::format("{} has {} % body fat: outside {:g} to {:g} %, which was measured", name,
                        outside_words(p.body_fat_pct, k::leanest_measured_pct, k::fattest_measured_pct),
                        k::leanest_measured_pct.value, k::fattest_measured_pct.value));
    const double bmi = p.mass_kg / (p.height_m * p.height_m);
    if (bmi < thin_bmi || bmi > heavy_bmi)
      c.say(here + "/mass_kg", fmt::format("{} has a body mass index of {} kg/m²: outside {:g} to {:g}", name,
                                           outside_words(bmi, thin_bmi, heavy_bmi), thin_bmi, heavy_bmi));
    lean_index(c, p, here + "/body_fat_pct", name, bmi);
    if (p.lost_in_first_minutes)
      c.say(here + "/lost_in_first_minutes",
            name + " is lost in the first minutes in the water: stated or drawn, not computed");
    if (p.blood_alcohol_mg_dL > 0)
      c.say(here + "/blood_alcohol_mg_dL",
            name + " has drunk alcohol: its effect on heat loss varies widely");
  }
}

void weather(Cautions& c) {
  namespace k = constants;
  const auto outside = [&](const char* key, double value, double low, double high) {
    if (value < low || value > high)
      c.say(fmt::format("/weather/{}", key),
            fmt::format("{:g} °C is outside {:g} to {:g} °C, for which rafts are made", value, low, high));
  };
  const auto look = [&](const auto& w) {
    if constexpr (requires { w.air_temperature_degC; }) {
      outside("air_temperature_degC", w.air_temperature_degC, k::raft_air_low_degC, k::raft_air_high_degC);
      outside("water_temperature_degC", w.water_temperature_degC, k::raft_sea_low_degC,
              k::raft_sea_high_degC);
    }
  };
  std::visit(look, c.valid.weather);
}

void routine(Cautions& c) {
  const Scenario& s = c.valid.scenario;
  if (!s.raft || s.raft->canopy == CanopyKind::none) return;
  const Routine& r = s.routine;
  if (!(r.minimum_opening_m2 > 0))
    c.say("/routine/minimum_opening_m2",
          "openings may be shut altogether: carbon dioxide can then rise to a harmful "
          "level within an hour in calm; keep some opening at all times");
  else if (r.minimum_opening_m2 > s.raft->opening_area_m2)
    c.say("/routine/minimum_opening_m2",
          "the minimum opening is larger than all entrances together: they stay open");
}

// The default opening is that of mild weather.
void opening_in_the_cold(Cautions& c) {
  const Scenario& s = c.valid.scenario;
  constexpr const char* opening = "/routine/opening_fraction_day";
  if (!s.raft || s.raft->canopy == CanopyKind::none || !is_default(c.valid, opening)) return;
  const auto look = [&](const auto& w) {
    if constexpr (requires { w.air_temperature_degC; }) {
      if (w.air_temperature_degC < closed_up_degC)
        c.say(opening,
              fmt::format(
                  "by default {:g} of the entrances is open by day, in air of {:g} °C; new scenarios take "
                  "{:g} there. Less open is warmer inside, and carbon dioxide is higher",
                  s.routine.opening_fraction_day, w.air_temperature_degC,
                  usual_opening_by_day(w.air_temperature_degC)));
    }
  };
  std::visit(look, c.valid.weather);
}

// Of a raft that is drawn while the pack is not.
void pack_of_drawn_raft(Cautions& c, const Uncertain& u) {
  std::vector<Value> kinds;
  bool pack_drawn = false;
  const auto look = [&](const std::string& pointer, const std::vector<Value>& values) {
    if (pointer == "/stores/pack") pack_drawn = true;
    if (pointer == "/raft/kind") kinds.insert(kinds.end(), values.begin(), values.end());
  };
  for (const auto& [pointer, distribution] : u.inputs.entries) look(pointer, distribution.values);
  for (const SharedInput& group : u.groups)
    for (const std::string& pointer : group.pointers) look(pointer, group.distribution.values);
  if (pack_drawn || !c.valid.raft_kind) return;
  for (const Alternative& one : u.alternatives) {
    const auto sets = [&](std::string_view pointer) {
      const auto& all = one.set.entries;
      const auto at =
          std::find_if(all.begin(), all.end(), [&](const auto& each) { return each.first == pointer; });
      return at == all.end() ? nullptr : &at->second;
    };
    if (const Value* kind = sets("/raft/kind"); kind && !sets("/stores/pack")) kinds.push_back(*kind);
  }
  std::set<std::string> said{""};
  for (const Value& kind : kinds) {
    const auto* key = std::get_if<std::string>(&kind);
    const RaftKind* raft = key ? find_raft(*key) : nullptr;
    if (!raft || raft == c.valid.raft_kind) continue;
    const std::string words = pack_words(c.valid.scenario, *raft);
    if (said.insert(words).second) c.say("/stores/pack", words);
  }
}

// A share that is stated counts as it is; this says where nothing stands behind it.
void first_minutes(Cautions& c, const Uncertain& u) {
  if (!u.lost_in_first_minutes) return;
  constexpr const char* here = "/uncertain/lost_in_first_minutes";
  if (!may_enter_water(c.valid.scenario)) c.say(here, "nobody enters the water here: it counts for nothing");
  const auto look = [&](const auto& w) {
    if constexpr (requires { w.water_temperature_degC; }) {
      if (w.water_temperature_degC >= constants::cold_shock_below_degC)
        c.say(here,
              fmt::format("the water is at {:g} °C: cold shock is published for water below {:g} °C; the "
                          "share counts as stated",
                          w.water_temperature_degC, constants::cold_shock_below_degC.value));
    }
  };
  std::visit(look, c.valid.weather);
}

void uncertain(Cautions& c) {
  const std::optional<Uncertain>& u = c.valid.scenario.uncertain;
  if (!u) return;
  c.say("/uncertain", "a single run uses the values as written and leaves this aside");
  pack_of_drawn_raft(c, *u);
  first_minutes(c, *u);
}

}  // namespace

Diagnostics cautions_of(const ValidScenario& valid) {
  Cautions c{valid, {}};
  raft_and_pack(c);
  stores(c);
  people(c);
  weather(c);
  routine(c);
  opening_in_the_cold(c);
  uncertain(c);
  return std::move(c.out);
}

}  // namespace bide::scenario
