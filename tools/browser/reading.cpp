#include "reading.hpp"

#include <algorithm>
#include <iterator>
#include <optional>

#include "bide/core/units.hpp"
#include "bide/report/html/elements.hpp"
#include "bide/report/words/input.hpp"

namespace bide::browser {

Json listed(const scenario::Diagnostics& reasons) {
  Json out = Json::array();
  for (const scenario::Diagnostic& each : reasons)
    out.push_back({{"file", each.file},
                   {"pointer", each.pointer},
                   {"words", each.pointer.empty() ? each.file : report::input_words(each.pointer)},
                   {"message", each.message}});
  return out;
}

Json refused(const scenario::Diagnostics& reasons) {
  return {{"refused", listed(reasons)}};
}

scenario::Validated scenario_in(const Json& question) {
  return scenario::validate_text(question.value("scenario", ""), question.value("name", "scenario"), "/");
}

std::variant<std::vector<scenario::ValidScenario>, scenario::Diagnostics> scenarios_in(const Json& question) {
  std::vector<scenario::ValidScenario> out;
  for (const Json& each : question.value("scenarios", Json::array())) {
    auto read = scenario_in(each);
    if (auto* errors = std::get_if<scenario::Diagnostics>(&read)) return std::move(*errors);
    out.push_back(std::get<scenario::ValidScenario>(std::move(read)));
  }
  if (out.empty()) return scenario::Diagnostics{{"question", "/scenarios", "found none; allowed 1 or more"}};
  return out;
}

const Ran* run_in(const Json& question, bool with_range, Json& wrong) {
  static std::optional<Ran> last;
  static std::string last_text;
  const std::string text = question.value("scenario", "");
  if (!last || text != last_text) {
    last.reset();
    auto read = scenario_in(question);
    if (const auto* errors = std::get_if<scenario::Diagnostics>(&read))
      return wrong = refused(*errors), nullptr;
    auto result = study::run_one(std::get<scenario::ValidScenario>(read));
    if (const auto* refusal = std::get_if<study::Refusal>(&result))
      return wrong = refused(refusal->reasons), nullptr;
    last.emplace(
        Ran{std::get<scenario::ValidScenario>(std::move(read)), std::get<study::Run>(std::move(result))});
    last_text = text;
  }
  if (with_range && !last->members) {
    auto members = study::run_unmeasured(last->scenario);
    if (const auto* refusal = std::get_if<study::Refusal>(&members))
      return wrong = refused(refusal->reasons), nullptr;
    last->members = std::get<study::RangeMembers>(std::move(members));
  }
  return &*last;
}

Json hours(const std::optional<double>& time_s) {
  return time_s ? Json(*time_s / hour_s) : Json();
}

void leave_out(report::document::Page& page, const std::string& asks) {
  for (report::document::Section& section : page.sections)
    for (report::document::Block& block : section.blocks) {
      auto* const facts = std::get_if<report::document::Facts>(&block);
      if (!facts) continue;
      report::Answer& lines = facts->lines;
      const auto from =
          std::find_if(lines.begin(), lines.end(), [&](const auto& line) { return line.asks == asks; });
      if (from == lines.end()) continue;
      const auto onward = [](const report::AnswerLine& line) { return !line.asks.empty(); };
      lines.erase(from, std::find_if(std::next(from), lines.end(), onward));
    }
}

Json sections_of(const report::document::Page& page) {
  Json sections = Json::array();
  for (const report::document::Section& each : page.sections)
    sections.push_back({{"title", each.title},
                        {"html", report::html::blocks_html(each)},
                        {"first", each.first_screen},
                        {"own_page", each.own_page}});
  return {{"title", page.title}, {"lead", page.lead}, {"foot", page.foot}, {"sections", sections}};
}

}  // namespace bide::browser
