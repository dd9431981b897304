// bide schema: JSON Schema 2020-12 of a scenario file, or of the result that `run --json` writes.
#include <memory>

#include "commands.hpp"
#include "output.hpp"
#include "report/json.hpp"
#include "scenario/write.hpp"

namespace bide::tool {

void add_schema(CLI::App& app, int& exit_code) {
  CLI::App* command = app.add_subcommand("schema", "Print the JSON Schema (2020-12) of a scenario file");
  auto of_result = std::make_shared<bool>(false);
  command->add_flag("--result", *of_result, "Of the result that run --json writes instead");
  command->callback([of_result, &exit_code] {
    exit_code = put(*of_result ? report::result_schema() : scenario::json_schema(), "", false);
  });
}

}  // namespace bide::tool
