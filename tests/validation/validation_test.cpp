// Guards the comparison: no row may move silently, get lost or get worse. What is compared is in results.csv
// beside this file; after a change that moves a row on purpose, `bide validate --json` gives the new values
// and the changelog says what moved and why.
#include "bide/constants/evidence.hpp"
#include "validation/row.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <map>
#include <set>
#include <sstream>

using namespace bide;
using namespace bide::validation;

namespace {

struct Known {
  double model;
  bool holds;
};

std::map<std::string, Known> known_rows() {
  std::map<std::string, Known> out;
  std::ifstream file(BIDE_SOURCE_DIR "/tests/validation/results.csv");
  std::string line;
  std::getline(file, line);  // header
  while (std::getline(file, line)) {
    // quantity last: it may hold commas
    std::istringstream in(line);
    std::string topic, model, holds, quantity;
    std::getline(in, topic, ',');
    std::getline(in, model, ',');
    std::getline(in, holds, ',');
    std::getline(in, quantity);
    out[topic + ": " + quantity] = {std::stod(model), holds == "holds"};
  }
  return out;
}

}  // namespace

TEST_CASE("every row says what it is") {
  for (const Row& r : all_rows()) {
    CAPTURE(r.topic);
    CAPTURE(r.quantity);
    CHECK_FALSE(r.topic.empty());
    CHECK_FALSE(r.study.empty());
    CHECK_FALSE(r.unit.empty());
    CHECK_FALSE(r.why.empty());
    CHECK(r.low <= r.high);
    CHECK(std::isfinite(r.model));
  }
}

// What answers that thirst ends say of themselves (outcome/evidence.cpp).
TEST_CASE("days without water are wrong by as much as results say, and most too long") {
  double least = 10, most = 0;
  int rows = 0, too_long = 0;
  for (const Row& r : all_rows()) {
    const bool dry =
        (r.topic == "desert_water" && r.quantity.ends_with(" with 0 L")) ||
        ((r.topic == "losses" || r.topic == "without_water") && r.quantity.starts_with("days without"));
    if (!dry) continue;
    CAPTURE(r.quantity);
    const double times = r.model / r.published;
    ++rows;
    too_long += times > 1 ? 1 : 0;
    least = std::min(least, times), most = std::max(most, times);
  }
  CHECK(rows == 10);
  CHECK(std::abs(least - constants::days_without_water_least_times) < 0.05);
  CHECK(std::abs(most - constants::days_without_water_most_times) < 0.05);
  CHECK(2 * too_long > rows);
}

// validation/crews/README.md, in the first column of its table under this title.
TEST_CASE("the accounts say which of their rows cannot miss") {
  std::ifstream file(BIDE_SOURCE_DIR "/validation/crews/README.md");
  std::set<std::string> named, found;
  std::string line;
  while (std::getline(file, line) && line != "| row that cannot miss | sharper row |") {
  }
  std::getline(file, line);  // the rule under the title
  while (std::getline(file, line) && line.starts_with("| "))
    named.insert(line.substr(2, line.find(" |") - 2));
  for (const Row& r : all_rows())
    if (r.cannot_miss()) found.insert(r.quantity);
  CHECK_FALSE(named.empty());
  for (const std::string& row : found) CHECK_MESSAGE(named.contains(row), "not named: " << row);
  for (const std::string& row : named) CHECK_MESSAGE(found.contains(row), "could miss: " << row);
}

TEST_CASE("no row has moved, got worse or been lost") {
  std::map<std::string, Known> known = known_rows();
  REQUIRE_FALSE(known.empty());
  for (const Row& r : all_rows()) {
    const std::string name = r.topic + ": " + r.quantity;
    CAPTURE(name);
    REQUIRE(known.count(name) == 1);
    const Known before = known[name];
    // Half a per cent, or 0.02 of the unit (kelvin, mostly) for values near nothing.
    CHECK(std::abs(r.model - before.model) <= std::max(0.005 * std::abs(before.model), 0.02));
    CHECK(r.holds() == before.holds);
    if (!r.holds())
      MESSAGE("misses: " << name << ", published " << r.published << ", model " << r.model << ": " << r.why);
    known.erase(name);
  }
  for (const auto& [name, row] : known) FAIL_CHECK("lost: " << name);
}
