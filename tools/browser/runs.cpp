#include <algorithm>
#include <cmath>
#include <utility>

#include "bide/core/people.hpp"
#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/compare/compare_page.hpp"
#include "bide/report/run/csv.hpp"
#include "bide/report/run/json.hpp"
#include "bide/report/run/run_page.hpp"
#include "bide/scenario/variations.hpp"
#include "bide/scenario/words.hpp"
#include "bide/scenario/write.hpp"
#include "bide/study/questions/compare.hpp"
#include "bide/study/questions/levers.hpp"
#include "bide/study/sampling/sampler.hpp"
#include "reading.hpp"

namespace bide::browser {
namespace {

using report::html::Page;

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

Json hours(const std::optional<double>& time_s) {
  return time_s ? Json(*time_s / hour_s) : Json();
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
    out.push_back({{"name", person_label(static_cast<int>(i))},
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

Json check(const Json& question) {
  const auto read = scenario_in(question);
  if (const auto* errors = std::get_if<scenario::Diagnostics>(&read)) return refused(*errors);
  const auto& scenario = std::get<scenario::ValidScenario>(read);
  scenario::Diagnostics cautions = scenario.cautions;
  return {{"title", scenario.scenario.name},
          {"setting", scenario.scenario.setting},
          {"uncertain", scenario.scenario.uncertain.has_value()},
          {"cautions", listed(cautions)},
          {"listing", scenario::listing(scenario)}};
}

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
          {"course", course_of(timeline)},
          {"cautions", listed(ran->scenario.cautions)}};
}

Json report(const Json& question) {
  Json wrong;
  const Ran* ran = run_in(question, true, wrong);
  if (!ran) return wrong;
  const auto& [timeline, outcome] = ran->run;
  const report::Material material{outcome, timeline, ran->scenario};
  std::optional<study::LeversTried> levers;
  if (question.value("levers", false)) {
    levers = levers_of(ran->scenario, wrong);
    if (!levers) return wrong;
  }
  Json out = sections_of(report::pages::run_page({material, *ran->members, std::move(levers)}));
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
  return {{"text",
           to_html(report::pages::run_page({{outcome, timeline, ran->scenario}, *ran->members, levers}))}};
}

Json timeline_file(const Json& question) {
  Json wrong;
  const Ran* ran = run_in(question, false, wrong);
  if (!ran) return wrong;
  return {{"text", report::timeline_csv(ran->run.timeline, ran->scenario)}};
}

Json compare(const Json& question) {
  std::vector<scenario::Version> scenarios;
  for (const Json& each : question.value("scenarios", Json::array())) {
    auto read = scenario_in(each);
    if (const auto* errors = std::get_if<scenario::Diagnostics>(&read)) return refused(*errors);
    scenarios.push_back({std::get<scenario::ValidScenario>(std::move(read)), {}});
  }
  if (scenarios.empty()) return refused({{"comparison", "/scenarios", "found none; allowed 1 or more"}});
  if (const Json vary = question.value("vary", Json::array()); !vary.empty()) {
    auto made = versions_of(scenarios.front(), vary);
    if (const auto* errors = std::get_if<scenario::Diagnostics>(&made)) return refused(*errors);
    scenarios = std::get<std::vector<scenario::Version>>(std::move(made));
  }
  study::CompareQuestion asked;
  asked.futures = question.value("futures", std::uint64_t{0});
  const auto compared = study::compare(std::move(scenarios), asked);
  if (const auto* refusal = std::get_if<study::Refusal>(&compared)) return refused(refusal->reasons);
  return sections_of(report::pages::compare_page(std::get<study::Comparison>(compared)));
}

}  // namespace bide::browser
