#include "bide/report/run/csv.hpp"

#include <doctest/doctest.h>

#include <limits>
#include <locale>
#include <sstream>
#include <stdexcept>

#include "bide/core/csv.hpp"
#include "bide/core/notice.hpp"
#include "bide/study/records/fingerprint.hpp"
#include "support/presentation.hpp"
#include "support/synthetic_timeline.hpp"

using namespace bide;

namespace {

struct Parsed {
  std::vector<std::string> comments;
  std::vector<CsvRow> rows;
};

Parsed parse(const std::string& text) {
  Parsed parsed;
  std::size_t at = 0;
  while (text.compare(at, 2, "# ") == 0) {
    const std::size_t end = text.find('\n', at);
    parsed.comments.push_back(text.substr(at, end - at));
    at = end + 1;
  }
  auto rows = parse_csv(std::string_view(text).substr(at));
  REQUIRE(std::holds_alternative<std::vector<CsvRow>>(rows));
  parsed.rows = std::get<std::vector<CsvRow>>(rows);
  return parsed;
}

std::size_t column(const Parsed& parsed, const std::string& name) {
  const auto& header = parsed.rows[0].fields;
  for (std::size_t i = 0; i < header.size(); ++i) {
    if (header[i] == name) return i;
  }
  FAIL("no column " << name);
  return 0;
}

}  // namespace

TEST_CASE("the timeline reads back from CSV") {
  const auto scenario = test::valid_scenario(2);
  const auto timeline = test::synthetic_timeline(2);
  const Parsed parsed = parse(report::timeline_csv(timeline, scenario));
  REQUIRE(parsed.rows.size() == 722);
  for (const CsvRow& row : parsed.rows) CHECK(row.fields.size() == 2 + 27 + 2 * 26);
  const auto at = [&](std::size_t row, const char* name) {
    return parsed.rows[row].fields[column(parsed, name)];
  };
  CHECK(at(1, "time_utc") == "2031-02-03T18:00:00Z");
  CHECK(at(721, "time_h") == "120");
  CHECK(at(721, "time_utc") == "2031-02-08T18:00:00Z");
  CHECK(at(721, "inside_air_degC") == "22");
  CHECK(at(61, "person_a_core_degC") == "36");
  CHECK(at(61, "person_b_core_degC") == "37");
  for (std::size_t i = 1; i < parsed.rows.size(); ++i) {
    const auto co2 = parse_number(at(i, "co2_ppm"));
    REQUIRE(co2);
    CHECK(*co2 == doctest::Approx(timeline.co2_ppm[i - 1]).epsilon(1e-5));
  }
}

TEST_CASE("comments carry the notice and every column its unit") {
  const auto timeline = test::synthetic_timeline(1);
  const std::string text = report::timeline_csv(timeline, test::valid_scenario(1));
  const Parsed parsed = parse(text);
  CHECK(parsed.comments[0].find("One case, not a forecast") != std::string::npos);
  CHECK(parsed.comments[1] == "# " + std::string(standing_notice));
  CHECK(parsed.comments[2] == "# " + std::string(standing_advice));
  CHECK(parsed.comments[3].find(study::fingerprint()) != std::string::npos);
  test::check_no_promise(text);
  for (const std::string& name : parsed.rows[0].fields) {
    bool has_unit = false;
    for (const std::string unit :
         {"_degC", "_W", "_kg_h", "_kg", "_pct", "_mOsm_kg", "_kJ",    "_fraction", "_m_s", "_kg_m3",
          "_ppm",  "_L", "_L_s",  "_m2", "_m",   "_doses",   "_count", "_h",        "_utc", "_possible"}) {
      has_unit = has_unit || (name.size() > unit.size() && name.ends_with(unit));
    }
    INFO(name);
    CHECK(has_unit);  // "possible" is 0 or 1
  }
}

TEST_CASE("a hostile name stays inside its comment line") {
  auto scenario = test::valid_scenario(1);
  scenario.scenario.name = test::hostile;
  const std::string text = report::timeline_csv(test::synthetic_timeline(1), scenario);
  const Parsed parsed = parse(text);
  CHECK(parsed.comments.size() == 5);
  CHECK(parsed.rows.size() == 722);
  CHECK(text.find('\x1b') == std::string::npos);
}

TEST_CASE("values that are not finite are empty, missing columns are left out, short ones refused") {
  auto timeline = test::synthetic_timeline(1);
  timeline.canopy_degC[0] = std::numeric_limits<double>::quiet_NaN();
  timeline.canopy_degC[1] = std::numeric_limits<double>::infinity();
  timeline.wave_height_m.clear();
  const auto scenario = test::valid_scenario(1);
  const Parsed parsed = parse(report::timeline_csv(timeline, scenario));
  CHECK(parsed.rows[1].fields[column(parsed, "canopy_degC")].empty());
  CHECK(parsed.rows[2].fields[column(parsed, "canopy_degC")].empty());
  for (const std::string& name : parsed.rows[0].fields) CHECK(name != "wave_height_m");
  timeline.persons[0].core_degC.pop_back();
  CHECK_THROWS_AS(report::timeline_csv(timeline, scenario), std::logic_error);
}

TEST_CASE("the locale does not reach the numbers") {
  const auto scenario = test::valid_scenario(1);
  const auto timeline = test::synthetic_timeline(1);
  const std::string before = report::timeline_csv(timeline, scenario);
  struct DecimalComma : std::numpunct<char> {
    char do_decimal_point() const override { return ','; }
    char do_thousands_sep() const override { return '.'; }
    std::string do_grouping() const override { return "\3"; }
  };
  const std::locale previous = std::locale::global(std::locale(std::locale::classic(), new DecimalComma));
  const std::string after = report::timeline_csv(timeline, scenario);
  std::ostringstream proof;
  proof << 1.5;
  std::locale::global(previous);
  CHECK(proof.str() == "1,5");  // the locale was in force
  CHECK(before == after);
}
