// The sentences of a comparison, each computed from what was run.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "bide/constants/evidence.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/compare/compare.hpp"
#include "bide/report/compare/compare_cells.hpp"
#include "bide/report/run/range.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

using outcome::Ahead;
using outcome::Figures;

struct Pair {
  const Compared& first;
  const Compared& second;
  std::string first_name, second_name;

  const std::string& name(Ahead ahead) const { return ahead == Ahead::first ? first_name : second_name; }
};

std::string time_words(const std::optional<double>& at_s, double horizon_s) {
  return at_s ? duration(*at_s) : not_reached(horizon_s);
}

// @param a, b          runs of two options
// @param first, second the options as they are
Ahead later(study::CrewState state, const outcome::Endurance& a, const outcome::Endurance& b,
            const Figures& first, const Figures& second) {
  return outcome::later((a.*state).first_s, first.horizon_s, (b.*state).first_s, second.horizon_s);
}
Ahead later(study::CrewState state, const Figures& a, const Figures& b) {
  return later(state, a, b, a, b);
}

// How often each is ahead over what nobody has measured, member by member; an option that states all of it is
// the same in every member.
struct Order {
  std::size_t runs = 0, first = 0, second = 0;
};

Order order_of(study::CrewState state, Ahead central, const Option& a, const Option& b) {
  Order out;
  const auto count = [&out](Ahead ahead) {
    ++out.runs;
    if (ahead == Ahead::first) ++out.first;
    if (ahead == Ahead::second) ++out.second;
  };
  const auto member = [](const Option& option, std::size_t k) -> const outcome::Endurance& {
    if (option.members.empty()) return option.own.figures;
    return option.members.at(k);
  };
  const std::size_t members = std::max(a.members.size(), b.members.size());
  if (members > 0) count(central);
  for (std::size_t k = 0; k < members; ++k)
    count(later(state, member(a, k), member(b, k), a.own.figures, b.own.figures));
  return out;
}

// When the first person is no longer able, or alive, at the early end of the range.
std::optional<double> early_s(study::CrewState state, const Option& option) {
  return study::range_over(option.own.figures.*state, option.members, state, &outcome::CrewTimes::first_s)
      .earliest_s;
}

// The order over the whole range, in one sentence that leads.
std::string range_verdict(study::CrewState state, Ahead central, const Option& a, const Option& b,
                          const Pair& pair) {
  const Order order = order_of(state, central, a, b);
  const Ahead early =
      outcome::later(early_s(state, a), a.own.figures.horizon_s, early_s(state, b), b.own.figures.horizon_s);
  const bool first = order.first > 0 || early == Ahead::first,
             second = order.second > 0 || early == Ahead::second;
  if (first && second) {
    const bool more_first = order.first > order.second, more_second = order.second > order.first;
    if ((early == Ahead::first && more_second) || (early == Ahead::second && more_first))
      return fmt::format("No clear order: {} lasts longer if things go badly, {} in more of the runs. ",
                         pair.name(early), more_first ? pair.first_name : pair.second_name);
    return "No clear order: it hangs on what nobody has measured. ";
  }
  if (!first && !second)
    return fmt::format("The model cannot separate {} and {}. ", pair.first_name, pair.second_name);
  return fmt::format("{} lasts longer{}. ", capitalised(first ? pair.first_name : pair.second_name),
                     order.first + order.second < order.runs ? " where the model can separate them" : "");
}

