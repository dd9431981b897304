#include <algorithm>

#include "bide/core/units.hpp"
#include "validation/support/rest.hpp"
#include "validation/topics.hpp"

namespace bide::validation::pack_arithmetic {

namespace {

constexpr double issue_h = 8;

// Hours of the samples at which an entry of the first person's block has jumped up.
std::vector<double> jumps_h(const Run& run, int entry, double least) {
  std::vector<double> out;
  for (std::size_t i = 1; i < run.samples.size(); ++i)
    if (person(run.samples[i])[entry] > person(run.samples[i - 1])[entry] + least)
      out.push_back(run.samples[i].t_s / hour_s);
  return out;
}

}  // namespace

std::vector<Row> rows() {
  Rest r;
  r.duration_h = 144;
  r.raft = R"({"kind": "solas_6"})";
  r.crew = "[";
  constexpr int persons = 6;
  for (int p = 0; p < persons; ++p)
    r.crew += std::string(p > 0 ? ", " : "") +
              R"({"sex": "male", "age_years": 30, "height_m": 1.78, "mass_kg": 80})";
  r.crew += "]";
  r.stores = R"({"pack": "solas_a"})";
  r.rationing = r.routine = "{}";
  const Run run = run_case(scenario_of(r, 60), hour_s);
  const std::vector<double> water = jumps_h(run, body::at::gut_water, 0.05),
                            food = jumps_h(run, body::at::gut_carbohydrate, 20);
  Row drink = make_row("pack_arithmetic", "A.657(16) and LSA Code", "water of the pack lasts to", "h", 96, 95,
                       97, water.empty() ? 0.0 : water.back() + issue_h, "one hour");
  drink.source_class = Class::from_memory;
  Row eat = make_row("pack_arithmetic", "46 CFR 160.046-9", "food of the pack, days of issue", "d", 2.985,
                     2.7, 3.3, food.empty() ? 0.0 : (food.back() - food.front() + issue_h) / 24, "one issue");
  drink.kind = eat.kind = Kind::rule;
  return {drink, eat};
}

}  // namespace bide::validation::pack_arithmetic
