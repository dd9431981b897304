// The search on made-up targets whose answers follow by hand or by trying every kit.
#include "bide/study/search/least_kit.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "bide/core/random.hpp"
#include "bide/study/sampling/distribution.hpp"

using namespace bide;
using study::Kit;
using study::KitItem;

namespace {

// Tries every kit; empty where none meets the target.
std::optional<Kit> least_of_all(const std::vector<KitItem>& items, const study::KitSearch::Meets& meets) {
  std::optional<Kit> least;
  Kit kit(items.size(), 0);
  for (std::size_t i = 0; i < kit.size();) {
    if (meets(kit) && (!least || cost_of(items, kit) < cost_of(items, *least))) least = kit;
    // The next one, as an odometer counts.
    for (i = 0; i < kit.size() && kit[i] == items[i].most; ++i) kit[i] = 0;
    if (i < kit.size()) ++kit[i], i = 0;
  }
  return least;
}

}  // namespace

// A need of 10 L with a standard deviation of 1.5 L, bought in half litres, at 95 %: 10 + 1.6449 x 1.5
// = 12.47 L, so 25 of them (0.9522), since 24 give 0.9088.
TEST_CASE("half litres against a normal need") {
  const auto enough = [](const Kit& kit) {
    const double reach = (kit[0] * 0.5 - 10) / 1.5;
    return std::erfc(-reach / std::sqrt(2.0)) / 2 >= 0.95;
  };
  study::KitSearch search({{40, {0.5, 0.5, 1}, true}}, {}, enough);
  CHECK(search.next() == Kit{25});
}

// At least three of n flares burn, each with a chance of 0.74: 5 give 0.893, 6 give 0.963.
TEST_CASE("flares of which some fail") {
  const auto enough = [](const Kit& kit) {
    double fewer_than_three = 0;
    for (int good = 0; good < 3; ++good)
      fewer_than_three += std::tgamma(kit[0] + 1) / std::tgamma(good + 1) / std::tgamma(kit[0] - good + 1) *
                          std::pow(0.74, good) * std::pow(0.26, kit[0] - good);
    return kit[0] >= 3 && 1 - fewer_than_three >= 0.95;
  };
  study::KitSearch search({{20, {0.25, 0.1, 1}, true}}, {}, enough);
  CHECK(search.next() == Kit{6});
}

// Ten items, up to three of each: 4^10 kits. A kit meets the target when its good outweighs a need; an item
// that may harm takes away beyond one dose.
TEST_CASE("the search finds what trying every kit finds, with far fewer trials") {
  for (std::uint64_t made = 0; made < 4; ++made) {
    std::vector<KitItem> items;
    std::vector<double> good;
    for (std::uint32_t i = 0; i < 10; ++i) {
      items.push_back({3, {0.1 + uniform(made, i, 1, 0), uniform(made, i, 2, 0), 1}, i < 7});
      good.push_back(uniform(made, i, 3, 0));
    }
    const auto meets = [&](const Kit& kit) {
      double sum = 0;
      for (std::size_t i = 0; i < kit.size(); ++i)
        sum += i < 7 ? good[i] * kit[i] : good[i] * (kit[i] == 1 ? 1 : -0.5 * kit[i]);
      return sum >= 4 + static_cast<double>(made);
    };
    const auto least = least_of_all(items, meets);
    std::size_t trials = 0;
    study::KitSearch search(items, {}, [&](const Kit& kit) {
      ++trials;
      return meets(kit);
    });
    const auto found = search.next();
    REQUIRE(found);
    CHECK(found == least);
    constexpr std::size_t all = 1048576;  // 4^10
    CHECK(trials < all / 20);
    // The next one has less of something.
    const auto second = search.next();
    REQUIRE(second);
    CHECK(meets(*second));
    CHECK_FALSE(std::equal(second->begin(), second->end(), found->begin(), std::greater_equal<>()));
  }
}

TEST_CASE("limits of weight and room hold, and nothing is found where nothing meets the target") {
  const std::vector<KitItem> items{{5, {1, 10, 1}, true}, {5, {2, 1, 1}, true}};
  const auto three = [](const Kit& kit) { return kit[0] + kit[1] >= 3; };
  study::KitSearch free(items, {}, three);
  CHECK(free.next() == Kit{3, 0});  // 3 kg, 30 L
  study::KitSearch roomless(items, {100, 12}, three);
  CHECK(roomless.next() == Kit{1, 2});  // 5 kg, 12 L
  study::KitSearch light(items, {4, 12}, three);
  CHECK_FALSE(light.next());
  study::KitSearch hopeless(items, {}, [](const Kit&) { return false; });
  CHECK_FALSE(hopeless.next());
}

TEST_CASE("of kits of one weight the smaller is taken, of one size that with fewer doses") {
  const auto enough = [](const Kit& kit) { return kit[0] + kit[1] >= 1; };
  study::KitSearch by_room({{1, {1, 3, 1}, true}, {1, {1, 2, 1}, true}}, {}, enough);
  CHECK(by_room.next() == Kit{0, 1});
  const auto two_or_one = [](const Kit& kit) { return kit[0] >= 2 || kit[1] >= 1; };
  study::KitSearch by_count({{2, {1, 1, 1}, true}, {1, {2, 2, 1}, true}}, {}, two_or_one);
  CHECK(by_count.next() == Kit{0, 1});
}

TEST_CASE("a dose that costs nothing is refused") {
  CHECK_THROWS_AS(study::KitSearch({{1, {0, 0, 0}, true}}, {}, [](const Kit&) { return true; }),
                  std::invalid_argument);
}
