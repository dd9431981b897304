#include "bide/report/run/foot.hpp"

#include <fmt/format.h>

#include <filesystem>

#include "bide/report/words/input.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report::pages {

std::string foot_of(const scenario::ValidScenario& scenario) {
  std::string out =
      fmt::format("{}, start {}", std::filesystem::path(file_alone(scenario.file)).filename().string(),
                  iso_minute(scenario.start_unix_s));
  if (const auto* weather = std::get_if<scenario::VariableWeather>(&scenario.weather))
    out += fmt::format(", weather seed {}", weather->seed);
  return out;
}

}  // namespace bide::report::pages
