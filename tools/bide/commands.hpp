// One function per command: each adds its subcommand to the program and, when that subcommand is chosen, does
// the work and leaves its exit code.
//
// Exit codes: 0 done; 1 wrong usage; 2 an input was refused; 3 the run failed (a ledger did not close);
// 4 an output could not be written.
#pragma once

#include <CLI/CLI.hpp>

namespace bide::tool {

enum ExitCode {
  exit_ok = 0,
  exit_usage = 1,
  exit_input_refused = 2,
  exit_run_failed = 3,
  exit_cannot_write = 4
};

void add_new(CLI::App& app, int& exit_code);
void add_run(CLI::App& app, int& exit_code);
void add_compare(CLI::App& app, int& exit_code);
void add_levers(CLI::App& app, int& exit_code);
void add_check(CLI::App& app, int& exit_code);
void add_odds(CLI::App& app, int& exit_code);
void add_catalogue(CLI::App& app, int& exit_code);
void add_study(CLI::App& app, int& exit_code);
void add_merge(CLI::App& app, int& exit_code);
void add_schema(CLI::App& app, int& exit_code);
void add_validate(CLI::App& app, int& exit_code);

}  // namespace bide::tool
