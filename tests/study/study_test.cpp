// Studies from their file to their records: designs, shards, being taken up again, and what is refused.

#include <doctest/doctest.h>
#include <fmt/core.h>
#include <unistd.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <set>

#include "bide/study/questions/study.hpp"
#include "bide/study/questions/summary.hpp"
#include "bide/study/records/sample_bytes.hpp"
#include "bide/study/statistics/proportion.hpp"

using namespace bide;
namespace fs = std::filesystem;
using scenario::Diagnostics;

namespace {

// A folder of its own with the smallest scenario in it.
struct Work {
  fs::path folder;
  explicit Work(const std::string& name)
      : folder(fs::temp_directory_path() / fmt::format("bide_study_test_{}_{}", name, ::getpid())) {
    fs::remove_all(folder);
    fs::create_directories(folder);
    fs::copy(fs::path(BIDE_SOURCE_DIR) / "tests/scenario/minimal.json", folder / "minimal.json");
  }
  ~Work() { fs::remove_all(folder); }
  Work(const Work&) = delete;
  Work& operator=(const Work&) = delete;

  fs::path write(const std::string& design, const std::string& rest = "") const {
    std::ofstream(folder / "t.json")
        << R"({"format": "bide study 1", "scenario": "minimal.json", "uncertain": {"inputs": {
          "/weather/air_temperature_degC": {"kind": "uniform", "low": 0, "high": 12},
          "/weather/wind_speed_m_s": {"kind": "uniform", "low": 1, "high": 15},
          "/raft/kind": {"kind": "discrete", "values": ["offshore_4", "offshore_6", "offshore_8"]}}},
          "design": )"
        << design << rest << "}";
    return folder / "t.json";
  }
  std::variant<study::Study, Diagnostics> make(const std::string& design,
                                               const std::string& rest = "") const {
    auto valid = scenario::validate_study(write(design, rest));
    if (const auto* wrong = std::get_if<Diagnostics>(&valid)) return *wrong;
    return study::Study::make(std::get<scenario::ValidStudy>(std::move(valid)));
  }
  study::Study study(const std::string& design) const { return std::get<study::Study>(make(design)); }
  std::string first_error(const std::string& design, const std::string& rest = "") const {
    const auto made = make(design, rest);
    REQUIRE(std::holds_alternative<Diagnostics>(made));
    const auto& first = std::get<Diagnostics>(made).front();
    return first.pointer + ": " + first.message;
  }
};

