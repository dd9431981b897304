// bide as a library: reads a scenario, simulates it, and asks it the questions of the program.
//
//   #include <bide/bide.hpp>          find_package(bide), link bide::bide
//
// All functions are free and keep nothing between calls; each may be called from several threads. Answers are
// plain structs. What is wrong with an input comes back as a refusal with its reasons, never as an exception.
// The same scenario and question give the same bits, whatever the threads. Every answer is a planning and
// training aid (core/notice.hpp has the words that belong beside it).
#pragma once

#include <filesystem>
#include <functional>
#include <variant>
#include <vector>

#include "bide/core/notice.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/study/ensemble/run_all.hpp"
#include "bide/study/questions/ask_odds.hpp"
#include "bide/study/questions/ask_study.hpp"
#include "bide/study/questions/compare.hpp"
#include "bide/study/questions/evaluate.hpp"
#include "bide/study/questions/levers.hpp"
#include "bide/study/questions/provision.hpp"

namespace bide {

// Reads and validates a scenario file.
// @param file path of the file; weather files are looked for beside it
// @return the scenario with all that is in force, or everything that is wrong with it
scenario::Validated read(const std::filesystem::path& file);

// What is doubtful in a scenario that was accepted: overload, impossible pairings, draws out of range.
// @param scenario from read()
// @return cautions; may be empty
scenario::Diagnostics check(const scenario::ValidScenario& scenario);

// Runs a scenario as it is written; what is uncertain is left aside.
// @param scenario from read()
// @param progress told the share of the time simulated, 0 to 1; may be empty
// @return columns against time, and the outcome read off them: until when each person is able and alive
std::variant<study::Run, study::Refusal> simulate(const scenario::ValidScenario& scenario,
                                                  const std::function<void(double fraction)>& progress = {});

// The endurance window over many possible futures, given what is known so far.
// @param scenario from read(), with `uncertain`
// @param question how many futures, from which seed, what is known, how many threads
// @param progress may be empty
std::variant<study::OddsAnswer, study::Refusal> odds(const scenario::ValidScenario& scenario,
                                                     const study::OddsQuestion& question = {},
                                                     const study::ToldOddsProgress& progress = {});

// Scenarios beside the first of them.
// @param scenarios from read(); at least one
// @param question  common futures, where all have `uncertain`
// @param progress  told the share of the common futures drawn, 0 to 1; may be empty
std::variant<study::Comparison, study::Refusal> compare(
    std::vector<scenario::ValidScenario> scenarios, const study::CompareQuestion& question = {},
    const std::function<void(double fraction)>& progress = {});

// Practical changes tried one at a time, and what each buys.
// @param scenario from read()
// @param look     called now and then, so that an exception from it ends the question; may be empty
std::variant<study::LeversTried, study::Refusal> levers(const scenario::ValidScenario& scenario,
                                                        const study::Look& look = {});

// The least kit with which a crew lasts to a stated time.
// @param scenario from read()
// @param question the time, the share of futures, limits of weight and room
// @param progress may be empty
std::variant<study::Provision, study::Refusal> provision(const scenario::ValidScenario& scenario,
                                                         const study::ProvisionQuestion& question,
                                                         const study::ToldProvisionProgress& progress = {});

// The figures of a scenario at the caller's own points, a simulation for each row.
// @param scenario from read(), with `uncertain`, which names the inputs
// @param question points, their scale, figures wanted, how many threads
// @param progress may be empty
std::variant<study::Evaluated, study::Refusal> evaluate(const scenario::ValidScenario& scenario,
                                                        study::PointsQuestion question,
                                                        const study::ToldProgress& progress = {});

// A study from its file to its summary; asked again with the same folder it goes on where it was left.
// @param question the study file, a folder for its records, how many threads
// @param progress may be empty
std::variant<study::Summary, study::Refusal> run_study(const study::StudyQuestion& question,
                                                       const study::ToldProgress& progress = {});

}  // namespace bide
