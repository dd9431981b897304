#include "bide/system/limits.hpp"

#include <doctest/doctest.h>

#include <set>
#include <string>

#include "support/runs.hpp"

using namespace bide;
using system::Limit;

TEST_CASE("every limit has a name of its own, a cause and a clause") {
  std::set<std::string> names;
  for (const system::LimitRow& row : system::limits) {
    CAPTURE(row.name);
    CHECK(names.insert(row.name).second);
    CHECK(std::string(row.cause) != "");
    CHECK((static_cast<std::size_t>(row.id) >= system::level_count || std::string(row.clause) != ""));
  }
  CHECK(std::string(system::name_of(Limit::none)).empty());
}

// The scenario's parts per million are fractions in the state, its percent of protein too.
TEST_CASE("levels in force are those of the scenario in the units of the state") {
  const test::Run run = test::load_run(test::minimal_text);
  CHECK(run.compiled.limits[Limit::able_co2] == doctest::Approx(0.04));
  CHECK(run.compiled.limits[Limit::lethal_protein] == doctest::Approx(0.38));
  CHECK(run.compiled.limits[Limit::able_core_low] == 33);
}

// Elia 1992: 1 kg of fat left at death. Who starts with 1.5 kg dies with half of it, 0.75 kg.
TEST_CASE("the very lean die with half of their fat") {
  const test::Run run = test::load_run(test::minimal_text);
  body::Build<double> person = run.compiled.persons[0];
  for (const auto& [start_kg, left_kg] : {std::pair{9.0, 1.0}, {2.5, 1.0}, {1.5, 0.75}, {0.9, 0.45}}) {
    person.fat_kg = start_kg;
    CHECK(system::levels_of(run.compiled.limits, person)[Limit::lethal_fat] == doctest::Approx(left_kg));
  }
}

// Mackowiak & Boulant 1996: in a fever the core is almost never let rise above 41 to 42 degC. Heat stroke is
// told from 40 degC on, of people without a fever.
TEST_CASE("what a fever holds is not heat stroke, up to 41 degC") {
  const test::Run run = test::load_run(test::minimal_text);
  body::Build<double> person = run.compiled.persons[0];
  for (const auto& [fever_K, level_degC] :
       {std::pair{0.0, 40.0}, {0.5, 40.5}, {1.0, 41.0}, {2.0, 41.0}, {3.0, 41.0}}) {
    person.fever_K = fever_K;
    const auto own = system::levels_of(run.compiled.limits, person);
    CHECK(own[Limit::able_core_high] == doctest::Approx(level_degC));
    CHECK(own[Limit::lethal_core_high] == run.compiled.limits[Limit::lethal_core_high]);
    CHECK(own[Limit::able_core_low] == run.compiled.limits[Limit::able_core_low]);
  }
  system::Levels<double> stated = run.compiled.limits;
  stated[Limit::able_core_high] = 41.5;  // by the scenario: no fever lowers it
  CHECK(system::levels_of(stated, person)[Limit::able_core_high] == 41.5);
}

TEST_CASE("a value on the level is not past it, on either side") {
  CHECK_FALSE(system::beyond(system::row_of(Limit::able_core_low), 33.0, 33.0));
  CHECK(system::beyond(system::row_of(Limit::able_core_low), 32.9, 33.0));
  CHECK_FALSE(system::beyond(system::row_of(Limit::able_core_high), 40.0, 40.0));
  CHECK(system::beyond(system::row_of(Limit::able_core_high), 40.1, 40.0));
}

TEST_CASE("lanes past different limits do not mix") {
  const test::Run run = test::load_run(test::minimal_text);
  system::Levels<BlockLanes> levels;
  system::Quantities<BlockLanes> values;
  for (std::size_t i = 0; i < system::level_count; ++i)
    levels.by_limit[i] = BlockLanes(run.compiled.limits.by_limit[i]);
  for (const auto& each : system::quantities) values[each.id] = BlockLanes(each.normal);
  set_lane(values[system::quantity::core], 1, 32.0);
  set_lane(values[system::quantity::core], 2, 23.0);
  const auto past = system::past_limits(values, levels);
  const auto is = [](const auto& mask, int l) {
    return lane(select(mask, BlockLanes(1), BlockLanes(0)), l) > 0;
  };
  CHECK_FALSE(is(past.unable, 0));
  CHECK(is(past.unable, 1));
  CHECK_FALSE(is(past.lethal, 1));
  CHECK(is(past.lethal, 2));
  CHECK(is(past.unconscious, 2));
}

TEST_CASE("frostbite of the face is an injury that ends nothing, past once its time is through") {
  const test::Run run = test::load_run(test::minimal_text);
  const system::LimitRow& row = system::row_of(Limit::frostbite_face);
  CHECK(row.meaning == system::Meaning::injury);
  CHECK_FALSE(system::beyond(row, 0.99, run.compiled.limits[row.id]));
  CHECK(system::beyond(row, 1.01, run.compiled.limits[row.id]));
  system::Quantities<double> values;
  for (const auto& each : system::quantities) values[each.id] = each.normal;
  values[system::quantity::face] = 5;
  const auto past = system::past_limits(values, run.compiled.limits);
  CHECK_FALSE((past.unable || past.lethal || past.airway_without_lifejacket));
}

// Plasma sodium of 120 and 110 mmol/L; 115 stands between.
TEST_CASE("dilute blood disables, and more of it kills; salty blood stays another limit") {
  const test::Run run = test::load_run(test::minimal_text);
  const auto past_at = [&run](double osmolality) {
    system::Quantities<double> values;
    for (const auto& each : system::quantities) values[each.id] = each.normal;
    values[system::quantity::osmolality] = osmolality;
    return system::past_limits(values, run.compiled.limits);
  };
  for (const double normal : {280.0, 287.0, 320.0}) {
    CHECK_FALSE(past_at(normal).unable);
    CHECK_FALSE(past_at(normal).lethal);
  }
  CHECK(past_at(2 * 115.0 + 10).unable);
  CHECK_FALSE(past_at(2 * 115.0 + 10).lethal);
  CHECK(past_at(2 * 105.0 + 10).lethal);
  CHECK(past_at(440.0).lethal);
}
