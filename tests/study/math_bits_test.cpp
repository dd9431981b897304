// What tells processors apart (math_bits.cpp) asks every function whose bits the C library may choose: each
// that the engine calls on the way to a sample's figures stands there.
#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <string>

namespace fs = std::filesystem;

namespace {

// All of <cmath> but what rounds correctly by IEEE 754 (roots, remainders, rounding to whole numbers).
const std::set<std::string> inexact{"exp",   "exp2",  "expm1", "log",   "log2",   "log10", "log1p",
                                    "pow",   "sin",   "cos",   "tan",   "asin",   "acos",  "atan",
                                    "atan2", "sinh",  "cosh",  "tanh",  "cbrt",   "erf",   "erfc",
                                    "hypot", "asinh", "acosh", "atanh", "tgamma", "lgamma"};

std::string text_of(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

// Those that a text calls as std::name(...).
std::set<std::string> called(const std::string& text) {
  std::set<std::string> out;
  const std::string before = "std::";
  for (std::size_t at = text.find(before); at != std::string::npos; at = text.find(before, at + 1)) {
    const std::size_t begin = at + before.size(), end = text.find('(', begin);
    if (end == std::string::npos) break;
    if (const std::string name = text.substr(begin, end - begin); inexact.count(name)) out.insert(name);
  }
  return out;
}

}  // namespace

TEST_CASE("every function of the C library that a figure rests on is among those asked") {
  const fs::path engine = fs::path(BIDE_SOURCE_DIR) / "engine";
  const std::set<std::string> asked = called(text_of(engine / "study/records/math_bits.cpp"));
  std::size_t calls = 0;
  for (const fs::directory_entry& entry : fs::recursive_directory_iterator(engine)) {
    const fs::path file = fs::relative(entry.path(), engine);
    const std::string folder = file.begin()->string();
    // What is said of samples once they are made stands in no record.
    const bool after = folder == "report" || file.string().rfind("study/statistics/", 0) == 0;
    if (after || (file.extension() != ".hpp" && file.extension() != ".cpp")) continue;
    for (const std::string& name : called(text_of(entry.path()))) {
      ++calls;
      CAPTURE(file.string());
      CAPTURE(name);
      CHECK(asked.count(name) == 1);
    }
  }
  CHECK(calls > 20);
}
