#include "own_process.hpp"

#include <sys/mman.h>
#include <sys/resource.h>
#include <sys/time.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cerrno>
#include <csignal>
#include <cstdio>
#include <system_error>

namespace bide::tool {
namespace {

constexpr int longest_silence_s = 15;
constexpr rlim_t most_bytes = rlim_t{4} << 30U;  // lengths in a damaged file asked the library for 13 GB
#ifdef __SANITIZE_ADDRESS__
constexpr bool limits_memory = false;  // the sanitizer reserves far more
#else
constexpr bool limits_memory = true;
#endif

// Shared by both processes.
struct Board {
  std::size_t thing;
  int code;
  bool done;
};

[[noreturn]] void fail() {
  throw std::system_error(errno, std::generic_category());
}

class Child final : public Watched {
 public:
  explicit Child(Board& board) : board_(board) {}
  void at(std::size_t thing) override {
    board_.thing = thing;
    const itimerval limit{{0, 0}, {longest_silence_s, 0}};
    ::setitimer(ITIMER_PROF, &limit, nullptr);
  }

 private:
  Board& board_;
};

// What the work throws must not reach those who called for it: they go on in the other process.
[[noreturn]] void run_child(Board& board, const std::function<int(Watched&)>& work) noexcept {
  const rlimit no_core{0, 0};
  ::setrlimit(RLIMIT_CORE, &no_core);
  const rlimit memory{most_bytes, most_bytes};
  if (limits_memory) ::setrlimit(RLIMIT_DATA, &memory);
  for (const int signal : {SIGSEGV, SIGBUS, SIGFPE, SIGABRT, SIGPROF}) std::signal(signal, SIG_DFL);
  Child child(board);
  child.at(0);
  board.code = work(child);
  std::fflush(nullptr);
  board.done = true;
  ::_exit(0);
}

}  // namespace

std::variant<int, Died> in_own_process(const std::function<int(Watched&)>& work) {
  void* memory = ::mmap(nullptr, sizeof(Board), PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
  if (memory == MAP_FAILED) fail();
  Board& board = *new (memory) Board{};
  std::fflush(nullptr);
  const pid_t child = ::fork();
  if (child < 0) fail();
  if (child == 0) run_child(board, work);
  int status = 0;
  while (::waitpid(child, &status, 0) < 0)
    if (errno != EINTR) fail();
  const Board end = board;
  ::munmap(memory, sizeof(Board));
  if (end.done) return end.code;
  if (WIFSIGNALED(status) && WTERMSIG(status) == SIGPROF) return Died{end.thing, "it came to no end"};
  return Died{end.thing,
              WIFSIGNALED(status) ? "signal " + std::to_string(WTERMSIG(status)) : "it ended by itself"};
}

}  // namespace bide::tool
