// How far many simulations have come.
#pragma once

#include <cstdint>
#include <functional>

namespace bide::study {

struct Progress {
  std::uint64_t done = 0, total = 0, failed = 0;  // samples
  double per_s = 0, left_s = 0;                   // samples per second; time left at that rate
};

using ToldProgress = std::function<void(const Progress&)>;

// Called now and then on the thread that asked, for whoever may want to end a question early: an exception
// from it ends the question and is passed on. May be empty.
using Look = std::function<void()>;

}  // namespace bide::study
