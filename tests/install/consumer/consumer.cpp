// A program outside the project: asks the installed engine for the odds of a scenario, by its public header
// alone. Prints a figure to a line, as the test beside it reads them in the program's own JSON.
#include <bide/bide.hpp>
#include <cstdio>
#include <string>
#include <variant>

namespace {

int refused(const bide::scenario::Diagnostics& reasons) {
  for (const auto& each : reasons) std::fprintf(stderr, "%s\n", to_string(each).c_str());
  return 2;
}

void print(const char* name, double value) {
  std::printf("%s %.17g\n", name, value);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) return 1;
  const auto read = bide::read(argv[1]);
  if (const auto* wrong = std::get_if<bide::scenario::Diagnostics>(&read)) return refused(*wrong);
  const auto& scenario = std::get<bide::scenario::ValidScenario>(read);
  bide::study::OddsQuestion question;
  question.futures = std::stoul(argv[2]);
  question.seed = 7;
  const auto asked = bide::odds(scenario, question);
  if (const auto* why = std::get_if<bide::study::Refusal>(&asked)) return refused(why->reasons);
  const auto& answer = std::get<bide::study::OddsAnswer>(asked);
  print("futures", static_cast<double>(answer.odds.futures));
  print("first_able_beyond", answer.odds.able[bide::study::first_person].beyond.share);
  print("last_alive_beyond", answer.odds.alive[bide::study::last_person].beyond.share);
  if (!answer.unknowns.empty())
    print("first_unknown_variance_share", answer.unknowns.front().reduction.of_variance);
  for (const auto& at : answer.odds.times) print("all_able", at.all_able.share);
  return 0;
}
