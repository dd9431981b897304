#include "bide/report/levers/levers_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

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

std::string gain_words(const Gain& gain) {
  if (gain.unreached) return "not reached either way";
  if (!gain.told_apart) return "not told apart";
  return fmt::format("{} {}{}", gain.hours > 0 ? "gains" : "loses", gain.at_least ? "at least " : "",
                     duration(std::abs(gain.hours) * hour_s));
}

// " (at the ends: gains 9.0 h, then 4.0 h)"; nothing where the ends say what is said already.
std::string at_the_ends(const std::vector<std::string>& ends, const std::string& said) {
  if (std::all_of(ends.begin(), ends.end(), [&](const auto& end) { return end == said; })) return "";
  const std::string &lowest = ends.front(), &highest = ends.back();
  if (lowest == highest) return " (at the ends: both " + lowest + ")";
  for (const std::string verb : {"gains ", "loses "})
    if (lowest.starts_with(verb) && highest.starts_with(verb))
      return fmt::format(" (at the ends: {}, then {})", lowest, highest.substr(verb.size()));
  return fmt::format(" (at the ends: {}, then {})", lowest, highest);
}

std::string at_the_ends(const LeverTried& tried, Gain Gains::*which) {
  std::vector<std::string> ends;
  for (const Gains& end : tried.ends) ends.push_back(gain_words(end.*which));
  return at_the_ends(ends, gain_words(tried.gained.*which));
}

std::string points(const Gains& gains) {
  const double whole = std::round(100 * gains.margin);
  return whole == 0 ? "0" : fmt::format("{:+.0f}", whole);
}

}  // namespace

std::string gain_words(const char* what, const Gain& gain, double horizon_s) {
  if (gain.unreached) return fmt::format("{} not reached within {} either way", what, horizon(horizon_s));
  return fmt::format("{} {}", what, gain_words(gain));
}

std::string bought_words(const LeverTried& tried, double horizon_s) {
  const Gains& gained = tried.gained;
  if (!gained.able.unreached)
    return gain_words("able", gained.able, horizon_s) + at_the_ends(tried, &Gains::able) + ", " +
           gain_words("alive", gained.alive, horizon_s) + at_the_ends(tried, &Gains::alive);
  std::string text = fmt::format("no limit within {} either way", horizon(horizon_s));
  const bool some_end_reached =
      std::any_of(tried.ends.begin(), tried.ends.end(), [](const Gains& end) { return !end.able.unreached; });
  if (tried.figures.next_limit != system::Limit::none) {
    std::vector<std::string> ends;
    for (const Gains& end : tried.ends) ends.push_back(points(end));
    text += fmt::format("; {} of the way to {} left, {} points{}",
                        percent(100 * std::max(tried.figures.next_margin_fraction, 0.0)),
                        outcome::short_cause(tried.figures.next_limit), points(gained),
                        some_end_reached ? "" : at_the_ends(ends, points(gained)));
  }
  if (some_end_reached) text += "; able" + at_the_ends(tried, &Gains::able);
  return text;
}

std::string most_bought_words(const study::LeversTried& levers) {
  constexpr int most = 3;
  std::string titles;
  int named = 0;
  for (const study::LeverTried& each : levers.tried) {
    if (each.state != study::LeverTried::State::tried || study::direction(each) <= 0) continue;
    if (named++ == most) break;
    titles += (titles.empty() ? "" : "; ") + each.lever->title;
  }
  if (titles.empty()) return "What would buy time: none of the practical changes tried, one at a time.";
  return "What would buy time or margin, most first: " + titles + ". Tried one at a time, one case each.";
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
  return fmt::format(" ({} kg, {} L more aboard)", two_figures(burden.mass_kg), two_figures(burden.volume_L));
}

}  // namespace bide::report
