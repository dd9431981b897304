#include <algorithm>
#include <cmath>
#include <utility>

#include "bide/core/people.hpp"
#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/compare/compare_page.hpp"
#include "bide/report/html/elements.hpp"
#include "bide/report/html/page.hpp"
#include "bide/report/levers/levers_section.hpp"
#include "bide/report/run/answer_lines.hpp"
#include "bide/report/run/csv.hpp"
#include "bide/report/run/json.hpp"
#include "bide/report/run/range.hpp"
#include "bide/report/run/run_page.hpp"
#include "bide/report/run/sheets.hpp"
#include "bide/report/words/words.hpp"
#include "bide/scenario/variations.hpp"
#include "bide/scenario/words.hpp"
#include "bide/study/questions/compare.hpp"
#include "bide/study/questions/levers.hpp"
#include "bide/study/sampling/distribution.hpp"
#include "bide/study/sampling/sampler.hpp"
#include "reading.hpp"

namespace bide::browser {
namespace {

using report::document::Page;

// Every so many rows, so that a drawing has at most a few hundred.
Json thinned(const std::vector<double>& values, std::size_t every, double per_unit = 1) {
  constexpr double kept_digits = 1e4;  // four decimals: finer than any drawing
  Json out = Json::array();
  for (std::size_t i = 0; i < values.size(); i += every)
    out.push_back(std::isfinite(values[i])
                      ? Json(std::round(kept_digits * values[i] * per_unit) / kept_digits)
                      : Json());
  return out;
}

Json raft_of(const scenario::ValidScenario& scenario) {
  if (!scenario.scenario.raft) return {};
  const scenario::Raft& raft = *scenario.scenario.raft;
  return {{"capacity_persons", raft.capacity_persons},
          {"floor", word(raft.floor)},
          {"canopy", word(raft.canopy)},
          {"floor_area_m2", raft.floor_area_m2},
          {"canopy_height_m", raft.canopy_height_m},
          {"tube_diameter_m", raft.tube_diameter_m},
          {"opening_area_m2", raft.opening_area_m2}};
}

Json course_of(const timeline::Timeline& t) {
  constexpr std::size_t most_rows = 400;
  const std::size_t every = 1 + t.time_s.size() / most_rows;
  Json out = {{"time_h", thinned(t.time_s, every, 1 / hour_s)}};
  for (const auto& [name, values] : {std::pair{"inside_degC", &t.inside_air_degC},
                                     {"canopy_degC", &t.canopy_degC},
                                     {"outside_degC", &t.outside_air_degC},
                                     {"sea_degC", &t.sea_degC},
                                     {"wind_m_s", &t.wind_m_s},
                                     {"wave_height_m", &t.wave_height_m},
                                     {"sun_W_m2", &t.irradiance_W_m2},
                                     {"rain_mm_h", &t.rain_mm_h},
                                     {"floor_water_L", &t.floor_water_L},
                                     {"opening_m2", &t.opening_m2},
                                     {"co2_ppm", &t.co2_ppm},
                                     {"water_L", &t.water_L}})
    out[name] = thinned(*values, every);
  Json cores = Json::array();
  for (const timeline::PersonSeries& person : t.persons) cores.push_back(thinned(person.core_degC, every));
  out["core_degC"] = cores;
  return out;
}

Json persons_of(const outcome::Outcome& outcome) {
  Json out = Json::array();
  for (std::size_t i = 0; i < outcome.persons.size(); ++i) {
    const outcome::PersonOutcome& person = outcome.persons[i];
    const int place = static_cast<int>(i);
    out.push_back({{"name", person_label(place)},
                   {"letters", crew_letters(place, 'A')},
                   {"able_h", hours(person.able.at_s)},
                   {"alive_h", hours(person.alive.at_s)}});
  }
  return out;
}

std::optional<study::LeversTried> levers_of(const scenario::ValidScenario& scenario, Json& wrong) {
  auto tried = study::try_levers(scenario);
  if (const auto* refusal = std::get_if<study::Refusal>(&tried))
    return wrong = refused(refusal->reasons), std::nullopt;
  return std::get<study::LeversTried>(std::move(tried));
}

// Until when the first person is able, over the scenario as it is and its members.
Json first_until(const outcome::CrewTimes& able, const study::RangeMembers& members, double horizon_s) {
  const study::TimeRange range =
      study::range_over(able, members, &outcome::Endurance::able, &outcome::CrewTimes::first_s);
  return {
      {"able_h", {hours(range.earliest_s), hours(range.latest_s)}},
      {"central_h", hours(able.first_s)},
      {"horizon_h", horizon_s / hour_s},
      {"words",
       {{"range", report::range_words(range, horizon_s)},
        {"central", able.first_s ? report::duration(*able.first_s) : "after " + report::horizon(horizon_s)},
        {"horizon", report::horizon(horizon_s)}}}};
}

// When help comes, as the scenario states it: a tenth of cases, half, nine tenths; null where it is not
// stated.
Json help_of(const scenario::ValidScenario& scenario) {
  const auto& uncertain = scenario.scenario.uncertain;
  if (!uncertain || !uncertain->rescue || uncertain->rescue->kind == scenario::RescueKind::none) return {};
  constexpr double low = 0.1, middle = 0.5, high = 0.9;
  Json out = Json::array();
  for (const double share : {low, middle, high}) out.push_back(study::rescue_h(*uncertain->rescue, share));
  return out;
}

// What stands in "vary" put into the scenario: one version for each combination.
std::variant<std::vector<scenario::Version>, scenario::Diagnostics> versions_of(
    const scenario::ValidScenario& base, const Json& vary) {
  std::vector<scenario::Variation> variations;
  for (const Json& each : vary) {
    auto read = scenario::read_variation(each.get<std::string>(), "--vary");
    if (auto* wrong = std::get_if<scenario::Diagnostic>(&read))
      return scenario::Diagnostics{std::move(*wrong)};
    variations.push_back(std::get<scenario::Variation>(std::move(read)));
  }
  return scenario::versions(base, variations);
}

}  // namespace

Json run(const Json& question) {
  Json wrong;
  const Ran* ran = run_in(question, false, wrong);
  if (!ran) return wrong;
  const timeline::Timeline& timeline = ran->run.timeline;
  return {{"title", ran->scenario.scenario.name},
          {"setting", ran->scenario.scenario.setting},
          {"uncertain", ran->scenario.scenario.uncertain.has_value()},
          {"horizon_h", timeline.horizon_s / hour_s},
          {"start_unix_s", timeline.start_unix_s},
          {"boarded_h", timeline.boarded_s / hour_s},
          {"in_raft", timeline.in_raft},
          {"raft", raft_of(ran->scenario)},
          {"persons", persons_of(ran->run.outcome)},
          {"help_h", help_of(ran->scenario)},
          {"course", course_of(timeline)},
          {"cautions", listed(ran->scenario.cautions)}};
}

Json report(const Json& question) {
  Json wrong;
  const Ran* ran = run_in(question, true, wrong);
  if (!ran) return wrong;
  const outcome::Outcome& outcome = ran->run.outcome;
  const timeline::Timeline& timeline = ran->run.timeline;
  const report::Material material{outcome, timeline, ran->scenario};
  std::optional<study::LeversTried> levers;
  const bool with_levers = question.value("levers", false);
  if (with_levers) {
    levers = levers_of(ran->scenario, wrong);
    if (!levers) return wrong;
  }
  const bool to_come = question.value("levers_to_come", false);
  report::document::Page page = report::pages::run_page({material, *ran->members, levers, to_come});
  if (!levers && !to_come) leave_out(page, "Buys most");
  Json out = sections_of(page);
  if (levers) out["levers"] = report::html::blocks_html(report::pages::levers_section(*levers, false));
  out["until"] = Json::array({first_until(outcome.able, *ran->members, outcome.horizon_s)});
  if (question.value("result", false))
    out["result"] = report::result_json(outcome, timeline, ran->scenario, *ran->members);
  return out;
}

Json report_file(const Json& question) {
  Json wrong;
  const Ran* ran = run_in(question, true, wrong);
  if (!ran) return wrong;
  const auto levers = levers_of(ran->scenario, wrong);
  if (!levers) return wrong;
  const auto& [timeline, outcome] = ran->run;
  return {{"text", report::html::to_html(report::pages::run_page(
                       {{outcome, timeline, ran->scenario}, *ran->members, levers}))}};
}

Json timeline_file(const Json& question) {
  Json wrong;
  const Ran* ran = run_in(question, false, wrong);
  if (!ran) return wrong;
  return {{"text", report::timeline_csv(ran->run.timeline, ran->scenario)}};
}

Json sheets(const Json& question) {
  Json wrong;
  const Ran* ran = run_in(question, true, wrong);
  if (!ran) return wrong;
  const auto& [timeline, outcome] = ran->run;
  const report::Material material{outcome, timeline, ran->scenario};
  const auto levers = levers_of(ran->scenario, wrong);
  if (!levers) return wrong;
  Json out = Json::array();
  for (const report::Sheet& sheet : report::run_sheets(
           material, report::run_answer(material, *ran->members, report::buys_line(levers, ran->scenario)))) {
    Json rows = Json::array();
    for (const auto& cells : sheet.rows) {
      Json row = Json::array();
      for (const report::SheetCell& cell : cells)
        row.push_back(std::visit([](const auto& value) { return Json(value); }, cell));
      rows.push_back(std::move(row));
    }
    out.push_back({{"name", sheet.name},
                   {"notes", sheet.notes},
                   {"columns", sheet.columns},
                   {"rows", std::move(rows)}});
  }
  return {{"sheets", std::move(out)}};
}

Json compare(const Json& question) {
  auto read = scenarios_in(question);
  if (const auto* errors = std::get_if<scenario::Diagnostics>(&read)) return refused(*errors);
  std::vector<scenario::Version> scenarios;
  for (scenario::ValidScenario& each : std::get<std::vector<scenario::ValidScenario>>(read))
    scenarios.push_back({std::move(each), {}});
  if (const Json vary = question.value("vary", Json::array()); !vary.empty()) {
    auto made = versions_of(scenarios.front(), vary);
    if (const auto* errors = std::get_if<scenario::Diagnostics>(&made)) return refused(*errors);
    scenarios = std::get<std::vector<scenario::Version>>(std::move(made));
  }
  study::CompareQuestion asked;
  asked.futures = question.value("futures", std::uint64_t{0});
  const auto compared = study::compare(std::move(scenarios), asked);
  if (const auto* refusal = std::get_if<study::Refusal>(&compared)) return refused(refusal->reasons);
  const auto& comparison = std::get<study::Comparison>(compared);
  report::document::Page page = report::pages::compare_page(comparison);
  if (!comparison.no_futures.empty()) leave_out(page, "Odds");
  if (!comparison.options.front().levers) leave_out(page, "Buys most");
  Json out = sections_of(page);
  out["until"] = Json::array();
  for (const study::Option& option : comparison.options) {
    const outcome::Figures& own = option.own.figures;
    out["until"].push_back(first_until(own.able, option.members, own.horizon_s));
  }
  return out;
}

}  // namespace bide::browser
