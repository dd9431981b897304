#include "bide/report/words/chart.hpp"

#include <doctest/doctest.h>

#include <limits>

using namespace bide::report;

namespace {

ChartArea area(Letters letters) {
  ChartArea a;
  a.width = 30;  // a plot of 20 columns
  a.rows = 3;
  a.letters = letters;
  a.horizon_s = 20 * 3600;
  return a;
}

}  // namespace

TEST_CASE("a rising line fills the chart from left to right") {
  std::vector<double> time_s, values;
  for (int i = 0; i <= 200; ++i) {
    time_s.push_back(i * 360.0);
    values.push_back(0.1 * i);  // 0 to 20 C, one degree a column
  }
  const auto lines = draw({"Inside air", "C", values}, time_s, area(Letters::ascii));
  REQUIRE(lines.size() == 4);
  CHECK(lines[0] == "Inside air, C");
  CHECK(lines[1].substr(0, 10) == "      20 |");
  CHECK(lines[3].substr(0, 10) == "       0 |");
  // Top row: nothing below 13.3 C, full at the end. Lowest row: a mark from the first column, full from 6.7
  // C.
  CHECK(lines[1].substr(10, 12) == std::string(12, ' '));
  CHECK(lines[1].back() == '#');
  CHECK(lines[3].substr(10, 1) == ".");
  CHECK(lines[3].substr(17, 13) == std::string(13, '#'));
}

TEST_CASE("a short dip shows in a chart of lowest values and hides in the mean") {
  std::vector<double> time_s, values;
  for (int i = 0; i <= 200; ++i) {
    time_s.push_back(i * 360.0);
    values.push_back(i == 105 ? 0 : 20);
  }
  const auto low = draw({"Core", "C", values, 1, Bin::lowest, true}, time_s, area(Letters::ascii));
  const auto high = draw({"Core", "C", values, 1, Bin::highest, true}, time_s, area(Letters::ascii));
  CHECK(low[1].find(' ', 10) == 20);  // the hour that holds sample 105 is the eleventh column
  CHECK(high[1].find(' ', 10) == std::string::npos);
}

TEST_CASE("gaps stay blank, and a flat or empty column is drawn") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const auto flat = draw({"Flat", "C", {5, 5, 5}}, {0, 36000, 72000}, area(Letters::utf8));
  CHECK(flat.size() == 4);
  const auto empty = draw({"None", "C", {nan, nan, nan}}, {0, 36000, 72000}, area(Letters::utf8));
  CHECK(empty[3].substr(9) == "|");  // nothing is drawn
  const auto half = draw({"Half", "C", {5, 5, nan}}, {0, 36000, 72000}, area(Letters::ascii));
  CHECK(half[3].size() <= 21);
}

TEST_CASE("the axis names round times and stays as wide as the charts") {
  auto a = area(Letters::ascii);
  a.width = 80;
  a.horizon_s = 5 * 86400;
  const auto axis = draw_axis(a);
  REQUIRE(axis.size() == 2);
  CHECK(axis[0].size() == 80);
  CHECK(axis[1].find("0 d") == 10);
  CHECK(axis[1].find("5 d") != std::string::npos);
  a.horizon_s = 90 * 60;
  CHECK(draw_axis(a)[1].find("60 min") != std::string::npos);
  a.horizon_s = 30 * 86400.0;
  CHECK(draw_axis(a)[1].find("30 d") != std::string::npos);
}
