// Many simulations in lanes over threads: each sample's bits are its own, and agree with a run by itself.
#include "bide/study/ensemble/ensemble.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <stdexcept>

#include "bide/outcome/outcome.hpp"
#include "bide/study/questions/outputs.hpp"
#include "bide/timeline/simulate.hpp"
#include "support/runs.hpp"

using namespace bide;

namespace {

// Two people in light clothes after a swim in cold water: limits are passed within the day.
const test::Run& base() {
  static const test::Run run = [] {
    std::string text = test::cold_swim_text;
    const auto put = [&](const std::string& from, const std::string& to) {
      text.replace(text.find(from), from.size(), to);
    };
    put("\"clothing\": \"offshore_cold\"", "\"clothing\": \"nude\"");
    put("\"clothing\": \"temperate_sailing\"", "\"clothing\": \"nude\"");
    put("\"water_temperature_degC\": 7", "\"water_temperature_degC\": 2");
    put("\"air_temperature_degC\": 5", "\"air_temperature_degC\": -5");
    return test::load_run(text);
  }();
  return run;
}

// Sample k: other people, another raft, more or less water; every third has a shorter routine of bailing, so
// that there are two structures.
study::Sample varied(std::uint64_t k) {
  study::Sample s{base().compiled, base().weather};
  const double u = static_cast<double>(k % 7) / 7, v = static_cast<double>(k % 5) / 5;
  s.compiled.raft.canopy_position = u;
  s.compiled.raft.leakage_position = v;
  s.compiled.amounts.water_shipped_kg *= 1 + u;
  for (auto& p : s.compiled.persons) p.shivering_ceiling_W *= 1 - 0.5 * v;
  if (k % 3 == 0)
    std::erase_if(s.compiled.structure.stops, [](const system::ScheduledStop& stop) {
      return stop.kind == system::StopKind::bail && stop.index % 2 == 1;
    });
  return s;
}

std::vector<study::SampleResult> run(study::SampleRange range, const study::EnsembleOptions& options,
                                     const study::MakeSample& make = varied) {
  std::vector<study::SampleResult> out;
  study::run_ensemble(
      range, make, [&](const study::SampleResult& r) { out.push_back(r); }, options);
  return out;
}

void check_same_bits(const study::SampleResult& a, const study::SampleResult& b) {
  CAPTURE(a.index);
  CHECK(a.index == b.index);
  CHECK(a.failure == b.failure);
  REQUIRE(a.persons.size() == b.persons.size());
  for (const auto& output : study::outputs(static_cast<int>(a.persons.size()))) {
    CAPTURE(output.name);
    CHECK(std::bit_cast<std::uint64_t>(output.of(a)) == std::bit_cast<std::uint64_t>(output.of(b)));
  }
  for (std::size_t p = 0; p < a.persons.size(); ++p) {
    CHECK(a.persons[p].able_cause == b.persons[p].able_cause);
    CHECK(a.persons[p].alive_cause == b.persons[p].alive_cause);
    CHECK(a.persons[p].next_cause == b.persons[p].next_cause);
    CHECK(std::bit_cast<std::uint64_t>(a.persons[p].next_margin_fraction) ==
          std::bit_cast<std::uint64_t>(b.persons[p].next_margin_fraction));
  }
}

study::EnsembleOptions with(int threads, std::size_t window, bool to_the_end = false) {
  study::EnsembleOptions options;
  options.threads = threads, options.window = window, options.to_the_end = to_the_end;
  return options;
}

}  // namespace

TEST_CASE("bits do not depend on threads, windows, mates, ranges, or when the block ends") {
  const auto one = run({0, 11}, with(1, 256));
  REQUIRE(one.size() == 11);
  // The samples are different ones, and somebody dies early, or there is nothing to compare.
  CHECK(one[0].persons[0].able_until_s != one[4].persons[0].able_until_s);
  CHECK(std::any_of(one.begin(), one.end(), [](const auto& r) {
    return r.persons[0].alive_until_s < r.horizon_s && r.persons[1].alive_until_s < r.horizon_s;
  }));
  const auto two = run({0, 11}, with(2, 256)), small = run({0, 11}, with(2, 3)),
             whole = run({0, 11}, with(2, 256, true)), part = run({5, 11}, with(1, 256));
  for (std::size_t i = 0; i < one.size(); ++i) {
    check_same_bits(one[i], two[i]);
    check_same_bits(one[i], small[i]);
    check_same_bits(one[i], whole[i]);
    if (i >= 5) check_same_bits(one[i], part[i - 5]);
    if (i == 8) check_same_bits(one[i], run({8, 9}, with(1, 1))[0]);
  }
}

TEST_CASE("identical scenarios have identical bits") {
  const auto alike = run({0, 6}, with(2, 256), [](std::uint64_t) { return varied(2); });
  for (study::SampleResult r : alike) {
    r.index = 0;
    check_same_bits(alike[0], r);
  }
}

