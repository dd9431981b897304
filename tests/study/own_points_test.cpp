// Points of one's own from a file: order, scales, and what is refused, by file and line.
#include "bide/study/sampling/own_points.hpp"

#include <doctest/doctest.h>
#include <fmt/core.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

#include "bide/study/questions/study.hpp"
#include "bide/study/questions/summary.hpp"

using namespace bide;
namespace fs = std::filesystem;
using scenario::Diagnostics;
using scenario::PointScale;

namespace {

// A folder of its own with the smallest scenario in it, 24 h of one person, and a study of points.
struct Work {
  fs::path folder = fs::temp_directory_path() / fmt::format("bide_own_points_test_{}", ::getpid());
  Work() {
    fs::create_directories(folder);
    fs::copy(fs::path(BIDE_SOURCE_DIR) / "tests/scenario/minimal.json", folder / "minimal.json");
  }
  ~Work() { fs::remove_all(folder); }
  Work(const Work&) = delete;
  Work& operator=(const Work&) = delete;

  // Mass is 60 to 100 kg, air 0 to 12 degC: values and places are each other's by hand.
  std::variant<study::Study, Diagnostics> make(const std::string& csv, const std::string& more = "") const {
    std::ofstream(folder / "points.csv", std::ios::binary) << csv;
    return with_design(R"({"kind": "points", "points": "points.csv")" + more + "}");
  }
  std::variant<study::Study, Diagnostics> with_design(const std::string& design) const {
    std::ofstream(folder / "t.json")
        << R"({"format": "bide study 1", "scenario": "minimal.json", "outputs": ["Person A lowest core"],
          "uncertain": {"inputs": {
            "/crew/0/mass_kg": {"kind": "uniform", "low": 60, "high": 100},
            "/weather/air_temperature_degC": {"kind": "uniform", "low": 0, "high": 12},
            "/raft/kind": {"kind": "discrete", "values": ["offshore_4", "offshore_8"]}}},
          "design": )"
        << design << "}";
    auto valid = scenario::validate_study(folder / "t.json");
    if (const auto* wrong = std::get_if<Diagnostics>(&valid)) return *wrong;
    return study::Study::make(std::get<scenario::ValidStudy>(std::move(valid)));
  }
  study::Study study(const std::string& csv, const std::string& more = "") const {
    return std::get<study::Study>(make(csv, more));
  }
  // "line 3: ..."; every one of them names the file.
  std::vector<std::string> errors(const std::string& csv, const std::string& more = "") const {
    const auto made = make(csv, more);
    REQUIRE(std::holds_alternative<Diagnostics>(made));
    std::vector<std::string> out;
    for (const scenario::Diagnostic& each : std::get<Diagnostics>(made)) {
      CHECK(each.file == (folder / "points.csv").string());
      out.push_back(each.message);
    }
    return out;
  }
};

const std::string header = "/weather/air_temperature_degC,/crew/0/mass_kg,/raft/kind\n";
const std::string natural = R"(, "scale": "natural")";

double number(const study::Study& study, std::uint64_t k, std::size_t input) {
  return *study::input_value(study, study.draw(k), input).number;
}

}  // namespace

TEST_CASE("rows of the file are the samples, in its order, by the names of columns") {
  const Work work;
  const std::string more = "# my own points\n0.5,0.25,0.1\n\n0.25,0.75,0.9\r\n";
  const study::Study study = work.study("\xEF\xBB\xBF" + header + more);
  REQUIRE(study.plan().size() == 2);
  // Mass 60 + 40 u, air 12 u; the first half of a list of two is its first word.
  CHECK(number(study, 0, 0) == doctest::Approx(70));
  CHECK(number(study, 0, 1) == doctest::Approx(6));
  CHECK(study::input_value(study, study.draw(0), 2).words == "offshore_4");
  CHECK(number(study, 1, 0) == doctest::Approx(90));
  CHECK(number(study, 1, 1) == doctest::Approx(3));
  CHECK(study::input_value(study, study.draw(1), 2).words == "offshore_8");
}

TEST_CASE("on the natural scale numbers are values, and words have places") {
  const Work work;
  const study::Study study = work.study(header + "6,70,0.1\n3,90,0.9\n", natural);
  CHECK(number(study, 0, 0) == 70);
  CHECK(number(study, 1, 1) == 3);
  CHECK(study::input_value(study, study.draw(1), 2).words == "offshore_8");
  // The same runs as at the places of these values, up to the rounding of a quantile.
  const study::Study places = work.study(header + "0.5,0.25,0.1\n0.25,0.75,0.9\n");
  CHECK(study.kind() != places.kind());
  std::vector<double> by_value, by_place;
  study.run({0, 2}, work.folder / "by_value", 1);
  places.run({0, 2}, work.folder / "by_place", 1);
  study.read(work.folder / "by_value",
             [&](const auto& result) { by_value.push_back(result.persons[0].lowest_core_degC); });
  places.read(work.folder / "by_place",
              [&](const auto& result) { by_place.push_back(result.persons[0].lowest_core_degC); });
  REQUIRE(by_value.size() == 2);
  for (std::size_t k = 0; k < 2; ++k) CHECK(by_value[k] == doctest::Approx(by_place[k]).epsilon(1e-9));
  CHECK(by_value[0] != by_value[1]);
}

