#include <nlohmann/json.hpp>

#include "bide/report/run/json.hpp"

namespace bide::report {
namespace {

using Json = nlohmann::ordered_json;

Json type(const char* name) {
  return {{"type", name}};
}
Json nullable(const char* name) {
  return {{"type", {name, "null"}}};
}
Json words(std::initializer_list<const char*> allowed) {
  return {{"type", "string"}, {"enum", allowed}};
}
Json list(Json items) {
  return {{"type", "array"}, {"items", std::move(items)}};
}
Json described(Json schema, const char* sentence) {
  schema["description"] = sentence;
  return schema;
}

// Every key is required and no other is allowed.
Json object(Json properties) {
  Json required = Json::array();
  for (const auto& item : properties.items()) required.push_back(item.key());
  return {{"type", "object"},
          {"properties", std::move(properties)},
          {"required", required},
          {"additionalProperties", false}};
}

Json evidence() {
  return object(
      {{"grade", words({"checked", "biased", "extrapolated", "no data"})},
       {"left_out_studies",
        list(object({{"biased", described(type("boolean"), "false: how many measurements are held")},
                     {"words", type("string")}}))},
       {"passed", list(object({{"limit", type("string")}, {"reason", type("string")}}))}});
}

Json until() {
  return {{"reached", described(type("boolean"), "false: not reached within the horizon")},
          {"hours", described(nullable("number"), "since the start")},
          {"utc", nullable("string")},
          {"words", type("string")}};
}

Json caused() {
  Json properties = until();
  properties["limit"] = nullable("string");
  properties["cause"] = nullable("string");
  properties["evidence"] = evidence();
  return object(properties);
}

Json extreme() {
  Json schema = object({{"value", nullable("number")}, {"hours", type("number")}});
  schema["type"] = {"object", "null"};
  return schema;
}

Json person() {
  const Json number = nullable("number");
  return object(
      {{"person", described(type("string"), "Person A, B... in the order of the scenario")},
       {"able_until", caused()},
       {"alive_until", caused()},
       {"unconscious", object(until())},
       {"next_limit",
        object({{"limit", type("string")}, {"words", type("string")}, {"margin_left_fraction", number}})},
       {"hands_possible_h", number},
       {"able_h", number},
       {"hands_evidence", evidence()},
       {"injuries", described(list(object({{"limit", type("string")},
                                           {"words", type("string")},
                                           {"possible_from", object(until())}})),
                              "of the cold: from when on each is possible")},
       {"lowest_core_degC", number},
       {"highest_core_degC", number},
       {"lowest_finger_degC", number},
       {"worst_water_deficit_pct", number},
       {"worst_osmolality_mOsm_kg", number},
       {"shivering_h", number},
       {"urine_kg", number}});
}

Json crew_times() {
  return object({{"first", object(until())},
                 {"half", described(object(until()), "when at least half of the crew have reached it")},
                 {"last", object(until())},
                 {"reached_count", type("integer")},
                 {"persons_count", type("integer")},
                 {"evidence", evidence()}});
}

Json cabin() {
  const Json number = nullable("number");
  Json schema = object({{"coldest_inside_degC", extreme()},
                        {"warmest_inside_degC", extreme()},
                        {"mean_inside_degC", described(number, "from boarding to the last death or the end")},
                        {"highest_co2_ppm", extreme()},
                        {"co2_above_5000_ppm_h", number},
                        {"co2_above_15000_ppm_h", number},
                        {"co2_above_30000_ppm_h", number},
                        {"condensate_L_day", number},
                        {"temperature_evidence", evidence()},
                        {"co2_evidence", evidence()},
                        {"condensate_evidence", evidence()}});
  schema["type"] = {"object", "null"};
  return described(schema, "null without a raft");
}

Json range() {
  const Json number = nullable("number");
  const Json ends = object({{"earliest_h", described(number, "since the start; null: beyond the horizon")},
                            {"latest_h", described(number, "since the start; null: beyond the horizon")},
                            {"words", type("string")}});
  const Json crew = object({{"first", ends}, {"half", ends}, {"last", ends}});
  Json schema = object(
      {{"runs", type("integer")}, {"what", type("string")}, {"able_until", crew}, {"alive_until", crew}});
  schema["type"] = {"object", "null"};
  return described(
      schema,
      "range over what nobody has measured and the model's own error; null where the file states all of it");
}

Json inputs() {
  return object(
      {{"file", type("string")},
       {"name", type("string")},
       {"start_utc", type("string")},
       {"horizon_h", type("number")},
       {"in_raft", type("boolean")},
       {"persons_count", type("integer")},
       {"defaults", described(list(type("string")), "JSON pointers of inputs that were not stated")},
       {"cautions", list(object({{"pointer", type("string")}, {"message", type("string")}}))}});
}

}  // namespace

std::string result_schema() {
  const Json number = nullable("number"), text = type("string"), who = nullable("string");
  Json notice = list(text);
  notice["minItems"] = 2;
  Json persons = list(person());
  persons["minItems"] = 1;
  Json schema = object(
      {{"format", words({result_format})},
       {"notice", notice},
       {"made_by", object({{"version", text},
                           {"fingerprint", described(text, "of the model: equal for builds of equal bits")},
                           {"compiler", text},
                           {"instruction_set", text}})},
       {"one_case", text},
       {"range", range()},
       {"inputs", inputs()},
       {"crew", object({{"able_until", crew_times()},
                        {"alive_until", crew_times()},
                        {"hands_evidence", evidence()},
                        {"water_loss_evidence", evidence()},
                        {"driest_person", who}})},
       {"persons", persons},
       {"stores", list(object({{"store", text},
                               {"unit", text},
                               {"state", words({"none_aboard", "runs_out", "lasts"})},
                               {"runs_out", object(until())},
                               {"at_start", number},
                               {"left", number}}))},
       {"signals_left", object({{"flares", number}, {"lamp_h", number}, {"beacon_h", number}})},
       {"cabin", cabin()},
       {"events", list(object({{"hours", number},
                               {"utc", text},
                               {"person", who},
                               {"kind", text},
                               {"text", text},
                               {"asked", number},
                               {"given", number},
                               {"unit", text}}))},
       {"crossings", list(object({{"person", who},
                                  {"limit", text},
                                  {"hours", number},
                                  {"slope_per_h", number},
                                  {"upward", type("boolean")},
                                  {"grazing", type("boolean")}}))},
       {"ledgers",
        list(object({{"ledger", text}, {"residual", number}, {"throughput", number}, {"relative", number}}))},
       {"flags", described(list(text), "correlations used outside their published range")},
       {"assumptions", list(text)}});
  Json whole;
  whole["$schema"] = "https://json-schema.org/draft/2020-12/schema";
  whole["title"] = "Result of one bide run";
  for (const auto& item : schema.items()) whole[item.key()] = item.value();
  return whole.dump(1) + "\n";
}

}  // namespace bide::report