TEST_CASE("a sample's figures are those of its scenario run by itself") {
  // Lanes and scalars differ in the last bits of their exponentials; a day of steps carries that along.
  constexpr double tolerance = 1e-8;
  for (const std::string& text : {test::cold_swim_text, test::minimal_text}) {
    const test::Run alone = test::load_run(text);
    const auto simulated = timeline::simulate(alone.scenario, alone.weather);
    REQUIRE(std::holds_alternative<timeline::Timeline>(simulated));
    const outcome::Outcome expected =
        outcome::read_outcome(std::get<timeline::Timeline>(simulated), alone.scenario);
    const auto result = run({0, 1}, with(1, 1), [&](std::uint64_t) {
      return study::Sample{alone.compiled, alone.weather};
    })[0];
    REQUIRE(result.failure.empty());
    const auto near = [&](double a, double b) {
      CHECK(std::abs(a - b) <= tolerance * std::max(1.0, std::abs(b)));
    };
    const auto same_time = [&](double a, const std::optional<double>& b) {
      CHECK(std::isinf(a) == !b.has_value());
      if (b) near(a, *b);
    };
    for (std::size_t p = 0; p < expected.persons.size(); ++p) {
      const auto& e = expected.persons[p];
      const auto& r = result.persons[p];
      same_time(r.able_until_s, e.able.at_s);
      same_time(r.alive_until_s, e.alive.at_s);
      same_time(r.unconscious_s, e.unconscious_s);
      CHECK(r.able_cause == e.able.limit);
      CHECK(r.alive_cause == e.alive.limit);
      CHECK(r.next_cause == e.next_limit);
      near(r.next_margin_fraction, e.next_margin_fraction);
      near(r.lowest_core_degC, e.lowest_core_degC);
      near(r.highest_core_degC, e.highest_core_degC);
      near(r.lowest_finger_degC, e.lowest_finger_degC);
      near(r.worst_water_deficit_pct, e.worst_water_deficit_pct);
      near(r.worst_osmolality_mOsm_kg, e.worst_osmolality_mOsm_kg);
      near(r.hands_h, e.hands_h);
      near(r.shivering_h, e.shivering_h);
    }
    near(result.coldest_inside_degC, expected.cabin.coldest_inside_degC->value);
    near(result.warmest_inside_degC, expected.cabin.warmest_inside_degC->value);
    near(result.mean_inside_degC, *expected.cabin.mean_inside_degC);
    near(result.highest_co2_ppm, expected.cabin.highest_co2_ppm->value);
    near(result.co2_above_5000_ppm_h, expected.cabin.co2_above_5000_ppm_h);
    for (const auto& store : expected.stores) {
      if (store.store == outcome::Store::water && store.state == outcome::StoreState::runs_out)
        near(result.water_out_s, store.at_s);
      if (store.store == outcome::Store::water) near(result.water_left_L, store.left);
    }
  }
}

TEST_CASE("the times of limits are those of the scenario run by itself") {
  const test::Run& alone = base();
  const auto simulated = timeline::simulate(alone.scenario, alone.weather);
  const auto& fates = std::get<timeline::Timeline>(simulated).fates;
  const auto result = run({0, 1}, with(1, 1), [&](std::uint64_t) {
    return study::Sample{alone.compiled, alone.weather};
  })[0];
  REQUIRE(fates[0].able_until_s);
  for (std::size_t p = 0; p < fates.size(); ++p) {
    CHECK(std::abs(result.persons[p].able_until_s - *fates[p].able_until_s) < 1e-4);
    CHECK(result.persons[p].alive_until_s ==
          doctest::Approx(fates[p].alive_until_s.value_or(study::beyond_horizon)));
    CHECK(result.persons[p].alive_cause == fates[p].alive_cause);
  }
}

namespace {

double term(const study::PersonResult& person, const std::string& name) {
  for (std::size_t i = 0; i < study::balance_terms.size(); ++i)
    if (study::balance_terms[i].name == name) return person.balance[i];
  throw std::invalid_argument("no term " + name);
}

}  // namespace

TEST_CASE("a person's heat and water come to what the body holds") {
  // First law, and conservation of mass: what came less what went is what is there more.
  for (const std::string& text : {test::cold_swim_text, test::minimal_text}) {
    const test::Run alone = test::load_run(text);
    const auto result = run({0, 1}, with(1, 1), [&](std::uint64_t) {
      return study::Sample{alone.compiled, alone.weather};
    })[0];
    for (const study::PersonResult& person : result.persons) {
      const auto of = [&](const char* name) { return term(person, name); };
      const double lost = of("heat lost to air") + of("heat lost to canopy") + of("heat lost to floor") +
                          of("heat lost to water") + of("heat evaporated") + of("heat breathed out");
      CHECK(of("heat made") > 4000);  // a day of a resting adult is above 4 MJ
      CHECK(std::abs(of("heat made") + of("heat from the sun") - lost - of("heat stored")) <
            1e-9 * of("heat made"));
      const double went = of("urine") + of("water breathed out") + of("water through the skin") +
                          of("sweat that dripped") + of("water vomited");
      CHECK(went > 0.5);
      CHECK(std::abs(of("water drunk") + of("metabolic water") - went - of("change of water")) < 1e-9 * went);
      CHECK(of("energy used") == doctest::Approx(of("heat made")).epsilon(0.2));
    }
  }
}