std::string bytes_of(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

bool contains(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("sizes of designs") {
  const Work work("sizes");
  const auto size = [&](const std::string& design) { return work.study(design).plan().size(); };
  CHECK(size(R"({"kind": "random", "samples": 7})") == 7);
  CHECK(size(R"({"kind": "latin_hypercube", "samples": 7})") == 7);
  CHECK(size(R"({"kind": "sobol", "samples": 8})") == 8);
  CHECK(size(R"({"kind": "saltelli", "samples": 8})") == 8 * (3 + 2));
  CHECK(size(R"({"kind": "morris", "samples": 8})") == 8 * (3 + 1));
  // Three kinds of raft, and five values of each of the two others.
  CHECK(size(R"({"kind": "grid", "levels": 5})") == 3 * 5 * 5);
  CHECK(size(R"({"kind": "grid"})") == 3 * 4 * 4);  // four levels, as the schema says
  CHECK(size(R"({"kind": "saltelli", "samples": 8,
    "groups": [{"name": "weather", "inputs": ["/weather/air_temperature_degC", "/weather/wind_speed_m_s"]}]})") ==
        8 * (2 + 2));
}

TEST_CASE("a grid holds every combination once") {
  const Work work("grid");
  const study::Study study = work.study(R"({"kind": "grid", "levels": 2})");
  std::set<std::string> rafts;
  std::set<std::vector<double>> points;
  for (std::uint64_t k = 0; k < study.plan().size(); ++k) {
    points.insert(study.plan().point(k));
    rafts.insert(study::input_value(study, study.draw(k), 2).words);
  }
  CHECK(points.size() == 12);
  CHECK(rafts == std::set<std::string>{"offshore_4", "offshore_6", "offshore_8"});
  // Two levels of a uniform input lie at the middles of its halves: 3 and 9 of 0 to 12.
  CHECK(*study::input_value(study, study.draw(0), 0).number == doctest::Approx(3));
  CHECK(*study::input_value(study, study.draw(11), 0).number == doctest::Approx(9));
}

TEST_CASE("one design is one study, however much of it is stated") {
  const Work work("stated");
  const auto kind = [&](const std::string& design, const std::string& rest = "") {
    return std::get<study::Study>(work.make(design, rest)).kind();
  };
  const std::string grid = R"({"kind": "grid")", morris = R"({"kind": "morris", "samples": 3)";
  CHECK(kind(grid + "}") == kind(grid + R"(, "levels": 4, "seed": 1})"));
  CHECK(kind(grid + "}") != kind(grid + R"(, "levels": 6})"));
  CHECK(kind(morris + "}") == kind(morris + R"(, "levels": 4})"));
  CHECK(kind(morris + "}") != kind(morris + R"(, "levels": 6})"));
  // A quarter of the way to a limit is near it, as the schema says, and 0 is only what somebody states.
  CHECK(kind(grid + "}") == kind(grid + "}", R"(, "near_margin": 0.25)"));
  CHECK(kind(grid + "}") != kind(grid + "}", R"(, "near_margin": 0)"));
  const std::string drawn = R"({"kind": "random", "samples": 3})";
  CHECK(kind(drawn) == kind(drawn, R"(, "name": "unnamed study", "setting": "not stated")"));
}

TEST_CASE("a Latin hypercube has one sample in each slice of each input") {
  const Work work("lhs");
  const study::Study study = work.study(R"({"kind": "latin_hypercube", "samples": 10})");
  for (std::size_t j = 0; j < 3; ++j) {
    std::set<int> slices;
    for (std::uint64_t k = 0; k < 10; ++k) slices.insert(static_cast<int>(10 * study.plan().point(k)[j]));
    CHECK(slices.size() == 10);
  }
}

TEST_CASE("Saltelli's rows take a group's columns from the second set") {
  const Work work("saltelli");
  const study::Study study = work.study(R"({"kind": "saltelli", "samples": 4,
    "groups": [{"name": "weather", "inputs": ["/weather/air_temperature_degC", "/weather/wind_speed_m_s"]}]})");
  CHECK(study.plan().group_names() == std::vector<std::string>{"weather", "/raft/kind"});
  for (std::uint64_t base = 0; base < 4; ++base) {
    const auto a = study.plan().point(4 * base), b = study.plan().point(4 * base + 1),
               weather = study.plan().point(4 * base + 2), raft = study.plan().point(4 * base + 3);
    CHECK(weather == std::vector<double>{b[0], b[1], a[2]});
    CHECK(raft == std::vector<double>{a[0], a[1], b[2]});
    CHECK(a[0] != b[0]);
  }
}

TEST_CASE("another seed gives another design, the same one the same") {
  const Work work("seed");
  for (const std::string kind : {"random", "latin_hypercube", "sobol", "saltelli", "morris"}) {
    CAPTURE(kind);
    const auto point = [&](int seed) {
      return work.study(R"({"kind": ")" + kind + R"(", "samples": 16, "seed": )" + std::to_string(seed) + "}")
          .plan()
          .point(5);
    };
    CHECK(point(1) == point(1));
    CHECK(point(1) != point(2));
  }
}

TEST_CASE("more samples keep those there are, where the design allows it") {
  const Work work("more");
  for (const std::string kind : {"random", "sobol", "saltelli", "morris"}) {
    CAPTURE(kind);
    const auto of = [&](const char* samples) {
      return work.study(R"({"kind": ")" + kind + R"(", "samples": )" + samples + "}");
    };
    const study::Study few = of("4"), many = of("8");
    CHECK(few.kind() == many.kind());
    for (std::uint64_t k = 0; k < few.plan().size(); ++k) CHECK(few.plan().point(k) == many.plan().point(k));
  }
  CHECK_FALSE(work.study(R"({"kind": "latin_hypercube", "samples": 4})").kind() ==
              work.study(R"({"kind": "latin_hypercube", "samples": 8})").kind());
}

TEST_CASE("shards are all samples, each once") {
  for (const std::uint64_t samples : {0, 1, 5, 64, 101})
    for (const std::uint64_t of : {1, 2, 4, 7}) {
      std::uint64_t next = 0;
      for (std::uint64_t i = 1; i <= of; ++i) {
        const study::SampleRange range = study::range_of({i, of}, samples);
        CHECK(range.begin == next);
        CHECK(range.end - range.begin <= samples / of + 1);
        next = range.end;
      }
      CHECK(next == samples);
    }
}

