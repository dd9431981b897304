#include "bide/report/run/answer_lines.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/levers/levers_words.hpp"
#include "bide/report/odds/odds_words.hpp"
#include "bide/report/run/evidence_words.hpp"
#include "bide/report/run/first_hour.hpp"
#include "bide/report/run/range.hpp"
#include "bide/report/run/sentences.hpp"
#include "bide/report/words/input.hpp"
#include "bide/report/words/words.hpp"
#include "bide/study/sampling/distribution.hpp"

namespace bide::report {
namespace {

using outcome::CrewTimes;
using outcome::Figures;

Clocks clocks_of(const AnswerBasis& basis) {
  return {basis.scenario.start_unix_s, zone_hours(basis.scenario.scenario.position.longitude_deg)};
}

std::string sex_and_age(const scenario::Person& person) {
  constexpr double of_age_years = 18;
  const bool female = person.sex == scenario::Sex::female, adult = person.age_years >= of_age_years;
  return fmt::format("{}, {:.0f}", adult ? (female ? "woman" : "man") : (female ? "girl" : "boy"),
                     std::floor(person.age_years));
}

// What fills the water again: "rain", "the desalinator". Rain, where the scenario has any or leaves it to a
// file.
std::string water_maker(const AnswerBasis& basis) {
  const scenario::Routine& routine = basis.scenario.scenario.routine;
  const scenario::Weather& weather = basis.scenario.scenario.weather;
  const bool may_rain = weather.kind == scenario::WeatherKind::csv || weather.rain_mm_h.value_or(0) > 0;
  std::vector<std::string> ways;
  if (routine.catch_rain && may_rain) ways.push_back("rain");
  if (routine.desalinator_h_per_day > 0) ways.push_back("the desalinator");
  if (ways.empty()) ways.push_back("the solar still");
  return fmt::to_string(fmt::join(ways, " and "));
}

// @param clocked whether the early end is told by the clock too
std::string until_words(const AnswerBasis& basis, const std::optional<double>& central_s,
                        const std::optional<study::TimeRange>& range, bool clocked) {
  const Clocks clock = clocks_of(basis);
  const double horizon_s = basis.figures.horizon_s;
  const std::string beyond = "limit " + not_reached(horizon_s);
  const std::string central = central_s ? duration(*central_s) + ", " + clock.both(*central_s) : beyond;
  if (!range) return central;
  if (!range->earliest_s) return beyond + (clocked ? ", anywhere in the range" : "");
  const std::string from = duration(*range->earliest_s), to = latest_words(*range, horizon_s);
  if (from == to) return central;
  return from + (clocked ? " (" + clock.utc(*range->earliest_s) + ")" : "") + " to " + to;
}

// ", central case 41 h"; nothing without a range about it.
std::string central_words(const AnswerBasis& basis, const std::optional<double>& central_s,
                          const std::optional<study::TimeRange>& range) {
  const double horizon_s = basis.figures.horizon_s;
  if (!range || !range->earliest_s || duration(*range->earliest_s) == latest_words(*range, horizon_s))
    return "";
  return ", central case " + (central_s ? duration(*central_s) : "after " + horizon(horizon_s));
}

// What an answer tells first: a side to which the model errs, or how many measurements its range covers; then
// where the measurements end; then the rest of the first.
std::vector<std::string> doubts(const Figures& figures) {
  std::vector<std::string> out = left_out_sentences(judged(figures));
  const std::vector<std::string> ends = data_ends(judged(figures));
  out.insert(out.begin() + (out.empty() ? 0 : 1), ends.begin(), ends.end());
  return out;
}

std::string grade_words(outcome::Grade grade) {
  const std::string word(to_string(grade));
  if (grade == outcome::Grade::checked) return word + " against measurements";
  return grade == outcome::Grade::extrapolated ? "in part beyond what was measured (" + word + ")" : word;
}

}  // namespace

std::string names_with_age(const std::vector<int>& persons, const scenario::ValidScenario& scenario) {
  const std::string out = person_names(persons);
  if (persons.size() > 1) return out;
  return out + " (" + sex_and_age(scenario.scenario.crew[static_cast<std::size_t>(persons.front())]) + ")";
}

std::string until_line(const AnswerBasis& basis, study::CrewState state) {
  const CrewTimes& central = basis.figures.*state;
  const bool ranged = !basis.members.empty();
  const auto over = [&](study::CrewTime which) {
    return ranged ? std::optional(study::range_over(central, basis.members, state, which)) : std::nullopt;
  };
  const std::optional<study::TimeRange> of_first = over(&CrewTimes::first_s),
                                        of_last = over(&CrewTimes::last_s);
  const std::string first = until_words(basis, central.first_s, of_first, true);
  const std::string middle = central_words(basis, central.first_s, of_first);
  if (central.persons == 1) return first + middle;
  const std::string last = until_words(basis, central.last_s, of_last, !ranged);
  if (first == until_words(basis, central.last_s, of_last, true)) return "whole crew: " + first + middle;
  return fmt::format("first person: {}{}; last person: {}", first, middle, last);
}

std::string ends_line(const AnswerBasis& basis) {
  const Figures& f = basis.figures;
  const system::Limit early_limit = study::earliest(f, basis.members).able_limit;
  const scenario::Scenario& s = basis.scenario.scenario;
  constexpr auto none = system::Limit::none;
  const std::string able = outcome::short_cause(f.able_limit), lethal = outcome::short_cause(f.alive_limit);
  const outcome::StoreOutcome* water = outcome::store_of(f.stores, outcome::Store::water);
  const bool beside_water = f.able_limit == system::Limit::able_water_deficit && water != nullptr &&
                            water->state == outcome::StoreState::lasts;
  const std::string alive =
      (beside_water ? "; there is water left, but they drank less than they lost" : "") +
      (f.alive_limit == none || able == lethal ? "" : "; alive ended by " + lethal);
  const std::string central =
      f.able_limit == none ? "nothing within " + horizon(f.horizon_s)
                           : outcome::plain_cause(f.able_limit, s.limits,
                                                  s.crew.at(static_cast<std::size_t>(f.first_persons.at(0))));
  if (early_limit == none || early_limit == f.able_limit) return central + alive;
  return fmt::format("{} at the early end of the range; {} in the central case{}",
                     outcome::short_cause(early_limit), central, alive);
}

std::string who_first(const AnswerBasis& basis) {
  const Figures& figures = basis.figures;
  if (figures.first_persons.empty()) return "nobody within " + horizon(figures.horizon_s);
  const bool all = figures.first_persons.size() > 1 &&
                   static_cast<int>(figures.first_persons.size()) == static_cast<int>(figures.able.persons);
  const std::string names = all ? "all alike" : names_with_age(figures.first_persons, basis.scenario);
  if (figures.able.first_s) return names;
  constexpr double far_fraction = 0.5;  // of a margin left: nobody is near a limit
  if (figures.next_limit == system::Limit::none || figures.next_margin_fraction > far_fraction)
    return "nobody in the central case";
  return fmt::format("nobody in the central case; nearest to a limit there: {} by {}, {}", names,
                     outcome::short_cause(figures.next_limit), margin_left(figures.next_margin_fraction));
}

// The same with who is first at the early end of the range, where that is another answer.
std::string who_line(const AnswerBasis& basis) {
  const outcome::Endurance& early = study::earliest(basis.figures, basis.members);
  const std::string central = who_first(basis);
  const bool reached = basis.figures.able.first_s.has_value();
  if (!early.able.first_s || (reached && early.first_persons == basis.figures.first_persons)) return central;
  return fmt::format("{} at the early end of the range; {}{}",
                     names_with_age(early.first_persons, basis.scenario), central,
                     reached ? " in the central case" : "");
}

// "as stated after 72 h: all able then in 12 of 17 runs, all alive in 17". Empty where no help is stated.
std::string help_line(const AnswerBasis& basis) {
  const auto& uncertain = basis.scenario.scenario.uncertain;
  if (!uncertain || !uncertain->rescue || uncertain->rescue->kind == scenario::RescueKind::none) return "";
  const double at_s = study::rescue_h(*uncertain->rescue, 0.5) * hour_s, horizon_s = basis.figures.horizon_s;
  const std::string stated = "as stated after " + rescue_words(*uncertain->rescue);
  if (at_s > horizon_s) return stated + ", after the " + horizon(horizon_s) + " followed";
  std::size_t able = 0, alive = 0;
  const auto count = [&](const outcome::Endurance& run) {
    able += run.able.first_s.value_or(horizon_s) >= at_s;
    alive += run.alive.first_s.value_or(horizon_s) >= at_s;
  };
  count(basis.figures);
  for (const study::RangeMember& each : basis.members) count(each);
  const std::size_t runs = basis.members.size() + 1;
  if (runs == 1)
    return fmt::format("{}: {}", stated,
                       able    ? "all able then"
                       : alive ? "all alive then"
                               : "not all alive then");
  return fmt::format("{}: all able at {} in {} of {} runs, all alive in {}", stated, duration(at_s), able,
                     runs, alive);
}

std::string inside_line(const AnswerBasis& basis) {
  const Figures& f = basis.figures;
  if (!f.in_raft) return "no cabin: in the water";
  if (!f.coldest_inside) return "not known: nobody is aboard";
  if (f.coldest_inside->settling)
    return "coldest " + temperature(f.coldest_inside->degC) + ", just after boarding";
  // No clock: two figures of a long time would put a night at noon.
  return fmt::format("coldest {}, by {} on day {:.0f}", temperature(f.coldest_inside->degC),
                     f.coldest_inside->dark ? "night" : "day",
                     std::floor(f.coldest_inside->time_s / day_s) + 1);
}

std::string water_line(const AnswerBasis& basis) {
  const outcome::StoreOutcome* water = outcome::store_of(basis.figures.stores, outcome::Store::water);
  if (water == nullptr || water->state == outcome::StoreState::none_aboard) return "no drinking water aboard";
  const std::string left = fmt::format("{} {} left", two_figures(water->left), water->unit);
  if (water->state == outcome::StoreState::lasts)
    return fmt::format("not out within {}: {}", horizon(basis.figures.horizon_s), left);
  return fmt::format("out after {}, {}{}", duration(water->at_s), clocks_of(basis).both(water->at_s),
                     water->left > 0 ? "; refilled later by " + water_maker(basis) + ", " + left : "");
}

std::string how_sure(const Figures& figures) {
  const std::string able = grade_words(figures.able_evidence.grade),
                    alive = grade_words(figures.alive_evidence.grade);
  std::string out = able == alive ? able : fmt::format("able until {}, alive until {}", able, alive);
  const std::vector<std::string> all = doubts(figures);
  constexpr std::size_t most_told = 2;
  const std::size_t told = std::min(all.size(), most_told);
  for (std::size_t i = 0; i < told; ++i) out += (i == 0 ? ": " : "; ") + all[i];
  if (all.size() > told) out += fmt::format("; and {} more under Evidence", all.size() - told);
  return out;
}

std::string buys_line(const std::optional<study::LeversTried>& levers,
                      const scenario::ValidScenario& scenario) {
  if (!levers) return "not tried; ask: bide levers " + file_alone(scenario.file);
  return most_bought_words(*levers, 2);
}

Answer answer_of(const AnswerBasis& basis, const std::string& buys) {
  Answer out{{"Able until", until_line(basis, &Figures::able)},
             {"Alive until", until_line(basis, &Figures::alive)},
             {"Ends it", ends_line(basis)},
             {"Who first", who_line(basis)}};
  if (const std::string help = help_line(basis); !help.empty()) out.push_back({"Help", help});
  out.insert(out.end(), {{"Buys most", buys},
                         {"Inside", inside_line(basis)},
                         {"Water", water_line(basis)},
                         {"First hour", first_hour_line(basis.scenario)},
                         {"How sure", how_sure(basis.figures) + "; " +
                                          what_the_range_is(basis.members.size(), basis.scenario)},
                         {"Not in it", not_in_the_model(basis.scenario, Told::as_written)}});
  return out;
}

}  // namespace bide::report
