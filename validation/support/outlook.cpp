#include "validation/support/outlook.hpp"

#include <stdexcept>
#include <variant>

#include "bide/core/units.hpp"
#include "bide/timeline/simulate.hpp"

namespace bide::validation {

timeline::Timeline timeline_of(const std::string& scenario_json) {
  auto validated = scenario::validate_text(scenario_json, "validation case", ".");
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&validated)) {
    std::string text;
    for (const scenario::Diagnostic& d : *wrong) text += scenario::to_string(d) + "\n";
    throw std::runtime_error(text);
  }
  const auto& valid = std::get<scenario::ValidScenario>(validated);
  auto loaded = weather::load(valid);
  if (std::holds_alternative<scenario::Diagnostics>(loaded)) throw std::runtime_error("weather refused");
  auto run = timeline::simulate(valid, std::get<weather::Record>(loaded));
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&run))
    throw std::runtime_error(to_string(wrong->front()));
  if (const auto* failure = std::get_if<timeline::Failure>(&run))
    throw std::runtime_error(failure->ledger + ": " + failure->message);
  return std::get<timeline::Timeline>(std::move(run));
}

double mean_over(const timeline::Timeline& run, const std::vector<double>& column, double from_h,
                 double to_h) {
  double sum = 0, count = 0;
  for (std::size_t i = 0; i < column.size(); ++i)
    if (run.time_s[i] >= from_h * hour_s && run.time_s[i] <= to_h * hour_s) sum += column[i], count += 1;
  if (count == 0) throw std::runtime_error("no output time in the span asked for");
  return sum / count;
}

}  // namespace bide::validation