TEST_CASE(
    "records are the same bytes by threads, by shards, and taken up again; what is asked changes nothing") {
  const Work work("bytes");
  const study::Study study = work.study(R"({"kind": "random", "samples": 150})");
  const fs::path one = work.folder / "one", two = work.folder / "two", again = work.folder / "again",
                 merged = work.folder / "merged";
  study.run({0, 150}, one, 1);
  study.run({0, 150}, two, 2);
  CHECK(bytes_of(one) == bytes_of(two));
  std::vector<fs::path> parts;
  for (std::uint64_t i = 1; i <= 4; ++i) {
    parts.push_back(work.folder / study::file_name_of({i, 4}));
    study.run(study::range_of({i, 4}, 150), parts.back(), 2);
  }
  study::merge_records(parts, merged, [](const study::Record&) {});
  CHECK(bytes_of(one) == bytes_of(merged));
  fs::copy(one, again);
  fs::resize_file(again, fs::file_size(one) * 2 / 3);
  const study::Progress rest = study.run({0, 150}, again, 2);
  CHECK(rest.done > 0);
  CHECK(rest.done < 150);
  CHECK(bytes_of(one) == bytes_of(again));

  std::uint64_t next = 0;
  study.read(one, [&](const study::SampleResult& result) {
    CHECK(result.index == next++);
    CHECK(result.failure.empty());
    CHECK(result.horizon_s == 24 * 3600);
  });
  CHECK(next == 150);
  fs::remove(parts[2]);
  study.run({75, 100}, parts[2], 1);
  CHECK_THROWS_AS(study.run({70, 100}, parts[2], 1), study::RecordFileError);
  CHECK_THROWS_AS(study.read(parts[2], [](const study::SampleResult&) {}), study::RecordFileError);
  const study::Study other = work.study(R"({"kind": "random", "samples": 150, "seed": 2})");
  CHECK_THROWS_AS(other.run({0, 150}, one, 1), study::RecordFileError);
}

