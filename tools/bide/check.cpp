// bide check: validates a scenario and prints all that is in force.
#include <fmt/core.h>

#include <memory>

#include "commands.hpp"
#include "core/notice.hpp"
#include "output.hpp"
#include "scenario/write.hpp"

namespace bide::tool {
namespace {

int check(const std::string& path) {
  const scenario::Validated result = scenario::validate_file(path);
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&result)) {
    complain(*wrong);
    fmt::print(stderr, "{} {} to put right.\n", wrong->size(), wrong->size() == 1 ? "thing" : "things");
    return exit_input_refused;
  }
  const auto& valid = std::get<scenario::ValidScenario>(result);
  std::string text = scenario::listing(valid);
  text += fmt::format("Defaults used: {}\n", valid.defaults.size());
  text += valid.cautions.empty() ? "Cautions: none\n" : "Cautions:\n";
  for (const scenario::Diagnostic& each : valid.cautions)
    text += fmt::format("  {}: {}\n", each.pointer, each.message);
  text += fmt::format("{}\n{}\n", standing_notice, standing_advice);
  return put(text, "", false);
}

}  // namespace

void add_check(CLI::App& app, int& exit_code) {
  CLI::App* command =
      app.add_subcommand("check", "Validate a scenario; print the resolved inputs, defaults and cautions");
  auto path = std::make_shared<std::string>();
  command->add_option("scenario", *path, "Scenario file")->required();
  command->callback([path, &exit_code] { exit_code = check(*path); });
}

}  // namespace bide::tool
