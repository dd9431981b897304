// Generic rafts, packs, ensembles, foods and gear by kind and capacity, never by make.
//
// The data lie in scenarios/catalogue/*.json, compiled into the program (so `bide` needs no data folder) and
// each entry carries its published source or its mark. Lookup by key; errors name the nearest key.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "bide/scenario/scenario.hpp"

namespace bide::scenario {

struct RaftKind {
  std::string key, title, source;
  int capacity_persons = 0;
  FloorKind floor = FloorKind::single;
  CanopyKind canopy = CanopyKind::one_skin;
  double floor_area_m2 = 0, canopy_height_m = 0, tube_diameter_m = 0, opening_area_m2 = 0,
         rain_catch_area_m2 = 0;
  std::string pack;  // the pack it usually carries
};

// Quantity of an item in a pack: see pack_quantity().
struct PackItem {
  std::string item;
  double per_person = 0, per_raft = 0;
  double at_least = 0;              // never fewer
  double more_from_13_persons = 0;  // added for a capacity of 13 and above
};
// Quantity in the pack of a raft: the larger of `at_least` and per_person x capacity + per_raft
// (+ more_from_13_persons), in whole units.
// @param item             of the pack
// @param capacity_persons of the raft, at least 1
double pack_quantity(const PackItem& item, int capacity_persons);

struct PackKind {
  std::string key, title, source;
  int smallest_capacity_persons = 0, largest_capacity_persons = 0;
  std::vector<PackItem> items;
};

// Clothing by body segment in the order head, trunk, arms, hands, legs, feet.
struct Ensemble {
  std::string key, title, source;
  std::array<double, 6> covered_fraction{};  // of the segment's skin
  std::array<double, 6> insulation_m2K_W{};  // dry intrinsic, of the covered part
  std::array<double, 6> mass_kg{};
  std::array<double, 6> water_capacity_kg{};  // content when soaked and drained
  double vapour_permeability_index = 0;       // i_m, ISO 9920
  bool waterproof = false;                    // stays dry inside when immersed
  double immersed_insulation_m2K_W = 0;       // whole body, soaked or compressed, water film excluded
};

// Gloves or boots: worn in place of what an ensemble has on hands or feet, unless that is the warmer.
struct Covering {
  std::string key, title, source;
  double covered_fraction = 0;  // of the segment's skin
  double insulation_m2K_W = 0;  // dry intrinsic, of the covered part
  double mass_kg = 0;
  double water_capacity_kg = 0;  // content when soaked and drained
};

enum class ItemRole {
  water,
  food,
  seasick_medicine,
  desalinator,
  solar_still,
  protective_aid,
  foam_pad,
  bailer,
  sponge,
  pump,
  hand_flare,
  rocket,
  smoke,
  lamp,
  beacon,
  torch,
  first_aid,
  repair,
  rain_vessel,
  other
};

// Whether it burns once.
constexpr bool is_pyrotechnic(ItemRole role) {
  return role == ItemRole::hand_flare || role == ItemRole::rocket || role == ItemRole::smoke;
}

struct ItemKind {
  std::string key, title, source;
  ItemRole role = ItemRole::other;
  double water_L = 0;                                                                   // per unit
  double energy_kJ = 0, carbohydrate_g = 0, fat_g = 0, protein_g = 0, sodium_mmol = 0;  // per unit
  double output_L_h = 0;  // desalinator, still (L per MJ/m2 for a still: area below)
  double area_m2 = 0;     // still, rain vessel
  double holds_L = 0;     // rain vessel
  double work_W = 0;      // mechanical, of the worker
  double burn_s = 0;      // flares, smoke
  double hours = 0;       // lamps, beacons, torch
  double light_cd = 0;    // luminous intensity
  double light_at_m = 0;  // height of the light above the sea
  double bail_L = 0;      // per stroke; sponge: litres it takes up
  double mass_kg = 0;
};

struct Catalogue {
  std::vector<RaftKind> rafts;
  std::vector<PackKind> packs;
  std::vector<Ensemble> ensembles;
  std::vector<Covering> gloves, boots;
  std::vector<ItemKind> items;
};

const Catalogue& catalogue();

const RaftKind* find_raft(std::string_view key);
const PackKind* find_pack(std::string_view key);
const Ensemble* find_ensemble(std::string_view key);
const Covering* find_gloves(std::string_view key);
const Covering* find_boots(std::string_view key);
const ItemKind* find_item(std::string_view key);

}  // namespace bide::scenario