TEST_CASE("a result comes back from its bytes as it was, also one beyond the horizon and one that failed") {
  study::SampleResult result;
  result.index = 12;
  result.persons.resize(2);
  result.persons[0].able_until_s = 1234.5, result.persons[0].able_cause = system::Limit::able_core_low;
  result.persons[1].cold_feet_h = 7, result.persons[1].next_cause = system::Limit::lethal_osmolality;
  result.water_left_L = 0.25;
  result.mean_inside_degC = 11.5, result.near_s[2] = 600;
  result.persons[1].balance[3] = -17;
  std::vector<std::byte> bytes(study::sample_bytes(2));
  study::write_sample(result, bytes);
  const study::SampleResult back = study::read_sample(12, 2, bytes);
  for (const auto& output : study::outputs(2)) {
    CAPTURE(output.name);
    const double before = output.of(result), after = output.of(back);
    CHECK((before == after || (std::isnan(before) && std::isnan(after))));
  }
  CHECK(std::isinf(back.persons[1].able_until_s));
  CHECK(back.mean_inside_degC == 11.5);
  CHECK(back.near_s[2] == 600);
  CHECK(back.persons[1].balance[3] == -17);
  CHECK(back.persons[0].able_cause == system::Limit::able_core_low);
  CHECK(back.persons[1].next_cause == system::Limit::lethal_osmolality);

  study::SampleResult failed;
  failed.failure = "/crew/0/mass_kg: found 500; allowed a number from 8 to 250 kg";
  study::write_sample(failed, bytes);
  CHECK(study::read_sample(3, 2, bytes).failure == failed.failure);
  failed.failure = std::string(10'000, 'x');
  study::write_sample(failed, bytes);
  CHECK(study::read_sample(3, 2, bytes).failure == std::string(bytes.size() - 1, 'x'));
  bytes[0] = std::byte{9};
  CHECK_THROWS_AS(study::read_sample(3, 2, bytes), std::invalid_argument);
}

TEST_CASE("what a summary says of a study by hand") {
  const Work work("summary");
  const study::Study study = work.study(R"({"kind": "grid", "levels": 2})");
  const auto outputs = std::get<std::vector<study::Output>>(study::outputs_of(study));
  // Made up: able until 10 h in the raft for four, 20 h in that for six, beyond the 24 h in that for eight;
  // the last sample failed.
  study::RecordWriter writer(work.folder / "made", study.kind());
  std::vector<std::byte> bytes(study::sample_bytes(1));
  for (std::uint64_t k = 0; k < 12; ++k) {
    study::SampleResult result;
    result.persons.resize(1);
    const std::string raft = study::input_value(study, study.draw(k), 2).words;
    if (raft == "offshore_4") result.persons[0].able_until_s = 10 * 3600;
    if (raft == "offshore_6") result.persons[0].able_until_s = 20 * 3600;
    if (k == 11) result.failure = "made to fail";
    study::write_sample(result, bytes);
    writer.add(k, bytes);
  }
  writer.flush();
  const study::Summary summary = study::summarise(study, outputs, work.folder / "made");
  CHECK(summary.failed == 1);
  CHECK(summary.first_failures.front() == std::pair<std::uint64_t, std::string>(11, "made to fail"));
  CHECK(summary.spreads.empty());  // a grid is no sample of what may happen
  const study::Dependence& within = summary.dependences[0];
  CHECK(within.name == "first able until, within 24 h");
  CHECK(within.cases == 11);
  // (4 * 10 + 4 * 20 + 3 * 24) / 11
  CHECK(within.mean == doctest::Approx(192.0 / 11));
  const auto& rafts = within.level_means[2];
  CHECK(rafts[0] == std::pair<std::string, double>("offshore_4", 10));
  CHECK(rafts[1] == std::pair<std::string, double>("offshore_6", 20));
  CHECK(rafts[2] == std::pair<std::string, double>("offshore_8", 24));
  // Later than the end of the 24 h simulated: those for eight alone.
  CHECK(summary.dependences[1].name == "first able until later than 24 h");
  CHECK(summary.dependences[1].mean == doctest::Approx(3.0 / 11));
}

TEST_CASE("a figure that is the same in all but a few runs has no correlations") {
  for (const std::uint64_t differing : {1, 2}) {
    const Work work("few_" + std::to_string(differing));
    const study::Study study = work.study(R"({"kind": "random", "samples": 100})");
    const auto outputs = std::get<std::vector<study::Output>>(study::outputs_of(study));
    study::RecordWriter writer(work.folder / "made", study.kind());
    std::vector<std::byte> bytes(study::sample_bytes(1));
    for (std::uint64_t k = 0; k < 100; ++k) {
      study::SampleResult result;
      result.persons.resize(1);
      if (k < differing) result.persons[0].able_until_s = 10 * 3600;
      study::write_sample(result, bytes);
      writer.add(k, bytes);
    }
    writer.flush();
    const study::Summary summary = study::summarise(study, outputs, work.folder / "made");
    const study::Dependence& within = summary.dependences[0];
    CHECK(within.differing == differing);
    CHECK(within.correlations.empty() == (differing < 2));
  }
}

TEST_CASE("a summary of figures kept in files says what sorting them in memory says") {
  const Work work("in_memory");
  const auto made = work.make(R"({"kind": "random", "samples": 1200})",
                              R"(, "outputs": ["first able until", "coldest inside"], "at_h": [5, 24])");
  const study::Study& study = std::get<study::Study>(made);
  const auto outputs = std::get<std::vector<study::Output>>(study::outputs_of(study));
  study::RecordWriter writer(work.folder / "made", study.kind());
  std::vector<std::byte> bytes(study::sample_bytes(1));
  std::vector<double> coldest, wind, able_h;  // 24 h: not within the time simulated
  for (std::uint64_t k = 0; k < 1200; ++k) {
    study::SampleResult result;
    result.persons.resize(1);
    // Ties, times beyond the 24 h, temperatures below zero, figures that are not there, samples that failed.
    const double h = std::floor(study.plan().point(k)[0] * 60) / 2;
    if (h < 24) result.persons[0].able_until_s = h * 3600;
    if (k % 7 != 0) result.coldest_inside_degC = 20 * study.plan().point(k)[1] - 10;
    if (k % 50 == 0) result.failure = "made to fail";
    study::write_sample(result, bytes);
    writer.add(k, bytes);
    if (k % 50 == 0) continue;
    able_h.push_back(std::min(h, 24.0));
    wind.push_back(*study::input_value(study, study.draw(k), 1).number);
    if (k % 7 != 0) coldest.push_back(result.coldest_inside_degC);
  }
  writer.flush();
  const study::Summary summary = study::summarise(study, outputs, work.folder / "made");
  std::sort(coldest.begin(), coldest.end());
  const study::Spread &time = summary.spreads[0], &number = summary.spreads[1];
  CHECK(time.cases == able_h.size());
  CHECK(number.cases == coldest.size());
  CHECK(number.not_there == 1200 - coldest.size());
  std::vector<double> sorted_h = able_h;
  std::sort(sorted_h.begin(), sorted_h.end());
  const auto at_rank = [&](std::size_t rank) {
    const double h = sorted_h[rank - 1];
    return h < 24 ? std::optional(h) : std::nullopt;
  };
  for (const auto& q : time.quantiles) {
    const auto ranks = study::quantile_ranks(sorted_h.size(), q.share, study::interval_confidence);
    CHECK(q.value == at_rank(study::rank_of(q.share, sorted_h.size())));
    CHECK(q.low == at_rank(*ranks.low));
    CHECK(q.high == at_rank(*ranks.high));
  }
  for (const auto& q : number.quantiles) {
    const auto ranks = study::quantile_ranks(coldest.size(), q.share, study::interval_confidence);
    CHECK(*q.value == study::quantile_of_sorted(coldest, q.share));
    CHECK(*q.low == coldest[*ranks.low - 1]);
    CHECK(*q.high == coldest[*ranks.high - 1]);
  }
  CHECK(time.later[0].cases == static_cast<std::size_t>(std::count_if(able_h.begin(), able_h.end(),
                                                                      [](double h) { return h > 5; })));
  CHECK(summary.dependences[0].correlations[1]->value ==
        study::rank_correlation(wind, able_h, study::interval_confidence)->value);
}

TEST_CASE("what is refused, where, and what was meant") {
  const Work work("refused");
  const auto error = [&](const char* design, const char* rest = "") {
    return work.first_error(design, rest);
  };
  CHECK(contains(error(R"({"kind": "sobl", "samples": 8})"), "/design/kind: found \"sobl\"; allowed grid"));
  CHECK(contains(error(R"({"kind": "sobl", "samples": 8})"), "did you mean \"sobol\"?"));
  CHECK(error(R"({"kind": "random"})") == "/design/samples: missing; required with kind random");
  CHECK(error(R"({"kind": "grid", "samples": 3})") ==
        "/design/samples: found a value; not allowed with kind grid");
  CHECK(error(R"({"kind": "morris", "samples": 3, "levels": 3})") ==
        "/design/levels: found 3; allowed an even number");
  CHECK(error(R"({"kind": "saltelli", "samples": 4, "groups": [{"name": "g", "inputs": ["/raft/kid"]}]})") ==
        "/design/groups/0/inputs/0: found \"/raft/kid\"; allowed what varies in the scenario; did you mean "
        "\"/raft/kind\"?");
  CHECK(contains(error(R"({"kind": "random", "samples": 4, "sed": 3})"), "did you mean \"seed\"?"));
  CHECK(contains(error(R"({"kind": "random", "samples": 4})", R"(, "at_h": [25])"),
                 "/at_h/0: found 25; allowed above"));
  // Faults of "uncertain" are told of the study's file, where they are.
  std::ofstream(work.folder / "t.json") << R"({"format": "bide study 1", "scenario": "minimal.json",
    "uncertain": {"inputs": {"/raft/knd": {"kind": "uniform", "low": 0, "high": 1}}},
    "design": {"kind": "random", "samples": 4}})";
  const auto valid = scenario::validate_study(work.folder / "t.json");
  REQUIRE(std::holds_alternative<Diagnostics>(valid));
  CHECK(std::get<Diagnostics>(valid).front().file == (work.folder / "t.json").string());
  CHECK(contains(std::get<Diagnostics>(valid).front().message, "/raft/kind"));
  std::ofstream(work.folder / "t.json") << R"({"format": "bide study 1", "scenario": "minimal.json",
    "design": {"kind": "random", "samples": 4}})";
  auto idle = scenario::validate_study(work.folder / "t.json");
  const auto made = study::Study::make(std::get<scenario::ValidStudy>(std::move(idle)));
  REQUIRE(std::holds_alternative<Diagnostics>(made));
  CHECK(contains(std::get<Diagnostics>(made).front().message, "found nothing that varies"));
}

TEST_CASE("a name of a figure that does not exist is refused with the nearest") {
  const Work work("outputs");
  const auto made = work.make(R"({"kind": "random", "samples": 4})", R"(, "outputs": ["first able untill"])");
  const auto outputs = study::outputs_of(std::get<study::Study>(made));
  REQUIRE(std::holds_alternative<Diagnostics>(outputs));
  CHECK(std::get<Diagnostics>(outputs).front().pointer == "/outputs/0");
  CHECK(contains(std::get<Diagnostics>(outputs).front().message, "did you mean \"first able until\"?"));
}
