// Every described field, mutated: wrong type, below and above its range, left out, a near miss of its key.
#include <doctest/doctest.h>

#include "bide/scenario/describe_catalogue.hpp"
#include "scenario/support.hpp"

using namespace bide::scenario;
using nlohmann::json;

namespace counting {

// How many members an aggregate has: the most values its braces take.
struct Anything {
  template <class T>
  operator T() const;  // NOLINT(google-explicit-constructor)
};
template <class S, class... Given>
constexpr std::size_t member_count() {
  if constexpr (requires { S{Given{}..., Anything{}}; })
    return member_count<S, Given..., Anything>();
  else
    return sizeof...(Given);
}

}  // namespace counting

namespace {

using counting::member_count;

template <class S>
std::size_t described_count() {
  std::size_t count = 0;
  describe(As<S>{}, [&](auto, const Field&) { ++count; });
  return count;
}

// A scenario in which every field of describe() is stated, but for those that exclude one another.
json full() {
  return json::parse(test::text_of(test::source("tests/scenario/full.json")));
}

// "/crew/*/mass_kg" -> "/crew/0/mass_kg"
json::json_pointer first_of(std::string pointer) {
  for (std::size_t at; (at = pointer.find('*')) != std::string::npos;) pointer[at] = '0';
  return json::json_pointer(pointer);
}

bool says(const std::vector<std::string>& complaints, const std::string& start) {
  return std::any_of(complaints.begin(), complaints.end(),
                     [&](const std::string& each) { return each.rfind(start, 0) == 0; });
}

}  // namespace

TEST_CASE("describe() lists every member of every struct") {
  CHECK(described_count<Position>() == member_count<Position>());
  CHECK(described_count<WeatherFallback>() == member_count<WeatherFallback>());
  CHECK(described_count<Weather>() == member_count<Weather>());
  CHECK(described_count<Raft>() == member_count<Raft>());
  CHECK(described_count<Person>() == member_count<Person>());
  CHECK(described_count<Boarding>() == member_count<Boarding>());
  CHECK(described_count<Item>() == member_count<Item>());
  CHECK(described_count<Stores>() == member_count<Stores>());
  CHECK(described_count<Rationing>() == member_count<Rationing>());
  CHECK(described_count<Routine>() == member_count<Routine>());
  CHECK(described_count<Failure>() == member_count<Failure>());
  CHECK(described_count<Limits>() == member_count<Limits>());
  CHECK(described_count<Model>() == member_count<Model>());
  CHECK(described_count<Distribution>() == member_count<Distribution>());
  CHECK(described_count<SharedInput>() == member_count<SharedInput>());
  CHECK(described_count<Together>() == member_count<Together>());
  CHECK(described_count<Alternative>() == member_count<Alternative>());
  CHECK(described_count<UncertainFailure>() == member_count<UncertainFailure>());
  CHECK(described_count<UnknownPerson>() == member_count<UnknownPerson>());
  CHECK(described_count<Rescue>() == member_count<Rescue>());
  CHECK(described_count<Known>() == member_count<Known>());
  CHECK(described_count<Uncertain>() == member_count<Uncertain>());
  CHECK(described_count<Scenario>() == member_count<Scenario>());
  CHECK(described_count<RaftKind>() == member_count<RaftKind>());
  CHECK(described_count<PackItem>() == member_count<PackItem>());
  CHECK(described_count<PackKind>() == member_count<PackKind>());
  CHECK(described_count<ItemKind>() == member_count<ItemKind>());
}

TEST_CASE("every field has a sentence, and numbers a unit and a range") {
  for (const FieldLine& field : field_lines()) {
    CAPTURE(field.pointer);
    CHECK(field.sentence.size() > 5);
    CHECK(field.sentence.back() == '.');
    CHECK_FALSE(field.absent.empty());
    if (!field.is_number) continue;
    CHECK_FALSE(field.unit.empty());
    CHECK(field.low < field.high);
  }
}

TEST_CASE("each field refuses what it should, at its own place") {
  REQUIRE(test::complaints(full()).empty());
  int numbers = 0, missing = 0;
  for (const FieldLine& field : field_lines()) {
    const auto place = first_of(field.pointer);
    if (!full().contains(place)) continue;
    const std::string start = place.to_string() + ": ";
    CAPTURE(field.pointer);
    const auto with = [&](const json& value) {
      json changed = full();
      changed[place] = value;
      return test::complaints(changed);
    };
    const json was = full()[place];
    CHECK(says(with(nullptr), start + "found null; allowed "));
    CHECK(says(with(was.is_string() ? json(7) : json("seven")), start + "found "));
    if (field.is_number) {
      ++numbers;
      const double step = std::max(1.0, std::abs(field.high)) * 1e-6;
      CHECK(says(with(field.low - std::max(step, 1.0)), start + "found "));
      CHECK(says(with(field.high + std::max(step, 1.0)), start + "found "));
      CHECK_FALSE(says(with(field.low), start + "found -"));
    }
    json left_out = full();
    left_out[place.parent_pointer()].erase(place.back());
    if (field.absent == "required" && !was.is_null()) {
      ++missing;
      CHECK(says(test::complaints(left_out), start + "missing; allowed "));
    }
    json near = left_out;
    const auto misspelt = place.parent_pointer() / (place.back() + "x");
    if (place.back() == "0") continue;
    near[misspelt] = was;
    const auto complaints = test::complaints(near);
    CHECK(says(complaints, misspelt.to_string() + ": found unknown key \"" + place.back() + "x\""));
    CHECK(std::any_of(complaints.begin(), complaints.end(), [&](const std::string& each) {
      return each.find("did you mean \"" + place.back() + "\"?") != std::string::npos;
    }));
  }
  CHECK(numbers >= 60);
  CHECK(missing >= 15);
}