// The early end of each range: "At the early end of the range the first person is able until 63 h (21 Feb
// 07:20 UTC) in option 1, until 27 h (...) in option 2. ". Empty where neither range has one.
std::string early_words(study::CrewState state, const Option& a, const Option& b, const Pair& pair) {
  const std::optional<double> first_s = early_s(state, a), second_s = early_s(state, b);
  if (!first_s && !second_s) return "";
  const double first_horizon_s = a.own.figures.horizon_s, second_horizon_s = b.own.figures.horizon_s;
  const Ahead ahead = outcome::later(first_s, first_horizon_s, second_s, second_horizon_s);
  const auto until = [](const std::optional<double>& at_s, const Option& option) {
    const scenario::ValidScenario& scenario = *option.own.scenario;
    if (!at_s) return "beyond " + horizon(option.own.figures.horizon_s);
    const Clocks clock{scenario.start_unix_s, zone_hours(scenario.scenario.position.longitude_deg)};
    return fmt::format("until {} ({})", duration(*at_s), clock.utc(*at_s));
  };
  return fmt::format("At the early end of the range the first person is {} {} in {}, {} in {}{}. ",
                     state == &outcome::Endurance::able ? "able" : "alive", until(first_s, a),
                     pair.first_name, until(second_s, b), pair.second_name,
                     ahead == Ahead::indistinguishable ? ": the model cannot separate them" : "");
}

// What the range says of the order, in one sentence; empty where it has nothing to add.
std::string order_words(study::CrewState state, Ahead ahead, const Option& a, const Option& b,
                        const Pair& pair) {
  const Order order = order_of(state, ahead, a, b);
  if (order.first + order.second == 0) return "";
  const std::string of_runs = fmt::format("of {} runs over what nobody has measured", order.runs);
  if (ahead == Ahead::indistinguishable) {
    const std::size_t open = order.runs - order.first - order.second;
    return fmt::format(" {} {} lasts longer in {}, {} in {}{}.", capitalised(of_runs), pair.first_name,
                       order.first, pair.second_name, order.second,
                       open > 0 ? fmt::format("; in {} the model cannot separate them", open) : "");
  }
  const std::size_t same = ahead == Ahead::first ? order.first : order.second,
                    turned = ahead == Ahead::first ? order.second : order.first;
  if (turned > 0) return fmt::format(" In {} {} the order turns: do not rely on it.", turned, of_runs);
  if (same < order.runs)
    return fmt::format(" In {} {} the model cannot separate them.", order.runs - same, of_runs);
  return fmt::format(" It is the same in all {} runs over what nobody has measured.", order.runs);
}

std::string margin(const Figures& figures) {
  if (figures.next_limit == system::Limit::none) return "no limit in sight";
  return fmt::format("{} ({})", margin_left_pct(figures.next_margin_fraction),
                     outcome::short_cause(figures.next_limit));
}

// Where nobody reaches a limit, how far off the nearest is; nothing otherwise.
std::string margins(const Pair& pair) {
  const Figures &a = pair.first.figures, &b = pair.second.figures;
  if (a.able.first_s || b.able.first_s) return "";
  std::string text = fmt::format(" To the nearest limit, {} has {}, {} has {}", pair.first_name, margin(a),
                                 pair.second_name, margin(b));
  const double gap = b.next_margin_fraction - a.next_margin_fraction;
  if (std::abs(gap) < constants::margins_apart_fraction || a.next_limit == system::Limit::none ||
      b.next_limit == system::Limit::none)
    return text + ".";
  return text + fmt::format(": {} has the larger margin.", gap > 0 ? pair.second_name : pair.first_name);
}

std::string time_sentence(const char* what, study::CrewState times, const Pair& pair) {
  const Figures &a = pair.first.figures, &b = pair.second.figures;
  const auto &first = (a.*times).first_s, &second = (b.*times).first_s;
  const Ahead ahead = later(times, a, b);
  if (!first && !second && a.horizon_s == b.horizon_s)
    return fmt::format("{}: the model cannot separate them (neither within {}).", what, horizon(a.horizon_s));
  if (ahead == Ahead::indistinguishable)
    return fmt::format("{}: the model cannot separate them ({}, {}).", what, time_words(first, a.horizon_s),
                       time_words(second, b.horizon_s));
  const bool one = ahead == Ahead::first;
  const auto &late = one ? first : second, &early = one ? second : first;
  const double late_horizon_s = one ? a.horizon_s : b.horizon_s,
               early_horizon_s = one ? b.horizon_s : a.horizon_s;
  const system::Limit limit = one ? (times == &outcome::Endurance::able ? b.able_limit : b.alive_limit)
                                  : (times == &outcome::Endurance::able ? a.able_limit : a.alive_limit);
  return fmt::format("{}: {} is ahead by {}{}: {}, against {} ({}).", what, pair.name(ahead),
                     late ? "" : "more than ", duration(late.value_or(late_horizon_s) - *early),
                     time_words(late, late_horizon_s), time_words(early, early_horizon_s),
                     outcome::short_cause(limit));
}

