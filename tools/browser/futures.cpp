#include <fmt/format.h>

#include <array>
#include <cstring>

#include "bide/core/units.hpp"
#include "bide/report/html/elements.hpp"
#include "bide/report/odds/from_now.hpp"
#include "bide/report/odds/odds_page.hpp"
#include "bide/report/odds/odds_words.hpp"
#include "bide/report/words/words.hpp"
#include "bide/study/questions/ask_odds.hpp"
#include "reading.hpp"

namespace bide::browser {
namespace {

using study::Future;

// Futures on their way from one worker to another: the bytes of each, as hexadecimal digits. They are read by
// the program that wrote them, so they stay the same to the last bit.
std::string packed(const std::vector<Future>& futures) {
  constexpr std::string_view digits = "0123456789abcdef";
  constexpr unsigned half = 4, mask = 15;
  std::string out;
  for (const Future& future : futures) {
    std::array<unsigned char, sizeof(Future)> bytes;
    std::memcpy(bytes.data(), &future, sizeof future);
    for (const unsigned char byte : bytes) {
      out += digits[byte >> half];
      out += digits[byte & mask];
    }
  }
  return out;
}

void unpack(const std::string& text, std::vector<Future>& futures) {
  constexpr int ten = 10, sixteen = 16;
  const auto value = [](char digit) { return digit <= '9' ? digit - '0' : digit - 'a' + ten; };
  std::array<unsigned char, sizeof(Future)> bytes;
  for (std::size_t at = 0; at + 2 * bytes.size() <= text.size(); at += 2 * bytes.size()) {
    for (std::size_t i = 0; i < bytes.size(); ++i)
      bytes[i] = static_cast<unsigned char>(sixteen * value(text[at + 2 * i]) + value(text[at + 2 * i + 1]));
    std::memcpy(&futures.emplace_back(), bytes.data(), bytes.size());
  }
}

study::OddsQuestion asked_in(const Json& question) {
  study::OddsQuestion asked;
  asked.seed = question.value("seed", asked.seed);
  asked.futures = question.value("end", std::uint64_t{0});
  asked.nested = false;  // it would double the work
  return asked;
}

// Of people in distress the odds are counted from now.
std::optional<double> now_h_of(const scenario::ValidScenario& scenario) {
  const auto& uncertain = scenario.scenario.uncertain;
  return uncertain && uncertain->known ? uncertain->known->now_h : std::nullopt;
}

// Until when the first person is able: 8 futures in 10, and the median one.
Json until(const study::OddsAnswer& m) {
  const auto& of = m.odds.able[study::first_person].until;
  const double horizon_h = m.odds.horizon_h;
  const auto at = [&of](study::QuantilePlace place) {
    return of[place].time ? Json(*of[place].time) : Json();
  };
  const auto words = [&](study::QuantilePlace place) {
    return report::odds_hours(of[place].time, horizon_h);
  };
  const std::string from = words(study::q10), to = words(study::q90);
  return {{"able_h", {at(study::q10), at(study::q90)}},
          {"central_h", at(study::q50)},
          {"horizon_h", horizon_h},
          {"words",
           {{"range", from == to ? from : from + " to " + to},
            {"central", words(study::q50)},
            {"horizon", report::horizon(horizon_h * hour_s)}}}};
}

}  // namespace

Json draw(const Json& question) {
  const auto read = scenario_in(question);
  if (const auto* errors = std::get_if<scenario::Diagnostics>(&read)) return refused(*errors);
  const auto drawn =
      study::draw_some(std::get<scenario::ValidScenario>(read), asked_in(question),
                       {question.value("begin", std::uint64_t{0}), question.value("end", std::uint64_t{0})});
  if (const auto* refusal = std::get_if<study::Refusal>(&drawn)) return refused(refusal->reasons);
  const auto& some = std::get<study::SomeFutures>(drawn);
  Json failed = Json::array();
  for (const study::FailedSample& each : some.failed) failed.push_back({each.index, each.reason});
  return {{"futures", packed(some.futures)}, {"failed", failed}};
}

Json odds(const Json& question) {
  const auto read = scenario_in(question);
  if (const auto* errors = std::get_if<scenario::Diagnostics>(&read)) return refused(*errors);
  study::SomeFutures all;
  for (const Json& part : question.value("parts", Json::array())) {
    unpack(part.value("futures", ""), all.futures);
    for (const Json& each : part.value("failed", Json::array()))
      all.failed.push_back({each.at(0).get<std::uint64_t>(), each.at(1).get<std::string>()});
  }
  const auto& scenario = std::get<scenario::ValidScenario>(read);
  const std::optional<double> now_h = now_h_of(scenario);
  study::OddsQuestion asked = asked_in(question);
  if (now_h) asked.at_h = study::hours_from_now(*now_h, scenario.scenario.duration_h);
  auto found = study::odds_from(scenario, asked, std::move(all));
  if (const auto* refusal = std::get_if<study::Refusal>(&found)) return refused(refusal->reasons);
  auto& given = std::get<study::OddsAnswer>(found);
  const study::OddsAnswer answer = now_h ? report::from_now(std::move(given)) : std::move(given);
  report::document::Page page = report::pages::odds_page(answer);
  if (!answer.levers) leave_out(page, "Buys most");
  Json from_now;  // shown in a place of its own
  std::erase_if(page.sections, [&](const report::document::Section& each) {
    if (each.brief) from_now = report::html::blocks_html(each);
    return each.brief;
  });
  Json out = sections_of(page);
  if (!from_now.is_null()) out["from_now"] = std::move(from_now);
  out["until"] = Json::array({until(answer)});
  if (question.value("result", false)) out["result"] = report::odds_json(answer);
  return out;
}

}  // namespace bide::browser
