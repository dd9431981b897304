// Work on many things over all processors; one after another in a browser, whose WebAssembly has no threads
// here.
#pragma once

#include <algorithm>
#include <cstddef>

#ifndef __EMSCRIPTEN__
#include <tbb/global_control.h>
#include <tbb/info.h>
#include <tbb/parallel_for.h>
#include <tbb/task_arena.h>
#endif

namespace bide::study {

// Does work(i) once for each i from 0 to count - 1, in any order and several at once.
// @param threads how many at once, be there as many cores or not; 0 or less: one per core
template <class Work>
void in_parallel(std::size_t count, [[maybe_unused]] int threads, Work&& work) {
#ifdef __EMSCRIPTEN__
  for (std::size_t i = 0; i < count; ++i) work(i);
#else
  // Without it oneTBB starts no more than one per core, and says so on the error stream.
  const tbb::global_control allowed(
      tbb::global_control::max_allowed_parallelism,
      static_cast<std::size_t>(std::max(threads, tbb::info::default_concurrency())));
  tbb::task_arena arena(threads > 0 ? threads : tbb::task_arena::automatic);
  arena.execute([&] { tbb::parallel_for(std::size_t{0}, count, work, tbb::simple_partitioner()); });
#endif
}

}  // namespace bide::study
