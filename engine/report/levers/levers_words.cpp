#include "bide/report/levers/levers_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <tuple>

#include "bide/constants/evidence.hpp"
#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

using study::Gain;
using study::Gains;
using study::LeverTried;

std::string ppm(double value) {
  return two_figures(value);
}

// "20 h", "20 h or more" of a gain or a loss that goes on after the end of the runs, "0".
std::string length_words(const Gain& gain) {
  if (!study::told(gain)) return "0";
  return duration(std::abs(gain.hours) * hour_s) + (gain.at_least ? " or more" : "");
}

// "longer by 20 h", "shorter by 14 h".
std::string gain_words(const Gain& gain) {
  if (!study::told(gain)) return "as long";
  return (gain.hours > 0 ? "longer by " : "shorter by ") + length_words(gain);
}

// "longer by 20 h (range shorter by 5.0 h to longer by 30 h or more)"; the bracket only where the range says
// something else than the central case, which lies within it. The range alone where the central case reaches
// no limit: "longer by 0 to 6.9 h".
std::string time_words(const LeverTried& tried, Gain Gains::*which) {
  const Gain& gain = tried.gained.*which;
  const auto [low, high] = study::gain_range(tried, which);
  if (gain_words(low) == gain_words(high)) return gain_words(gain);
  const bool loses = study::told(low) && low.hours < 0, gains = study::told(high) && high.hours > 0;
  const std::string span = loses && gains ? fmt::format("{} to {}", gain_words(low), gain_words(high))
                           : loses        ? fmt::format("{} to {}", length_words(high), length_words(low))
                                          : fmt::format("{} to {}", length_words(low), length_words(high));
  if (!gain.unreached) return fmt::format("{} (range {})", gain_words(gain), span);
  return loses && gains ? span : (loses ? "shorter by " : "longer by ") + span;
}

bool reached(const LeverTried& tried, Gain Gains::*which) {
  return !(tried.gained.*which).unreached ||
         std::any_of(tried.members.begin(), tried.members.end(),
                     [&](const Gains& member) { return !(member.*which).unreached; });
}

// "+3", "-3", "0"
std::string signed_pct(double fraction) {
  const double whole = std::round(100 * fraction);
  return whole == 0 ? "0" : fmt::format("{:+.0f}", whole);
}

std::string margin_gained(double fraction) {
  return signed_pct(fraction) + " % of the margin";
}

// "+28 % of the margin: 69 % of the margin left to water loss"
std::string margin_words(const LeverTried& tried) {
  if (tried.figures.next_limit == system::Limit::none) return "no limit in sight";
  const study::MarginRange range = study::margin_range(tried);
  const std::string low = margin_gained(range.low), high = margin_gained(range.high);
  return fmt::format(
      "{}{}: {} to {}", margin_gained(tried.gained.margin),
      low == high ? "" : fmt::format(" ({} to {} %)", signed_pct(range.low), signed_pct(range.high)),
      margin_left_pct(tried.figures.next_margin_fraction), outcome::short_cause(tried.figures.next_limit));
}

}  // namespace

std::string bought_words(const LeverTried& tried, double horizon_s) {
  std::string out;
  for (const auto& [name, which] : {std::pair{"able", &Gains::able}, {"alive", &Gains::alive}})
    if (reached(tried, which))
      out += fmt::format("{}{} {}", out.empty() ? "" : "; ", name, time_words(tried, which));
  if (!tried.gained.able.unreached) return out;
  return (out.empty() ? "no limit within " + horizon(horizon_s) : out) + "; " + margin_words(tried);
}

std::vector<const LeverTried*> most_bought(const study::LeversTried& levers, std::size_t most) {
  std::vector<const LeverTried*> out;
  for (const LeverTried& each : levers.tried) {
    if (each.state != LeverTried::State::tried || study::direction(each) <= 0) continue;
    const bool hours =
        study::hours_bought(each, &Gains::able) > 0 || study::hours_bought(each, &Gains::alive) > 0;
    // A larger margin is no gain where some of the range pays for them with hours.
    const bool pays = study::loses(each, &Gains::able) || study::loses(each, &Gains::alive);
    if (hours || !pays) out.push_back(&each);
  }
  // Of several doses the one that buys most stands for all.
  std::vector<std::string> families;
  std::erase_if(out, [&](const LeverTried* each) {
    const std::string& family = each->lever->of ? *each->lever->of : each->lever->key;
    if (std::find(families.begin(), families.end(), family) != families.end()) return true;
    families.push_back(family);
    return false;
  });
  if (out.size() > most) out.resize(most);
  return out;
}

std::string most_bought_words(const study::LeversTried& levers, std::size_t most) {
  std::string out;
  for (const LeverTried* each : most_bought(levers, most)) {
    std::string gain;
    for (const auto& [name, which] : {std::pair{"able ", &Gains::able}, {"alive ", &Gains::alive}})
      if (study::hours_bought(*each, which) > 0)
        gain += (gain.empty() ? "" : ", ") + (name + time_words(*each, which));
    if (gain.empty()) gain = margin_gained(each->gained.margin);
    out += fmt::format("{}{}: {}{}", out.empty() ? "" : "; ", each->lever->title, gain,
                       each->lever->closes_openings
                           ? fmt::format(", CO2 up to {} ppm ({} without it)", ppm(each->co2_high_ppm),
                                         ppm(levers.base_co2_high_ppm))
                           : "");
  }
  return out.empty() ? "none of the practical changes tried, one at a time" : "for the first person: " + out;
}

std::string reason_words(const study::LeversTried& levers, const LeverTried& tried) {
  const int sign = study::direction(tried);
  if (sign == 0) return "";
  // One that closes entrances and yet airs the cabin did something else than its reason tells.
  if (tried.lever->closes_openings && tried.co2_high_ppm < levers.base_co2_high_ppm) return "";
  std::string out = sign > 0 ? tried.lever->gains_by : tried.lever->loses_by;
  if (!tried.gained.able.unreached) return out;  // figures of runs that end at other times say nothing
  const auto &with = tried.figures, &without = levers.base;
  const std::string deficit = percent(with.worst_water_deficit_pct),
                    deficit_before = percent(without.worst_water_deficit_pct);
  if (deficit != deficit_before)
    out += fmt::format(" Worst water deficit {} for {}.", deficit, deficit_before);
  const std::string core = temperature(with.lowest_core_degC),
                    core_before = temperature(without.lowest_core_degC);
  if (core != core_before) out += fmt::format(" Lowest core {} for {}.", core, core_before);
  return out;
}

std::string air_words(const study::LeversTried& levers, const LeverTried& tried) {
  const bool more = tried.co2_high_ppm > levers.base_co2_high_ppm * (1 + constants::times_apart_fraction);
  if (!tried.lever->closes_openings && !more) return "";
  return fmt::format(
      ". Its price in air: CO2 at most {} to {} ppm over what nobody has measured, {} to {} without it",
      ppm(tried.co2_low_ppm), ppm(tried.co2_high_ppm), ppm(levers.base_co2_low_ppm),
      ppm(levers.base_co2_high_ppm));
}

}  // namespace bide::report
