#include "bide/bide.hpp"

#include <utility>

#include "bide/study/sampling/sampler.hpp"

namespace bide {

scenario::Validated read(const std::filesystem::path& file) {
  return scenario::validate_file(file);
}

scenario::Diagnostics check(const scenario::ValidScenario& scenario) {
  scenario::Diagnostics cautions = scenario.cautions;
  for (scenario::Diagnostic& each : study::range_cautions(scenario)) cautions.push_back(std::move(each));
  return cautions;
}

std::variant<study::Run, study::Refusal> simulate(const scenario::ValidScenario& scenario,
                                                  const std::function<void(double)>& progress) {
  return study::run_one(scenario, progress);
}

std::variant<study::OddsAnswer, study::Refusal> odds(const scenario::ValidScenario& scenario,
                                                     const study::OddsQuestion& question,
                                                     const study::ToldOddsProgress& progress) {
  return study::ask_odds(scenario, question, progress);
}

std::variant<study::Comparison, study::Refusal> compare(std::vector<scenario::ValidScenario> scenarios,
                                                        const study::CompareQuestion& question,
                                                        const std::function<void(double)>& progress) {
  std::vector<scenario::Version> options;
  for (scenario::ValidScenario& each : scenarios) options.push_back({std::move(each), {}});
  return study::compare(std::move(options), question, progress);
}

std::variant<study::LeversTried, study::Refusal> levers(const scenario::ValidScenario& scenario,
                                                        const study::Look& look) {
  return study::try_levers(scenario, look);
}

std::variant<study::Provision, study::Refusal> provision(const scenario::ValidScenario& scenario,
                                                         const study::ProvisionQuestion& question,
                                                         const study::ToldProvisionProgress& progress) {
  return study::provision(scenario, question, progress);
}

std::variant<study::Evaluated, study::Refusal> evaluate(const scenario::ValidScenario& scenario,
                                                        study::PointsQuestion question,
                                                        const study::ToldProgress& progress) {
  return study::evaluate(scenario, std::move(question), progress);
}

std::variant<study::Summary, study::Refusal> run_study(const study::StudyQuestion& question,
                                                       const study::ToldProgress& progress) {
  return study::ask_study(question, progress);
}

}  // namespace bide
