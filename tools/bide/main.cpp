// The program: registers each command and hands back its exit code.
#include <fmt/core.h>

#include <exception>
#include <system_error>

#include "bide/core/notice.hpp"
#include "commands.hpp"
#include "interrupt.hpp"
#include "terminal.hpp"

int main(int argc, char** argv) {
  using namespace bide::tool;
  Program program(
      "bide", "bide: how long a crew in a life raft stays able and alive, over days.",
      fmt::format("Exit codes: {} done; {} wrong usage; {} an input was refused; {} the run "
                  "failed; {} an output could not be written; {} interrupted by a signal.\n\n{}\n{}",
                  +exit_ok, +exit_usage, +exit_input_refused, +exit_run_failed, +exit_cannot_write,
                  +exit_interrupted, bide::standing_notice, bide::standing_advice),
      {{"bide new --crew 4 --place Biscay --month 2 -o crew.json", "Write a scenario."},
       {"bide check crew.json", "Print what it assumes."},
       {"bide run crew.json --report crew.html", "Run it, and write a page with charts."},
       {"bide odds --persons 4 --place 58,-12 --abandoned 9h",
        "Many possible futures of four people of whom nothing else is known."}});
  add_new(program);
  add_weather(program);
  add_run(program);
  add_compare(program);
  add_levers(program);
  add_provision(program);
  add_choose(program);
  add_check(program);
  add_odds(program);
  add_catalogue(program);
  add_study(program);
  add_merge(program);
  add_schema(program);
  add_validate(program);
  try {
    return program.run(argc, argv);
  } catch (const std::system_error& error) {  // of the file system too
    say("bide: {}\n", error.what());
    return exit_cannot_write;
  } catch (const std::exception& error) {
    say("bide: {}\n", error.what());
    return exit_run_failed;
  }
}
