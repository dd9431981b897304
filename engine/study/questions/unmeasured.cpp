#include "bide/study/questions/unmeasured.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "bide/constants/swimming.hpp"
#include "bide/scenario/patch.hpp"
#include "bide/scenario/words.hpp"
#include "bide/scenario/write.hpp"
#include "bide/study/sampling/distribution.hpp"
#include "bide/study/sampling/make_sample.hpp"

namespace bide::study {
namespace {

using scenario::ValidScenario;

// A lattice: each member stands in another slice of every range. 17 is prime, so any multiplier does.
constexpr std::size_t member_count = 16, lattice = member_count + 1;

struct UnmeasuredInput {
  std::string pointer;
  std::size_t multiplier;
  Unmeasured what = Unmeasured::model_error;
};
constexpr std::size_t swimming_multiplier = 13;
const UnmeasuredInput unmeasured[] = {{"/raft/canopy_heat_loss_position", 1, Unmeasured::canopy_heat},
                                      {"/raft/leakage_position", 3, Unmeasured::leakage},
                                      {"/model/shivering_endurance", 5, Unmeasured::shivering},
                                      {scenario::model_error_positions[0], 11},
                                      {scenario::model_error_positions[1], 7},
                                      {scenario::model_error_positions[2], 2},
                                      {scenario::model_error_positions[3], 9}};
static_assert(std::size(scenario::model_error_positions) + 3 == std::size(unmeasured));

// For how long arms swim decides over those whom nothing else keeps afloat. All of a crew stand at one place:
// trials differ by as much as people within one.
std::vector<UnmeasuredInput> open_inputs(const ValidScenario& scenario) {
  std::vector<UnmeasuredInput> out(std::begin(unmeasured), std::end(unmeasured));
  const std::vector<scenario::Person>& crew = scenario.scenario.crew;
  const bool dry = scenario.scenario.boarding.kind == scenario::BoardingKind::dry;
  for (std::size_t i = 0; i < crew.size(); ++i)
    if (!dry && !crew[i].lifejacket)
      out.push_back(
          {fmt::format("/crew/{}/swim_endurance_factor", i), swimming_multiplier, Unmeasured::swimming});
  std::erase_if(out,
                [&](const UnmeasuredInput& each) { return !scenario::is_default(scenario, each.pointer); });
  return out;
}

scenario::Value value_at(Unmeasured what, double place) {
  if (what == Unmeasured::shivering) return std::string(word(endurance_at(place)));
  if (what == Unmeasured::swimming)
    return std::exp(constants::spread_swim_endurance * standard_normal_quantile(place));
  return place;
}

scenario::Validated member(const ValidScenario& scenario, std::size_t k) {
  scenario::Node document = *scenario.document;
  for (const UnmeasuredInput& each : open_inputs(scenario)) {
    const double place =
        static_cast<double>((k + 1) * each.multiplier % lattice) / static_cast<double>(lattice);
    scenario::put(document, each.pointer, value_at(each.what, place));
  }
  return scenario::validate_document(std::move(document), scenario.file, scenario.folder);
}

std::optional<double> within(double at_s) {
  return std::isfinite(at_s) ? std::optional(at_s) : std::nullopt;
}

// One run of a crew: the rafts it is in.
RangeMember put_together(std::span<const SampleResult> rafts) {
  std::vector<outcome::PersonEnd> persons;
  RangeMember out;
  for (const SampleResult& raft : rafts) {
    for (const PersonResult& p : raft.persons)
      persons.push_back({within(p.able_until_s), within(p.alive_until_s), p.able_cause, p.alive_cause,
                         p.next_cause, p.next_margin_fraction});
    if (std::isfinite(raft.highest_co2_ppm))
      out.highest_co2_ppm = std::max(out.highest_co2_ppm, raft.highest_co2_ppm);
  }
  static_cast<outcome::Endurance&>(out) = outcome::endurance_of(persons);
  return out;
}

// One run asked for.
struct Asked {
  const CrewScenarios* crew;
  std::size_t member;
};

// @param make makes the version of one raft's scenario for a member
std::variant<RangeMembers, Refusal> run_asked(
    const std::vector<Asked>& asked,
    const std::function<scenario::Validated(const ValidScenario&, std::size_t member)>& make,
    const Look& look) {
  struct Raft {
    const ValidScenario* scenario;
    std::size_t member;
  };
  std::vector<Raft> rafts;
  for (const Asked& each : asked)
    for (const ValidScenario* raft : *each.crew) rafts.push_back({raft, each.member});
  weather::Cache cache;
  std::vector<SampleResult> results;
  std::optional<Refusal> failed;
  EnsembleOptions options;
  options.look = look;
  run_ensemble(
      {0, rafts.size()},
      [&](std::uint64_t i) { return make_sample(make(*rafts[i].scenario, rafts[i].member), cache); },
      [&](const SampleResult& r) {
        if (!r.failure.empty() && !failed)
          failed = Refusal{Refusal::Why::run, {{rafts[r.index].scenario->file, "", r.failure}}};
        results.push_back(r);
      },
      options);
  if (failed) return *std::move(failed);
  RangeMembers out;
  std::size_t at = 0;
  for (const Asked& each : asked) {
    out.push_back(put_together(std::span(results).subspan(at, each.crew->size())));
    at += each.crew->size();
  }
  return out;
}

}  // namespace

std::vector<Unmeasured> unmeasured_of(const ValidScenario& scenario) {
  std::vector<Unmeasured> out;
  for (const UnmeasuredInput& each : open_inputs(scenario))
    if (std::find(out.begin(), out.end(), each.what) == out.end()) out.push_back(each.what);
  return out;
}

std::variant<std::vector<RangeMembers>, Refusal> run_unmeasured(const std::vector<CrewScenarios>& crews,
                                                                const Look& look) {
  std::vector<Asked> asked;
  const auto any_open = [](const ValidScenario* each) { return !open_inputs(*each).empty(); };
  for (const CrewScenarios& crew : crews)
    if (std::any_of(crew.begin(), crew.end(), any_open))
      for (std::size_t k = 0; k < member_count; ++k) asked.push_back({&crew, k});
  auto ran = run_asked(asked, member, look);
  if (auto* refusal = std::get_if<Refusal>(&ran)) return std::move(*refusal);
  const auto& all = std::get<RangeMembers>(ran);
  std::vector<RangeMembers> out(crews.size());
  for (std::size_t i = 0; i < asked.size(); ++i)
    out[static_cast<std::size_t>(asked[i].crew - crews.data())].push_back(all[i]);
  return out;
}

std::variant<RangeMembers, Refusal> run_unmeasured(const ValidScenario& scenario, const Look& look) {
  auto ran = run_unmeasured(std::vector<CrewScenarios>{{&scenario}}, look);
  if (auto* refusal = std::get_if<Refusal>(&ran)) return std::move(*refusal);
  return std::move(std::get<std::vector<RangeMembers>>(ran).front());
}

std::variant<RangeMembers, Refusal> run_version(
    const std::vector<CrewScenarios>& crews,
    const std::function<scenario::Validated(const ValidScenario&)>& version, const Look& look) {
  std::vector<Asked> asked;
  for (const CrewScenarios& crew : crews) asked.push_back({&crew, 0});
  return run_asked(
      asked, [&](const ValidScenario& raft, std::size_t) { return version(raft); }, look);
}

TimeRange range_of(const std::vector<std::optional<double>>& times_s) {
  TimeRange out;
  bool beyond = times_s.empty();
  for (const std::optional<double>& each : times_s) {
    if (!each) {
      beyond = true;
      continue;
    }
    if (!out.earliest_s || *each < *out.earliest_s) out.earliest_s = each;
    if (!out.latest_s || *each > *out.latest_s) out.latest_s = each;
  }
  if (beyond) out.latest_s.reset();
  return out;
}

TimeRange range_over(const outcome::CrewTimes& central, std::span<const RangeMember> members, CrewState state,
                     CrewTime which) {
  std::vector<std::optional<double>> all{central.*which};
  for (const RangeMember& each : members) all.push_back((each.*state).*which);
  return range_of(all);
}

const outcome::Endurance& earliest(const outcome::Endurance& central, std::span<const RangeMember> members) {
  const outcome::Endurance* out = &central;
  for (const RangeMember& each : members)
    if (each.able.first_s && (!out->able.first_s || *each.able.first_s < *out->able.first_s)) out = &each;
  return *out;
}

}  // namespace bide::study