// Of one case each; begins with a small letter.
std::string overall(Ahead able, Ahead alive, const Pair& pair) {
  const auto never = [](const Compared& c) { return !c.figures.able.first_s && !c.figures.alive.first_s; };
  if (never(pair.first) && never(pair.second))
    return fmt::format("nobody reaches a limit within {}, in {} or in {}.",
                       horizon(std::min(pair.first.figures.horizon_s, pair.second.figures.horizon_s)),
                       pair.first_name, pair.second_name);
  if (able == Ahead::indistinguishable && alive == Ahead::indistinguishable)
    return fmt::format("the model cannot separate {} and {}, in able until or in alive until.",
                       pair.first_name, pair.second_name);
  if (able != Ahead::indistinguishable && alive != Ahead::indistinguishable && able != alive)
    return fmt::format(
        "{} is able longer, {} is alive longer: which is better depends on what matters to you.",
        pair.name(able), pair.name(alive));
  const Ahead ahead = able != Ahead::indistinguishable ? able : alive;
  const std::string& behind = ahead == Ahead::first ? pair.second_name : pair.first_name;
  return fmt::format("{} is ahead of {} in {}.", pair.name(ahead), behind,
                     able == alive ? "able until and alive until"
                     : able != Ahead::indistinguishable
                         ? "able until; in alive until the model cannot separate them"
                         : "alive until; in able until the model cannot separate them");
}

// One direction for the two times together; conflicting ones give none.
Ahead one_order(Ahead able, Ahead alive) {
  if (able == alive || alive == Ahead::indistinguishable) return able;
  return able == Ahead::indistinguishable ? alive : Ahead::indistinguishable;
}

struct Cause {
  double kelvin;  // positive: makes the second warmer
  const char* name;
  std::string words;
};

std::string against(const char* what, double warm, double other, const char* unit) {
  return fmt::format("{} {} {}, against {}", what, two_figures(warm), unit, two_figures(other));
}

std::vector<Cause> causes(const outcome::CabinHeat& a, const outcome::CabinHeat& b, bool second_warmer) {
  const auto because = outcome::warmer_because(a, b);
  if (!because) return {};
  const outcome::CabinHeat &warm = second_warmer ? b : a, &other = second_warmer ? a : b;
  const std::size_t w = second_warmer ? 1 : 0, o = 1 - w;
  return {
      {because->canopy_K, "its canopy passes less heat",
       against("its canopy passes, for each kelvin between inside and outside,", because->canopy_W_K[w],
               because->canopy_W_K[o], "W")},
      {because->air_K, "less air passes",
       against("its openings and leaks pass, for each kelvin,", because->air_W_K[w], because->air_W_K[o],
               "W")},
      {because->bodies_K, "its bodies give more heat",
       against("its bodies give", warm.bodies_W, other.bodies_W, "W")},
      {because->sun_K, "more sun comes in", against("the sun brings", warm.sun_W, other.sun_W, "W")},
      {because->sea_K, "it loses less to the sea",
       against("floor and tubes lose to the sea", warm.sea_W, other.sea_W, "W")},
      {because->outside_K, "the air outside is warmer",
       against("the air outside is at", warm.outside_degC, other.outside_degC, "°C")},
      {because->rest_K, "of condensation and stored heat",
       "condensation on its canopy and stored heat make up the rest"},
  };
}

