#include "validation/tables.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <iterator>

#include "validation/conflicts.hpp"

namespace bide::validation {

namespace {

Skill skill(const std::vector<Row>& rows, std::optional<double> Row::*simple) {
  Skill out;
  for (const Row& r : rows) {
    if (!r.counts() || !(r.*simple)) continue;
    const double theirs = std::abs(*(r.*simple) - r.published), ours = std::abs(r.model - r.published);
    out.compared += 1;
    out.nearer += ours < theirs ? 1 : 0;
  }
  return out;
}

// What share of a simple prediction's error is left: below 1 the model is nearer.
std::string error_left(const Row& row, const std::optional<double>& simple) {
  const auto left = row.error_beside(simple);
  return left ? fmt::format("{:.2g}", *left) : "";
}

std::string markdown(const Cells& cells) {
  const auto line = [](const std::vector<std::string>& row) {
    std::string out = "|";
    for (const std::string& cell : row) out += " " + cell + (cell.empty() ? "|" : " |");
    return out + "\n";
  };
  std::string out = line(cells.names) + "|";
  for (const bool number : cells.numbers) out += number ? "---:|" : "---|";
  out += "\n";
  for (const std::vector<std::string>& row : cells.rows) out += line(row);
  return out;
}

std::string count(int number) {
  return number == 0 ? "" : std::to_string(number);
}

}  // namespace

const char* word(Kind kind) {
  switch (kind) {
    case Kind::measured:
      return "measured";
    case Kind::predicted_by_others:
      return "predicted by others";
    case Kind::rule:
      return "rule";
    case Kind::account:
      return "account";
  }
  return "";
}

const char* word(Class source) {
  switch (source) {
    case Class::published:
      return "published";
    case Class::common_practice:
      return "common practice";
    case Class::from_memory:
      return "from memory";
    case Class::second_hand:
      return "second hand";
  }
  return "";
}

std::vector<StudyVote> votes(const std::vector<Row>& rows) {
  std::vector<StudyVote> out;
  for (const Row& r : rows) {
    auto vote = std::find_if(out.begin(), out.end(), [&](const StudyVote& v) { return v.study == r.study; });
    if (vote == out.end()) vote = out.insert(out.end(), {r.topic, r.study});
    vote->rows += 1;
    (r.kind == Kind::account ? vote->accounts
     : r.calibrated          ? vote->calibrated
     : r.holds()             ? vote->held
                             : vote->missed) += 1;
  }
  return out;
}

Skill skill_over_trivial(const std::vector<Row>& rows) {
  return skill(rows, &Row::trivial);
}

Skill skill_over_two_node(const std::vector<Row>& rows) {
  return skill(rows, &Row::two_node);
}

std::string summary(const std::vector<Row>& rows) {
  int calibrated = 0, accounts = 0, held = 0, studies = 0, held_studies = 0;
  for (const StudyVote& v : votes(rows)) {
    calibrated += v.calibrated;
    accounts += v.accounts;
    held += v.held;
    studies += v.votes() ? 1 : 0;
    held_studies += v.votes() && v.holds() ? 1 : 0;
  }
  const Skill trivial = skill_over_trivial(rows), two_node = skill_over_two_node(rows);
  const int independent = static_cast<int>(rows.size()) - calibrated - accounts;
  const auto told = std::count_if(rows.begin(), rows.end(),
                                  [](const Row& r) { return r.kind == Kind::account && r.holds(); });
  const auto idle = std::count_if(rows.begin(), rows.end(), [](const Row& r) { return r.cannot_miss(); });
  return fmt::format(
      "{} rows; {} of them were used to set a number and {} are accounts of crews, which do not count. Of "
      "the "
      "other {}, {} hold and {} miss; "
      "findings contradict each other, so that at most {} can hold at once. "
      "One vote a study: {} of {} studies hold (more than half of their rows do). Where a trivial prediction "
      "exists (nothing changes, core stays 37 degC), the model is nearer to the finding in {} of {} rows; "
      "where "
      "the two-node model of Gagge was run, in {} of {}. "
      "Of the accounts, {} lie within the middle 95 % of the model's futures ({} of them could not miss, for "
      "that range is every outcome there can be); they are told of those who lived, and bound what is "
      "possible.",
      rows.size(), calibrated, accounts, independent, held, independent - held, attainable(rows),
      held_studies, studies, trivial.nearer, trivial.compared, two_node.nearer, two_node.compared, told,
      idle);
}

Cells rows_cells(const std::vector<Row>& rows, bool reasons) {
  Cells out{{"topic", "quantity", "study", "published (holds within)", "model", "error / s.e.",
             "error / trivial error", "error / two-node error", "kind", "contradicts", "result"},
            {false, false, false, true, true, true, true, true, false, false, false},
            {}};
  for (const Row& r : rows) {
    const auto e = r.error_over_standard_error();
    std::string kind = word(r.kind);
    if (r.source_class != Class::published) kind += std::string(", ") + word(r.source_class);
    if (r.calibrated) kind += ", calibrated";
    if (r.seen_before) kind += ", seen before";
    out.rows.push_back(
        {r.topic, fmt::format("{}, {}", r.quantity, r.unit), r.study,
         r.kind == Kind::account ? fmt::format("{:.4g}", r.published)
                                 : fmt::format("{:.4g} ({:.4g} to {:.4g})", r.published, r.low, r.high),
         r.kind == Kind::account ? fmt::format("{:.4g} (95 %: {:.4g} to {:.4g})", r.model, r.low, r.high)
                                 : fmt::format("{:.4g}", r.model),
         e ? fmt::format("{:+.1f}", *e) : "", error_left(r, r.trivial), error_left(r, r.two_node), kind,
         fmt::format("{}", fmt::join(r.conflicts_with, "; ")),
         r.cannot_miss() ? "cannot miss"
         : r.holds()     ? "holds"
         : reasons       ? "misses: " + r.why
                         : "misses"});
  }
  return out;
}

Cells studies_cells(const std::vector<Row>& rows) {
  Cells out{{"topic", "study", "rows", "held", "missed", "calibrated", "vote"},
            {false, false, true, true, true, true, false},
            {}};
  for (const StudyVote& v : votes(rows)) {
    out.rows.push_back({v.topic, v.study, count(v.rows), count(v.held), count(v.missed), count(v.calibrated),
                        v.votes()        ? v.holds() ? "holds" : "misses"
                        : v.accounts > 0 ? "none: account"
                                         : "none: calibrated"});
  }
  return out;
}

Cells topics_cells(const std::vector<Row>& rows) {
  Cells out{{"topic", "held", "independent", "attainable"}, {false, true, true, true}, {}};
  std::vector<std::string> topics;
  for (const Row& r : rows)
    if (std::find(topics.begin(), topics.end(), r.topic) == topics.end()) topics.push_back(r.topic);
  const auto add = [&out](const std::string& name, const std::vector<Row>& own) {
    const auto independent = std::count_if(own.begin(), own.end(), [](const Row& r) { return r.counts(); });
    const auto held =
        std::count_if(own.begin(), own.end(), [](const Row& r) { return r.counts() && r.holds(); });
    out.rows.push_back(
        {name, std::to_string(held), std::to_string(independent), std::to_string(attainable(own))});
  };
  for (const std::string& topic : topics) {
    std::vector<Row> own;
    std::copy_if(rows.begin(), rows.end(), std::back_inserter(own),
                 [&topic](const Row& r) { return r.topic == topic; });
    add(topic, own);
  }
  add("all", rows);
  return out;
}

std::string rows_markdown(const std::vector<Row>& rows) {
  return markdown(rows_cells(rows, true)) + "\n" + markdown(topics_cells(rows)) + "\n" + summary(rows) + "\n";
}

std::string studies_markdown(const std::vector<Row>& rows) {
  return summary(rows) + "\n\n" + markdown(studies_cells(rows));
}

}  // namespace bide::validation
