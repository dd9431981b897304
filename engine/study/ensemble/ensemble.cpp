#include "bide/study/ensemble/ensemble.hpp"

#include <algorithm>
#include <chrono>
#include <optional>
#include <stdexcept>
#include <thread>
#include <vector>

#include "bide/study/ensemble/parallel.hpp"

namespace bide::study {

namespace {

using Block = std::vector<std::size_t>;  // places in the window

// Samples that march in lock step, a block at a time, in the order of the first of each structure.
std::vector<Block> blocks_of(const std::vector<std::optional<Sample>>& samples) {
  std::vector<Block> groups;
  for (std::size_t i = 0; i < samples.size(); ++i) {
    if (!samples[i]) continue;
    const auto found = std::find_if(groups.begin(), groups.end(), [&](const Block& group) {
      return samples[group.front()]->compiled.structure == samples[i]->compiled.structure;
    });
    if (found == groups.end())
      groups.push_back({i});
    else
      found->push_back(i);
  }
  std::vector<Block> blocks;
  for (const Block& group : groups)
    for (std::size_t i = 0; i < group.size(); i += block_width)
      blocks.emplace_back(
          group.begin() + static_cast<std::ptrdiff_t>(i),
          group.begin() + static_cast<std::ptrdiff_t>(std::min(i + block_width, group.size())));
  return blocks;
}

class SampleWindow {
 public:
  SampleWindow(std::uint64_t begin, std::size_t count) : begin_(begin), samples_(count), results_(count) {}

  void make(const MakeSample& make, int threads) {
    in_parallel(samples_.size(), threads, [&](std::size_t i) {
      auto made = make(begin_ + i);
      if (auto* sample = std::get_if<Sample>(&made))
        samples_[i] = std::move(*sample);
      else
        results_[i].failure = std::get<NotMade>(made).reason;
    });
  }

  void run(const EnsembleOptions& options) {
    const std::vector<Block> blocks = blocks_of(samples_);
    const std::thread::id asked_by = std::this_thread::get_id();
    in_parallel(blocks.size(), options.threads, [&](std::size_t b) {
      const Block& block = blocks[b];
      std::array<const Sample*, block_width> lanes;
      for (std::size_t l = 0; l < lanes.size(); ++l)
        lanes[l] = &*samples_[block[std::min(l, block.size() - 1)]];
      auto out = run_block(lanes, {options.to_the_end, nullptr, options.near_margin});
      for (std::size_t l = 0; l < block.size(); ++l) results_[block[l]] = std::move(out[l]);
      if (options.look && std::this_thread::get_id() == asked_by) options.look();
    });
  }

  void hand_on(const Sink& sink, Progress& progress) {
    for (std::size_t i = 0; i < results_.size(); ++i) {
      results_[i].index = begin_ + i;
      progress.failed += results_[i].failure.empty() ? 0 : 1;
      ++progress.done;
      sink(results_[i]);
    }
  }

 private:
  std::uint64_t begin_;
  std::vector<std::optional<Sample>> samples_;
  std::vector<SampleResult> results_;
};

}  // namespace

Progress run_ensemble(SampleRange range, const MakeSample& make, const Sink& sink,
                      const EnsembleOptions& options) {
  if (options.window == 0) throw std::invalid_argument("run_ensemble: a window holds at least one sample");
  if (range.end < range.begin) throw std::invalid_argument("run_ensemble: a range ends before it begins");
  const auto start = std::chrono::steady_clock::now();
  Progress progress;
  progress.total = range.end - range.begin;
  for (std::uint64_t at = range.begin; at < range.end; at += options.window) {
    const auto count = static_cast<std::size_t>(std::min<std::uint64_t>(options.window, range.end - at));
    SampleWindow window(at, count);
    window.make(make, options.threads);
    window.run(options);
    window.hand_on(sink, progress);
    const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - start;
    progress.per_s = static_cast<double>(progress.done) / std::max(taken.count(), 1e-9);
    progress.left_s = static_cast<double>(progress.total - progress.done) / progress.per_s;
    if (options.progress) options.progress(progress);
  }
  return progress;
}

}  // namespace bide::study
