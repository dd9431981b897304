// bide schema: JSON Schema 2020-12 of a scenario file, a study file, or the result that `run --json` writes.
#include <memory>

#include "bide/report/run/json.hpp"
#include "bide/scenario/study_file.hpp"
#include "bide/scenario/write.hpp"
#include "commands.hpp"
#include "output.hpp"

namespace bide::tool {

void add_schema(Program& program) {
  auto of_result = std::make_shared<bool>(false), of_study = std::make_shared<bool>(false);
  Command command = program.command("schema", "Print the JSON Schema (2020-12) of a scenario file");
  const Argument result =
      command.flag("--result", *of_result, "Of the result that run --json writes instead");
  command.flag("--study", *of_study, "Of a study file instead").excludes(result);
  command.does([of_result, of_study] {
    return put(*of_result  ? report::result_schema()
               : *of_study ? scenario::study_json_schema()
                           : scenario::json_schema(),
               "", false);
  });
}

}  // namespace bide::tool
