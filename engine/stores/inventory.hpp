// Content of the stores: quantities that run down, and gear.
//
// States: Stock is the caller's state. Inputs: the items of a validated scenario, packs multiplied out and
// expired items removed. Validity: any. Source: the catalogue entries; energy per gram Atwater factors.
#pragma once

#include <vector>

#include "bide/core/scalar.hpp"
#include "bide/scenario/validate.hpp"

namespace bide::stores {

// Quantities that run down, none negative. Every member is a T: gathered lane by lane (core/scalar.hpp).
template <class T>
struct Stock {
  T water_L, food_kJ;
  T medicine_doses;
  T hand_flares, rockets;
  T lamp_h, beacon_h;  // burning or sending time left
};

// Composition of the food; it does not change as food is eaten.
struct FoodMix {
  double carbohydrate = 0, fat = 0, protein = 0;  // shares of its energy, sum 1; all 0 without food
  double sodium_mmol_kJ = 0;
  bool operator==(const FoodMix&) const = default;
};

// What is aboard and does not run down. The same in every lane.
struct Gear {
  bool desalinator = false;
  double desalinator_L_h = 0, desalinator_work_W = 0;  // of the one with the greatest output
  double still_area_m2 = 0;                            // of all stills together
  double vessel_area_m2 = 0, vessel_holds_L = 0;       // of all rain vessels together
  int bailers = 0, sponges = 0;
  double bailer_L = 0, sponge_L = 0;  // in a stroke, of the largest
  bool pump = false;
  FoodMix food;
  bool operator==(const Gear&) const = default;
};

// Sums the items by role into quantities and into gear.
// @param items with packs multiplied out and expired items removed; quantities at least 0
// Throws std::invalid_argument for food that has energy and no stated composition.
Stock<double> opening_stock(const std::vector<scenario::StockItem>& items);
Gear gear_of(const std::vector<scenario::StockItem>& items);

// The same for the items of a scenario.
Stock<double> opening_stock(const scenario::ValidScenario& scenario);
Gear gear_of(const scenario::ValidScenario& scenario);

}  // namespace bide::stores
