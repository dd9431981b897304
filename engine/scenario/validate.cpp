#include "bide/scenario/validate.hpp"

#include <fmt/format.h>

#include "bide/core/printable.hpp"
#include "bide/scenario/cautions.hpp"
#include "bide/scenario/reader.hpp"
#include "bide/scenario/resolve.hpp"
#include "bide/scenario/rules.hpp"
#include "bide/scenario/text_of_file.hpp"

namespace bide::scenario {

std::string to_string(const Diagnostic& d) {
  return printable(fmt::format("{}: {}{}{}", d.file, d.pointer, d.pointer.empty() ? "" : ": ", d.message));
}

struct Validator {
  static Validated validated(Node root, const std::string& file, const std::filesystem::path& folder,
                             Diagnostics wrong) {
    Reader reader(file, wrong);
    ValidScenario valid;
    Scenario& s = valid.scenario;
    reader.read(root, "", s);
    valid.defaults = fill_defaults(root, s);
    if (reader.sound("")) check_rules(s, folder, reader);
    if (!wrong.empty()) return wrong;
    valid.file = file;
    valid.folder = folder;
    valid.weather = resolved_weather(s.weather);
    valid.raft_kind = raft_kind_of(s);
    for (const Person& person : s.crew) valid.ensembles.push_back(find_ensemble(person.clothing));
    Stock stock = stock_of(s);
    valid.stock = std::move(stock.aboard);
    valid.expired = std::move(stock.expired);
    valid.start_unix_s = start_of(s).value();
    valid.cautions = cautions_of(valid);
    valid.document = std::make_shared<const Node>(std::move(root));
    return valid;
  }
};

Validated validate_text(const std::string& json, const std::string& file_name,
                        const std::filesystem::path& folder) {
  Diagnostics wrong;
  Node root;
  if (!parse_document(json, file_name, root, wrong)) return wrong;
  return Validator::validated(std::move(root), file_name, folder, std::move(wrong));
}

Validated validate_document(Node root, const std::string& file_name, const std::filesystem::path& folder) {
  return Validator::validated(std::move(root), file_name, folder, {});
}

Validated validate_file(const std::filesystem::path& path) {
  Diagnostics wrong;
  const auto text = text_of_file(path, "a scenario file", wrong);
  if (!text) return wrong;
  return validate_text(*text, path.string(), path.parent_path());
}

}  // namespace bide::scenario
