#include "bide/report/compare/compare_cells.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/run/answer_lines.hpp"
#include "bide/report/run/range.hpp"
#include "bide/report/words/input.hpp"
#include "bide/report/words/words.hpp"
#include "bide/study/questions/unmeasured.hpp"

namespace bide::report {

using outcome::Figures;
using study::Option;

namespace {

std::string water_out(const Figures& figures) {
  const outcome::StoreOutcome* water = outcome::store_of(figures.stores, outcome::Store::water);
  if (water == nullptr || water->state == outcome::StoreState::none_aboard) return "no water aboard";
  return water->state == outcome::StoreState::runs_out ? duration(water->at_s)
                                                       : "not in " + horizon(figures.horizon_s);
}

std::string range_cell(const Option& option, study::CrewState state, study::CrewTime which) {
  const Figures& own = option.own.figures;
  return range_words(study::range_over(own.*state, option.members, state, which), own.horizon_s);
}

const outcome::Endurance& earliest(const ComparedFigures& shown) {
  return shown.ranges ? study::earliest(*shown.figures, shown.ranges->members) : *shown.figures;
}

}  // namespace

document::Table figures_table(const std::string& caption, const std::vector<ComparedFigures>& shown,
                              Rows rows) {
  document::Table out;
  out.caption = caption;
  out.columns = {{"", false}};
  for (const ComparedFigures& each : shown) out.columns.push_back({each.name, false});
  const auto add = [&](const std::string& name, const auto& cell_of) {
    std::vector<std::string> row{name};
    for (const ComparedFigures& each : shown) row.push_back(cell_of(each));
    out.rows.push_back(std::move(row));
  };
  using outcome::CrewTimes;
  const bool ranges = std::all_of(shown.begin(), shown.end(), [](const ComparedFigures& each) {
    return each.ranges && !each.ranges->members.empty();
  });
  const bool brief = rows == Rows::asked_first;
  const auto add_until = [&](const std::string& name, study::CrewState state, study::CrewTime which) {
    if (ranges) add(name, [&](const ComparedFigures& s) { return range_cell(*s.ranges, state, which); });
    if (!ranges || !brief)
      add(ranges ? "- central case" : name,
          [&](const ComparedFigures& s) { return cell((s.figures->*state).*which, s.figures->horizon_s); });
  };
  const bool several = std::any_of(
      shown.begin(), shown.end(), [](const ComparedFigures& each) { return each.figures->able.persons > 1; });
  for (const auto& [name, state] :
       {std::pair{"able until", &Figures::able}, {"alive until", &Figures::alive}}) {
    add_until(fmt::format("{}, first", name), state, &CrewTimes::first_s);
    if (several) add_until(fmt::format("{}, last", name), state, &CrewTimes::last_s);
  }
  add(ranges ? "what ends it first" : "ended by", [](const ComparedFigures& s) {
    const bool early_alone =
        s.figures->able_limit == system::Limit::none && earliest(s).able_limit != system::Limit::none;
    return ended_by(earliest(s)) + (early_alone ? ", early end only" : "");
  });
  add("who is first", [](const ComparedFigures& s) {
    const outcome::Endurance& crew = earliest(s);
    return crew.first_persons.empty()
               ? "nobody"
               : (s.ranges ? names_with_age(crew.first_persons, *s.ranges->own.scenario)
                           : person_names(crew.first_persons)) +
                     (crew.able.first_s ? "" : ", nearest");
  });
  add("coldest inside", [](const ComparedFigures& s) { return coldest_inside(*s.figures); });
  if (brief) {
    add("water out", [](const ComparedFigures& s) { return water_out(*s.figures); });
    return out;
  }
  add("lowest core of all",
      [](const ComparedFigures& s) { return temperature(s.figures->lowest_core_degC); });
  add("worst water deficit",
      [](const ComparedFigures& s) { return percent(s.figures->worst_water_deficit_pct); });
  add("CO2 above 5,000 ppm", [](const ComparedFigures& s) { return foul_air(*s.figures); });
  add("stores out", [](const ComparedFigures& s) { return stores_out(*s.figures); });
  return out;
}

std::string option_title(const Option& option) {
  if (option.put_in.empty())
    return fmt::format("{} ({})", option.own.scenario->scenario.name,
                       std::filesystem::path(option.label).filename().string());
  std::string out;
  for (const scenario::Version::PutIn& each : option.put_in)
    out += (out.empty() ? "" : ", ") + setting_words(each.pointer, each.written);
  return out;
}

std::string cell(const std::optional<double>& at_s, double horizon_s) {
  return at_s ? duration(*at_s) : "not in " + horizon(horizon_s);
}

std::string ended_by(const outcome::Endurance& crew) {
  constexpr auto none = system::Limit::none;
  if (crew.able_limit != none) return outcome::short_cause(crew.able_limit);
  return crew.next_limit == none
             ? "nothing"
             : fmt::format("nothing; nearest {}, {}", outcome::short_cause(crew.next_limit),
                           margin_left_pct(crew.next_margin_fraction));
}

std::string stores_out(const Figures& figures) {
  std::vector<outcome::StoreOutcome> out;
  for (const outcome::StoreOutcome& store : figures.stores)
    if (store.state == outcome::StoreState::runs_out) out.push_back(store);
  std::stable_sort(out.begin(), out.end(), [](const auto& a, const auto& b) { return a.at_s < b.at_s; });
  std::string text;
  for (const outcome::StoreOutcome& store : out)
    text += fmt::format("{}{} {}", text.empty() ? "" : ", ", store.name, duration(store.at_s));
  return text.empty() ? "none" : text;
}

std::string coldest_inside(const Figures& figures) {
  if (!figures.coldest_inside) return "none";
  const outcome::Coldest& coldest = *figures.coldest_inside;
  return temperature(coldest.degC) + (coldest.settling ? ", just after boarding"
                                      : coldest.dark   ? ", night"
                                                       : ", day");
}

std::string foul_air(const Figures& figures) {
  if (!figures.in_raft) return "no cabin";
  return figures.foul_air_h > 0 ? duration(figures.foul_air_h * hour_s) : "never";
}

}  // namespace bide::report
