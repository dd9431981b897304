#include "bide/weather/ndbc.hpp"

#include <doctest/doctest.h>

#include <string>

#include "bide/core/time_utc.hpp"

using namespace bide;
using namespace bide::weather;

namespace {

const std::string header =
    "#YY  MM DD hh mm WDIR WSPD GST  WVHT   DPD   APD MWD   PRES  ATMP  WTMP  DEWP  VIS  TIDE\n"
    "#yr  mo dy hr mn degT m/s  m/s     m   sec   sec degT   hPa  degC  degC  degC  nmi    ft\n";

std::string row(const std::string& time, const std::string& wind = " 9.8", const std::string& air = "6.1") {
  return time + " 245 " + wind + " 12.1 3.10 10.00 7.20 260 1004.3 " + air + " 8.4 3.2 99.0 99.00\n";
}

std::optional<double> value(const Rows& rows, std::size_t at, Quantity q) {
  return rows.rows.at(at).value[index(q)];
}

double unix_s(const char* text) {
  return parse_time_utc(text).value();
}

}  // namespace

TEST_CASE("header with marks and units; the values used") {
  const Rows rows = parse_ndbc(header + row("2021 01 01 00 50"));
  CHECK(rows.problems.empty());
  REQUIRE(rows.rows.size() == 1);
  CHECK(rows.rows[0].unix_s == unix_s("2021-01-01T00:50Z"));
  CHECK(rows.rows[0].line == 3);
  CHECK(value(rows, 0, Quantity::wind_speed) == 9.8);
  CHECK(value(rows, 0, Quantity::wave_height) == 3.1);
  CHECK(value(rows, 0, Quantity::wave_period) == 7.2);
  CHECK(value(rows, 0, Quantity::pressure) == 1004.3);
  CHECK(value(rows, 0, Quantity::air_temperature) == 6.1);
  CHECK(value(rows, 0, Quantity::water_temperature) == 8.4);
  CHECK(value(rows, 0, Quantity::dew_point) == 3.2);
  CHECK_FALSE(value(rows, 0, Quantity::rain).has_value());
}

TEST_CASE("older layouts: no marks, no minutes, WD and BAR, years of two digits") {
  const Rows rows = parse_ndbc(
      "YY MM DD hh WD   WSPD GST  WVHT  DPD   APD  MWD  BAR    ATMP  WTMP  DEWP  VIS\n"
      "93 12 31 23 245 09.8 12.1 03.10 10.00 07.20 260 1004.3 006.1 008.4 003.2 99.0\n"
      "04 01 01 00 245 09.9 12.1 03.10 10.00 07.20 260 1004.4 006.1 008.4 003.2 99.0\n");
  CHECK(rows.problems.empty());
  REQUIRE(rows.rows.size() == 2);
  CHECK(rows.rows[0].unix_s == unix_s("1993-12-31T23:00Z"));
  CHECK(rows.rows[1].unix_s == unix_s("2004-01-01T00:00Z"));
  CHECK(value(rows, 0, Quantity::pressure) == 1004.3);
  CHECK(value(rows, 1, Quantity::wind_speed) == 9.9);
  CHECK(parse_ndbc("YYYY MM DD hh WD WSPD\n1999 06 01 12 200 5.0\n").rows.at(0).unix_s ==
        unix_s("1999-06-01T12:00Z"));
}

TEST_CASE("missing values: MM and nines, by column") {
  const Rows rows = parse_ndbc(
      header +
      "2021 01 01 01 50 999 99.0 99.0 99.00 99.00 99.00 999 9999.0 999.0 999.0 999.0 99.0 99.00\n"
      "2021 01 01 02 50  MM   MM   MM    MM    MM    MM  MM     MM    MM    MM    MM   MM    MM\n"
      "2021 01 01 03 50 200  9.9  9.9  9.90  9.90  9.90  99  999.9  -9.9   9.9   9.9  9.9  9.90\n");
  CHECK(rows.problems.empty());
  REQUIRE(rows.rows.size() == 3);
  for (std::size_t at : {std::size_t{0}, std::size_t{1}})
    for (const auto& found : rows.rows[at].value) CHECK_FALSE(found.has_value());
  // One nine fewer is a value.
  CHECK(value(rows, 2, Quantity::wind_speed) == 9.9);
  CHECK(value(rows, 2, Quantity::pressure) == 999.9);
  CHECK(value(rows, 2, Quantity::air_temperature) == -9.9);
}

TEST_CASE("line ends of other systems, blank lines, a header repeated when files are joined") {
  std::string text = header + row("2021 01 01 00 50") + "\n" + header + row("2021 01 01 01 50");
  std::string with_returns;
  for (char c : text) with_returns += c == '\n' ? std::string("\r\n") : std::string(1, c);
  const Rows rows = parse_ndbc(with_returns);
  CHECK(rows.problems.empty());
  CHECK(rows.rows.size() == 2);
  CHECK(parse_ndbc(header + "2021 01 01 00 50").rows.empty());
}

