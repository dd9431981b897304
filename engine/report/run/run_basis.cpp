#include <algorithm>

#include "bide/report/run/evidence_words.hpp"
#include "bide/report/run/inputs.hpp"
#include "bide/report/run/run_parts.hpp"
#include "bide/report/run/sentences.hpp"
#include "bide/report/words/units.hpp"

namespace bide::report::pages {
namespace {

document::Block heading(const char* text) {
  return document::Paragraph{text};
}

// Sources of each kind aboard, every source once.
document::Table sources(const scenario::ValidScenario& s) {
  document::Table out;
  out.caption = "Sources of what is aboard and worn";
  out.columns = {{"kind", false}, {"source", false}};
  out.folded = true;
  const auto add = [&out](const std::string& title, const std::string& source) {
    const std::vector<std::string> row{title, source};
    if (std::find(out.rows.begin(), out.rows.end(), row) == out.rows.end()) out.rows.push_back(row);
  };
  if (s.raft_kind) add(s.raft_kind->title, s.raft_kind->source);
  if (const scenario::PackKind* pack = scenario::find_pack(s.scenario.stores.pack))
    add(pack->title, pack->source);
  for (const scenario::Ensemble* worn : s.ensembles) add(worn->title, worn->source);
  for (const scenario::StockItem& item : s.stock) add(item.kind->title, item.kind->source);
  return out;
}

document::Table inputs(const Material& m) {
  document::Table table{
      "Every input in force",
      {{"input", false}, {"value", false}, {"unit", false}, {"stated", false}, {"in the file", false}},
      {}};
  table.folded = true;
  for (const InputInForce& each : inputs_in_force(m.scenario))
    table.rows.push_back(
        {each.words, each.value, unit_signs(each.unit), each.stated ? "yes" : "default", each.pointer});
  return table;
}

}  // namespace

document::Section basis_section(const Material& m) {
  document::Section out{"Evidence", {}};
  if (const std::string& setting = m.scenario.scenario.setting; !setting.empty())
    out.blocks.push_back(document::Paragraph{setting, false, false});
  for (document::Block& block : evidence_blocks(judged(m))) out.blocks.push_back(std::move(block));
  if (!m.timeline.assumptions.empty()) {
    out.blocks.push_back(heading("Assumed:"));
    out.blocks.push_back(document::List{m.timeline.assumptions});
  }
  out.blocks.push_back(document::Paragraph{
      "Not in the model: " + not_in_the_model(m.scenario, Told::as_written), false, false});
  if (std::vector<std::string> cautions = caution_sentences(m.scenario); !cautions.empty()) {
    out.blocks.push_back(heading("Cautions:"));
    out.blocks.push_back(document::List{std::move(cautions)});
  }
  out.blocks.push_back(
      document::Paragraph{"The validate command sets the model beside every published finding it was held "
                          "against, misses with their "
                          "reasons among them.",
                          false, false});
  out.blocks.push_back(inputs(m));
  out.blocks.push_back(sources(m.scenario));
  return out;
}

}  // namespace bide::report::pages
