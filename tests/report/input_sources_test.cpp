// Where the numbers behind inputs come from, in words.
#include "bide/report/words/input_sources.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "bide/core/sourced.hpp"
#include "bide/scenario/write.hpp"

using bide::Sourced;
using bide::Trust;
using bide::report::input_sources;
using bide::report::reference_words;
using bide::report::source_words;

TEST_CASE("a number is told with its spread, its place, how it reached us, and its source") {
  CHECK(source_words(Sourced{10, "min", "", "alongside in a sea", Trust::judgement, 3, 30}) ==
        "10 min (3 to 30 min): alongside in a sea; our own estimate, no source.");
  CHECK(source_words(Sourced{0.1, "h", "", "at once", Trust::common_practice}) ==
        "0.1 h: at once; common practice, no source.");
  CHECK(source_words(Sourced{-1, "degC", "lsacode", "1.2.2", Trust::seen}) ==
        "-1 °C: 1.2.2; read in the source: International Maritime Organization, International Life-Saving "
        "Appliance "
        "(LSA) Code.");
  CHECK(source_words(Sourced{0.5, "-", "", "a share", Trust::judgement}) ==
        "0.5: a share; our own estimate, no source.");
}

TEST_CASE("a reference is told by author, title and year; an unknown key by itself") {
  CHECK(reference_words("bouchama2002") == "Bouchama, A. and Knochel, J. P., Heat stroke, 2002");
  CHECK(reference_words("nobody1900") == "nobody1900");
}

TEST_CASE("every input with a source is a field of a scenario, and every source says how it reached us") {
  const auto fields = bide::scenario::field_lines();
  const auto inputs = bide::report::inputs_with_sources();
  CHECK(inputs.size() > 30);
  for (const std::string& pointer : inputs) {
    CAPTURE(pointer);
    CHECK(std::any_of(fields.begin(), fields.end(),
                      [&](const auto& field) { return field.pointer == pointer; }));
    const auto sources = input_sources(pointer);
    CHECK_FALSE(sources.empty());
    for (const std::string& each : sources) {
      CAPTURE(each);
      CHECK(each.ends_with('.'));
      CHECK(each.find("degC") == std::string::npos);
    }
  }
  CHECK(input_sources("/duration_h").empty());
  CHECK(input_sources("/crew/*/sex").front().starts_with("Where nobody knows it: Judgement"));
}
