#include "bide/scenario/nearest.hpp"

#include <doctest/doctest.h>

using bide::scenario::did_you_mean;
using bide::scenario::edit_distance;

TEST_CASE("edit distance: textbook pairs") {
  CHECK(edit_distance("kitten", "sitting") == 3);  // the usual textbook pair
  CHECK(edit_distance("", "abc") == 3);
  CHECK(edit_distance("abc", "abc") == 0);
  CHECK(edit_distance("mas_kg", "mass_kg") == 1);
  CHECK(edit_distance("masks", "maksk") == 2);
  CHECK(edit_distance("ab", "ba") == 1);  // a swap counts once
}

TEST_CASE("the nearest word is offered only when it is near") {
  CHECK(did_you_mean("ofshore", {"coastal", "offshore"}) == "; did you mean \"offshore\"?");
  CHECK(did_you_mean("zzzzzz", {"coastal", "offshore"}).empty());
  CHECK(did_you_mean(std::string(5000, 'a'), {"coastal"}).empty());
  CHECK(did_you_mean("a", {}).empty());
}
