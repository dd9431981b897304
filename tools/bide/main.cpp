// The program: registers each command and hands back its exit code.
#include <fmt/core.h>

#include <exception>

#include "bide/core/notice.hpp"
#include "commands.hpp"

int main(int argc, char** argv) {
  using namespace bide::tool;
  CLI::App app{"bide: how long a crew in a life raft stays able and alive, over days.", "bide"};
  app.footer(fmt::format(
      "Exit codes: {} done; {} wrong usage; {} an input was refused; {} the run failed; {} an output "
      "could not be written.\n\n{}\n{}",
      +exit_ok, +exit_usage, +exit_input_refused, +exit_run_failed, +exit_cannot_write, bide::standing_notice,
      bide::standing_advice));
  app.require_subcommand(1);
  int exit_code = exit_ok;
  add_new(app, exit_code);
  add_run(app, exit_code);
  add_compare(app, exit_code);
  add_levers(app, exit_code);
  add_check(app, exit_code);
  add_odds(app, exit_code);
  add_catalogue(app, exit_code);
  add_study(app, exit_code);
  add_merge(app, exit_code);
  add_schema(app, exit_code);
  add_validate(app, exit_code);
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return app.exit(error) == 0 ? exit_ok : exit_usage;
  } catch (const std::exception& error) {
    fmt::print(stderr, "bide: {}\n", error.what());
    return exit_run_failed;
  }
  return exit_code;
}
