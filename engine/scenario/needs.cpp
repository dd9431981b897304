#include "bide/scenario/needs.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "bide/constants/crew_needs.hpp"
#include "bide/core/people.hpp"
#include "bide/core/units.hpp"

namespace bide::scenario {
namespace {

Need medicine(const Person& person, const std::string& name, double until_h) {
  const double needed = person.medicine_doses_per_day * until_h / day_h;
  Need out;
  out.lasts_h = person.medicine_doses / person.medicine_doses_per_day * day_h;
  constexpr double whole = 1e-9;  // that a sum of tenths may miss a whole number by
  out.doses_lacking = static_cast<int>(std::max(0.0, std::ceil(needed - person.medicine_doses - whole)));
  out.words = fmt::format("{}: own medicine, {:g} doses at {:g} a day: lasts {:.3g} d of {:.3g} d", name,
                          person.medicine_doses, person.medicine_doses_per_day, *out.lasts_h / day_h,
                          until_h / day_h);
  if (out.doses_lacking > 0)
    out.words += fmt::format("; {} more {}", out.doses_lacking, out.doses_lacking == 1 ? "dose" : "doses");
  return out;
}

}  // namespace

std::vector<Need> needs_of(const ValidScenario& scenario, double until_h) {
  std::vector<Need> out;
  std::string readers;
  double oldest_years = 0;
  const auto& crew = scenario.scenario.crew;
  for (std::size_t i = 0; i < crew.size(); ++i) {
    const Person& person = crew[i];
    const std::string name = person_label(static_cast<int>(i));
    if (person.medicine_doses_per_day > 0) out.push_back(medicine(person, name, until_h));
    if (person.inhaler) out.push_back({name + ": an inhaler, on the person, and a spare in the bag", {}});
    if (person.food_allergy != "none")
      out.push_back(
          {fmt::format("{}: cannot eat {}; read the label of every ration", name, person.food_allergy), {}});
    if (person.age_years >= constants::glasses_from_age_years)
      readers += (readers.empty() ? "" : ", ") + name;
    oldest_years = std::max(oldest_years, person.age_years);
  }
  if (!readers.empty()) {
    std::string words = fmt::format(
        "Reading glasses of +2 D in the bag, for labels, beacon and instructions ({}): of "
        "people of 40 to 64 years {:.0f} % cannot read close print without",
        readers, pct * constants::presbyopic_share);
    if (oldest_years >= constants::presbyopic_oldest_from_years)
      words += fmt::format("; of those of 60 to 64, {:.0f} % of men and {:.0f} % of women",
                           pct * constants::presbyopic_oldest_men, pct * constants::presbyopic_oldest_women);
    out.push_back({std::move(words), {}});
  }
  return out;
}

}  // namespace bide::scenario