// "a (1.9 °C); b (0.6 °C); against that, c (-0.3 °C)"
std::string causes_words(std::vector<Cause> list, double difference_K) {
  constexpr double worth_telling = 0.2;  // of the difference
  constexpr std::size_t most_told = 3;
  std::stable_sort(list.begin(), list.end(),
                   [](const Cause& a, const Cause& b) { return std::abs(a.kelvin) > std::abs(b.kelvin); });
  std::string with, opposed;
  std::size_t told = 0;
  for (const Cause& cause : list) {
    const double kelvin = difference_K < 0 ? -cause.kelvin : cause.kelvin;  // positive: in its favour
    if (std::abs(kelvin) < worth_telling * std::abs(difference_K) || told == most_told) continue;
    ++told;
    std::string& part = kelvin > 0 ? with : opposed;
    part += fmt::format("{}{} ({} °C)", part.empty() ? "" : "; ", cause.words, two_figures(kelvin));
  }
  if (with.empty() && opposed.empty()) return "";
  if (opposed.empty()) return ", because " + with;
  return fmt::format("{}{}; against that, {}", with.empty() ? "" : ", because ", with, opposed);
}

// The flows themselves, where a cabin is too near to the outside to speak of watts for each kelvin.
std::string flows_words(const outcome::CabinHeat& warm, const outcome::CabinHeat& other) {
  return fmt::format(
      ": bodies give {} against {} W, the sun {} against {}; canopy loses {} against {}, openings and leaks "
      "{} against {}, floor and tubes {} against {}",
      two_figures(warm.bodies_W), two_figures(other.bodies_W), two_figures(warm.sun_W),
      two_figures(other.sun_W), two_figures(warm.canopy_W), two_figures(other.canopy_W),
      two_figures(warm.air_W), two_figures(other.air_W), two_figures(warm.sea_W), two_figures(other.sea_W));
}

// "Inside: option 1 is 4.0 °C warmer on average, 18 °C against 14 °C, mostly because its canopy passes less
// heat."
std::string inside_sentence(const Pair& pair, const outcome::Window& window) {
  if (!pair.first.timeline->in_raft || !pair.second.timeline->in_raft) return "";
  const outcome::CabinHeat a = cabin_heat(*pair.first.timeline, window),
                           b = cabin_heat(*pair.second.timeline, window);
  const double difference_K = b.inside_degC - a.inside_degC;
  if (std::abs(difference_K) < constants::temperatures_apart_K)
    return fmt::format("Inside: the model cannot separate them, {} and {} on average.",
                       temperature(a.inside_degC), temperature(b.inside_degC));
  const bool second = difference_K > 0;
  const std::vector<Cause> list = causes(a, b, second);
  const auto most = std::max_element(list.begin(), list.end(), [second](const Cause& x, const Cause& y) {
    return (second ? x.kelvin : -x.kelvin) < (second ? y.kelvin : -y.kelvin);
  });
  return fmt::format("Inside: {} is {} °C warmer on average, {} against {}{}.",
                     second ? pair.second_name : pair.first_name, two_figures(std::abs(difference_K)),
                     temperature((second ? b : a).inside_degC), temperature((second ? a : b).inside_degC),
                     most == list.end() ? "" : fmt::format(", mostly because {}", most->name));
}

std::string cabin_sentence(const Pair& pair, const outcome::Window& window) {
  if (!pair.first.timeline->in_raft || !pair.second.timeline->in_raft) return "";
  const outcome::CabinHeat a = cabin_heat(*pair.first.timeline, window),
                           b = cabin_heat(*pair.second.timeline, window);
  const double difference_K = b.inside_degC - a.inside_degC;
  if (std::abs(difference_K) < constants::temperatures_apart_K)
    return fmt::format("Inside: the model cannot separate them, {} and {} on average.",
                       temperature(a.inside_degC), temperature(b.inside_degC));
  const bool second = difference_K > 0;
  const outcome::CabinHeat &warm = second ? b : a, &other = second ? a : b;
  const std::vector<Cause> list = causes(a, b, second);
  return fmt::format("Inside: {} is {} °C warmer on average over {}, {} against {}{}.",
                     second ? pair.second_name : pair.first_name, two_figures(std::abs(difference_K)),
                     duration(window.to_s - window.from_s), temperature(warm.inside_degC),
                     temperature(other.inside_degC),
                     list.empty() ? flows_words(warm, other) : causes_words(list, difference_K));
}

