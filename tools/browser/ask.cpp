// The door between a page's script and the engine: a question as JSON text in, an answer as JSON text out.
#include <string>

#include "answers.hpp"

namespace bide::browser {
namespace {

Json answer_to(const Json& question) {
  const std::string asked = question.value("ask", "");
  if (asked == "lists") return lists();
  if (asked == "new") return new_scenario(question);
  if (asked == "situation") return situation(question);
  if (asked == "weather_file") return weather_file(question);
  if (asked == "run") return run(question);
  if (asked == "report") return report(question);
  if (asked == "report_file") return report_file(question);
  if (asked == "timeline_file") return timeline_file(question);
  if (asked == "sheets") return sheets(question);
  if (asked == "compare") return compare(question);
  if (asked == "choose") return choose(question);
  if (asked == "draw") return draw(question);
  if (asked == "odds") return odds(question);
  return {{"refused", {{{"file", "page"}, {"pointer", "/ask"}, {"message", "found \"" + asked + "\""}}}}};
}

}  // namespace
}  // namespace bide::browser

// @param question JSON, {"ask": "run", ...}
// @return JSON, in force until the next call
extern "C" const char* bide_ask(const char* question) {
  using bide::browser::Json;
  static std::string answer;
  answer = bide::browser::answer_to(Json::parse(question, nullptr, false))
               .dump(-1, ' ', false, Json::error_handler_t::replace);
  return answer.c_str();
}
