// Bytes of a good file changed, dropped and doubled at random: the answer is a scenario or a list, never a
// crash.
#include <doctest/doctest.h>

#include <random>

#include "scenario/support.hpp"

using namespace bide::scenario;

TEST_CASE("random damage is refused or harmless") {
  const std::string good = test::text_of(test::source("tests/scenario/full.json"));
  std::mt19937 random(20310203);  // one fixed stream: the same damage every time
  const auto below = [&](std::size_t n) {
    return std::uniform_int_distribution<std::size_t>(0, n - 1)(random);
  };
  const std::string spice = "{}[]\",:0-eE.\\u\xFF\xC3 \n";
  int refused = 0, accepted = 0;
  for (int k = 0; k < 3000; ++k) {
    std::string text = good;
    for (std::size_t hits = 1 + below(3); hits > 0; --hits) {
      const std::size_t at = below(text.size());
      switch (below(4)) {
        case 0:
          text[at] = spice[below(spice.size())];
          break;
        case 1:
          text.erase(at, 1 + below(5));
          break;
        case 2:
          text.insert(at, text.substr(below(text.size()), below(40)));
          break;
        default:
          text.resize(std::max<std::size_t>(at, 1));
          break;
      }
    }
    const Validated result = validate_text(text, "s.json", test::source("tests/scenario"));
    if (const auto* wrong = std::get_if<Diagnostics>(&result)) {
      REQUIRE_FALSE(wrong->empty());
      ++refused;
    } else {
      REQUIRE_FALSE(std::get<ValidScenario>(result).scenario.crew.empty());
      ++accepted;
    }
  }
  CHECK(refused > 2000);
  CHECK(accepted > 10);  // some damage lies in titles or digits, and leaves a good file
}