std::string body_sentence(const Pair& pair, const outcome::Window& window) {
  const outcome::BodyHeat a = body_heat(*pair.first.timeline, window),
                          b = body_heat(*pair.second.timeline, window);
  struct Path {
    const char* to;
    double outcome::BodyHeat::*watts;
  };
  constexpr Path paths[] = {{"to the air", &outcome::BodyHeat::air_W},
                            {"to the canopy or sky", &outcome::BodyHeat::canopy_W},
                            {"to floor and tubes", &outcome::BodyHeat::floor_W},
                            {"to water", &outcome::BodyHeat::water_W},
                            {"by evaporation", &outcome::BodyHeat::evaporation_W},
                            {"by breath", &outcome::BodyHeat::breath_W}};
  const Path* largest =
      std::max_element(std::begin(paths), std::end(paths), [&](const Path& x, const Path& y) {
        return std::abs(b.*x.watts - a.*x.watts) < std::abs(b.*y.watts - a.*y.watts);
      });
  constexpr double worth_telling = 0.05;  // of the heat a body makes
  const double gap_W = b.*largest->watts - a.*largest->watts;
  if (std::abs(gap_W) < worth_telling * std::max(a.made_W, b.made_W)) return "";
  const bool second = gap_W < 0;
  return fmt::format(
      "Each body: the largest difference is heat lost {}, {} W less in {} ({} against {} W); shivering {} W "
      "in {}, "
      "{} W in {}.",
      largest->to, two_figures(std::abs(gap_W)), second ? pair.second_name : pair.first_name,
      two_figures(second ? b.*largest->watts : a.*largest->watts),
      two_figures(second ? a.*largest->watts : b.*largest->watts), two_figures(a.shivering_W),
      pair.first_name, two_figures(b.shivering_W), pair.second_name);
}

std::string water_sentence(const Pair& pair, const outcome::Window& window) {
  const outcome::WaterFlows a = water_flows(*pair.first.timeline, window),
                            b = water_flows(*pair.second.timeline, window);
  const double gap_pct = b.deficit_pct - a.deficit_pct;
  if (std::abs(gap_pct) < constants::deficits_apart_pct) return "";
  const bool second = gap_pct < 0;
  const outcome::WaterFlows &better = second ? b : a, &other = second ? a : b;
  return fmt::format(
      "Water: after {} {} has the smaller deficit, {} of body mass against {}; each has drunk {} L against "
      "{}, "
      "lost {} L "
      "against {} as urine and {} L against {} through the skin.",
      duration(window.to_s), second ? pair.second_name : pair.first_name, percent(better.deficit_pct),
      percent(other.deficit_pct), two_figures(better.drunk_L), two_figures(other.drunk_L),
      two_figures(better.urine_L), two_figures(other.urine_L), two_figures(better.sweat_L),
      two_figures(other.sweat_L));
}

std::string air_sentence(const Pair& pair) {
  const double a_h = pair.first.figures.foul_air_h, b_h = pair.second.figures.foul_air_h;
  if (std::abs(a_h - b_h) < constants::foul_air_apart_h) return "";
  return fmt::format("Air: CO2 above 5,000 ppm: {} in {}, {} in {}.", foul_air(pair.first.figures),
                     pair.first_name, foul_air(pair.second.figures), pair.second_name);
}

