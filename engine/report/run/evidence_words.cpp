#include "bide/report/run/evidence_words.hpp"

namespace bide::report {
namespace {

using outcome::Grade;

constexpr Grade grades[] = {Grade::checked, Grade::biased, Grade::extrapolated, Grade::no_data};

outcome::Evidence all_of_them(const std::vector<Judged>& results) {
  std::vector<outcome::Evidence> all;
  for (const Grade grade : grades)  // the graver last
    for (const Judged& each : results)
      if (each.evidence.grade == grade) all.push_back(each.evidence);
  return merge(all);
}

}  // namespace

std::vector<Judged> judged(const Material& m) {
  const outcome::Outcome& o = m.outcome;
  std::vector<Judged> out{{"able until", o.able_evidence},
                          {"alive until", o.alive_evidence},
                          {"water loss", o.thirst_evidence},
                          {"hands", o.hands_evidence},
                          {"stores (bookkeeping)", {}}};
  if (m.timeline.in_raft) {
    out.push_back({"inside temperature", o.cabin.temperature_evidence});
    out.push_back({"CO2", o.cabin.co2_evidence});
    out.push_back({"condensate", o.cabin.condensate_evidence});
  }
  return out;
}

std::vector<Judged> judged(const outcome::Figures& figures) {
  return {{"able until", figures.able_evidence}, {"alive until", figures.alive_evidence}};
}

std::vector<std::string> left_out_sentences(const std::vector<Judged>& results) {
  std::vector<std::string> out;
  for (const outcome::LeftOutWords& each : all_of_them(results).left_out) out.push_back(each.words);
  return out;
}

std::vector<std::string> data_ends(const std::vector<Judged>& results) {
  std::vector<std::string> out;
  for (const outcome::Passed& each : all_of_them(results).passed) out.push_back(each.limit);
  return out;
}

std::vector<document::Block> evidence_blocks(const std::vector<Judged>& results) {
  document::Table table{"How well each result was checked", {{"grade", false}, {"results", false}}, {}};
  for (const Grade grade : grades) {
    std::string all;
    for (const Judged& each : results)
      if (each.evidence.grade == grade) all += (all.empty() ? "" : ", ") + each.result;
    if (!all.empty()) table.rows.push_back({std::string(to_string(grade)), all});
  }
  std::vector<document::Block> out{std::move(table)};
  const auto add = [&out](const char* heading, std::vector<std::string> items) {
    if (items.empty()) return;
    out.emplace_back(document::Paragraph{heading});
    out.emplace_back(document::List{std::move(items)});
  };
  add("Studies like this, forecast without themselves:", left_out_sentences(results));
  add("Where the measurements end, and these results go on:", data_ends(results));
  return out;
}

}  // namespace bide::report
