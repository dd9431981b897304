// bide check: validates a scenario and prints all that is in force.
#include <fmt/core.h>

#include <algorithm>
#include <cstdlib>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "bide/bide.hpp"
#include "bide/report/signals/signals.hpp"
#include "bide/report/words/input.hpp"
#include "bide/report/words/words.hpp"
#include "bide/scenario/first_defaults.hpp"
#include "bide/scenario/needs.hpp"
#include "bide/scenario/write.hpp"
#include "bide/study/sampling/sampler.hpp"
#include "bide/system/ready.hpp"
#include "bide/weather/weather.hpp"
#include "commands.hpp"
#include "output.hpp"
#include "point.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

// "raft: floor inflated", "everybody: seat floor", "Persons A and C: body fat 27 %; Person B: body fat 31 %".
std::string default_words(const scenario::DefaultInForce& given, std::size_t crew) {
  constexpr std::string_view of_person = "/crew/";
  const auto words = [](const scenario::DefaultInForce::Value& each) {
    const auto number = number_in<double>(each.value);
    return report::setting_words(each.pointer, number ? fmt::format("{:.3g}", *number) : each.value);
  };
  if (!given.values.front().pointer.starts_with(of_person)) return words(given.values.front());
  std::vector<std::pair<std::string, std::vector<int>>> groups;  // what is said, and of whom
  for (const auto& each : given.values) {
    const std::string said = words(each), what = said.substr(said.find(':'));
    const auto same =
        std::find_if(groups.begin(), groups.end(), [&](const auto& g) { return g.first == what; });
    const int person = std::atoi(each.pointer.c_str() + of_person.size());
    if (same == groups.end())
      groups.push_back({what, {person}});
    else
      same->second.push_back(person);
  }
  std::string out;
  for (const auto& [what, persons] : groups) {
    const bool all = crew > 1 && persons.size() == crew;
    out += (out.empty() ? "" : "; ") + (all ? "everybody" : report::person_names(persons)) + what;
  }
  return out;
}

// Ten defaults that matter first, or with `all` everything that is in force.
std::string in_force(const scenario::ValidScenario& valid, bool all) {
  if (all) return scenario::listing(valid) + fmt::format("Defaults used: {}\n", valid.defaults.size());
  constexpr std::size_t most = 10;
  const auto first = scenario::first_defaults(valid, most);
  std::string out = fmt::format(
      "Defaults used: {}; those that matter first (--all lists every input in force, as it stands in the "
      "file):\n",
      valid.defaults.size());
  for (const scenario::DefaultInForce& each : first)
    out += fmt::format("  {}. {}\n", default_words(each, valid.scenario.crew.size()), each.sentence);
  return out;
}

int show_checked(const std::string& path, bool all) {
  const scenario::Validated result = scenario::validate_file(path);
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&result)) {
    complain(*wrong);
    say("{} {}.\n", wrong->size(), wrong->size() == 1 ? "error" : "errors");
    return exit_input_refused;
  }
  const auto& valid = std::get<scenario::ValidScenario>(result);
  const auto weather = weather::load(valid);
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&weather)) {
    complain(*wrong);
    return exit_input_refused;
  }
  const auto ready = system::make_ready(valid, std::get<weather::Record>(weather));
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&ready)) {
    complain(*wrong);
    return exit_input_refused;
  }
  std::string text = in_force(valid, all);
  if (valid.scenario.uncertain) {
    const study::Sampler sampler(valid);
    text += fmt::format("Uncertain: {}\n", sampler.factors().size());
    for (const study::Factor& factor : sampler.factors())
      text += fmt::format("  {} ({})\n", report::input_words(factor.name),
                          factor.kind == study::FactorKind::aleatory ? "differs from case to case"
                                                                     : "nobody has measured it");
  }
  const auto section = [&](const char* title, const std::vector<std::string>& lines) {
    if (!lines.empty()) text += fmt::format("{}\n", title);
    for (const std::string& line : lines) text += fmt::format("  {}\n", line);
  };
  section("Ready for departure:", report::readiness_lines(valid));
  section("Signals:", report::signal_lines(valid));
  std::vector<std::string> needs;
  for (scenario::Need& each : scenario::needs_of(valid, valid.scenario.duration_h))
    needs.push_back(std::move(each.words));
  section("What single people need:", needs);
  const scenario::Diagnostics cautions = bide::check(valid);
  text += cautions.empty() ? "Cautions: none\n" : "Cautions:\n";
  for (const scenario::Diagnostic& each : cautions)
    text += fmt::format("  {}: {}\n", each.pointer.empty() ? path : report::input_words(each.pointer),
                        each.message);
  text += fmt::format("{}\n{}\n", standing_notice, standing_advice);
  return put(shown(text), "", false);
}

}  // namespace

void add_check(Program& program) {
  struct Arguments {
    std::string path;
    bool all = false;
  };
  auto arguments = std::make_shared<Arguments>();
  Command command = program.command("check", "Validate a scenario; print its defaults and cautions");
  command.text("scenario", arguments->path, "Scenario file").required();
  command.flag("--all", arguments->all, "Every resolved input, not only the defaults that matter first");
  command.does([arguments] { return show_checked(arguments->path, arguments->all); });
}

}  // namespace bide::tool
