#include "bide/core/digits.hpp"

#include <doctest/doctest.h>

using bide::with_thousands;

TEST_CASE("digits are grouped in threes before the point") {
  CHECK(with_thousands("") == "");
  CHECK(with_thousands("999") == "999");
  CHECK(with_thousands("1000") == "1,000");
  CHECK(with_thousands("15000") == "15,000");
  CHECK(with_thousands("-123456") == "-123,456");
  CHECK(with_thousands("-1234.5678") == "-1,234.5678");
}