TEST_CASE("problems name their line") {
  const auto only_problem = [](const std::string& text) {
    const Rows rows = parse_ndbc(text);
    REQUIRE(rows.problems.size() == 1);
    return rows.problems[0];
  };
  CHECK(only_problem(header + "2021 01 01 00 50 245 9.8\n") ==
        "line 3: 7 columns, the header on line 1 has 18");
  CHECK(only_problem(header + row("2021 02 30 00 50")) == "line 3: \"2021 02 30 00 50\" is no date and time");
  CHECK(only_problem(header + row("2021 257 01 00 50")) ==
        "line 3: \"2021 257 01 00 50\" is no date and time");  // 257 is 1 in a byte
  CHECK(only_problem(header + row("2021 01 257 00 50")) ==
        "line 3: \"2021 01 257 00 50\" is no date and time");
  CHECK(only_problem(header + row("2021 01 01 00 50", "gale")) == "line 3: WSPD \"gale\" is no number");
  CHECK(only_problem(header + row("2021 01 01 00 50", "nan")) == "line 3: WSPD \"nan\" is no number");
  CHECK(only_problem(header + row("2021 01 01 00 50", "9.8", "512.0")) ==
        "line 3: air temperature 512 degC is outside -50 to 60");
  CHECK(only_problem(header + row("2021 01 01 00 50", "-1.0")) ==
        "line 3: wind speed -1 m/s is outside 0 to 60");
  CHECK(only_problem("12 34\n").find("line 1: no header") == 0);
  CHECK(only_problem(header + "YY MM DD hh WSPD\n") == "line 3: the header differs from that on line 1");
  CHECK(only_problem("YY MM DD hh PRES BAR\n").find("hold the same quantity") != std::string::npos);
  CHECK(parse_ndbc("YY MM DD hh WSPD HAIL\n20 01 01 00 5 1\n").notes.size() == 1);
}

TEST_CASE("sorting, repeated rows and contradictions") {
  const auto sorted =
      observations(parse_ndbc(header + row("2021 01 01 02 50", "7.0") + row("2021 01 01 00 50") +
                              row("2021 01 01 02 50", "7.0") + row("2021 01 01 02 50", "MM")));
  REQUIRE(std::holds_alternative<Observations>(sorted));
  const Observations& file = std::get<Observations>(sorted);
  CHECK(file.row_unix_s.size() == 2);
  CHECK(file[Quantity::wind_speed].value == std::vector<double>{9.8, 7.0});
  CHECK(file.notes == std::vector<std::string>{"2 repeated rows were merged"});

  // What one row lacks, its twin may give.
  const auto completed =
      observations(parse_ndbc(header + row("2021 01 01 00 50", "MM") + row("2021 01 01 00 50", "7.0")));
  CHECK(std::get<Observations>(completed)[Quantity::wind_speed].value == std::vector<double>{7.0});

  const auto contradicting =
      observations(parse_ndbc(header + row("2021 01 01 00 50", "7.0") + row("2021 01 01 00 50", "8.0")));
  REQUIRE(std::holds_alternative<Problems>(contradicting));
  CHECK(std::get<Problems>(contradicting).at(0) ==
        "lines 3 and 4 contradict each other on wind speed at 2021-01-01T00:50:00Z: 7 and 8 m/s");
}

TEST_CASE("a wave period of 0 says that there are no waves, and is wrong beside waves") {
  const std::string waves = "YY MM DD hh WVHT APD\n";
  const auto flat = observations(parse_ndbc(waves + "2021 01 01 00 0.0 0.0\n2021 01 01 01 1.2 5.0\n"));
  REQUIRE(std::holds_alternative<Observations>(flat));
  CHECK(std::get<Observations>(flat)[Quantity::wave_period].value == std::vector<double>{5.0});
  CHECK(std::get<Observations>(flat)[Quantity::wave_height].value == std::vector<double>{0.0, 1.2});
  for (const char* row : {"2021 01 01 00 1.2 0.0\n", "2021 01 01 00 MM 0.0\n"}) {
    const auto refused = observations(parse_ndbc(waves + row));
    REQUIRE(std::holds_alternative<Problems>(refused));
    CHECK(std::get<Problems>(refused).at(0) ==
          "line 2: wave period 0 s is allowed beside a wave height of 0 only");
  }
}

TEST_CASE("no rows, and very many problems") {
  CHECK(std::get<Problems>(observations(parse_ndbc(header))).at(0) == "holds no data rows");
  CHECK(std::get<Problems>(observations(parse_ndbc(""))).at(0) == "holds no data rows");
  std::string text = header;
  for (int i = 0; i < 50; ++i) text += "garbage\n";
  const auto problems = std::get<Problems>(observations(parse_ndbc(text)));
  CHECK(problems.size() == 21);
  CHECK(problems.back() == "and 30 more");
}
