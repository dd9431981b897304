#include <array>
#include <cstring>

#include "bide/core/units.hpp"
#include "bide/report/odds/odds_page.hpp"
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
  const auto answer =
      study::odds_from(std::get<scenario::ValidScenario>(read), asked_in(question), std::move(all));
  if (const auto* refusal = std::get_if<study::Refusal>(&answer)) return refused(refusal->reasons);
  const study::Odds& odds = std::get<study::OddsAnswer>(answer).odds;
  Json out = sections_of(report::pages::odds_page(std::get<study::OddsAnswer>(answer)));
  const auto range = [](const study::Window& of) {
    const auto at = [&of](study::QuantilePlace place) {
      const auto& time_h = of.until[place].time;
      return time_h ? std::optional(*time_h * hour_s) : std::nullopt;
    };
    return study::TimeRange{at(study::q10), at(study::q90)};
  };
  out["until"] = Json::array({until(range(odds.able[study::first_person]),
                                    range(odds.alive[study::first_person]), odds.horizon_h * hour_s)});
  if (question.value("result", false)) out["result"] = report::odds_json(std::get<study::OddsAnswer>(answer));
  return out;
}

}  // namespace bide::browser
