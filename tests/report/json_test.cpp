#include "bide/report/run/json.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <nlohmann/json.hpp>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>

#include "bide/core/notice.hpp"
#include "bide/core/units.hpp"
#include "bide/study/records/fingerprint.hpp"
#include "support/presentation.hpp"
#include "support/synthetic_timeline.hpp"

using namespace bide;
using Json = nlohmann::json;

namespace {

std::string result(const scenario::ValidScenario& scenario, const timeline::Timeline& timeline,
                   const study::RangeMembers& members = {}) {
  return report::result_json(outcome::read_outcome(timeline, scenario), timeline, scenario, members);
}

// The first complaint of the schema; empty when it has none.
std::string complaint(const Json& document) {
  const Json schema_json = Json::parse(report::result_schema());
  valijson::Schema schema;
  valijson::SchemaParser parser;
  parser.populateSchema(valijson::adapters::NlohmannJsonAdapter(schema_json), schema);
  valijson::Validator validator;
  valijson::ValidationResults results;
  const valijson::adapters::NlohmannJsonAdapter target(document);
  if (validator.validate(schema, target, &results)) return "";
  valijson::ValidationResults::Error error;
  std::string text = "refused";
  while (results.popError(error))
    text = (error.context.empty() ? "" : error.context.back()) + ": " + error.description;
  return text;
}

}  // namespace

TEST_CASE("the result says what it is, the answer and its evidence") {
  const Json json = Json::parse(result(test::valid_scenario(2), test::synthetic_timeline(2)));
  CHECK(json["format"] == "bide result 1");
  CHECK(json["notice"][0] == std::string(standing_notice));
  CHECK(json["notice"][1] == std::string(standing_advice));
  CHECK(json["made_by"]["fingerprint"] == std::string(study::fingerprint()));
  CHECK(json["made_by"]["version"] == std::string(study::build().version));
  CHECK(json["made_by"].size() == 4);
  CHECK(json["inputs"]["file"] == "two_adrift.json");
  CHECK(json["inputs"]["horizon_h"] == 120);
  const Json& able = json["persons"][0]["able_until"];
  CHECK(able["hours"] == 40);
  CHECK(able["utc"] == "2031-02-05T10:00Z");
  CHECK(able["words"] == "40 h");
  CHECK(able["limit"] == "able_core_low");
  CHECK(able["evidence"]["grade"] == "extrapolated");
  CHECK(able["evidence"]["left_out_studies"][0]["biased"] == true);
  CHECK(able["evidence"]["left_out_studies"][1]["biased"] == false);
  CHECK(json["persons"][1]["alive_until"]["reached"] == false);
  CHECK(json["persons"][1]["alive_until"]["hours"].is_null());
  CHECK(json["persons"][1]["alive_until"]["words"] == "not reached within 5 d");
  CHECK(json["crew"]["able_until"]["first"]["hours"] == 40);
  CHECK(json["stores"][0]["state"] == "runs_out");
  CHECK(json["ledgers"][0]["relative"] == 1e-13);  // 1e-6 over 1e7
  CHECK(json["events"].size() == 7);
}

TEST_CASE("the range runs over the run and its members, and is null without them") {
  study::RangeMember early, late;  // late: beyond the horizon
  early.able = early.alive = {20 * hour_s, 20 * hour_s, 20 * hour_s, 2, 2};
  const auto scenario = test::valid_scenario(2);
  const auto timeline = test::synthetic_timeline(2);
  CHECK(Json::parse(result(scenario, timeline))["range"].is_null());
  const Json json = Json::parse(result(scenario, timeline, {early, late}));
  CHECK(complaint(json) == "");
  CHECK(json["range"]["runs"] == 3);
  CHECK(json["range"]["able_until"]["first"]["earliest_h"] == 20);
  CHECK(json["range"]["able_until"]["first"]["latest_h"].is_null());
  CHECK(json["range"]["able_until"]["first"]["words"] == "20 h to after 5 d");
  // Not before the run's own 40 h.
  const Json later = Json::parse(result(scenario, timeline, {late}));
  CHECK(later["range"]["able_until"]["first"]["earliest_h"] == 40);
}

TEST_CASE("results obey the schema, with and without a raft") {
  CHECK(complaint(Json::parse(result(test::valid_scenario(3), test::synthetic_timeline(3)))) == "");
  CHECK(complaint(Json::parse(result(test::valid_scenario(1, false), test::synthetic_timeline(1, false)))) ==
        "");
}

TEST_CASE("the schema refuses what is not a result") {
  const Json good = Json::parse(result(test::valid_scenario(1), test::synthetic_timeline(1)));
  Json bad = good;
  bad["format"] = "bide result 2";
  CHECK(complaint(bad) != "");
  bad = good;
  bad.erase("notice");
  CHECK(complaint(bad) != "");
  bad = good;
  bad["extra"] = 1;
  CHECK(complaint(bad) != "");
  bad = good;
  bad["persons"][0]["able_until"]["evidence"]["grade"] = "certain";
  CHECK(complaint(bad) != "");
  bad = good;
  bad["persons"][0]["able_until"].erase("reached");
  CHECK(complaint(bad) != "");
}

TEST_CASE("hostile strings and numbers that are not finite stay valid JSON in plain ASCII") {
  auto scenario = test::valid_scenario(1);
  auto timeline = test::synthetic_timeline(1);
  scenario.scenario.name = test::hostile;
  scenario.file = test::hostile;
  timeline.events[0].text = test::hostile;
  timeline.events[0].asked = std::numeric_limits<double>::quiet_NaN();
  timeline.flags.push_back(test::hostile);
  const std::string text = result(scenario, timeline);
  CHECK(std::all_of(text.begin(), text.end(), [](char l) { return l == '\n' || (l >= 32 && l < 127); }));
  CHECK(text.find('<') == std::string::npos);
  const Json json = Json::parse(text);
  CHECK(complaint(json) == "");
  CHECK(json["inputs"]["name"].get<std::string>().find("<script>") != std::string::npos);  // as data
  CHECK(json["events"][0]["asked"].is_null());
}

TEST_CASE("the JSON promises nothing") {
  test::check_no_promise(result(test::valid_scenario(2), test::synthetic_timeline(2)));
  test::check_no_promise(report::result_schema());
}
