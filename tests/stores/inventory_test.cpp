#include "bide/stores/inventory.hpp"

#include <doctest/doctest.h>

#include <stdexcept>

#include "support/lanes.hpp"

using namespace bide;
using namespace bide::stores;
using doctest::Approx;
using scenario::ItemKind;
using scenario::ItemRole;
using scenario::StockItem;

namespace {

ItemKind kind(ItemRole role) {
  ItemKind k;
  k.key = "item";
  k.role = role;
  return k;
}

ItemKind ration() {
  ItemKind k = kind(ItemRole::food);
  k.energy_kJ = 10000;
  // 52 / 33 / 15 % of 10,000 kJ at 17, 37 and 17 kJ/g.
  k.carbohydrate_g = 5200.0 / 17;
  k.fat_g = 3300.0 / 37;
  k.protein_g = 1500.0 / 17;
  k.sodium_mmol = 20;
  return k;
}

}  // namespace

TEST_CASE("a long-voyage pack for six: 9 L, 60,000 kJ, 36 doses") {
  ItemKind water = kind(ItemRole::water), dose = kind(ItemRole::seasick_medicine),
           lamp = kind(ItemRole::lamp);
  water.water_L = 0.1;
  lamp.hours = 12;
  const ItemKind food = ration(), flare = kind(ItemRole::hand_flare), rocket = kind(ItemRole::rocket);
  const Stock<double> s = opening_stock(std::vector<StockItem>{
      {&water, 15.0 * 6}, {&food, 6}, {&dose, 36}, {&lamp, 2}, {&flare, 6}, {&rocket, 4}});
  CHECK(s.water_L == Approx(1.5 * 6));
  CHECK(s.food_kJ == Approx(60000));
  CHECK(s.medicine_doses == 36);
  CHECK(s.lamp_h == 24);
  CHECK(s.hand_flares == 6);
  CHECK(s.rockets == 4);
  CHECK(s.beacon_h == 0);
  CHECK(opening_stock(std::vector<StockItem>{}).water_L == 0);
}

TEST_CASE("food mix by heat, weighted by energy") {
  const ItemKind food = ration();
  ItemKind sugar = kind(ItemRole::food);
  sugar.energy_kJ = 510;
  sugar.carbohydrate_g = 30;
  const FoodMix one = gear_of(std::vector<StockItem>{{&food, 2}}).food;
  CHECK(one.carbohydrate == Approx(0.52));
  CHECK(one.fat == Approx(0.33));
  CHECK(one.protein == Approx(0.15));
  CHECK(one.sodium_mmol_kJ == Approx(0.002));
  // 10,000 kJ of ration and 5,100 kJ of sugar: (5,200 + 5,100) / 15,100.
  const FoodMix two = gear_of(std::vector<StockItem>{{&food, 1}, {&sugar, 10}}).food;
  CHECK(two.carbohydrate == Approx(10300.0 / 15100));
  CHECK(two.carbohydrate + two.fat + two.protein == Approx(1));
  CHECK(gear_of(std::vector<StockItem>{}).food.fat == 0);
}

// Three stills of 0.4 m2; half a still is none.
TEST_CASE("solar stills add up by area") {
  ItemKind still = kind(ItemRole::solar_still);
  still.area_m2 = 0.4;
  CHECK(gear_of(std::vector<StockItem>{{&still, 3}}).still_area_m2 == Approx(1.2));
  CHECK(gear_of(std::vector<StockItem>{{&still, 0.5}}).still_area_m2 == 0);
}

// Two buckets of 0.057 m2 and 10 L; half a bucket is none.
TEST_CASE("rain vessels") {
  ItemKind bucket = kind(ItemRole::rain_vessel);
  bucket.area_m2 = 0.057;
  bucket.holds_L = 10;
  const Gear two = gear_of(std::vector<StockItem>{{&bucket, 2.5}});
  CHECK(two.vessel_area_m2 == Approx(0.114));
  CHECK(two.vessel_holds_L == Approx(20));
}

TEST_CASE("gear") {
  ItemKind small = kind(ItemRole::desalinator), large = kind(ItemRole::desalinator),
           bailer = kind(ItemRole::bailer);
  small.output_L_h = 1;
  small.work_W = 6.25;
  large.output_L_h = 4.5;
  large.work_W = 28.1;
  bailer.bail_L = 1.5;
  const ItemKind pump = kind(ItemRole::pump);
  const Gear g = gear_of(std::vector<StockItem>{{&small, 1}, {&large, 1}, {&bailer, 2}, {&pump, 1}});
  CHECK(g.desalinator);
  CHECK(g.desalinator_L_h == 4.5);
  CHECK(g.desalinator_work_W == 28.1);
  CHECK(g.bailers == 2);
  CHECK(g.bailer_L == 1.5);
  CHECK(g.sponges == 0);
  CHECK(g.pump);
  CHECK_FALSE(gear_of(std::vector<StockItem>{{&large, 0}}).desalinator);
}

TEST_CASE("what cannot be served honestly is refused") {
  ItemKind bare = kind(ItemRole::food);
  bare.energy_kJ = 100;
  CHECK_THROWS_AS(gear_of(std::vector<StockItem>{{&bare, 1}}), std::invalid_argument);
}

TEST_CASE("a stock is gathered and scattered lane by lane") {
  Stock<Lanes<4>> together{};
  for (int i = 0; i < 4; ++i) {
    Stock<double> one{};
    one.water_L = i;
    one.beacon_h = 10 * i;
    set_lane(together, i, one);
  }
  CHECK(lane(together, 3).water_L == 3);
  CHECK(lane(together, 2).beacon_h == 20);
  CHECK(lane(together, 2).food_kJ == 0);
}
