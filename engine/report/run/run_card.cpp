#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "bide/core/people.hpp"
#include "bide/core/units.hpp"
#include "bide/report/run/run_parts.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report::pages {
namespace {

constexpr std::size_t most_columns = 4;
constexpr int most_days = 14;

struct Given {
  double water_L = 0, food_kJ = 0;
};

// What the run gave out: by day since the start, by person.
std::map<int, std::vector<Given>> given(const Material& m) {
  std::map<int, std::vector<Given>> out;
  for (const timeline::Event& event : m.timeline.events) {
    if (event.person < 0) continue;
    const bool water = event.kind == system::NoteKind::water_issued;
    if (!water && event.kind != system::NoteKind::food_issued) continue;
    std::vector<Given>& day = out[static_cast<int>(event.time_s / day_s)];
    day.resize(m.outcome.persons.size());
    Given& one = day[static_cast<std::size_t>(event.person)];
    (water ? one.water_L : one.food_kJ) += event.given;
  }
  return out;
}

std::string amounts(double least, double most, const char* unit) {
  const std::string low = two_figures(least), high = two_figures(most);
  return (low == high ? low : low + " to " + high) + " " + unit;
}

std::string amounts(const Given& one) {
  const std::string water = one.water_L > 0 ? two_figures(1000 * one.water_L) + " mL" : "no water";
  return water + (one.food_kJ > 0 ? ", " + two_figures(one.food_kJ) + " kJ" : ", no food");
}

// Midnight or not, each day starts at the hour of the start.
std::string starts(const Material& m, int day) {
  return clock(m.timeline.start_unix_s + day * day_s, 0, 0) + " UTC";
}

document::Table by_day(const Material& m) {
  const auto days = given(m);
  const std::size_t persons = m.outcome.persons.size();
  document::Table out;
  out.caption = "What this run gives to each person, water and food";
  out.columns = {{"day", false}};
  const bool each_person = persons <= most_columns;
  if (each_person) {
    for (std::size_t p = 0; p < persons; ++p)
      out.columns.push_back({person_label(static_cast<int>(p)), false});
  } else {
    out.columns.push_back({"least to most of the crew", false});
  }
  const int last = std::min(static_cast<int>(std::ceil(m.timeline.horizon_s / day_s)), most_days);
  for (int day = 0; day < last; ++day) {
    const auto found = days.find(day);
    if (found == days.end()) {  // days on which nobody is given anything stand together
      int to = day;
      while (to + 1 < last && !days.contains(to + 1)) ++to;
      std::vector<std::string> row{fmt::format(
          "{}, from {}", to == day ? fmt::format("{}", day + 1) : fmt::format("{} to {}", day + 1, to + 1),
          starts(m, day))};
      row.resize(out.columns.size(), "no water, no food");
      out.rows.push_back(std::move(row));
      day = to;
      continue;
    }
    const std::vector<Given>& all = found->second;
    std::vector<std::string> row{fmt::format("{}, from {}", day + 1, starts(m, day))};
    if (each_person) {
      for (const Given& one : all) row.push_back(amounts(one));
    } else {
      const auto [dry, wet] = std::minmax_element(
          all.begin(), all.end(), [](const Given& a, const Given& b) { return a.water_L < b.water_L; });
      const auto [lean, full] = std::minmax_element(
          all.begin(), all.end(), [](const Given& a, const Given& b) { return a.food_kJ < b.food_kJ; });
      row.push_back(amounts(1000 * dry->water_L, 1000 * wet->water_L, "mL") + ", " +
                    amounts(lean->food_kJ, full->food_kJ, "kJ"));
    }
    out.rows.push_back(std::move(row));
  }
  return out;
}

std::string rule_words(const scenario::Rationing& r) {
  using scenario::RationingRule;
  switch (r.rule) {
    case RationingRule::none_first_day:
      return fmt::format("No water in the first 24 h, then {} L a day for each person.",
                         two_figures(r.water_L_per_day.value()));
    case RationingRule::fixed_per_day:
      return fmt::format("{} L of water a day for each person, from the start.",
                         two_figures(r.water_L_per_day.value()));
    case RationingRule::spread:
      return fmt::format("The water spread over {} days, in equal shares.",
                         two_figures(r.spread_days.value()));
    case RationingRule::by_thirst:
      return "Water by thirst, as long as there is some.";
  }
  return "";
}

document::List rules(const Material& m) {
  const scenario::Rationing& r = m.scenario.scenario.rationing;
  document::List out;
  out.items.push_back(rule_words(r));
  out.items.push_back(fmt::format(
      "Food: {} kJ a day for each person{}.", two_figures(r.food_kJ_per_day),
      r.food_only_with_water ? ", and none to a person who has had no water in the last 24 h" : ""));
  out.items.push_back(fmt::format("Given out {} times a day.", r.issues_per_day));
  if (r.injured_first) out.items.push_back("The injured come first.");
  out.items.push_back("Sea water and urine are not drinking water.");
  out.items.push_back("Whoever has medical advice by radio follows that.");
  return out;
}

document::List stock(const Material& m) {
  document::List out;
  const Clocks clocks{m.timeline.start_unix_s, zone_hours(m.scenario.scenario.position.longitude_deg)};
  for (const outcome::StoreOutcome& store : m.outcome.stores) {
    if (store.state == outcome::StoreState::none_aboard) {
      out.items.push_back(store.name + ": none aboard.");
      continue;
    }
    const auto amount = [&store](double value) {
      return store.unit.empty() ? fmt::format("{:.0f}", value) : two_figures(value) + " " + store.unit;
    };
    std::string text = fmt::format("{}: {} at the start", store.name, amount(store.at_start));
    text += store.state == outcome::StoreState::runs_out
                ? fmt::format(", out after {}, {}{}", duration(store.at_s), clocks.both(store.at_s),
                              store.left > 0 ? "; filled again, " + amount(store.left) + " left" : "")
                : fmt::format(", {} left at {}{}", amount(store.left), horizon(m.outcome.horizon_s),
                              store.left > store.at_start ? ", with what rain or a desalinator gave" : "");
    out.items.push_back(text + ".");
  }
  return out;
}

}  // namespace

document::Section ration_card(const Material& m) {
  document::Section out{"Ration card", {}, true};
  out.blocks.push_back(document::Paragraph{
      "The plan as it was entered and what it comes to in this run. It is one case: rain, "
      "sickness and a crew "
      "that differs change it."});
  out.blocks.push_back(rules(m));
  out.blocks.push_back(by_day(m));
  if (m.timeline.horizon_s > most_days * day_s)
    out.blocks.push_back(document::Paragraph{
        fmt::format("The first {} days of {}.", most_days, horizon(m.timeline.horizon_s))});
  out.blocks.push_back(document::Paragraph{"Aboard:"});
  out.blocks.push_back(stock(m));
  return out;
}

}  // namespace bide::report::pages
