#include "bide/outcome/evidence.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <tuple>

#include "bide/body/region.hpp"
#include "bide/constants/evidence.hpp"
#include "bide/constants/left_out.hpp"

namespace bide::outcome {
namespace {

namespace limit = constants;

struct Rule {
  unsigned topics;
  Grade grade;
  const char* passed;
  const char* reason;
  bool (*applies)(const Facts&);
};

constexpr unsigned of_body = topic_able | topic_alive;

using system::Side;
namespace quantity = system::quantity;

// It was a limit of this quantity, on this side, that ended it.
bool caused_by(const Facts& f, quantity::Id what, Side side = Side::above) {
  if (f.cause == system::Limit::none) return false;
  const system::LimitRow& row = system::row_of(f.cause);
  return row.of == what && row.side == side;
}

// The one place that says where the data end. A result no rule touches is `checked`.
const Rule rules[] = {
    {of_body | topic_hands | topic_cabin, Grade::extrapolated, "longer than the raft trials (2.5 h)",
     "the longest published trial that measured people in a raft ended at 135 min",
     [](const Facts& f) { return f.in_raft && f.hours > limit::longest_raft_trial_h; }},
    {of_body, Grade::extrapolated, "longer than the immersion trials (6.5 h)",
     "longer times in cold water are known from accidents only",
     [](const Facts& f) { return !f.in_raft && f.hours > limit::immersion_trial_h; }},
    {of_body | topic_hands, Grade::extrapolated, "core below 35 °C, the measured range of the shivering law",
     "the law rests on cores of 35.9 °C with a spread of 0.9",
     [](const Facts& f) { return f.lowest_core_degC < limit::shivering_law_core_degC; }},
    {of_body, Grade::extrapolated, "core below 33.25 °C, colder than any person shivering was measured at",
     "no volunteer is cooled further; what follows comes from casualties",
     [](const Facts& f) { return f.lowest_core_degC < limit::shivering_law_lowest_core_degC; }},
    {topic_alive, Grade::extrapolated, "death by cold: known from casualties, not from trials",
     "people have been revived from 13.7 °C; the limit has a wide spread",
     [](const Facts& f) { return caused_by(f, quantity::core, Side::below); }},
    {of_body, Grade::extrapolated, "shivering for longer than 6.5 h",
     "the longest trial saw no fall within 6.5 h; whether and when it tires after that is not measured",
     [](const Facts& f) { return f.shivering_h > limit::longest_shivering_trial_h; }},
    {of_body, Grade::extrapolated, "wet clothes for longer than 3 h",
     "no published trial of sitting in wet clothes and cold lasts longer",
     [](const Facts& f) { return f.wet_clothing_h > limit::longest_wet_sitting_h; }},
    {of_body | topic_hands | topic_thirst, Grade::extrapolated, "a person under 18",
     "the trials had adults; only size and published age factors carry over",
     [](const Facts& f) { return f.age_years < limit::youngest_measured_years; }},
    {of_body | topic_hands | topic_thirst, Grade::extrapolated, "a person over 60",
     "no long cold trial of older people is known; only published age factors carry over",
     [](const Facts& f) { return f.age_years > limit::oldest_measured_years; }},
    {of_body | topic_hands | topic_thirst, Grade::extrapolated, "an injured or ill person",
     "only some effects of injury and illness are modelled, and no trial had such people",
     [](const Facts& f) { return f.injured; }},
    {of_body, Grade::extrapolated, "a woman in hours of cold",
     "the long trials in severe cold had men, or too few women to tell",
     [](const Facts& f) {
       return f.female && f.lowest_core_degC < limit::women_cold_core_degC &&
              f.hours > limit::longest_raft_trial_h;
     }},
    {of_body, Grade::extrapolated, "more alcohol than in the trials (82 mg/dL)",
     "the cold trial with alcohol stopped there",
     [](const Facts& f) { return f.blood_alcohol_mg_dL > limit::alcohol_trial_mg_dL; }},
    {of_body, Grade::extrapolated, "hotter or longer than the humid heat trial (35 °C, 8 h)",
     "the longest trial of people sitting in humid heat was 8 h at 35 °C",
     [](const Facts& f) {
       return f.hottest_inside_degC > limit::humid_heat_trial_degC ||
              (caused_by(f, quantity::core) && f.hours > limit::humid_heat_trial_h);
     }},
    {of_body | topic_thirst, Grade::extrapolated, "more than 5 % of body mass lost as water",
     "how people at rest sweat and what they can do at 5 to 10 % has not been measured",
     [](const Facts& f) { return f.worst_deficit_pct > limit::sweating_deficit_pct; }},
    {topic_alive, Grade::extrapolated, "death by water loss: estimated, not observed",
     "published limits run from 12 to 25 % of body mass",
     [](const Facts& f) { return caused_by(f, quantity::deficit); }},
    {of_body | topic_thirst, Grade::extrapolated, "blood saltier than 350 mOsm/kg",
     "the signs above this are recalled figures",
     [](const Facts& f) { return f.worst_osmolality_mOsm_kg > limit::recalled_osmolality_mOsm_kg; }},
    {of_body, Grade::extrapolated, "dilute blood: known from patients, not from people at sea",
     "the same level is borne when it is reached slowly; half of those died who reached it within a day",
     [](const Facts& f) { return caused_by(f, quantity::osmolality, Side::below); }},
    {topic_alive, Grade::extrapolated, "death by hunger: known from famine and hunger strikes",
     "the limits are averages with a wide spread",
     [](const Facts& f) {
       return caused_by(f, quantity::protein_used) || caused_by(f, quantity::fat, Side::below);
     }},
    {of_body | topic_hands | topic_cabin | topic_condensate, Grade::extrapolated,
     "canopy heat loss, never measured on a raft",
     "taken from film greenhouses and tents; no published U-value of a raft canopy is known",
     [](const Facts& f) { return f.in_raft && f.under_canopy; }},
    {topic_co2, Grade::extrapolated, "leakage of a raft canopy, never measured",
     "taken from cars and tents; breath is measured, the air change of a closed raft is not",
     [](const Facts& f) { return f.in_raft && f.under_canopy; }},
    {of_body, Grade::extrapolated, "foul air in a raft, never measured",
     "limits are known from industry; no CO2 series inside a closed raft is published",
     [](const Facts& f) { return caused_by(f, quantity::co2); }},
    {topic_hands, Grade::no_data, "fingers below 15 °C for hours",
     "no finger temperatures over hours at 0 to 15 °C are published",
     [](const Facts& f) { return f.cold_fingers_h > limit::finger_curve_h; }},
    {topic_condensate, Grade::no_data, "condensate of a canopy, never measured",
     "no weighing of the water that forms under a canopy is published",
     [](const Facts& f) { return f.in_raft && f.under_canopy; }},
};

constexpr int after_rules = static_cast<int>(std::size(rules));

}  // namespace

std::string_view to_string(Grade grade) {
  switch (grade) {
    case Grade::checked:
      return "checked";
    case Grade::biased:
      return "biased";
    case Grade::extrapolated:
      return "extrapolated";
    case Grade::no_data:
      break;
  }
  return "no data";
}

std::vector<LeftOutWords> left_out_words(const constants::Forecast& forecast, constants::Region region,
                                         constants::Span span) {
  const std::string where =
      fmt::format("in {} {}", constants::region_names[region], constants::span_names[span]);
  std::vector<LeftOutWords> out;
  const auto errs = [&](const char* when, const char* what, double low, double high, const char* against) {
    out.push_back(
        {true, fmt::format("people may get cold {} than shown: {}, the model {} {:.2g} to {:.2g} {}", when,
                           where, what, low, high, against)});
  };
  const constants::Bias &heat = forecast.heat_made, &core = forecast.core;
  if (heat.biased && heat.low > 1)
    errs("sooner", "gives bodies", heat.low, heat.high, "times the heat that tests measured");
  if (heat.biased && heat.high < 1)
    errs("later", "gives bodies", heat.low, heat.high, "times the heat that tests measured");
  if (core.biased && core.low > 0)
    errs("sooner", "keeps the core", core.low, core.high, "K warmer than measured");
  if (core.biased && core.high < 0)
    errs("later", "keeps the core", -core.high, -core.low, "K colder than measured");
  const constants::Covered& covered = forecast.covered;
  if (covered.rows == 0) return out;
  const std::string count =
      fmt::format("{} of {} measurements {} lie in the model's range", covered.of, covered.rows, where);
  if (covered.rows < constants::covered_from_rows)
    out.push_back({false, count + ", too few to tell"});
  else if (covered.of >= constants::covered_from_share * covered.rows)
    out.push_back({false, count + ": covered"});
  else
    out.push_back({false, count + ": not covered"});
  return out;
}

Evidence judge(Topic topic, const Facts& facts, const std::vector<std::string>& flags) {
  Evidence evidence;
  for (const Rule& rule : rules) {
    if ((rule.topics & topic) == 0 || !rule.applies(facts)) continue;
    evidence.grade = std::max(evidence.grade, rule.grade);
    evidence.passed.push_back({rule.passed, rule.reason, static_cast<int>(&rule - rules)});
  }
  if ((topic & of_body) != 0 && facts.at) {
    const constants::Region region = body::region_of(*facts.at);
    const constants::Span span = body::span_of(facts.hours);
    evidence.left_out = left_out_words(constants::left_out[region].when[span], region, span);
    for (const LeftOutWords& each : evidence.left_out)
      if (each.biased) evidence.grade = std::max(evidence.grade, Grade::biased);
  }
  if ((topic & of_body) != 0 && caused_by(facts, quantity::deficit)) {
    evidence.grade = std::max(evidence.grade, Grade::biased);
    evidence.left_out.insert(
        evidence.left_out.begin(),
        {true,
         fmt::format("thirst may act sooner than shown: without water the model's people lasted {} to {} "
                     "times as long as published, mostly too long",
                     limit::days_without_water_least_times.value, limit::days_without_water_most_times.value),
         true});
  }
  for (const std::string& flag : flags) {
    evidence.grade = std::max(evidence.grade, Grade::extrapolated);
    evidence.passed.push_back({flag, "a published correlation was used outside its range", after_rules});
  }
  return evidence;
}

Evidence merge(const std::vector<Evidence>& parts) {
  Evidence whole;
  for (const Evidence& part : parts) {
    whole.grade = std::max(whole.grade, part.grade);
    for (const Passed& passed : part.passed) {
      const bool known = std::any_of(whole.passed.begin(), whole.passed.end(),
                                     [&](const Passed& other) { return other.limit == passed.limit; });
      if (!known) whole.passed.push_back(passed);
    }
    for (const LeftOutWords& words : part.left_out) {
      const bool known = std::any_of(whole.left_out.begin(), whole.left_out.end(),
                                     [&](const LeftOutWords& other) { return other.words == words.words; });
      if (!known) whole.left_out.push_back(words);
    }
  }
  std::sort(whole.passed.begin(), whole.passed.end(), [](const Passed& a, const Passed& b) {
    return std::tie(a.place, a.limit) < std::tie(b.place, b.limit);
  });
  std::sort(whole.left_out.begin(), whole.left_out.end(), [](const auto& a, const auto& b) {
    return std::tie(b.of_the_end, b.biased, a.words) < std::tie(a.of_the_end, a.biased, b.words);
  });
  return whole;
}

}  // namespace bide::outcome
