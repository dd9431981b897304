#include "bide/core/file.hpp"

#include <doctest/doctest.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <sstream>

namespace fs = std::filesystem;
using namespace bide;

namespace {

// A folder of its own, removed at the end.
struct Folder {
  fs::path path;
  Folder() {
    std::string name = (fs::temp_directory_path() / "bide_file_test.XXXXXX").string();
    REQUIRE(::mkdtemp(name.data()) != nullptr);
    path = name;
  }
  ~Folder() { fs::remove_all(path); }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
};

std::string text_of(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

// Writes 100,000 letters over `path` in a process that may write 1,000 to a file: the system ends it half
// way, or tells it, as on a full disk.
// @return how the process ended, as waitpid() says
int cut_off_while_writing(const fs::path& path, bool told) {
  const pid_t child = ::fork();
  if (child == 0) {
    const rlimit least{1000, 1000}, none{0, 0};
    ::setrlimit(RLIMIT_FSIZE, &least);
    ::setrlimit(RLIMIT_CORE, &none);
    ::signal(SIGXFSZ, told ? SIG_IGN : SIG_DFL);
    ::_exit(write_whole(path, std::string(100000, 'x')) ? 1 : 0);
  }
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  return status;
}

}  // namespace

TEST_CASE("a write that is cut off half way leaves the old file") {
  const Folder folder;
  const fs::path path = folder.path / "out.csv";
  CHECK_FALSE(write_whole(path, "old"));
  const int told = cut_off_while_writing(path, true);
  CHECK(WIFEXITED(told));
  CHECK(WEXITSTATUS(told) == 1);  // the reason is given
  CHECK(text_of(path) == "old");
  CHECK(std::distance(fs::directory_iterator(folder.path), fs::directory_iterator()) == 1);
  const int ended = cut_off_while_writing(path, false);
  CHECK(WIFSIGNALED(ended));
  CHECK(WTERMSIG(ended) == SIGXFSZ);
  CHECK(text_of(path) == "old");
}

TEST_CASE("a file is written whole, over an old one, and nothing else is left") {
  const Folder folder;
  const fs::path path = folder.path / "out.csv";
  CHECK_FALSE(why_not_writable(path));
  CHECK_FALSE(write_whole(path, "first"));
  CHECK_FALSE(write_whole(path, std::string(100000, 'x')));
  CHECK(text_of(path) == std::string(100000, 'x'));
  CHECK(std::distance(fs::directory_iterator(folder.path), fs::directory_iterator()) == 1);
}

TEST_CASE("what cannot be written says why") {
  const Folder folder;
  CHECK(why_not_writable(folder.path / "missing" / "out.csv")->find("does not exist") != std::string::npos);
  CHECK(*why_not_writable(folder.path) == "it is a folder");
  CHECK_FALSE(write_whole(folder.path / "plain", "text"));
  CHECK(why_not_writable(folder.path / "plain" / "out.csv"));
  CHECK(write_whole(folder.path / "missing" / "out.csv", "text"));
}

TEST_CASE("a full device is reported") {
  if (!fs::exists("/dev/full")) return;
  CHECK_FALSE(why_not_writable("/dev/full"));
  CHECK(write_whole("/dev/full", "text"));
  CHECK_FALSE(write_whole("/dev/null", "text"));
}