std::string stores_sentence(Ahead own, Ahead equal, const Pair& pair) {
  if (own == equal)
    return own == Ahead::indistinguishable
               ? ""
               : fmt::format(" So {} is ahead even without its stores.", pair.name(own));
  if (own == Ahead::indistinguishable)
    return " So its stores make up for all other differences, or the other way round.";
  if (equal == Ahead::indistinguishable)
    return fmt::format(" So its stores are what puts {} ahead.", pair.name(own));
  return fmt::format(" So the order turns: with its stores {} is ahead, without them {}.", pair.name(own),
                     pair.name(equal));
}

}  // namespace

std::string runs_of_each(const Comparison& comparison) {
  std::size_t members = 0;
  for (const Option& option : comparison.options) members = std::max(members, option.members.size());
  return "each option: " + what_the_range_is(members, *comparison.options.front().own.scenario);
}

std::string one_case_each(const Comparison& comparison) {
  const bool drawn = std::any_of(comparison.options.begin(), comparison.options.end(),
                                 [](const Option& option) { return option.futures.has_value(); });
  return capitalised(runs_of_each(comparison)) + (drawn ? ". The common futures give the odds." : ".");
}

std::vector<Conclusion> conclusions(const Comparison& comparison) {
  std::vector<Conclusion> out;
  const Option& base = comparison.options.front();
  for (std::size_t i = 1; i < comparison.options.size(); ++i) {
    const Option& option = comparison.options[i];
    const Pair pair{base.own, option.own, "option 1", fmt::format("option {}", i + 1)};
    Conclusion conclusion;
    const auto add = [](std::vector<std::string>& list, const std::string& words) {
      if (!words.empty()) list.push_back(capitalised(words));
    };
    const Ahead able = later(&Figures::able, base.own.figures, option.own.figures),
                alive = later(&Figures::alive, base.own.figures, option.own.figures);
    const bool ranged = !base.members.empty() || !option.members.empty();
    const bool by_able = able != Ahead::indistinguishable || alive == Ahead::indistinguishable;
    const std::string central = ranged ? "in the central case " : "";
    const study::CrewState leads = by_able ? &Figures::able : &Figures::alive;
    const std::string early = ranged ? range_verdict(leads, by_able ? able : alive, base, option, pair) +
                                           early_words(leads, base, option, pair)
                                     : "";
    const std::string order_able = order_words(&Figures::able, able, base, option, pair),
                      order_alive = order_words(&Figures::alive, alive, base, option, pair);
    add(conclusion.verdict,
        early + capitalised(central + overall(able, alive, pair)) + (by_able ? order_able : order_alive));
    conclusion.brief = conclusion.verdict;
    add(conclusion.verdict,
        time_sentence("Able until, first person", &Figures::able, pair) + order_able + margins(pair));
    add(conclusion.verdict, time_sentence("Alive until, first person", &Figures::alive, pair) + order_alive);
    const outcome::Window window = outcome::common_window(*base.own.timeline, *option.own.timeline);
    if (window.to_s > window.from_s) {
      add(conclusion.brief, inside_sentence(pair, window));
      add(conclusion.warmth, cabin_sentence(pair, window));
      add(conclusion.warmth, body_sentence(pair, window));
      add(conclusion.others, water_sentence(pair, window));
    }
    add(conclusion.others, air_sentence(pair));
    if (option.equal) {
      const Pair equal{base.own, *option.equal, pair.first_name, pair.second_name};
      const Ahead equal_able = later(&Figures::able, base.own.figures, option.equal->figures),
                  equal_alive = later(&Figures::alive, base.own.figures, option.equal->figures);
      add(conclusion.others,
          central + "with the stores of option 1 in both, " + overall(equal_able, equal_alive, equal) +
              stores_sentence(one_order(able, alive), one_order(equal_able, equal_alive), pair) +
              margins(equal));
    }
    out.push_back(std::move(conclusion));
  }
  return out;
}

std::vector<std::string> all_of(const Conclusion& conclusion) {
  std::vector<std::string> out = conclusion.verdict;
  for (const auto* more : {&conclusion.warmth, &conclusion.others})
    out.insert(out.end(), more->begin(), more->end());
  return out;
}

}  // namespace bide::report
