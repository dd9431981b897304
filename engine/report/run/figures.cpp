#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "bide/core/people.hpp"
#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/run/sections.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

using outcome::PersonOutcome;
using outcome::StoreOutcome;
using outcome::StoreState;

std::string hours(double value_h) {
  return value_h > 0 ? duration(value_h * hour_s) : "never";
}

// Countable things as whole numbers, all else with two figures.
std::string amount(const StoreOutcome& store, double value) {
  if (store.unit.empty()) return fmt::format("{:.0f}", value);
  return two_figures(value) + " " + store.unit;
}

void print_stores(Page& page, const Material& m, int zone_h) {
  page.heading("WHAT RUNS OUT WHEN");
  std::vector<StoreOutcome> stores = m.outcome.stores;
  std::stable_sort(stores.begin(), stores.end(), [](const StoreOutcome& a, const StoreOutcome& b) {
    if (a.state != b.state) return a.state < b.state;
    return a.state == StoreState::runs_out && a.at_s < b.at_s;
  });
  std::string none;
  for (const StoreOutcome& store : stores) {
    const bool signal = store.store == "flares" || store.store == "lamp" || store.store == "beacon";
    if (signal && store.state == StoreState::lasts) continue;  // named with the signals left
    const std::string name = page.outside(store.store, 40);
    switch (store.state) {
      case StoreState::none_aboard:
        none += (none.empty() ? "" : ", ") + name;
        break;
      case StoreState::runs_out:
        page.paragraph(both_clocks(m.timeline.start_unix_s, store.at_s, zone_h) +
                           (store.left > 0 ? ", refilled: " + amount(store, store.left) + " left" : ""),
                       fmt::format("  {:<20} {:>8}   ", cut(name, 20), duration(store.at_s)), "    ");
        break;
      case StoreState::lasts:
        page.line(fmt::format("  {:<20} not out within {}: {} left", name, horizon(m.outcome.horizon_s),
                              amount(store, store.left)));
        break;
    }
  }
  if (!none.empty()) page.paragraph("none aboard: " + none, "  ", "    ");
}

void print_hands(Page& page, const Material& m) {
  const auto& persons = m.outcome.persons;
  if (persons.empty()) return;
  const auto [fewest, most] = std::minmax_element(
      persons.begin(), persons.end(),
      [](const PersonOutcome& a, const PersonOutcome& b) { return a.hands_h < b.hands_h; });
  const auto words = [&](std::vector<PersonOutcome>::const_iterator person) {
    return fmt::format("{} {} of {} able", person_label(static_cast<int>(person - persons.begin())),
                       hours(person->hands_h), duration(person->able_h * hour_s));
  };
  if (persons.size() > 1 && hours(fewest->hands_h) == hours(most->hands_h)) {
    page.line("  Hands, a task possible: " + hours(fewest->hands_h) + " for each person.");
    return;
  }
  std::string text = "Hands, a task possible: " + words(fewest);
  if (persons.size() > 1) text += " (fewest), " + words(most) + " (most)";
  page.paragraph(text + ".", "  ", "    ");
}

void print_injuries(Page& page, const Material& m) {
  for (std::size_t p = 0; p < m.outcome.persons.size(); ++p)
    for (const timeline::Injury& injury : m.outcome.persons[p].injuries)
      page.paragraph(fmt::format("{}: {} possible from {} on.", person_label(static_cast<int>(p)),
                                 outcome::short_cause(injury.limit), duration(injury.time_s)),
                     "  ", "    ");
}

void print_people(Page& page, const Material& m) {
  page.heading("PEOPLE");
  const auto& persons = m.outcome.persons;
  if (m.outcome.driest_person >= 0) {
    const PersonOutcome& driest = persons[static_cast<std::size_t>(m.outcome.driest_person)];
    page.line(fmt::format("  Driest: {}, {} of body mass lost as water at worst.",
                          person_label(m.outcome.driest_person), percent(driest.worst_water_deficit_pct)));
  }
  const auto coldest = std::min_element(
      persons.begin(), persons.end(),
      [](const PersonOutcome& a, const PersonOutcome& b) { return a.lowest_core_degC < b.lowest_core_degC; });
  if (coldest != persons.end()) {
    const std::string shivering =
        coldest->shivering_h > 0 ? "shivering for " + hours(coldest->shivering_h) : "no shivering";
    page.line(fmt::format("  Coldest core: {}, {}; {}.",
                          person_label(static_cast<int>(coldest - persons.begin())),
                          temperature(coldest->lowest_core_degC), shivering));
  }
  print_hands(page, m);
  print_injuries(page, m);
}

void print_cabin(Page& page, const Material& m, int zone_h) {
  const outcome::CabinOutcome& cabin = m.outcome.cabin;
  if (!m.timeline.in_raft) return;
  page.heading("INSIDE THE RAFT");
  if (cabin.coldest_inside_degC && cabin.warmest_inside_degC) {
    const auto at = [&](double time_s) { return both_clocks(m.timeline.start_unix_s, time_s, zone_h); };
    page.line(fmt::format("  Coldest {}, at {}.", temperature(cabin.coldest_inside_degC->value),
                          at(cabin.coldest_inside_degC->time_s)));
    page.line(fmt::format("  Warmest {}, at {}.", temperature(cabin.warmest_inside_degC->value),
                          at(cabin.warmest_inside_degC->time_s)));
  }
  page.paragraph(fmt::format("CO2 above 5,000 ppm: {}; above 15,000: {}; above 30,000: {}.",
                             hours(cabin.co2_above_5000_ppm_h), hours(cabin.co2_above_15000_ppm_h),
                             hours(cabin.co2_above_30000_ppm_h)),
                 "  ", "    ");
  if (cabin.condensate_L_day) {
    constexpr double a_few_drops_L = 0.001;
    const double daily_L = *cabin.condensate_L_day;
    page.line(fmt::format("  Condensate under the canopy: {} L a day.",
                          daily_L < a_few_drops_L ? "less than 0.001" : two_figures(daily_L)));
  }
}

}  // namespace

void print_figures(Page& page, const Material& m) {
  const int zone_h = zone_hours(m.scenario.scenario.position.longitude_deg);
  print_stores(page, m, zone_h);
  const outcome::SignalsLeft& left = m.outcome.signals;
  page.paragraph(
      fmt::format("Signals left at {}: {:.0f} flares, lamp {} h, beacon {} h.", horizon(m.outcome.horizon_s),
                  left.flares, two_figures(left.lamp_h), two_figures(left.beacon_h)),
      "  ", "    ");
  print_people(page, m);
  print_cabin(page, m, zone_h);
}

}  // namespace bide::report