TEST_CASE("a row that the rules refuse is a failed sample, told of by file and line") {
  const Work work;
  const study::Study study = work.study(header + "# a comment\n6,70,0.1\n3,5000,0.9\n", natural);
  study.run({0, 2}, work.folder / study::file_name_of({}), 1);
  const study::Summary summary =
      study::summarise(study, std::get<std::vector<study::Output>>(study::outputs_of(study)),
                       work.folder / study::file_name_of({}));
  CHECK(summary.failed == 1);
  REQUIRE(summary.first_failures.size() == 1);
  CHECK(summary.first_failures[0].first == 1);
  const std::string& why = summary.first_failures[0].second;
  CHECK(why.starts_with((work.folder / "points.csv").string() + ", line 4: "));
  CHECK(why.find("/crew/0/mass_kg: found 5000") != std::string::npos);
  CHECK(summary.spreads.empty());  // nobody said that the points are a sample of what may happen
}

TEST_CASE("another file of points is another study") {
  const Work work;
  const auto kind = [&](const std::string& rows) { return work.study(header + rows).kind(); };
  CHECK(kind("0.5,0.25,0.1\n") == kind("0.5,0.25,0.1\n"));
  CHECK(kind("0.5,0.25,0.1\n") != kind("0.5,0.25,0.2\n"));
}

TEST_CASE("what is refused, by line") {
  const Work work;
  using Lines = std::vector<std::string>;
  CHECK(work.errors(header + "0.5,0.5,0.5\n0.5,1.5,0.5\n0.5,x,0.5\n0.5,0.5\n") ==
        Lines{"line 3: found 1.5 for /crew/0/mass_kg; allowed 0 to 1, its place in the distribution"});
  CHECK(work.errors(header + "0.5,x,0.5\n") ==
        Lines{"line 2: found \"x\" for /crew/0/mass_kg; allowed a number"});
  CHECK(work.errors(header + "0.5,1e999,0.5\n", natural) ==
        Lines{"line 2: found \"1e999\" for /crew/0/mass_kg; allowed a number"});
  CHECK(work.errors(header + "0.5,0.5\n") ==
        Lines{"line 2: found 2 fields; allowed 3, as in the line of names"});
  CHECK(work.errors(header + "\"0.5,0.5,0.5\n") == Lines{"line 2: a quote is never closed"});
  CHECK(work.errors(header) == Lines{"found no points; allowed 1 or more"});
  CHECK(work.errors("") == Lines{"found no points; allowed 1 or more"});
  const Lines names = work.errors("/crew/0/mas_kg,/raft/kind,/raft/kind\n0.5,0.5,0.5\n");
  REQUIRE(names.size() == 4);
  CHECK(names[0].starts_with("line 1: found the column \"/crew/0/mas_kg\"; allowed what varies"));
  CHECK(names[0].find("did you mean \"/crew/0/mass_kg\"?") != std::string::npos);
  CHECK(names[1] == "line 1: found the column \"/raft/kind\" twice; allowed once");
  CHECK(names[2] == "line 1: the column \"/crew/0/mass_kg\" is missing; every input that varies needs one");
  CHECK(names[3] ==
        "line 1: the column \"/weather/air_temperature_degC\" is missing; every input that varies needs one");
}

TEST_CASE("what a design of points may state") {
  const Work work;
  const auto first = [&](const std::string& design) {
    const auto made = work.with_design(design);
    REQUIRE(std::holds_alternative<Diagnostics>(made));
    const scenario::Diagnostic& each = std::get<Diagnostics>(made).front();
    return each.pointer + ": " + each.message;
  };
  CHECK(first(R"({"kind": "points"})") == "/design/points: missing; required with kind points");
  CHECK(first(R"({"kind": "points", "points": "points.csv", "samples": 3})") ==
        "/design/samples: found a value; not allowed with kind points");
  CHECK(first(R"({"kind": "random", "samples": 3, "scale": "unit"})") ==
        "/design/scale: found a value; not allowed with kind random");
  CHECK(first(R"({"kind": "points", "points": "none.csv"})") ==
        ": found no such file; allowed a CSV file of points");
}
