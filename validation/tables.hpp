// The comparison as text: which rows hold, by study, and every row.
#pragma once

#include <string>
#include <vector>

#include "validation/row.hpp"

namespace bide::validation {

const char* word(Kind kind);
const char* word(Class source);

// One vote a study: it holds when more than half of its independent rows do. Calibrated rows and accounts
// have no vote.
struct StudyVote {
  std::string topic, study;
  int rows = 0, held = 0, missed = 0, calibrated = 0,
      accounts = 0;  // held and missed are of the independent rows

  bool votes() const { return held + missed > 0; }
  bool holds() const { return held > missed; }
};
std::vector<StudyVote> votes(const std::vector<Row>& rows);  // in the order of the rows

// The independent rows for which something simple was asked too, and how often the model is nearer.
struct Skill {
  int compared = 0, nearer = 0;
};
Skill skill_over_trivial(const std::vector<Row>& rows);
Skill skill_over_two_node(const std::vector<Row>& rows);

std::string summary(const std::vector<Row>& rows);  // the counts, in sentences
std::string rows_markdown(const std::vector<Row>& rows);
std::string studies_markdown(const std::vector<Row>& rows);

// The cells of the tables, for other forms of them.
struct Cells {
  std::vector<std::string> names;
  std::vector<bool> numbers;
  std::vector<std::vector<std::string>> rows;
};
Cells rows_cells(const std::vector<Row>& rows, bool reasons);  // why a row misses
Cells studies_cells(const std::vector<Row>& rows);
Cells topics_cells(const std::vector<Row>& rows);  // held, independent and attainable

}  // namespace bide::validation
