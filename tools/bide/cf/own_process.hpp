// Work that a library may not survive, in a process of its own.
#pragma once

#include <functional>
#include <string>
#include <variant>

namespace bide::tool {

// What the work tells whoever waits for it.
class Watched {
 public:
  virtual ~Watched() = default;
  // Says which of several things is at work; it must come again within 15 s of processor time.
  virtual void at(std::size_t thing) = 0;
};

// The work died or hung.
struct Died {
  std::size_t thing;  // at work then
  std::string how;
};

// Runs work in a child process. What it prints is printed; what it changes in memory is lost.
// @return the work's own code, or how it died. Throws std::system_error when no process can be made.
std::variant<int, Died> in_own_process(const std::function<int(Watched&)>& work);

}  // namespace bide::tool
