#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iterator>
#include <limits>
#include <map>
#include <stdexcept>

#include "bide/core/csv.hpp"
#include "bide/core/units.hpp"
#include "bide/study/ensemble/ensemble.hpp"
#include "bide/study/sampling/make_sample.hpp"
#include "validation/support/rest.hpp"
#include "validation/topics.hpp"

namespace bide::validation::crews {

namespace {

constexpr const char* folder = BIDE_SOURCE_DIR "/validation/crews/";
constexpr std::uint64_t futures = 40, seed = 1;
constexpr std::uint64_t most_failed = 1;  // without a result, and left out
constexpr double hypothermic_degC = 35;

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

// By quantity: one value for each future, at the end of the scenario, which is the hour of the account.
using Values = std::map<std::string, std::vector<double>>;

Values counts(const std::string& account, const study::Sampler& sampler) {
  Values out;
  std::uint64_t failed = 0;
  const auto sink = [&](const study::SampleResult& r) {
    if (!r.failure.empty()) {
      if (++failed > most_failed)
        throw std::runtime_error(fmt::format("{}, future {}: {}", account, r.index, r.failure));
      // In its place, so that futures keep their numbers.
      out["alive"].push_back(std::numeric_limits<double>::quiet_NaN());
      out["hypothermic"].push_back(std::numeric_limits<double>::quiet_NaN());
      return;
    }
    double alive = 0, hypothermic = 0;
    for (const study::PersonResult& p : r.persons) {
      const bool lives = p.alive_until_s == study::beyond_horizon;
      alive += lives ? 1 : 0;
      hypothermic += lives && p.lowest_core_degC < hypothermic_degC ? 1 : 0;
    }
    out["alive"].push_back(alive);
    out["hypothermic"].push_back(hypothermic);
  };
  study::run_ensemble({0, futures}, study::drawing(sampler, seed), sink);
  return out;
}

// Of the mean person, in the futures in which everybody lives, kg.
std::vector<double> mass_lost_kg(const study::Sampler& sampler, const std::vector<double>& alive) {
  constexpr double every_min = 240;  // the interval of output of that account
  const auto crew_kg = [](const Sample& sample, std::size_t persons) {
    double sum_kg = 0;
    for (std::size_t p = 0; p < persons; ++p)
      sum_kg += weighed_kg(sample.x.data() + system::person_offset(static_cast<int>(p)));
    return sum_kg;
  };
  std::vector<double> out;
  for (std::uint64_t k = 0; k < futures; ++k) {
    const Run run = run_case(sampler.text_of(sampler.draw(seed, k)), every_min * minute_s);
    const std::size_t persons = run.compiled.persons.size();
    if (!(alive[k] >= static_cast<double>(persons))) continue;
    out.push_back((crew_kg(run.samples.front(), persons) - crew_kg(run.samples.back(), persons)) /
                  static_cast<double>(persons));
  }
  return out;
}

// The middle 95 % and the median of the futures.
struct Range {
  double low, middle, high;
};
Range range_of(std::vector<double> values) {
  constexpr double each_side = 0.025;
  std::erase_if(values, [](double value) { return std::isnan(value); });  // futures without a result
  std::sort(values.begin(), values.end());
  const auto cut = static_cast<std::size_t>(each_side * static_cast<double>(values.size()));
  return {values[cut], values[values.size() / 2], values[values.size() - 1 - cut]};
}

Row row_of(const Told& told, const std::vector<double>& values) {
  const Range range = range_of(values);
  const bool mass = told.quantity == "mass lost";
  Row out =
      make_row("crews", told.study.c_str(), told.quantity + ", " + told.account, mass ? "kg" : "persons",
               told.value, range.low, range.high, range.middle, told.why.c_str());
  out.kind = Kind::account;
  out.source_class = told.source == "second hand" ? Class::second_hand : Class::published;
  return out;
}

std::vector<Row> all_accounts() {
  std::map<std::string, Values> made;
  std::vector<Row> out;
  for (const Told& each : told()) {
    Values& values = made[each.account];
    if (values.empty()) {
      const study::Sampler sampler(scenario_of_account(each.account));
      values = counts(each.account, sampler);
    }
    if (each.quantity == "mass lost" && !values.contains(each.quantity))
      values[each.quantity] =
          mass_lost_kg(study::Sampler(scenario_of_account(each.account)), values.at("alive"));
    out.push_back(row_of(each, values.at(each.quantity)));
  }
  return out;
}

}  // namespace

// Once for a program: the same every time, and the dearest of all topics.
std::vector<Row> rows() {
  static const std::vector<Row> rows = all_accounts();
  return rows;
}

}  // namespace bide::validation::crews
