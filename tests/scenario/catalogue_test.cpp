// The catalogue: keys hang together, every entry names its source, packs and clothing add up to what the
// publications say.
#include <doctest/doctest.h>

#include <cmath>
#include <numeric>
#include <set>

#include "bide/climate/month.hpp"
#include "bide/constants/routine.hpp"
#include "bide/scenario/resolve.hpp"
#include "bide/scenario/sea_areas.hpp"
#include "scenario/support.hpp"

using namespace bide::scenario;
using doctest::Approx;
using nlohmann::json;

namespace {

double water_L(const std::vector<StockItem>& stock) {
  double sum = 0;
  for (const StockItem& item : stock) sum += item.kind->water_L * item.quantity;
  return sum;
}

double energy_kJ(const std::vector<StockItem>& stock) {
  double sum = 0;
  for (const StockItem& item : stock) sum += item.kind->energy_kJ * item.quantity;
  return sum;
}

ValidScenario aboard(const std::string& raft, const std::string& pack, int crew) {
  json scenario = test::minimal();
  scenario["raft"]["kind"] = raft;
  scenario["stores"]["pack"] = pack;
  scenario["crew"] = std::vector<json>(static_cast<std::size_t>(crew), scenario["crew"][0]);
  return test::valid(scenario);
}

template <class Kind>
void keys_and_sources(const std::vector<Kind>& kinds) {
  std::set<std::string> keys;
  for (const Kind& kind : kinds) {
    CAPTURE(kind.key);
    CHECK(keys.insert(kind.key).second);
    CHECK(kind.source.size() > 8);
    CHECK_FALSE(kind.title.empty());
  }
  CHECK_FALSE(keys.empty());
}

}  // namespace

TEST_CASE("keys are unique, sources are named, references exist") {
  keys_and_sources(catalogue().rafts);
  keys_and_sources(catalogue().packs);
  keys_and_sources(catalogue().ensembles);
  keys_and_sources(catalogue().gloves);
  keys_and_sources(catalogue().boots);
  keys_and_sources(catalogue().items);
  for (const RaftKind& raft : catalogue().rafts) CHECK(find_pack(raft.pack) != nullptr);
  for (const PackKind& pack : catalogue().packs)
    for (const PackItem& item : pack.items) {
      CAPTURE(item.item);
      CHECK(find_item(item.item) != nullptr);
    }
  CHECK(find_raft("no such raft") == nullptr);
}

TEST_CASE("packs belong to the capacity, not to the crew") {
  // SOLAS A: 1.5 L and 10,000 kJ a person of the capacity.
  for (const int crew : {2, 6}) {
    CHECK(water_L(aboard("solas_6", "solas_a", crew).stock) == Approx(9.0));
    CHECK(energy_kJ(aboard("solas_6", "solas_a", crew).stock) == Approx(60000));
  }
  CHECK(water_L(aboard("solas_25", "solas_a", 4).stock) == Approx(37.5));
  // SOLAS B: neither water nor food.
  CHECK(water_L(aboard("solas_25", "solas_b", 4).stock) == 0);
  CHECK(energy_kJ(aboard("solas_25", "solas_b", 4).stock) == 0);
  CHECK(water_L(aboard("offshore_8", "iso_9650_more_than_24_h", 4).stock) == Approx(12.0));
  CHECK(water_L(aboard("offshore_8", "iso_9650_less_than_24_h", 4).stock) == 0);
}

TEST_CASE("SOLAS signals and gear by raft size") {
  const auto count = [](const std::string& raft, const std::string& pack, ItemRole role) {
    return quantity_of(aboard(raft, pack, 4).stock, role);
  };
  // A: 4 rockets, 6 hand flares, 2 smokes; B: 2, 3, 1 (public summaries of LSA Code 4.1.5).
  CHECK(count("solas_12", "solas_a", ItemRole::rocket) == 4);
  CHECK(count("solas_12", "solas_a", ItemRole::hand_flare) == 6);
  CHECK(count("solas_12", "solas_a", ItemRole::smoke) == 2);
  CHECK(count("solas_12", "solas_b", ItemRole::rocket) == 2);
  CHECK(count("solas_12", "solas_b", ItemRole::hand_flare) == 3);
  CHECK(count("solas_12", "solas_b", ItemRole::smoke) == 1);
  // One bailer up to 12 persons, two from 13.
  CHECK(count("solas_12", "solas_a", ItemRole::bailer) == 1);
  CHECK(count("solas_16", "solas_a", ItemRole::bailer) == 2);
  // Protective aids for a tenth of the capacity or two, the greater: 25 persons need 2.5, so 3.
  CHECK(count("solas_12", "solas_a", ItemRole::protective_aid) == 2);
  CHECK(count("solas_25", "solas_a", ItemRole::protective_aid) == 3);
  // Six doses a person.
  CHECK(count("solas_12", "solas_a", ItemRole::seasick_medicine) == 72);
}

