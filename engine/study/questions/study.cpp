#include "bide/study/questions/study.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <thread>

#include "bide/scenario/words.hpp"
#include "bide/study/records/fingerprint.hpp"
#include "bide/study/records/hash.hpp"
#include "bide/study/records/math_bits.hpp"
#include "bide/study/records/sample_bytes.hpp"
#include "bide/study/records/scenario_hash.hpp"
#include "bide/study/sampling/make_sample.hpp"
#include "bide/weather/weather.hpp"

namespace bide::study {

SampleRange range_of(const Shard& shard, std::uint64_t samples) {
  const std::uint64_t each = samples / shard.of, rest = samples % shard.of;
  const auto begin = [&](std::uint64_t before) { return before * each + std::min(before, rest); };
  return {begin(shard.number - 1), begin(shard.number)};
}

std::string file_name_of(const Shard& shard) {
  return shard.of == 1 ? "study.records" : fmt::format("shard-{}-of-{}.records", shard.number, shard.of);
}

namespace {

// Samples are compared at the same hours: all last as long as the scenario says.
void check_hours(const scenario::ValidStudy& valid, scenario::Diagnostics& wrong) {
  const std::string duration = "/duration_h";
  const auto varies = [&](const std::string& pointer, const std::string& at) {
    if (pointer == duration)
      wrong.push_back({valid.file, at, "found /duration_h; allowed any other input in a study"});
  };
  const scenario::Scenario& scenario = valid.scenario.scenario;
  if (scenario.uncertain) {
    for (const auto& [pointer, distribution] : scenario.uncertain->inputs.entries)
      varies(pointer, "/uncertain/inputs");
    for (const scenario::SharedInput& group : scenario.uncertain->groups)
      for (const std::string& pointer : group.pointers) varies(pointer, "/uncertain/groups");
    for (const scenario::Alternative& one : scenario.uncertain->alternatives)
      for (const auto& [pointer, value] : one.set.entries) varies(pointer, "/uncertain/alternatives");
  }
  for (std::size_t i = 0; i < valid.study.at_h.size(); ++i)
    if (!(valid.study.at_h[i] > 0 && valid.study.at_h[i] <= scenario.duration_h))
      wrong.push_back({valid.file, fmt::format("/at_h/{}", i),
                       fmt::format("found {}; allowed above 0 and at most the {} h simulated",
                                   valid.study.at_h[i], scenario.duration_h)});
}

}  // namespace

std::variant<Study, scenario::Diagnostics> Study::make(scenario::ValidStudy valid) {
  scenario::Diagnostics errors;
  check_hours(valid, errors);
  if (!errors.empty()) return errors;
  auto sampler = std::make_shared<const Sampler>(valid.scenario);
  auto plan = Plan::make(valid, sampler);
  if (auto* wrong = std::get_if<scenario::Diagnostics>(&plan)) return std::move(*wrong);
  const auto weather = weather::load(valid.scenario);
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&weather)) return *wrong;
  return Study(std::move(valid), std::move(sampler), std::get<Plan>(std::move(plan)));
}

std::optional<std::filesystem::path> Study::points_file() const {
  if (!valid_.study.design.points) return std::nullopt;
  return scenario::points_file_of(valid_);
}

RecordKind Study::kind() const {
  const scenario::Design& design = valid_.study.design;
  Hash hash;
  hash.add(fmt::format("{} {} {}", fingerprint(), sample_layout, valid_.study.near_margin));
  hash.add(fmt::format("{:x}", scenario_hash(scenario())));
  hash.add(fmt::format("{} {}", word(design.kind), design.seed));
  if (scenario::has_levels(design.kind)) hash.add(fmt::format("{}", design.levels));
  if (design.kind == scenario::DesignKind::latin_hypercube) hash.add(fmt::format("{}", *design.samples));
  if (design.kind == scenario::DesignKind::saltelli)
    for (const auto& group : plan_.groups())
      for (const std::size_t column : group) hash.add(fmt::format("{}{}", column == group.front(), column));
  if (design.kind == scenario::DesignKind::points) {
    hash.add(word(plan_.scale()));
    const Points& points = plan_.held_points();
    hash.add({reinterpret_cast<const char*>(points.data()),
              sizeof(double) * static_cast<std::size_t>(points.size())});
  }
  return {hash.value(), static_cast<std::uint32_t>(sample_bytes(persons())), math_bits()};
}

Progress Study::run(const SampleRange& asked, const std::filesystem::path& file, int threads,
                    const std::function<void(const Progress&)>& progress,
                    const std::function<void()>& begun) const {
  SampleRange range = asked;
  RecordWriter writer(file, kind());
  if (writer.last()) {
    RecordReader reader(file);
    if (const Record* first = reader.next(); first && first->sample != range.begin)
      throw RecordFileError(file,
                            fmt::format("begins with sample {} where {} was asked for: a shard of another "
                                        "number of samples",
                                        first->sample, range.begin));
    range.begin = *writer.last() + 1;
  }
  if (begun) begun();
  const auto finish = [&] {
    // A file that goes on beyond what is asked for was made for more samples, and stays as it is.
    if (!writer.last() || *writer.last() < range.end) writer.finish({range.end, plan_.size()});
  };
  if (range.begin >= range.end) return finish(), Progress{};
  EnsembleOptions options;
  options.threads = threads;
  options.progress = progress;
  options.near_margin = valid_.study.near_margin;
  constexpr std::size_t blocks_to_a_thread = 8;
  const std::size_t busy =
      threads > 0 ? static_cast<std::size_t>(threads) : std::thread::hardware_concurrency();
  options.window = std::max(records_per_block, blocks_to_a_thread * block_width * busy);
  std::vector<std::byte> bytes(sample_bytes(persons()));
  weather::Cache cache;
  const Progress done = run_ensemble(
      range, [&](std::uint64_t k) { return make_sample(sampler_->scenario_of(draw(k)), cache); },
      [&](const SampleResult& result) {
        write_sample(result, bytes);
        writer.add(result.index, bytes);
      },
      options);
  finish();
  return done;
}

void Study::read(const std::filesystem::path& file, const Sink& sink) const {
  RecordReader reader(file);
  if (const auto why = why_apart(reader.kind(), kind())) throw RecordFileError(file, *why + " than this one");
  for (std::uint64_t k = 0; k < plan_.size(); ++k) {
    const Record* record = reader.next();
    if (!record || record->sample != k)
      throw RecordFileError(file, fmt::format("sample {} of {} is missing", k, plan_.size()));
    const auto result = [&] {
      try {
        return read_sample(k, persons(), record->payload);
      } catch (const std::invalid_argument& wrong) {
        throw RecordFileError(file, fmt::format("sample {}: {}", k, wrong.what()));
      }
    };
    SampleResult each = result();
    if (const std::string place = plan_.place(k); !each.failure.empty() && !place.empty())
      each.failure = place + ": " + each.failure;
    sink(each);
  }
}

}  // namespace bide::study
