#include "report/levers_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "constants/evidence.hpp"
#include "outcome/cause.hpp"
#include "report/words.hpp"

namespace bide::report {
namespace {

using study::Gain;
using study::LeverTried;

constexpr double hour_s = 3600;

std::string ppm(double value) {
  return two_figures(value);
}

}  // namespace

std::string gain_words(const char* what, const Gain& gain, double horizon_s) {
  if (gain.unreached) return fmt::format("{} not reached within {} either way", what, horizon(horizon_s));
  if (!gain.told_apart) return fmt::format("{} not told apart", what);
  return fmt::format("{} {} {}{}", what, gain.hours > 0 ? "gains" : "loses", gain.at_least ? "at least " : "",
                     duration(std::abs(gain.hours) * hour_s));
}

std::string bought_words(const LeverTried& tried, double horizon_s) {
  if (!tried.able.unreached)
    return gain_words("able", tried.able, horizon_s) + ", " + gain_words("alive", tried.alive, horizon_s);
  std::string text = fmt::format("no limit within {} either way", horizon(horizon_s));
  if (tried.figures.next_limit.empty()) return text;
  return text + fmt::format("; {} of the way to {} left ({:+.0f} points)",
                            percent(100 * std::max(tried.figures.next_margin_fraction, 0.0)),
                            outcome::short_cause(tried.figures.next_limit), 100 * tried.margin_gain);
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
