#include "bide/scenario/study_file.hpp"

#include <algorithm>

#include "bide/scenario/document.hpp"
#include "bide/scenario/patch.hpp"
#include "bide/scenario/reader.hpp"
#include "bide/scenario/resolve.hpp"
#include "bide/scenario/text_of_file.hpp"
#include "bide/scenario/words.hpp"

namespace bide::scenario {
namespace {

using Pointer = std::string;
using enum DesignKind;

// @param stated the design as the file has it
void check_design(const Design& design, const Node* stated, Reader& reader) {
  const std::string at = "/design";
  if (!reader.sound(at) || !reader.sound(child(at, "kind"))) return;
  const auto by_kind = [&](const char* key, bool allowed, bool needed) {
    if (!reader.sound(child(at, key))) return;
    const bool there = member(stated, key) != nullptr;
    if (there && !allowed)
      reader.report(child(at, key),
                    fmt::format("found a value; not allowed with kind {}", word(design.kind)));
    if (!there && needed)
      reader.report(child(at, key), fmt::format("missing; required with kind {}", word(design.kind)));
  };
  const bool is_grid = design.kind == grid, is_morris = design.kind == morris, is_own = design.kind == points,
             counted = !is_grid && !is_own;
  by_kind("samples", counted, counted);
  by_kind("points", is_own, is_own);
  by_kind("scale", is_own, false);
  by_kind("levels", has_levels(design.kind), false);
  by_kind("groups", design.kind == saltelli, false);
  if (is_morris && design.levels % 2 != 0)
    reader.report(child(at, "levels"), fmt::format("found {}; allowed an even number", design.levels));
  if ((is_morris || design.kind == saltelli) && design.samples && *design.samples < 2)
    reader.report(child(at, "samples"),
                  "found 1; allowed 2 or more with kind " + std::string(word(design.kind)));
}

// The study's "uncertain" takes the place of the scenario's.
void put_uncertain(Node& scenario, const Node& study) {
  const auto of = [](const Node& node) {
    return std::find_if(node.members.begin(), node.members.end(),
                        [](const Member& each) { return each.key == "uncertain"; });
  };
  const auto found = of(study);
  if (found == study.members.end()) return;
  std::erase_if(scenario.members, [](const Member& each) { return each.key == "uncertain"; });
  scenario.members.push_back(*found);
}

}  // namespace

std::filesystem::path points_file_of(const ValidStudy& study) {
  return std::filesystem::path(study.file).parent_path() / study.study.design.points.value();
}

std::variant<ValidStudy, Diagnostics> validate_study(const std::filesystem::path& path) {
  const std::string name = path.string();
  Diagnostics wrong;
  Node root;
  const auto text = text_of_file(path, "a study file", wrong);
  if (!text || !parse_document(*text, name, root, wrong)) return wrong;
  Reader reader(name, wrong);
  StudyFile study;
  reader.read(root, "", study);
  fill_defaults(root, study);
  if (reader.sound("")) check_design(study.design, member(&root, "design"), reader);
  if (reader.sound("/format") && study.format != study_format_word)
    reader.report("/format",
                  fmt::format("found {}; allowed \"{}\"", in_quotes(study.format), study_format_word));
  if (!wrong.empty()) return wrong;

  const std::filesystem::path scenario_path = path.parent_path() / study.scenario;
  Node scenario;
  const auto scenario_text = text_of_file(scenario_path, "a scenario file", wrong);
  if (!scenario_text || !parse_document(*scenario_text, scenario_path.string(), scenario, wrong))
    return wrong;
  put_uncertain(scenario, root);
  Validated validated =
      validate_document(std::move(scenario), scenario_path.string(), scenario_path.parent_path());
  if (auto* errors = std::get_if<Diagnostics>(&validated)) {
    for (Diagnostic& each : *errors)
      if (study.uncertain && each.pointer.rfind("/uncertain", 0) == 0) each.file = name;
    return *errors;
  }
  return ValidStudy{name, std::move(study), std::get<ValidScenario>(std::move(validated))};
}

}  // namespace bide::scenario
