// What the read-me says of the comparison is what the comparison gives; `tools/readme` writes it.
#include <doctest/doctest.h>

#include <fstream>
#include <iterator>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "validation/conflicts.hpp"
#include "validation/curve.hpp"
#include "validation/tables.hpp"

using namespace bide::validation;

namespace {

std::string text_of(const char* path) {
  std::ifstream file(std::string(BIDE_SOURCE_DIR "/") + path);
  REQUIRE_MESSAGE(file, path);
  return {std::istreambuf_iterator<char>(file), {}};
}

Row row(const char* study, double model, bool calibrated = false) {
  Row out;
  out.topic = "topic";
  out.study = study;
  out.quantity = "quantity";
  out.unit = "m";
  out.published = 10;
  out.low = 9;
  out.high = 11;
  out.model = model;
  out.calibrated = calibrated;
  return out;
}

}  // namespace

TEST_CASE("the read-me and the table of rows are up to date") {
  const std::vector<Row> rows = all_rows();
  const std::string marker = "<!-- written by tools/readme: begin -->\n";
  const bool studies_stand = text_of("README.md").find(marker + studies_markdown(rows)) != std::string::npos;
  CHECK_MESSAGE(studies_stand, "README.md is stale: run tools/readme");
  const bool rows_stand = text_of("validation/results.md").find(rows_markdown(rows)) != std::string::npos;
  CHECK_MESSAGE(rows_stand, "validation/results.md is stale: run tools/readme");
}

TEST_CASE("validation/README.md lists every topic") {
  std::set<std::string> topics;
  for (const Row& r : all_rows()) topics.insert(r.topic);
  const std::string listed = text_of("validation/README.md");
  for (const std::string& topic : topics)
    CHECK_MESSAGE(listed.find("[" + topic + "](" + topic + "/README.md)") != std::string::npos, topic);
}

TEST_CASE("a study has one vote, a half is not most, calibrated rows have none") {
  const std::vector<StudyVote> all =
      votes({row("a", 10), row("a", 12), row("b", 10), row("b", 10), row("b", 12), row("c", 10, true)});
  REQUIRE(all.size() == 3);
  CHECK(all[0].held == 1);
  CHECK(all[0].missed == 1);
  CHECK_FALSE(all[0].holds());
  CHECK(all[1].holds());
  CHECK(all[2].calibrated == 1);
  CHECK_FALSE(all[2].votes());
}

TEST_CASE("an account holds where what was told lies in the model's range, and has no vote") {
  Row told = row("a", 10);
  told.kind = Kind::account;
  told.published = 4, told.low = 2, told.high = 4, told.model = 3;
  CHECK(told.holds());
  told.high = 3;
  CHECK_FALSE(told.holds());
  const std::vector<StudyVote> all = votes({told, row("b", 10)});
  CHECK_FALSE(all[0].votes());
  CHECK(all[0].accounts == 1);
  CHECK(all[1].votes());
  CHECK(topics_cells({told, row("b", 10)}).rows.back()[2] == "1");
}

TEST_CASE("an account whose range is every outcome cannot miss, and says so") {
  Row told = row("a", 2);
  told.kind = Kind::account;
  told.published = 4, told.low = 0, told.high = 4;
  CHECK_FALSE(told.cannot_miss());  // not people
  told.people = 4;
  CHECK(told.cannot_miss());
  CHECK(rows_cells({told}, true).rows[0].back() == "cannot miss");
  CHECK(
      summary({told}).find("1 lie within the middle 95 % of the model's futures (1 of them could not miss") !=
      std::string::npos);
  told.low = 1;
  CHECK_FALSE(told.cannot_miss());
  told.low = 0, told.people = 5;
  CHECK_FALSE(told.cannot_miss());
  CHECK(rows_cells({told}, true).rows[0].back() == "holds");
}

TEST_CASE("of rows that contradict each other as many are given up as must be") {
  std::vector<Row> rows;
  const auto add = [&rows](const char* quantity, double model, std::vector<std::string> conflicts_with) {
    rows.push_back(row("a", model));
    rows.back().quantity = quantity;
    for (const std::string& each : conflicts_with) rows.back().conflicts_with.push_back("topic: " + each);
  };
  constexpr double holds = 10, misses = 12;
  // One against three: the three stay. Named on one side only, which is enough.
  add("one", misses, {"x", "y", "z"});
  add("x", misses, {});
  add("y", misses, {});
  add("z", holds, {});
  CHECK(attainable(rows) == 3);
  // A ring of five: two of them.
  add("ring 1", misses, {"ring 2"});
  add("ring 2", misses, {"ring 3"});
  add("ring 3", misses, {"ring 4"});
  add("ring 4", misses, {"ring 5"});
  add("ring 5", misses, {"ring 1"});
  CHECK(attainable(rows) == 3 + 2);
  // Two that both hold do not exclude each other.
  add("left", holds, {"right"});
  add("right", holds, {"left"});
  CHECK(attainable(rows) == 3 + 2 + 2);
  // A row that set a number does not count, and excludes nothing.
  add("fitted", holds, {"free"});
  rows.back().calibrated = true;
  add("free", misses, {"fitted"});
  CHECK(attainable(rows) == 3 + 2 + 2 + 1);
}

TEST_CASE("contradicting rows name each other, and what holds is attainable") {
  const std::vector<Row> rows = all_rows();
  std::set<std::pair<std::string, std::string>> named;
  int held = 0;
  for (const Row& r : rows) {
    held += r.holds() && r.counts() ? 1 : 0;
    for (const std::string& other : r.conflicts_with) named.insert({r.id(), other});
  }
  CHECK_FALSE(named.empty());
  for (const auto& pair : named) {
    const std::string &one = pair.first, &other = pair.second;  // a capture takes no binding
    CAPTURE(one);
    CHECK(named.count({other, one}) == 1);
    CHECK(one != other);
  }
  CHECK(attainable(rows) >= held);
}

TEST_CASE("the model is set beside what needs no model") {
  Row near = row("a", 10.5), far = row("a", 14), equal = row("a", 12), used = row("a", 10, true);
  for (Row* r : {&near, &far, &equal, &used}) r->trivial = 12;
  CHECK(*near.error_beside(near.trivial) == doctest::Approx(0.25));
  CHECK(*far.error_beside(far.trivial) == doctest::Approx(2));
  const Skill skill = skill_over_trivial({near, far, equal, used, row("b", 10)});
  CHECK(skill.compared == 3);
  CHECK(skill.nearer == 1);
  near.trivial = near.published;
  CHECK_FALSE(near.error_beside(near.trivial).has_value());
}

TEST_CASE("every curve has something published and something of the model, and says what it is") {
  const std::vector<Curve> curves = all_curves(all_rows());
  CHECK(curves.size() > 10);
  for (const Curve& curve : curves) {
    CAPTURE(curve.title);
    CHECK_FALSE(curve.title.empty());
    CHECK_FALSE(curve.says.empty());
    CHECK_FALSE(curve.y_label.empty());
    CHECK_FALSE(curve.x_label.empty());
    bool published = false, model = false;
    for (const Condition& condition : curve.conditions) {
      published = published || !condition.published.empty();
      model = model || !condition.model.empty();
      for (const CurvePoint& p : condition.published)
        if (p.low) CHECK((*p.low <= p.y && p.y <= *p.high));
    }
    CHECK(published);
    CHECK(model);
  }
}
