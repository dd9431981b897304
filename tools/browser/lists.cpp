#include <string_view>

#include "answers.hpp"
#include "bide/climate/climate.hpp"
#include "bide/core/notice.hpp"
#include "bide/core/units.hpp"
#include "bide/report/words/glossary.hpp"
#include "bide/report/words/input.hpp"
#include "bide/report/words/input_sources.hpp"
#include "bide/report/words/units.hpp"
#include "bide/scenario/moment.hpp"
#include "bide/scenario/new_scenario.hpp"
#include "bide/scenario/patch.hpp"
#include "bide/scenario/sea_areas.hpp"
#include "bide/scenario/situation.hpp"
#include "bide/scenario/write.hpp"
#include "reading.hpp"

namespace bide::report::html::embedded {
extern const std::string_view charts_script;
}

namespace bide::browser {
namespace {

Json fields() {
  Json out = Json::array();
  for (const scenario::FieldLine& line : scenario::field_lines()) {
    Json field = {{"pointer", line.pointer},
                  {"unit", line.unit},
                  {"allowed", report::unit_signs(line.allowed)},
                  {"absent", report::unit_signs(line.absent)},
                  {"sentence", line.sentence},
                  {"words", line.words},
                  {"said", report::input_words(line.pointer)},
                  {"sources", report::input_sources(line.pointer)}};
    using Holds = scenario::FieldLine::Holds;
    field["holds"] = line.is_number               ? "number"
                     : line.holds == Holds::truth ? "truth"
                     : line.holds == Holds::parts ? "parts"
                                                  : "word";
    out.push_back(std::move(field));
  }
  return out;
}

scenario::Diagnostics because(const char* pointer, std::string message) {
  return {{"new scenario", pointer, std::move(message)}};
}

}  // namespace

Json lists() {
  Json seas = Json::array(), words = Json::array(), usual = Json::object();
  for (const scenario::SeaArea& area : scenario::sea_areas().sea_areas)
    seas.push_back({{"key", area.key},
                    {"title", area.title},
                    {"latitude_deg", area.latitude_deg},
                    {"longitude_deg", area.longitude_deg}});
  for (const report::Term& term : report::glossary()) words.push_back({term.word, term.meaning});
  int persons = 1;
  while (const scenario::RaftKind* raft = scenario::usual_raft(persons))
    usual[std::to_string(persons++)] = raft->key;
  return {{"notice", standing_notice},
          {"advice", standing_advice},
          {"catalogue", Json::parse(scenario::write_catalogue(""), nullptr, false)},
          {"seas", seas},
          {"seas_source", scenario::sea_areas().source},
          {"climate_source", climate::notice()},
          {"usual_rafts", usual},
          {"fields", fields()},
          {"words", words},
          {"charts", report::html::embedded::charts_script}};
}

Json new_scenario(const Json& question) {
  const climate::Point place{question.value("latitude_deg", 0.0), question.value("longitude_deg", 0.0)};
  const int month = question.value("month", 1);
  const auto climate = climate::month_at(place, month);
  const std::string words = question.value("place", "");
  if (const auto* why = std::get_if<std::string>(&climate))
    return refused(because("/position", "place " + words + " " + *why));
  auto crew = scenario::read_crew(question.value("crew", ""));
  if (question.contains("persons")) crew = scenario::usual_crew(question.value("persons", 1));
  if (const auto* why = std::get_if<std::string>(&crew)) return refused(because("/crew", *why));
  const scenario::Node document = scenario::new_scenario({question.value("name", ""),
                                                          std::get<std::vector<scenario::KnownPerson>>(crew),
                                                          question.value("clothing", ""),
                                                          question.value("raft", ""),
                                                          question.value("pack", ""),
                                                          question.value("boarding", ""),
                                                          place,
                                                          words,
                                                          month,
                                                          std::nullopt,
                                                          day_h * question.value("days", 1.0),
                                                          scenario::WeatherKind::variable,
                                                          {},
                                                          std::get<climate::Month>(climate)});
  return {{"scenario", scenario::write_document(document)}};
}

Json situation(const Json& question) {
  scenario::Diagnostics wrong;
  const auto moment = [&](const char* key, double now_unix_s) -> std::optional<double> {
    if (!question.contains(key)) return std::nullopt;
    const auto at = scenario::parse_moment(question.value(key, ""), now_unix_s);
    if (!at)
      wrong.push_back({"situation", std::string("/") + key, "allowed a time before now, as 9h, or UTC"});
    return at;
  };
  const auto known = [&](const char* key) {
    return question.contains(key) ? std::optional(question.value(key, "")) : std::nullopt;
  };
  scenario::Situation s;
  s.name = question.value("name", "");
  s.now_unix_s = moment("now", 0).value_or(0);
  s.abandoned_unix_s = moment("abandoned", s.now_unix_s).value_or(s.now_unix_s);
  s.last_contact_unix_s = moment("last_contact", s.now_unix_s);
  s.ahead_h = question.value("ahead_h", s.ahead_h);
  s.place = {question.value("latitude_deg", 0.0), question.value("longitude_deg", 0.0)};
  s.persons = question.value("persons", 1);
  if (question.contains("crew")) {
    auto crew = scenario::read_crew(question.value("crew", ""));
    if (const auto* why = std::get_if<std::string>(&crew))
      wrong.push_back({"situation", "/crew", *why});
    else
      s.crew = std::get<std::vector<scenario::KnownPerson>>(std::move(crew));
  }
  s.raft = known("raft"), s.clothing = known("clothing"), s.boarding = known("boarding");
  if (question.contains("sea_degC")) s.sea_degC = question.value("sea_degC", 0.0);
  if (!wrong.empty()) return refused(wrong);
  const auto made = scenario::scenario_of(s);
  if (const auto* refusals = std::get_if<scenario::Diagnostics>(&made)) return refused(*refusals);
  return {{"scenario", scenario::write_document(std::get<scenario::SituationFile>(made).document)}};
}

}  // namespace bide::browser
