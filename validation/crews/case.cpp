#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iterator>
#include <limits>
#include <map>
#include <optional>
#include <stdexcept>

#include "bide/core/csv.hpp"
#include "bide/core/units.hpp"
#include "bide/study/ensemble/ensemble.hpp"
#include "bide/study/ensemble/parallel.hpp"
#include "bide/study/sampling/make_sample.hpp"
#include "validation/support/rest.hpp"
#include "validation/topics.hpp"

namespace bide::validation::crews {

namespace {

constexpr const char* folder = BIDE_SOURCE_DIR "/validation/crews/";
constexpr std::uint64_t futures_of_each = 200, seed = 1;
constexpr std::uint64_t most_failed = 1;  // without a result, and left out
constexpr std::size_t fewest = 40;        // that a range is read from: one beyond it on each side
constexpr double hypothermic_degC = 35;
// In a future's place, so that the others keep their numbers.
constexpr double left_out = std::numeric_limits<double>::quiet_NaN();

struct Told {
  std::string account, quantity, study, source, why;
  double value;
};

std::vector<Told> told() {
  std::ifstream in(std::string(folder) + "told.csv");
  const auto parsed = parse_csv(std::string(std::istreambuf_iterator<char>(in), {}));
  if (const auto* wrong = std::get_if<CsvError>(&parsed))
    throw std::runtime_error("told.csv: " + wrong->message);
  std::vector<Told> out;
  const auto& rows = std::get<std::vector<CsvRow>>(parsed);
  for (std::size_t i = 1; i < rows.size(); ++i) {
    const std::vector<std::string>& f = rows[i].fields;
    out.push_back({f.at(0), f.at(1), f.at(3), f.at(4), f.at(5), parse_number(f.at(2)).value()});
  }
  return out;
}

scenario::ValidScenario scenario_of_account(const std::string& account) {
  auto read = scenario::validate_file(std::string(folder) + "accounts/" + account + ".json");
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&read))
    throw std::runtime_error(scenario::to_string(wrong->front()));
  return std::get<scenario::ValidScenario>(std::move(read));
}

// One value for each future, at the end of the scenario, which is the hour of the account.
struct Futures {
  std::optional<double> people;  // how many are counted; of another quantity none
  std::vector<double> values;
};
using Asked = std::map<std::string, Futures>;  // by quantity

Asked counts(const std::string& account, const scenario::ValidScenario& scenario,
             const study::Sampler& sampler) {
  const std::vector<scenario::Person>& crew = scenario.scenario.crew;
  const auto hurt = [](const scenario::Person& p) { return p.blood_loss_pct > 0; };
  const auto persons = static_cast<double>(crew.size());
  Asked out{
      {"alive", {persons, {}}},
      {"hypothermic", {persons, {}}},
      {"unhurt alive", {persons - static_cast<double>(std::count_if(crew.begin(), crew.end(), hurt)), {}}}};
  std::uint64_t failed = 0;
  const auto sink = [&](const study::SampleResult& r) {
    if (!r.failure.empty()) {
      if (++failed > most_failed)
        throw std::runtime_error(fmt::format("{}, future {}: {}", account, r.index, r.failure));
      for (auto& [quantity, futures] : out) futures.values.push_back(left_out);
      return;
    }
    double alive = 0, hypothermic = 0, unhurt = 0;
    for (std::size_t p = 0; p < crew.size(); ++p) {
      if (r.persons[p].alive_until_s != study::beyond_horizon) continue;
      alive += 1;
      hypothermic += r.persons[p].lowest_core_degC < hypothermic_degC ? 1 : 0;
      unhurt += hurt(crew[p]) ? 0 : 1;
    }
    out["alive"].values.push_back(alive);
    out["hypothermic"].values.push_back(alive == persons ? hypothermic : left_out);
    out["unhurt alive"].values.push_back(unhurt);
  };
  study::run_ensemble({0, futures_of_each}, study::drawing(sampler, seed), sink);
  return out;
}

// Of the mean person, in the futures in which everybody lives, kg.
Futures mass_lost_kg(const study::Sampler& sampler, const Futures& alive) {
  constexpr double every_min = 240;  // the interval of output of that account
  Futures out{{}, std::vector<double>(alive.values.size(), left_out)};
  study::in_parallel(alive.values.size(), 0, [&](std::size_t k) {
    if (alive.values[k] != *alive.people) return;
    const Run run = run_case(sampler.text_of(sampler.draw(seed, k)), every_min * minute_s);
    double lost_kg = 0;
    for (int p = 0; p < static_cast<int>(*alive.people); ++p)
      lost_kg += weighed_kg(person(run.samples.front(), p)) - weighed_kg(person(run.samples.back(), p));
    out.values[k] = lost_kg / *alive.people;
  });
  return out;
}

// The middle 95 % and the median of the futures.
struct Range {
  double low, middle, high;
};
Range range_of(std::vector<double> values) {
  constexpr double each_side = 0.025;
  std::erase_if(values, [](double value) { return std::isnan(value); });
  if (values.size() < fewest) throw std::runtime_error("too few futures to read a range from");
  std::sort(values.begin(), values.end());
  const auto cut = static_cast<std::size_t>(each_side * static_cast<double>(values.size()));
  return {values[cut], values[values.size() / 2], values[values.size() - 1 - cut]};
}

Row row_of(const Told& told, const Futures& futures) {
  const Range range = range_of(futures.values);
  Row out = make_row("crews", told.study.c_str(), told.quantity + ", " + told.account,
                     futures.people ? "persons" : "kg", told.value, range.low, range.high, range.middle,
                     told.why.c_str());
  out.kind = Kind::account;
  out.people = futures.people;
  out.source_class = told.source == "second hand" ? Class::second_hand : Class::published;
  return out;
}

std::vector<Row> all_accounts() {
  std::map<std::string, Asked> made;
  std::vector<Row> out;
  for (const Told& each : told()) {
    Asked& asked = made[each.account];
    if (asked.empty() || each.quantity == "mass lost") {
      const scenario::ValidScenario scenario = scenario_of_account(each.account);
      const study::Sampler sampler(scenario);
      if (asked.empty()) asked = counts(each.account, scenario, sampler);
      if (each.quantity == "mass lost") asked[each.quantity] = mass_lost_kg(sampler, asked.at("alive"));
    }
    out.push_back(row_of(each, asked.at(each.quantity)));
  }
  blame_named(out,
              {{"mass lost, 1989",
                "the model's two are short of hardly any water after two months; these may have been, or had "
                "less to eat than the 2000 to 7000 kJ a day that were taken for what they caught"}});
  return out;
}

}  // namespace

// Once for a program: the same every time, and the dearest of all topics.
std::vector<Row> rows() {
  static const std::vector<Row> rows = all_accounts();
  return rows;
}

}  // namespace bide::validation::crews
