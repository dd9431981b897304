#include "bide/core/text.hpp"

#include <doctest/doctest.h>

#include "bide/core/people.hpp"
#include "bide/core/printable.hpp"

using namespace bide;

TEST_CASE("split: one part more than there are separators") {
  CHECK(split("a,b,,c", ',') == std::vector<std::string>{"a", "b", "", "c"});
  CHECK(split("", ',') == std::vector<std::string>{""});
  CHECK(split("a,", ',') == std::vector<std::string>{"a", ""});
}

// As columns of a spreadsheet are named.
TEST_CASE("people are lettered A to Z, then AA") {
  CHECK(person_label(0) == "Person A");
  CHECK(person_label(25) == "Person Z");
  CHECK(person_label(26) == "Person AA");
  CHECK(person_label(27) == "Person AB");
  CHECK(person_label(51) == "Person AZ");
  CHECK(person_label(701) == "Person ZZ");
  CHECK(person_label(702) == "Person AAA");
  CHECK(crew_letters(-1, 'a').empty());
}

// E9 is an e with an acute accent in Latin 1; alone it begins a letter of three bytes in UTF-8.
TEST_CASE("the first byte that is not UTF-8 is named") {
  CHECK(why_not_utf8("caf\xE9").value() == "found byte 0xE9 at offset 3, which is not UTF-8");
  CHECK_FALSE(why_not_utf8("caf\xC3\xA9"));
}
