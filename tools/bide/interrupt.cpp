#include "interrupt.hpp"

#include <unistd.h>

#include <algorithm>
#include <array>
#include <csignal>
#include <cstddef>

#include "bide/report/words/text.hpp"

namespace bide::tool {
namespace {

// A signal handler may touch nothing that allocates.
std::array<char, 2048> last_words;
std::size_t last_words_length = 0;

extern "C" void end(int) {
  if (::write(STDERR_FILENO, last_words.data(), last_words_length) < 0) _exit(exit_interrupted);
  _exit(exit_interrupted);
}

}  // namespace

void when_interrupted(const std::string& words) {
  const std::string shown =
      "\nbide: interrupted. " + report::plain(words, report::Letters::ascii, last_words.size() / 2) + "\n";
  last_words_length = std::min(shown.size(), last_words.size());
  std::copy_n(shown.begin(), last_words_length, last_words.begin());
  struct sigaction action {};
  action.sa_handler = end;
  sigemptyset(&action.sa_mask);
  for (const int signal : {SIGINT, SIGTERM, SIGHUP}) sigaction(signal, &action, nullptr);
}

}  // namespace bide::tool
