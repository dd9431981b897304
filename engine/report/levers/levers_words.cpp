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

// Hours gained: later is positive.
std::string hours_words(const Gain& gain) {
  if (gain.unreached || !gain.distinguishable) return "none";
  return fmt::format("{}{}{}", gain.hours > 0 ? "+" : "-", duration(std::abs(gain.hours) * hour_s),
                     gain.at_least ? " or more" : "");
}

// What a range of gains hangs on is said with each, or once for several.
enum class Why { said, said_elsewhere };

// "+20 h (-5.0 h to +30 h or more, depending on heat loss)"; the bracket only where the ends say something
// else. The range holds the central case too, which may lie outside both ends.
std::string with_ends(const Gain& central_gain, std::vector<Gain> ends, Why why) {
  const std::string central = hours_words(central_gain);
  const bool central_counts = !central_gain.unreached;
  if (ends.empty()) return central;
  ends.push_back(central_gain);
  std::stable_sort(ends.begin(), ends.end(), [](const Gain& a, const Gain& b) {
    const auto key = [](const Gain& g) { return g.unreached || !g.distinguishable ? 0.0 : g.hours; };
    return key(a) < key(b);
  });
  const std::string low = hours_words(ends.front()), high = hours_words(ends.back());
  if (low == high) return central;
  const auto end = [](const std::string& words) { return words == "none" ? "0 h" : words; };
  const std::string span =
      fmt::format("{} to {}{}", end(low), end(high), why == Why::said ? ", depending on heat loss" : "");
  return central_counts ? fmt::format("{} ({})", central, span) : span;
}

std::string time_words(const LeverTried& tried, Gain Gains::*which, Why why) {
  std::vector<Gain> ends;
  for (const Gains& end : tried.ends) ends.push_back(end.*which);
  return with_ends(tried.gained.*which, std::move(ends), why);
}

bool reached(const LeverTried& tried, Gain Gains::*which) {
  return !(tried.gained.*which).unreached ||
         std::any_of(tried.ends.begin(), tried.ends.end(),
                     [&](const Gains& end) { return !(end.*which).unreached; });
}

std::string points(const Gains& gains) {
  const double whole = std::round(100 * gains.margin);
  return whole == 0 ? "0" : fmt::format("{:+.0f}", whole);
}

// "+28 points of margin, 69 % of the margin left to water loss"
std::string margin_words(const LeverTried& tried) {
  if (tried.figures.next_limit == system::Limit::none) return "no limit in sight";
  std::vector<const Gains*> ends;
  for (const Gains& end : tried.ends)
    if (end.able.unreached) ends.push_back(&end);
  std::string span;
  if (!ends.empty()) {
    const auto [low, high] = std::minmax_element(
        ends.begin(), ends.end(), [](const Gains* a, const Gains* b) { return a->margin < b->margin; });
    if (points(**low) != points(**high))
      span = fmt::format(" ({} to {}, depending on heat loss)", points(**low), points(**high));
  }
  return fmt::format("{} points{}: {} to {}", points(tried.gained), span,
                     margin_left_pct(tried.figures.next_margin_fraction),
                     outcome::short_cause(tried.figures.next_limit));
}

// Hours of the central case; where it gains none that can be told, the most at an end of the range, unless
// the other end loses some.
double hours_bought(const LeverTried& tried, Gain Gains::*which) {
  const auto told = [](const Gain& gain) { return !gain.unreached && gain.distinguishable; };
  if (told(tried.gained.*which)) return (tried.gained.*which).hours;
  double least = 0, most = 0;
  for (const Gains& end : tried.ends)
    if (told(end.*which)) {
      least = std::min(least, (end.*which).hours);
      most = std::max(most, (end.*which).hours);
    }
  return least < 0 ? 0 : most;
}

// An end of the range loses hours.
bool loses_hours(const LeverTried& tried) {
  const auto loses = [](const Gain& gain) {
    return !gain.unreached && gain.distinguishable && gain.hours < 0;
  };
  return std::any_of(tried.ends.begin(), tried.ends.end(),
                     [&](const Gains& end) { return loses(end.able) || loses(end.alive); });
}

}  // namespace

std::string bought_words(const LeverTried& tried, double horizon_s) {
  std::string out;
  for (const auto& [name, which] : {std::pair{"able", &Gains::able}, {"alive", &Gains::alive}})
    if (reached(tried, which))
      out += fmt::format("{}{} {}", out.empty() ? "" : "; ", name, time_words(tried, which, Why::said));
  if (!tried.gained.able.unreached) return out;
  return (out.empty() ? "no limit within " + horizon(horizon_s) : out) + "; " + margin_words(tried);
}

std::vector<const LeverTried*> most_bought(const study::LeversTried& levers, std::size_t most) {
  std::vector<const LeverTried*> out;
  for (const LeverTried& each : levers.tried) {
    if (each.state != LeverTried::State::tried) continue;
    const int direction = study::direction(each);
    const bool hours = hours_bought(each, &Gains::able) > 0 || hours_bought(each, &Gains::alive) > 0;
    // Points of margin are no gain where an end of the range pays for them with hours.
    if ((direction >= 0 && hours) || (direction > 0 && !loses_hours(each))) out.push_back(&each);
  }
  std::stable_sort(out.begin(), out.end(), [](const LeverTried* a, const LeverTried* b) {
    const auto key = [](const LeverTried* each) {
      return std::tuple(hours_bought(*each, &Gains::able), hours_bought(*each, &Gains::alive),
                        each->gained.margin);
    };
    return key(a) > key(b);
  });
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
  bool ranged = false;
  std::string out;
  for (const LeverTried* each : most_bought(levers, most)) {
    std::string gain;
    for (const auto& [name, which] : {std::pair{"able ", &Gains::able}, {"alive ", &Gains::alive}})
      if (gain.empty() && hours_bought(*each, which) > 0) {
        gain = name + time_words(*each, which, Why::said_elsewhere);
        ranged = ranged || gain.find(" to ") != std::string::npos;
      }
    if (gain.empty()) gain = points(each->gained) + " points of margin";
    out += fmt::format("{}{}: {}{}", out.empty() ? "" : "; ", each->lever->title, gain,
                       each->lever->closes_openings
                           ? fmt::format(", CO2 up to {} ppm ({} without it)", ppm(each->co2_high_ppm),
                                         ppm(levers.base_co2_high_ppm))
                           : "");
  }
  if (out.empty()) return "none of the practical changes tried, one at a time";
  return out + (ranged ? " (a range where it depends on the heat lost, which is not known)" : "");
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
      ". Its price in air: CO2 at most {} to {} ppm over the unmeasured leakage and canopy, {} to {} without "
      "it",
      ppm(tried.co2_low_ppm), ppm(tried.co2_high_ppm), ppm(levers.base_co2_low_ppm),
      ppm(levers.base_co2_high_ppm));
}

std::string burden_words(const scenario::Burden& burden) {
  if (burden.mass_kg <= 0 && burden.volume_L <= 0) return "";
  const std::string items = burden.items.empty() ? "" : burden.items + ", ";
  return fmt::format(" ({}{} kg more aboard, takes up {} L)", items, two_figures(burden.mass_kg),
                     two_figures(burden.volume_L));
}

}  // namespace bide::report
