// A program outside the project: reads a scenario with the installed engine and tells who is aboard.
#include <bide/scenario/validate.hpp>
#include <cstdio>
#include <variant>

int main(int argc, char** argv) {
  if (argc != 2) return 1;
  const bide::scenario::Validated read = bide::scenario::validate_file(argv[1]);
  if (const auto* wrong = std::get_if<bide::scenario::Diagnostics>(&read)) {
    for (const auto& each : *wrong) std::fprintf(stderr, "%s\n", to_string(each).c_str());
    return 2;
  }
  const auto& valid = std::get<bide::scenario::ValidScenario>(read);
  std::printf("%zu aboard for %g h\n", valid.scenario.crew.size(), valid.scenario.duration_h);
  return 0;
}
