// bide schema: JSON Schema 2020-12 of a scenario file.
#include "scenario/write.hpp"

#include "commands.hpp"
#include "output.hpp"

namespace bide::tool {

void add_schema(CLI::App& app, int& exit_code) {
  CLI::App* command = app.add_subcommand("schema", "Print the JSON Schema (2020-12) of a scenario file");
  command->callback([&exit_code] { exit_code = put(scenario::json_schema(), "", false); });
}

}  // namespace bide::tool
