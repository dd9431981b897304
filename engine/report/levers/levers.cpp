#include "bide/report/levers/levers.hpp"

#include <fmt/format.h>

#include "bide/core/notice.hpp"
#include "bide/report/levers/levers_words.hpp"
#include "bide/report/run/answer_lines.hpp"
#include "bide/report/run/json_parts.hpp"
#include "bide/report/run/range.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

using Json = nlohmann::ordered_json;
using study::Gain;
using study::LeverTried;

Json gain_json(const Gain& gain) {
  return {{"hours", gain.unreached ? Json(nullptr) : json_number(gain.hours)},
          {"at_least", gain.at_least},
          {"distinguishable", gain.distinguishable},
          {"not_reached_with_or_without", gain.unreached}};
}

// Over the central case and the members; null without members.
Json gain_range_json(const LeverTried& tried) {
  if (tried.members.empty()) return nullptr;
  const auto ends = [&](Gain study::Gains::*which) -> Json {
    const study::GainRange range = study::gain_range(tried, which);
    return {{"lowest", gain_json(range.low)}, {"highest", gain_json(range.high)}};
  };
  const study::MarginRange margin = study::margin_range(tried);
  return {
      {"able_gain", ends(&study::Gains::able)},
      {"alive_gain", ends(&study::Gains::alive)},
      {"margin_gain_fraction", {{"lowest", json_number(margin.low)}, {"highest", json_number(margin.high)}}}};
}

const char* state_word(const LeverTried& tried) {
  switch (tried.state) {
    case LeverTried::State::not_applicable:
      return "not_applicable";
    case LeverTried::State::withheld:
      return "withheld";
    case LeverTried::State::tried:
      break;
  }
  const int direction = study::direction(tried);
  return direction > 0 ? "helps" : direction < 0 ? "harms" : "indistinguishable";
}

}  // namespace

Answer levers_answer(const study::LeversTried& levers, const scenario::ValidScenario& scenario) {
  constexpr std::size_t most = 3;
  const std::string bought = most_bought_words(levers, most);
  return answer_of({levers.base, scenario, levers.base_members}, bought + what_ranges_are(bought));
}

std::string levers_json(const study::LeversTried& levers, const scenario::ValidScenario& scenario) {
  Json json;
  json["format"] = levers_format;
  json["notice"] = {std::string(standing_notice), std::string(standing_advice)};
  json["made_by"] = made_by();
  json["one_case"] = one_change_each;
  json["name"] = plain(scenario.scenario.name);
  json["cautions"] = json_cautions(scenario.cautions);
  json["horizon_h"] = json_number(levers.base.horizon_s / hour_s);
  json["able_first_h"] = json_hours(levers.base.able.first_s);
  json["alive_first_h"] = json_hours(levers.base.alive.first_s);
  json["range"] = range_json(levers.base.able, levers.base.alive, levers.base_members, levers.base.horizon_s);
  json["highest_co2_ppm"] = {json_number(levers.base_co2_low_ppm), json_number(levers.base_co2_high_ppm)};
  json["levers"] = Json::array();
  for (const LeverTried& tried : levers.tried) {
    Json each = {
        {"lever", tried.lever->key},
        {"title", tried.lever->title},
        {"source", tried.lever->source},
        {"gains_by", tried.lever->gains_by},
        {"loses_by", tried.lever->loses_by},
        {"mass_kg", json_number(tried.burden.mass_kg)},
        {"volume_L", json_number(tried.burden.volume_L)},
        {"state", state_word(tried)},
        {"reason", tried.reason.empty() ? Json(nullptr) : Json(plain(tried.reason, Letters::utf8, 400))}};
    if (tried.state == LeverTried::State::tried) {
      each["able_gain"] = gain_json(tried.gained.able);
      each["alive_gain"] = gain_json(tried.gained.alive);
      each["margin_gain_fraction"] = json_number(tried.gained.margin);
      each["range_of_gains"] = gain_range_json(tried);
    }
    if (tried.state != LeverTried::State::not_applicable)
      each["highest_co2_ppm"] = {json_number(tried.co2_low_ppm), json_number(tried.co2_high_ppm)};
    json["levers"].push_back(each);
  }
  return json_text(json);
}

}  // namespace bide::report
