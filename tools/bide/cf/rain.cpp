#include "rain.hpp"

#include <cmath>
#include <limits>

#include "bide/core/units.hpp"
#include "refused.hpp"

namespace bide::tool::cf {
namespace {

// Amounts of single hours fall about as often as they rise; a total falls only where it begins anew.
void refuse_what_looks_running(const Series& amounts) {
  constexpr std::size_t enough_rises = 12, rises_a_fall = 6;
  std::size_t rises = 0, falls = 0;
  for (std::size_t i = 1; i < amounts.value.size(); ++i) {
    rises += amounts.value[i] > amounts.value[i - 1] + amounts.rounding ? 1 : 0;
    falls += amounts.value[i] < amounts.value[i - 1] - amounts.rounding ? 1 : 0;
  }
  if (rises >= enough_rises && falls * rises_a_fall <= rises)
    refuse(
        "{}: {}: found amounts of rain that rise {} times and fall {} times, as a running total does; "
        "allowed "
        "with "
        "--rain running if it is one, or --rain 1 if each is the amount of an hour",
        amounts.file, amounts.variable, rises, falls);
}

void expect_hourly(const Series& amounts) {
  for (std::size_t i = 1; i < amounts.unix_s.size(); ++i)
    if (const double step_s = amounts.unix_s[i] - amounts.unix_s[i - 1]; step_s != hour_s)
      refuse(
          "{}: {}: found amounts of rain at times {:.4g} h apart; allowed 1 h, or say with --rain over how "
          "many "
          "hours each "
          "was accumulated",
          amounts.file, amounts.variable, step_s / hour_s);
}

std::vector<double> rates_of_total(const Series& total) {
  std::vector<double> out{std::numeric_limits<double>::quiet_NaN()};
  for (std::size_t i = 1; i < total.value.size(); ++i) {
    const double before = total.value[i - 1], now = total.value[i];
    const double fallen = now < before - total.rounding ? now : now - before;
    out.push_back(fallen / ((total.unix_s[i] - total.unix_s[i - 1]) / hour_s));
  }
  return out;
}

}  // namespace

Series rain_rates(Series amounts, const RainRule& rule) {
  if (rule.running) {
    amounts.value = rates_of_total(amounts);
  } else {
    const bool by_bounds = !rule.each_over_h && !amounts.interval_s.empty();
    if (!rule.each_over_h && !by_bounds) {
      refuse_what_looks_running(amounts);
      expect_hourly(amounts);
    }
    for (std::size_t i = 0; i < amounts.value.size(); ++i)
      amounts.value[i] /= by_bounds ? amounts.interval_s[i] / hour_s : rule.each_over_h.value_or(1);
  }
  amounts.field = Field::rain_rate;
  return amounts;
}

}  // namespace bide::tool::cf
