#include "bide/stores/inventory.hpp"

#include <algorithm>
#include <stdexcept>

#include "bide/constants/stores.hpp"

namespace bide::stores {

using scenario::ItemKind;
using scenario::ItemRole;
using scenario::StockItem;

namespace {

// Whole pieces: half a bailer is none.
int pieces(double quantity) {
  return static_cast<int>(quantity);
}

// kJ of one unit by its grams.
FoodMix heat_of_grams(const ItemKind& kind) {
  return {kind.carbohydrate_g * constants::food_carbohydrate_kJ_g, kind.fat_g * constants::food_fat_kJ_g,
          kind.protein_g * constants::food_protein_kJ_g, 0};
}

}  // namespace

Stock<double> opening_stock(const std::vector<StockItem>& items) {
  Stock<double> stock{};
  for (const StockItem& item : items) {
    const ItemKind& kind = *item.kind;
    stock.water_L += item.quantity * kind.water_L;
    stock.food_kJ += item.quantity * kind.energy_kJ;
    switch (kind.role) {
      case ItemRole::seasick_medicine:
        stock.medicine_doses += item.quantity;
        break;
      case ItemRole::hand_flare:
        stock.hand_flares += item.quantity;
        break;
      case ItemRole::rocket:
        stock.rockets += item.quantity;
        break;
      case ItemRole::lamp:
        stock.lamp_h += item.quantity * kind.hours;
        break;
      case ItemRole::beacon:
        stock.beacon_h += item.quantity * kind.hours;
        break;
      default:
        break;
    }
  }
  return stock;
}

Gear gear_of(const std::vector<StockItem>& items) {
  Gear gear;
  double stated_kJ = 0;  // by grams, all food together
  double energy_kJ = 0;
  for (const StockItem& item : items) {
    const ItemKind& kind = *item.kind;
    if (!(item.quantity > 0)) continue;
    if (kind.energy_kJ > 0) {
      const FoodMix heat = heat_of_grams(kind);
      const double unit_kJ = heat.carbohydrate + heat.fat + heat.protein;
      if (!(unit_kJ > 0))
        throw std::invalid_argument("food without carbohydrate, fat or protein: " + kind.key);
      // Shares of the stated energy: labels round, so grams and energy agree only within a few per cent.
      const double whole = item.quantity * kind.energy_kJ / unit_kJ;
      gear.food.carbohydrate += whole * heat.carbohydrate;
      gear.food.fat += whole * heat.fat;
      gear.food.protein += whole * heat.protein;
      gear.food.sodium_mmol_kJ += item.quantity * kind.sodium_mmol;
      stated_kJ += whole * unit_kJ;
      energy_kJ += item.quantity * kind.energy_kJ;
    }
    switch (kind.role) {
      case ItemRole::desalinator:
        if (pieces(item.quantity) > 0 && kind.output_L_h > gear.desalinator_L_h) {
          gear.desalinator = true;
          gear.desalinator_L_h = kind.output_L_h;
          gear.desalinator_work_W = kind.work_W;
        }
        break;
      case ItemRole::solar_still:
        gear.still_area_m2 += pieces(item.quantity) * kind.area_m2;
        break;
      case ItemRole::rain_vessel:
        gear.vessel_area_m2 += pieces(item.quantity) * kind.area_m2;
        gear.vessel_holds_L += pieces(item.quantity) * kind.holds_L;
        break;
      case ItemRole::bailer:
        gear.bailers += pieces(item.quantity);
        gear.bailer_L = std::max(gear.bailer_L, kind.bail_L);
        break;
      case ItemRole::sponge:
        gear.sponges += pieces(item.quantity);
        gear.sponge_L = std::max(gear.sponge_L, kind.bail_L);
        break;
      case ItemRole::pump:
        gear.pump = true;
        break;
      default:
        break;
    }
  }
  if (energy_kJ > 0) {
    gear.food.carbohydrate /= stated_kJ;
    gear.food.fat /= stated_kJ;
    gear.food.protein /= stated_kJ;
    gear.food.sodium_mmol_kJ /= energy_kJ;
  }
  return gear;
}

Stock<double> opening_stock(const scenario::ValidScenario& scenario) {
  return opening_stock(scenario.stock);
}
Gear gear_of(const scenario::ValidScenario& scenario) {
  return gear_of(scenario.stock);
}

}  // namespace bide::stores
