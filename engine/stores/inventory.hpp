// What the stores hold: quantities that run down, and gear that is there or not.
//
// States: Stock is the caller's state. Inputs: the items of a validated scenario, packs multiplied out and
// expired items removed. Validity: any. Source: the catalogue entries; energy per gram Atwater factors.
#pragma once

#include <vector>

#include "bide/core/scalar.hpp"
#include "bide/scenario/validate.hpp"

namespace bide::stores {

// Holds nothing but T: gathered lane by lane (core/scalar.hpp).
template <class T>
struct Stock {
  T water_L, food_kJ;
  T medicine_doses;
  T hand_flares, rockets;
  T lamp_h, beacon_h;
};

// Heat value of the food by what it is made of (sums to 1) and its salt; the mix does not change as it is
// eaten.
struct FoodMix {
  double carbohydrate = 0, fat = 0, protein = 0;
  double sodium_mmol_kJ = 0;
  bool operator==(const FoodMix&) const = default;
};

// Structural: the same in every lane.
struct Gear {
  bool desalinator = false;
  double desalinator_L_h = 0, desalinator_work_W = 0;  // the one of greatest output
  double still_area_m2 = 0;                            // all stills
  int bailers = 0, sponges = 0;
  double bailer_L = 0, sponge_L = 0;  // a stroke, the largest
  bool pump = false;
  FoodMix food;
  bool operator==(const Gear&) const = default;
};

// Sums by role. Throws std::invalid_argument for food that has energy and no stated composition: such a
// catalogue entry could not be served honestly.
Stock<double> opening_stock(const std::vector<scenario::StockItem>& items);
Gear gear_of(const std::vector<scenario::StockItem>& items);

Stock<double> opening_stock(const scenario::ValidScenario& scenario);
Gear gear_of(const scenario::ValidScenario& scenario);

}  // namespace bide::stores
