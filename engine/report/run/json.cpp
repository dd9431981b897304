#include "bide/report/run/json.hpp"

#include <nlohmann/json.hpp>

#include "bide/core/notice.hpp"
#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/run/json_parts.hpp"
#include "bide/report/run/range.hpp"
#include "bide/report/words/text.hpp"
#include "bide/report/words/words.hpp"
#include "bide/timeline/record.hpp"

namespace bide::report {
namespace {

using Json = nlohmann::ordered_json;
using outcome::Evidence;
using outcome::PersonOutcome;

Json evidence_json(const Evidence& evidence) {
  Json left_out = Json::array(), passed = Json::array();
  for (const auto& each : evidence.left_out)
    left_out.push_back({{"biased", each.biased}, {"words", plain(each.words)}});
  for (const auto& each : evidence.passed) {
    passed.push_back({{"limit", plain(each.limit)}, {"reason", plain(each.reason)}});
  }
  return {
      {"grade", std::string(to_string(evidence.grade))}, {"left_out_studies", left_out}, {"passed", passed}};
}

// A time since the start that may lie beyond the horizon.
Json until_json(const std::optional<double>& at_s, const timeline::Timeline& timeline) {
  if (!at_s) {
    return {
        {"reached", false}, {"hours", nullptr}, {"utc", nullptr}, {"words", not_reached(timeline.horizon_s)}};
  }
  return {{"reached", true},
          {"hours", json_hours(*at_s)},
          {"utc", iso_minute(timeline.start_unix_s + *at_s)},
          {"words", duration(*at_s)}};
}

Json caused_json(const outcome::Until& until, const timeline::Timeline& timeline,
                 const scenario::Limits& limits) {
  Json json = until_json(until.at_s, timeline);
  json["limit"] = until.at_s ? Json(system::name_of(until.limit)) : Json(nullptr);
  json["cause"] = until.at_s ? Json(plain(outcome::plain_cause(until.limit, limits))) : Json(nullptr);
  json["evidence"] = evidence_json(until.evidence);
  return json;
}

Json person_json(const PersonOutcome& person, int index, const timeline::Timeline& timeline,
                 const scenario::Limits& limits) {
  Json json;
  json["person"] = person_label(index);
  json["able_until"] = caused_json(person.able, timeline, limits);
  json["alive_until"] = caused_json(person.alive, timeline, limits);
  json["unconscious"] = until_json(person.unconscious_s, timeline);
  json["next_limit"] = {{"limit", system::name_of(person.next_limit)},
                        {"words", plain(outcome::short_cause(person.next_limit))},
                        {"margin_left_fraction", json_number(person.next_margin_fraction)}};
  json["hands_possible_h"] = json_number(person.hands_h);
  json["able_h"] = json_number(person.able_h);
  json["hands_evidence"] = evidence_json(person.hands_evidence);
  json["injuries"] = Json::array();
  for (const timeline::Injury& injury : person.injuries)
    json["injuries"].push_back({{"limit", system::name_of(injury.limit)},
                                {"words", plain(outcome::short_cause(injury.limit))},
                                {"possible_from", until_json(injury.time_s, timeline)}});
  json["lowest_core_degC"] = json_number(person.lowest_core_degC);
  json["highest_core_degC"] = json_number(person.highest_core_degC);
  json["lowest_finger_degC"] = json_number(person.lowest_finger_degC);
  json["worst_water_deficit_pct"] = json_number(person.worst_water_deficit_pct);
  json["worst_osmolality_mOsm_kg"] = json_number(person.worst_osmolality_mOsm_kg);
  json["shivering_h"] = json_number(person.shivering_h);
  json["urine_kg"] = json_number(person.urine_kg);
  return json;
}

Json crew_json(const outcome::CrewTimes& times, const Evidence& evidence,
               const timeline::Timeline& timeline) {
  return {{"first", until_json(times.first_s, timeline)},
          {"half", until_json(times.half_s, timeline)},
          {"last", until_json(times.last_s, timeline)},
          {"reached_count", times.reached},
          {"persons_count", times.persons},
          {"evidence", evidence_json(evidence)}};
}

Json extreme_json(const std::optional<outcome::Extreme>& extreme) {
  if (!extreme) return nullptr;
  return {{"value", json_number(extreme->value)}, {"hours", json_hours(extreme->time_s)}};
}

Json cabin_json(const outcome::CabinOutcome& cabin, bool in_raft) {
  if (!in_raft) return nullptr;
  Json json;
  json["coldest_inside_degC"] = extreme_json(cabin.coldest_inside_degC);
  json["warmest_inside_degC"] = extreme_json(cabin.warmest_inside_degC);
  json["mean_inside_degC"] = cabin.mean_inside_degC ? json_number(*cabin.mean_inside_degC) : Json(nullptr);
  json["highest_co2_ppm"] = extreme_json(cabin.highest_co2_ppm);
  json["co2_above_5000_ppm_h"] = json_number(cabin.co2_above_5000_ppm_h);
  json["co2_above_15000_ppm_h"] = json_number(cabin.co2_above_15000_ppm_h);
  json["co2_above_30000_ppm_h"] = json_number(cabin.co2_above_30000_ppm_h);
  json["condensate_L_day"] = cabin.condensate_L_day ? json_number(*cabin.condensate_L_day) : Json(nullptr);
  json["temperature_evidence"] = evidence_json(cabin.temperature_evidence);
  json["co2_evidence"] = evidence_json(cabin.co2_evidence);
  json["condensate_evidence"] = evidence_json(cabin.condensate_evidence);
  return json;
}

Json stores_json(const outcome::Outcome& outcome, const timeline::Timeline& timeline) {
  Json stores = Json::array();
  for (const auto& store : outcome.stores) {
    const bool out = store.state == outcome::StoreState::runs_out;
    const bool none = store.state == outcome::StoreState::none_aboard;
    stores.push_back(
        {{"store", plain(store.store)},
         {"unit", plain(store.unit)},
         {"state", none  ? "none_aboard"
                   : out ? "runs_out"
                         : "lasts"},
         {"runs_out", until_json(out ? std::optional<double>(store.at_s) : std::nullopt, timeline)},
         {"at_start", json_number(store.at_start)},
         {"left", json_number(store.left)}});
  }
  return stores;
}

Json person_or_null(int person) {
  return person < 0 ? Json(nullptr) : Json(person_label(person));
}

Json events_json(const timeline::Timeline& timeline) {
  Json events = Json::array();
  for (const auto& event : timeline.events) {
    events.push_back({{"hours", json_hours(event.time_s)},
                      {"utc", iso_minute(timeline.start_unix_s + event.time_s)},
                      {"person", person_or_null(event.person)},
                      {"kind", timeline::name_of(event.kind)},
                      {"text", plain(event.text, Letters::utf8, 400)},
                      {"asked", json_number(event.asked)},
                      {"given", json_number(event.given)},
                      {"unit", plain(event.unit)}});
  }
  return events;
}

Json crossings_json(const timeline::Timeline& timeline) {
  Json crossings = Json::array();
  for (const auto& crossing : timeline.crossings) {
    crossings.push_back({{"person", person_or_null(crossing.person)},
                         {"limit", system::name_of(crossing.limit)},
                         {"hours", json_hours(crossing.time_s)},
                         {"slope_per_h", json_number(crossing.slope_per_h)},
                         {"upward", crossing.upward},
                         {"grazing", crossing.grazing}});
  }
  return crossings;
}

Json ledgers_json(const timeline::Timeline& timeline) {
  Json ledgers = Json::array();
  for (const auto& ledger : timeline.ledgers) {
    ledgers.push_back({{"ledger", plain(ledger.name)},
                       {"residual", json_number(ledger.residual)},
                       {"throughput", json_number(ledger.throughput)},
                       {"relative", json_number(ledger.relative())}});
  }
  return ledgers;
}

Json texts_json(const std::vector<std::string>& texts) {
  Json list = Json::array();
  for (const std::string& text : texts) list.push_back(plain(text, Letters::utf8, 400));
  return list;
}

Json inputs_json(const timeline::Timeline& timeline, const scenario::ValidScenario& scenario) {
  return {{"file", plain(scenario.file, Letters::utf8, 400)},
          {"name", plain(scenario.scenario.name)},
          {"start_utc", iso_minute(timeline.start_unix_s)},
          {"horizon_h", json_hours(timeline.horizon_s)},
          {"in_raft", timeline.in_raft},
          {"persons_count", scenario.scenario.crew.size()},
          {"defaults", texts_json(scenario.defaults)},
          {"cautions", json_cautions(scenario.cautions)}};
}

}  // namespace

std::string result_json(const outcome::Outcome& outcome, const timeline::Timeline& timeline,
                        const scenario::ValidScenario& scenario, const study::RangeMembers& members) {
  const scenario::Limits& limits = scenario.scenario.limits;
  Json json;
  json["format"] = result_format;
  json["notice"] = {std::string(standing_notice), std::string(standing_advice)};
  json["made_by"] = made_by();
  json["one_case"] = one_case;
  json["range"] = range_json(outcome.able, outcome.alive, members, outcome.horizon_s);
  json["inputs"] = inputs_json(timeline, scenario);
  json["crew"] = {{"able_until", crew_json(outcome.able, outcome.able_evidence, timeline)},
                  {"alive_until", crew_json(outcome.alive, outcome.alive_evidence, timeline)},
                  {"hands_evidence", evidence_json(outcome.hands_evidence)},
                  {"water_loss_evidence", evidence_json(outcome.thirst_evidence)},
                  {"driest_person", person_or_null(outcome.driest_person)}};
  json["persons"] = Json::array();
  for (std::size_t i = 0; i < outcome.persons.size(); ++i) {
    json["persons"].push_back(person_json(outcome.persons[i], static_cast<int>(i), timeline, limits));
  }
  json["stores"] = stores_json(outcome, timeline);
  json["signals_left"] = {{"flares", json_number(outcome.signals.flares)},
                          {"lamp_h", json_number(outcome.signals.lamp_h)},
                          {"beacon_h", json_number(outcome.signals.beacon_h)}};
  json["cabin"] = cabin_json(outcome.cabin, timeline.in_raft);
  json["events"] = events_json(timeline);
  json["crossings"] = crossings_json(timeline);
  json["ledgers"] = ledgers_json(timeline);
  json["flags"] = texts_json(timeline.flags);
  json["assumptions"] = texts_json(timeline.assumptions);

  return json_text(json);
}

}  // namespace bide::report
