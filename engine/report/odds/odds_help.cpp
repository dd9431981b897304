// Help in words: what the scenario states of it, and what comes of that.
#include <fmt/format.h>

#include <cmath>

#include "bide/core/units.hpp"
#include "bide/report/odds/odds_words.hpp"
#include "bide/report/words/words.hpp"
#include "bide/study/sampling/distribution.hpp"

namespace bide::report {
namespace {

std::string hours(double h) {
  return duration(h * hour_s);
}

// "17 m/s wind at 10 m or 4 m significant wave height"
std::string limits(const scenario::HeldBackAbove& above) {
  std::string out;
  if (above.wind_speed_m_s) out = fmt::format("{:g} m/s wind at 10 m", *above.wind_speed_m_s);
  if (above.wave_height_m)
    out += fmt::format("{}{:g} m significant wave height", out.empty() ? "" : " or ", *above.wave_height_m);
  return out;
}

const char* const whose_statement =
    "What holds help back is a statement of the scenario, set against the weather of each future. The model "
    "knows nothing of those who help: they may come in worse weather, or by another way.";

std::vector<std::string> held_back_sentences(const study::HeldBack& h, double horizon_h) {
  const std::string followed = horizon(horizon_h * hour_s);
  std::vector<std::string> out;
  if (h.low_h) {
    const std::string low = hours(*h.low_h), high = hours(*h.high_h);
    out.push_back(fmt::format(
        "Held back in {} of futures, in these for {} in all, before it comes or within {}.", share(h.at_all),
        low == high ? low : fmt::format("{} to {} (8 in 10 of them)", low, high), followed));
  } else {
    out.push_back(fmt::format("Held back in none of the futures within {}.", followed));
  }
  if (h.no_weather.count > 0)
    out.push_back(
        fmt::format("In {} of futures the weather is above that for all of {}: as stated, help "
                    "does not come within that time. What comes after it is not followed.",
                    share(h.no_weather), followed));
  return out;
}

}  // namespace

// Whether some futures are ruled out does not change the statement.
std::string rescue_words(const scenario::Rescue& rescue) {
  constexpr double tenth = 0.1;
  const std::string low = hours(study::rescue_h(rescue, tenth)),
                    high = hours(study::rescue_h(rescue, 1 - tenth));
  return low == high ? low : fmt::format("{} to {} (8 in 10 cases)", low, high);
}

std::vector<std::string> help_sentences(const study::OddsAnswer& m) {
  if (!m.odds.help) return {"The scenario states no time of rescue, so nothing is said about help."};
  const study::HelpOdds& h = *m.odds.help;
  const scenario::Rescue& rescue = *m.scenario.scenario.uncertain->rescue;
  std::vector<std::string> out;
  if (rescue.held_back_above)
    out.push_back(fmt::format("Help needs {} of weather it can work in; held back above {}.",
                              rescue_words(rescue), limits(*rescue.held_back_above)));
  out.insert(out.end(), {fmt::format("Comes while all are able: {}.", share(h.all_able)),
                         fmt::format("Comes while somebody is able: {}.", share(h.some_able)),
                         fmt::format("Comes while all are alive: {}.", share(h.all_alive)),
                         fmt::format("Comes while somebody is alive: {}.", share(h.some_alive)),
                         fmt::format("None within {}: {}.", horizon(m.odds.horizon_h * hour_s),
                                     share(h.none_by_horizon))});
  if (!rescue.held_back_above) {
    out.emplace_back(
        "The time of rescue was drawn apart from weather and crew: that they have no bearing on it is an "
        "assumption.");
    return out;
  }
  for (std::string& each : held_back_sentences(h.held_back, m.odds.horizon_h)) out.push_back(std::move(each));
  out.emplace_back(whose_statement);
  out.emplace_back(
      "The hours that help needs were drawn apart from weather and crew: that the crew has no bearing on "
      "them is an assumption.");
  return out;
}

std::vector<std::string> help_sentences(const HelpDrawn& drawn, const study::Help& help) {
  const std::string followed = horizon(drawn.horizon_h * hour_s);
  const std::string comes = help.at_h <= drawn.horizon_h
                                ? fmt::format("It comes {} after the start.", hours(help.at_h))
                                : fmt::format("None within {}.", followed);
  if (!drawn.rescue.held_back_above) return {comes};
  return {fmt::format("Help needs {} of weather it can work in; held back above {}.", hours(drawn.needed_h),
                      limits(*drawn.rescue.held_back_above)),
          help.no_weather ? fmt::format("The weather is above that for all of {}.", followed)
                          : fmt::format("Held back for {} in all, before it comes or within {}.",
                                        hours(help.held_back_h), followed),
          comes, whose_statement};
}

}  // namespace bide::report
