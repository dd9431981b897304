#include "bide/scenario/words.hpp"
#include "bide/weather/load.hpp"
#include "reading.hpp"

namespace bide::browser {

Json weather_file(const Json& question) {
  using scenario::WeatherKind;
  const std::string file = question.value("file", "");
  scenario::Diagnostics wrong;
  for (const WeatherKind kind : {WeatherKind::csv, WeatherKind::ndbc}) {
    const weather::Parsed parsed = weather::read_observations("/" + file, kind);
    const std::string name(word(kind));
    if (const auto* problems = std::get_if<weather::Problems>(&parsed))
      wrong.push_back({file, "", "as weather of kind " + name + ": " + problems->front()});
    else if (const auto& rows = std::get<weather::Observations>(parsed).row_unix_s; !rows.empty())
      return {{"kind", name}, {"from_unix_s", rows.front()}, {"to_unix_s", rows.back()}};
  }
  return refused(wrong);
}

}  // namespace bide::browser