TEST_CASE("the balances of the dead stop with them") {
  const test::Run& alone = base();
  const auto make = [&](std::uint64_t) { return study::Sample{alone.compiled, alone.weather}; };
  const auto result = run({0, 1}, with(1, 1, true), make)[0];
  const study::PersonResult& first = result.persons[0];
  REQUIRE(first.alive_until_s < result.horizon_s - 7200);
  // Heat made in the hours that the person lived, at no more than ten times the resting 100 W.
  CHECK(term(first, "heat made") < first.alive_until_s * 1000 / 1000);
  CHECK(term(first, "heat made") > 0);
}

TEST_CASE("who comes near a limit does so before passing it, and the later the less is left") {
  const test::Run& alone = base();
  const auto make = [&](std::uint64_t) { return study::Sample{alone.compiled, alone.weather}; };
  const auto near = [&](double margin) {
    study::EnsembleOptions options = with(1, 1);
    options.near_margin = margin;
    return run({0, 1}, options, make)[0];
  };
  constexpr auto able_cold = static_cast<std::size_t>(system::Limit::able_core_low);
  const auto half = near(0.5), quarter = near(0.25), none = near(0);
  const double able_s = std::min(half.persons[0].able_until_s, half.persons[1].able_until_s);
  REQUIRE(half.persons[0].able_cause == system::Limit::able_core_low);
  CHECK(half.near_s[able_cold] < quarter.near_s[able_cold]);
  CHECK(quarter.near_s[able_cold] < able_s);
  // With nothing left it is the crossing itself, at the next output time.
  CHECK(none.near_s[able_cold] >= able_s);
  CHECK(none.near_s[able_cold] <= able_s + alone.compiled.structure.output_interval_s);
  CHECK(std::isinf(none.near_s[static_cast<std::size_t>(system::Limit::lethal_co2)]));
}

TEST_CASE("failed samples are counted with their reasons, and the others unharmed") {
  const auto spoilt = [](std::uint64_t k) -> std::variant<study::Sample, study::NotMade> {
    if (k == 1) return study::NotMade{"/crew/0/mass_kg: found 500, at most 250"};
    study::Sample s = varied(k);
    if (k == 4) s.compiled.persons[0].mass_kg = std::nan("");
    if (k == 6) s.compiled.persons[1].basal_total_W = std::nan("");
    return s;
  };
  const auto whole = run({0, 8}, with(2, 256));
  std::vector<study::SampleResult> some;
  const study::Progress end = study::run_ensemble(
      {0, 8}, spoilt, [&](const study::SampleResult& r) { some.push_back(r); }, with(2, 256));
  CHECK(end.done == 8);
  CHECK(end.failed == 3);
  REQUIRE(some.size() == 8);
  CHECK(some[1].failure == "/crew/0/mass_kg: found 500, at most 250");
  CHECK(some[4].failure == "a state variable is no longer a finite number");
  CHECK(some[6].failure == some[4].failure);
  for (const std::size_t k : {0, 2, 3, 5, 7}) check_same_bits(some[k], whole[k]);
}

TEST_CASE("samples come in order and progress counts them") {
  std::vector<std::uint64_t> seen, done;
  study::EnsembleOptions options = with(2, 2);
  options.progress = [&](const study::Progress& p) {
    CHECK(p.total == 5);
    CHECK(p.per_s > 0);
    done.push_back(p.done);
  };
  study::run_ensemble(
      {3, 8}, varied, [&](const study::SampleResult& r) { seen.push_back(r.index); }, options);
  CHECK(seen == std::vector<std::uint64_t>{3, 4, 5, 6, 7});
  CHECK(done == std::vector<std::uint64_t>{2, 4, 5});
  CHECK_THROWS_AS(run({0, 1}, with(1, 0)), std::invalid_argument);
  CHECK_THROWS_AS(run({2, 1}, with(1, 1)), std::invalid_argument);
}

TEST_CASE("outputs have names of their own, and find their figures") {
  const auto all = study::outputs(2);
  for (std::size_t i = 0; i < all.size(); ++i)
    for (std::size_t k = i + 1; k < all.size(); ++k) CHECK(all[i].name != all[k].name);
  study::SampleResult r;
  r.persons.resize(2);
  r.persons[0].able_until_s = 7200, r.persons[1].able_until_s = 3600;
  r.persons[1].lowest_core_degC = 31, r.persons[0].lowest_core_degC = 36;
  r.water_out_s = 36000;
  const auto value = [&](const char* name) { return study::find_output(all, name)->of(r); };
  CHECK(value("first able until") == 1);
  CHECK(value("half able until") == 1);
  CHECK(value("last able until") == 2);
  CHECK(std::isinf(value("last alive until")));
  CHECK(value("coldest core") == 31);
  CHECK(value("Person A able until") == 2);
  CHECK(value("water runs out") == 10);
  CHECK(std::isnan(value("coldest inside")));
  CHECK(study::find_output(all, "no such figure") == nullptr);
}
