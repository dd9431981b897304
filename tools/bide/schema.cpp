// bide schema: JSON Schema 2020-12 of a scenario file, a study file, or what a command writes with --json.
#include <array>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "bide/report/compare/compare.hpp"
#include "bide/report/levers/levers.hpp"
#include "bide/report/odds/odds.hpp"
#include "bide/report/provision/provision.hpp"
#include "bide/report/run/json.hpp"
#include "bide/report/study/study_text.hpp"
#include "bide/scenario/study_file.hpp"
#include "bide/scenario/write.hpp"
#include "commands.hpp"
#include "output.hpp"

namespace bide::tool {
namespace {

struct Schema {
  std::string_view of;
  std::string (*text)();
};
constexpr std::array<Schema, 8> schemas{{{"scenario", scenario::json_schema},
                                         {"study", scenario::study_json_schema},
                                         {"run", report::result_schema},
                                         {"odds", report::odds_schema},
                                         {"compare", report::comparison_schema},
                                         {"levers", report::levers_schema},
                                         {"provision", report::provision_schema},
                                         {"summary", report::study_summary_schema}}};

int show_schema(const std::string& of) {
  for (const Schema& each : schemas)
    if (each.of == of) return put(each.text(), "", false);
  return exit_usage;  // no other word is let through
}

}  // namespace

void add_schema(Program& program) {
  auto of = std::make_shared<std::string>(schemas.front().of);
  Command command = program.command("schema", "Print the JSON Schema (2020-12) of a file or a result");
  std::vector<std::string> words;
  for (const Schema& each : schemas) words.emplace_back(each.of);
  command.word(
      "--of", *of, words,
      "Of a scenario or study file, or of the JSON that run, odds, compare, levers or provision writes, or "
      "of the summary.json of a study");
  command.does([of] { return show_schema(*of); });
}

}  // namespace bide::tool
