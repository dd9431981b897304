// What a summary takes of memory, of few and of many samples: in processes of their own, since a process
// remembers its greatest need only, and begins with what its parent has not given back.
#include <doctest/doctest.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <string>

#include "bide/study/questions/study.hpp"
#include "bide/study/questions/summary.hpp"
#include "bide/study/records/sample_bytes.hpp"

using namespace bide;
namespace fs = std::filesystem;

namespace {

study::Study study_of(const fs::path& folder, std::uint64_t samples) {
  std::ofstream(folder / "t.json") << R"({"format": "bide study 1", "scenario": "minimal.json",
    "uncertain": {"inputs": {"/weather/wind_speed_m_s": {"kind": "uniform", "low": 1, "high": 15}}},
    "outputs": ["first able until", "coldest core"], "design": {"kind": "random", "samples": )"
                                   << samples << "}}";
  auto valid = scenario::validate_study(folder / "t.json");
  REQUIRE(std::holds_alternative<scenario::ValidStudy>(valid));
  return std::get<study::Study>(study::Study::make(std::get<scenario::ValidStudy>(std::move(valid))));
}

void make_records(const study::Study& study, const fs::path& file) {
  constexpr std::size_t few_writes = 50'000;
  study::RecordWriter writer(file, study.kind(), few_writes);
  std::vector<std::byte> bytes(study::sample_bytes(1));
  study::SampleResult result;
  result.persons.resize(1);
  for (std::uint64_t k = 0; k < study.plan().size(); ++k) {
    result.persons[0].able_until_s = static_cast<double>(k % 50'000);
    result.persons[0].lowest_core_degC = 30 + static_cast<double>(k % 977) / 200;
    study::write_sample(result, bytes);
    writer.add(k, bytes);
  }
  writer.flush();
}

// What `work` gives, done by a process of its own.
template <class Work>
long in_a_child(const Work& work) {
  int ends[2];
  REQUIRE(pipe(ends) == 0);
  const pid_t child = fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    long answer = -1;
    try {
      answer = work();
    } catch (...) {  // the child must not go on with the other tests
    }
    _exit(write(ends[1], &answer, sizeof answer) == sizeof answer ? 0 : 1);
  }
  close(ends[1]);
  long answer = -1;
  CHECK(read(ends[0], &answer, sizeof answer) == sizeof answer);
  close(ends[0]);
  int status = -1;
  waitpid(child, &status, 0);
  CHECK(status == 0);
  return answer;
}

// Peak memory of a process that only summarises, in kB.
long peak_kB(const study::Study& study, const fs::path& file) {
  return in_a_child([&]() -> long {
    const auto outputs = std::get<std::vector<study::Output>>(study::outputs_of(study));
    const study::Summary summary = study::summarise(study, outputs, file);
    rusage used{};
    getrusage(RUSAGE_SELF, &used);
    return summary.samples == study.plan().size() ? used.ru_maxrss : -1;
  });
}

}  // namespace

// A sanitizer keeps what was freed.
#ifdef __SANITIZE_ADDRESS__
constexpr bool freed_is_kept = true;
#else
constexpr bool freed_is_kept = false;
#endif

TEST_CASE("three times the samples take no more memory to summarise" * doctest::skip(freed_is_kept)) {
  const fs::path folder =
      fs::temp_directory_path() / ("bide_summary_memory_test_" + std::to_string(::getpid()));
  fs::remove_all(folder);
  fs::create_directories(folder);
  fs::copy(fs::path(BIDE_SOURCE_DIR) / "tests/scenario/minimal.json", folder / "minimal.json");
  // Beyond the 100,000 that correlations hold.
  std::array<long, 2> peak{};
  for (const std::size_t i : {0, 1}) {
    const study::Study study = study_of(folder, i == 0 ? 110'000 : 330'000);
    REQUIRE(in_a_child([&] { return make_records(study, folder / "made"), 1L; }) == 1);
    peak[i] = peak_kB(study, folder / "made");
    fs::remove(folder / "made");
  }
  fs::remove_all(folder);
  CAPTURE(peak[0]);
  CAPTURE(peak[1]);
  CHECK(peak[0] > 0);
  // One number for each of the samples between would be 1.7 MB.
  CHECK(peak[1] < peak[0] + 400);
}
