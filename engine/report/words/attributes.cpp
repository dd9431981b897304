#include "bide/report/words/attributes.hpp"

#include <fmt/format.h>

#include "bide/core/notice.hpp"
#include "bide/study/records/fingerprint.hpp"
#include "bide/study/records/scenario_hash.hpp"

namespace bide::report {

Attributes attributes_of(const scenario::ValidScenario& scenario) {
  const study::Build build = study::build();
  return {{"Conventions", "CF-1.10, ACDD-1.3"},
          {"keywords", "life raft, crew, endurance, simulation"},
          {"source", fmt::format("bide {}", build.version)},
          {"comment", fmt::format("{} {}", standing_notice, standing_advice)},
          {"bide_version", std::string(build.version)},
          {"bide_fingerprint", std::string(build.fingerprint)},
          {"bide_compiler", std::string(build.compiler)},
          {"bide_instruction_set", std::string(build.instruction_set)},
          {"scenario", scenario.scenario.name},
          {"scenario_hash", fmt::format("fnv1a64:{:016x}", study::scenario_hash(scenario))},
          {"start_time_utc", scenario.scenario.start_time_utc}};
}

}  // namespace bide::report
