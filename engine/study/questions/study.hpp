// A study: samples of a scenario by a design, run into a file of records that survives being killed.
//
// States: none after construction. Every sample's result depends on the study and its number alone, so that
// parts (shards) may be run anywhere, at any time, and joined.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <variant>

#include "bide/scenario/study_file.hpp"
#include "bide/study/ensemble/ensemble.hpp"
#include "bide/study/records/record_file.hpp"
#include "bide/study/sampling/plan.hpp"
#include "bide/study/sampling/sampler.hpp"

namespace bide::study {

// One of `of` parts of a study, numbered from 1.
struct Shard {
  std::uint64_t number = 1, of = 1;
};

// Parts of like size that together are all samples.
SampleRange range_of(const Shard& shard, std::uint64_t samples);
std::string file_name_of(const Shard& shard);  // "study.records", "shard-2-of-4.records"

class Study {
 public:
  static std::variant<Study, scenario::Diagnostics> make(scenario::ValidStudy valid);

  const scenario::StudyFile& file() const { return valid_.study; }
  const std::string& file_name() const { return valid_.file; }
  const scenario::ValidScenario& scenario() const { return valid_.scenario; }
  const Sampler& sampler() const { return *sampler_; }
  const Plan& plan() const { return plan_; }
  std::size_t persons() const { return valid_.scenario.scenario.crew.size(); }
  Drawn draw(std::uint64_t k) const { return sampler_->at(plan_.point(k), plan_.scale()); }
  // The user's own file of points, where the design has one.
  std::optional<std::filesystem::path> points_file() const;

  // Stands for all that the records depend on: scenario, weather file, what varies, design and program. How
  // many samples are asked for belongs to it only where sample k depends on it.
  RecordKind kind() const;

  // Runs what the file does not hold yet of the range, and marks it as whole. Throws RecordFileError when the
  // file is another study's or another shard's.
  // @param begun called before anything runs, when the file is this study's and nobody else writes to it
  Progress run(const SampleRange& asked, const std::filesystem::path& file, int threads,
               const std::function<void(const Progress&)>& progress = {},
               const std::function<void()>& begun = {}) const;

  // Every sample in order. Throws RecordFileError when one is missing.
  void read(const std::filesystem::path& file, const Sink& sink) const;

 private:
  Study(scenario::ValidStudy valid, std::shared_ptr<const Sampler> sampler, Plan plan)
      : valid_(std::move(valid)), sampler_(std::move(sampler)), plan_(std::move(plan)) {}
  scenario::ValidStudy valid_;
  std::shared_ptr<const Sampler> sampler_;
  Plan plan_;
};

}  // namespace bide::study