TEST_CASE("a dose against seasickness lasts until the next is given") {
  // Doses are counted and given at one interval (constants/routine.hpp), whatever tablet they are.
  int kinds = 0;
  for (const ItemKind& item : catalogue().items)
    if (item.role == ItemRole::seasick_medicine) {
      CAPTURE(item.key);
      CHECK(item.hours == bide::constants::medicine_interval_h.value);
      ++kinds;
    }
  CHECK(kinds > 0);
}

TEST_CASE("extras add up and the expired are set apart") {
  json scenario = test::minimal();
  scenario["stores"] = {{"pack", "iso_9650_more_than_24_h"},
                        {"extra",
                         {{{"kind", "water_sachet_100_mL"}, {"quantity", 10}},
                          {{"kind", "water_L"}, {"quantity", 3}, {"expired", true}}}}};
  const ValidScenario valid = test::valid(scenario);
  CHECK(water_L(valid.stock) == Approx(4 * 1.5 + 1.0));
  CHECK(water_L(valid.expired) == Approx(3.0));
}

TEST_CASE("floor area and tube volume of each raft follow the capacity rule") {
  // LSA Code 4.2.3: 0.372 m2 of floor and 0.096 m3 of tube a person; two rings around a round floor.
  for (const RaftKind& raft : catalogue().rafts) {
    CAPTURE(raft.key);
    CHECK(raft.floor_area_m2 == Approx(0.372 * raft.capacity_persons).epsilon(1e-3));
    const double pi = 3.14159265358979, radius = std::sqrt(raft.floor_area_m2 / pi), d = raft.tube_diameter_m;
    const double volume = 2 * (pi * d * d / 4) * 2 * pi * (radius + d / 2);
    CHECK(volume == Approx(0.096 * raft.capacity_persons).epsilon(0.02));
  }
}

TEST_CASE("a ration's grams carry its energy") {
  const ItemKind& ration = *find_item("emergency_ration_10000_kJ");
  CHECK(ration.carbohydrate_g * 17 + ration.protein_g * 17 + ration.fat_g * 37 ==
        Approx(10000).epsilon(1e-3));
  CHECK(ration.protein_g * 17 == Approx(1500).epsilon(1e-2));  // 15 % of the energy
}

TEST_CASE("clothing by segment gives the whole-body insulation of the tables") {
  // Parallel sum over the segments of the 1971 body (areas in m2), bare parts included, with a still air
  // layer of 0.7 clo and an area factor 1 + 0.28 Icl (ISO 9920); then solved for the whole-body Icl.
  const std::array<double, 6> area{0.1326, 0.6804, 0.2536, 0.0946, 0.5966, 0.1299};
  const double clo = 0.155, air = 0.7;
  const auto whole_body_clo = [&](const Ensemble& e) {
    double conductance = 0, total = 0;
    for (std::size_t i = 0; i < area.size(); ++i) {
      const double icl = e.insulation_m2K_W[i] / clo, c = e.covered_fraction[i];
      conductance += area[i] * (c / (icl + air / (1 + 0.28 * icl)) + (1 - c) / air);
      total += area[i];
    }
    double low = 0, high = 6;
    for (int i = 0; i < 60; ++i) {
      const double middle = (low + high) / 2;
      (middle + air / (1 + 0.28 * middle) < total / conductance ? low : high) = middle;
    }
    return low;
  };
  // ISO 9920 summation over garment tables (second hand): 0.365, 0.88, 1.67 clo; list value 0.74 clo.
  CHECK(whole_body_clo(*find_ensemble("nude")) == Approx(0).epsilon(1e-6));
  CHECK(whole_body_clo(*find_ensemble("tropical")) == Approx(0.365).epsilon(0.01));
  CHECK(whole_body_clo(*find_ensemble("indoor")) == Approx(0.74).epsilon(0.01));
  CHECK(whole_body_clo(*find_ensemble("temperate_sailing")) == Approx(0.88).epsilon(0.01));
  CHECK(whole_body_clo(*find_ensemble("offshore_cold")) == Approx(1.67).epsilon(0.01));
}

TEST_CASE("soaked heavy clothing holds the measured water") {
  const Ensemble& heavy = *find_ensemble("offshore_cold");
  const double held = std::accumulate(heavy.water_capacity_kg.begin(), heavy.water_capacity_kg.end(), 0.0);
  CHECK(held >= 4.1);  // 4.1-4.5 kg, wet-clothing trials of 1958
  CHECK(held <= 4.5);
}

TEST_CASE("every named sea is at sea, and has a climate in every month") {
  for (const SeaArea& area : sea_areas().sea_areas) {
    CAPTURE(area.title);
    for (int month = 1; month <= 12; ++month) {
      const auto found = bide::climate::month_at({area.latitude_deg, area.longitude_deg}, month);
      if (const std::string* wrong = std::get_if<std::string>(&found)) FAIL_CHECK(*wrong);
    }
  }
  CHECK(find_sea_area("biscay") == find_sea_area("Biscay"));
  CHECK(find_sea_area("south_east_iceland") == find_sea_area("South-east Iceland"));
  CHECK(find_sea_area("Biscay ") == nullptr);
}
