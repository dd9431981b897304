#include <fmt/format.h>

#include "bide/outcome/cause.hpp"
#include "bide/report/levers/levers_words.hpp"
#include "bide/report/run/run_parts.hpp"
#include "bide/report/run/sentences.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report::pages {
namespace {

using outcome::CrewTimes;
using Which = std::optional<double> CrewTimes::*;

struct Times {
  const RunMaterial& material;
  CrewTimes outcome::Outcome::*state;

  study::TimeRange over(Which which) const {
    std::vector<std::optional<double>> all{(material.run.outcome.*state).*which};
    for (const study::Run& run : material.unmeasured) all.push_back((run.outcome.*state).*which);
    return study::range_of(all);
  }
  std::optional<double> one(Which which) const { return (material.run.outcome.*state).*which; }
};

std::string range_words(const study::TimeRange& range, double horizon_s) {
  if (!range.earliest_s) return not_reached(horizon_s);
  const std::string from = duration(*range.earliest_s);
  const std::string to = range.latest_s ? duration(*range.latest_s) : "beyond " + horizon(horizon_s);
  return from == to ? from : from + " to " + to;
}

std::string range_sentence(const char* name, const Times& times, double horizon_s) {
  const auto words = [&](Which which) { return range_words(times.over(which), horizon_s); };
  const std::string first = words(&CrewTimes::first_s), last = words(&CrewTimes::last_s);
  if (times.material.run.outcome.persons.size() == 1) return fmt::format("{}: {}.", name, first);
  if (first == last) return fmt::format("{}: {}, for the whole crew.", name, first);
  return fmt::format("{}: first person {}, last person {}.", name, first, last);
}

html::Table times_table(const RunMaterial& material) {
  const Material& m = material.run;
  const double h = m.outcome.horizon_s;
  const int zone_h = zone_hours(m.scenario.scenario.position.longitude_deg);
  html::Table out;
  out.caption = "Until when";
  out.columns = {
      {"", false}, {"over what is not measured", false}, {"middle of it", false}, {"evidence", false}};
  const auto add = [&](const std::string& name, const Times& times, Which which,
                       const outcome::Evidence& evidence) {
    const auto one = times.one(which);
    out.rows.push_back(
        {name, material.unmeasured.empty() ? "all stated: no range" : range_words(times.over(which), h),
         one ? duration(*one) + ", " + both_clocks(m.timeline.start_unix_s, *one, zone_h) : not_reached(h),
         std::string(outcome::to_string(evidence.grade))});
  };
  const Times able{material, &outcome::Outcome::able}, alive{material, &outcome::Outcome::alive};
  const bool crew = m.outcome.persons.size() > 1;
  const struct {
    const char* word;
    Which which;
  } rows[] = {{"first person", &CrewTimes::first_s},
              {"half of the crew", &CrewTimes::half_s},
              {"last person", &CrewTimes::last_s}};
  for (const auto& [name, times, evidence] : {std::tuple{"able until", &able, &m.outcome.able_evidence},
                                              std::tuple{"alive until", &alive, &m.outcome.alive_evidence}})
    for (const auto& row : rows) {
      if (!crew && row.which != &CrewTimes::first_s) continue;
      add(crew ? fmt::format("{}, {}", name, row.word) : name, *times, row.which, *evidence);
    }
  return out;
}

std::string one_case_words(const RunMaterial& material) {
  const std::string rest =
      "Crew, weather and sea are one case, as entered, not a forecast. For chances over people and weather "
      "use the odds command.";
  if (material.unmeasured.empty())
    return "A single run of one scenario, without a range: the file states everything that nobody has "
           "measured. " +
           rest;
  return fmt::format(
      "The ranges are {} runs over what nobody has measured: heat loss and leakage of the canopy at both "
      "ends "
      "of their ranges, shivering that gives out and shivering that never tires, where the file does not "
      "state "
      "them. "
      "{}",
      material.unmeasured.size() + 1, rest);
}

}  // namespace

html::Section answer_section(const RunMaterial& material) {
  const Material& m = material.run;
  const double h = m.outcome.horizon_s;
  html::Section out{"The answer", {}};
  const Times able{material, &outcome::Outcome::able}, alive{material, &outcome::Outcome::alive};
  out.blocks.push_back(html::Paragraph{range_sentence("Able until", able, h), true});
  out.blocks.push_back(html::Paragraph{range_sentence("Alive until", alive, h), true});
  out.blocks.push_back(html::Paragraph{one_case_words(material)});
  out.blocks.push_back(html::Paragraph{"What ends it, with the middle of what is not measured:"});
  html::List ends;
  for (const std::string& sentence : person_sentences(m)) ends.items.push_back(sentence);
  out.blocks.push_back(ends);
  if (material.levers) out.blocks.push_back(html::Paragraph{most_bought_words(*material.levers)});
  out.blocks.push_back(times_table(material));
  return out;
}

}  // namespace bide::report::pages
