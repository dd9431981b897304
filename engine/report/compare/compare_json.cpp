// A comparison for other programs.
#include "bide/outcome/cause.hpp"
#include "bide/report/compare/compare.hpp"
#include "bide/report/json/common.hpp"
#include "bide/report/words/text.hpp"
#include "bide/report/words/words.hpp"
#include "bide/scenario/differences.hpp"

namespace bide::report {
namespace comparison_result {
namespace {

using outcome::Figures;
using study::Chance, study::Paired, study::PairedFutures;
using Text = std::optional<std::string>;

constexpr std::size_t most_letters = 400;

// ---- figures of one run
// -----------------------------------------------------------------------------------------

struct Times {
  const outcome::CrewTimes* times;
  double horizon_s;
};
Shape<Times> times_shape() {
  return Shape<Times>()
      .with("first_h", [](const Times& t) { return hours_of(t.times->first_s); })
      .with("half_h", [](const Times& t) { return hours_of(t.times->half_s); })
      .with("last_h", [](const Times& t) { return hours_of(t.times->last_s); })
      .with("reached_count", [](const Times& t) { return t.times->reached; })
      .with("persons_count", [](const Times& t) { return t.times->persons; })
      .with("null_means",
            [](const Times& t) { return t.times->last_s ? Text() : Text(not_reached(t.horizon_s)); });
}

Text cause(system::Limit limit) {
  return limit == system::Limit::none ? Text() : Text(outcome::short_cause(limit));
}

Shape<Figures> figures_shape() {
  using outcome::Coldest;
  const auto coldest = Shape<Coldest>()
                           .with("degC", [](const Coldest& c) { return c.degC; })
                           .with("at_h", [](const Coldest& c) { return c.time_s / hour_s; })
                           .with("by_night", [](const Coldest& c) { return c.dark; });
  using outcome::StoreOutcome;
  const auto store = Shape<StoreOutcome>()
                         .with("store", [](const StoreOutcome& s) { return plain(s.name); })
                         .with("at_h", [](const StoreOutcome& s) { return s.at_s / hour_s; });
  return Shape<Figures>()
      .part("able_until", times_shape(),
            [](const Figures& f) {
              return Times{&f.able, f.horizon_s};
            })
      .part("alive_until", times_shape(),
            [](const Figures& f) {
              return Times{&f.alive, f.horizon_s};
            })
      .with("able_ended_by", [](const Figures& f) { return cause(f.able_limit); })
      .with("alive_ended_by", [](const Figures& f) { return cause(f.alive_limit); })
      .with("next_limit", [](const Figures& f) { return cause(f.next_limit); })
      .with("next_limit_margin_left_fraction", [](const Figures& f) { return f.next_margin_fraction; })
      .part("coldest_inside", coldest, [](const Figures& f) { return f.coldest_inside; })
      .with("lowest_core_degC", [](const Figures& f) { return f.lowest_core_degC; })
      .with("highest_core_degC", [](const Figures& f) { return f.highest_core_degC; })
      .with("worst_water_deficit_pct", [](const Figures& f) { return f.worst_water_deficit_pct; })
      .with("co2_above_5000_ppm_h",
            [](const Figures& f) { return f.in_raft ? std::optional(f.foul_air_h) : std::nullopt; })
      .with("highest_co2_ppm",
            [](const Figures& f) { return f.in_raft ? std::optional(f.highest_co2_ppm) : std::nullopt; })
      .parts("stores_out", store,
             [](const Figures& f) {
               std::vector<StoreOutcome> out;
               for (const StoreOutcome& each : f.stores)
                 if (each.state == outcome::StoreState::runs_out) out.push_back(each);
               return out;
             })
      .with("horizon_h", [](const Figures& f) { return f.horizon_s / hour_s; });
}

// ---- common futures
// -----------------------------------------------------------------------------------------------

Shape<PairedFutures> futures_shape() {
  const auto chance = Shape<Chance>()
                          .with("count", [](const Chance& c) { return c.count; })
                          .with("share", [](const Chance& c) { return c.share; })
                          .with("share_low", [](const Chance& c) { return c.interval.low; })
                          .with("share_high", [](const Chance& c) { return c.interval.high; });
  const auto paired =
      Shape<Paired>()
          .with("futures", [](const Paired& p) { return p.samples; })
          .part("this_option_longer", chance, [](const Paired& p) { return p.second_longer; })
          .part("option_1_longer", chance, [](const Paired& p) { return p.first_longer; })
          .part("same_time", chance, [](const Paired& p) { return p.same; })
          .part("both_beyond_horizon", chance, [](const Paired& p) { return p.indistinguishable; })
          .with(
              "median_difference_h", [](const Paired& p) { return p.median_difference; },
              "this option less option 1, within the horizon")
          .with("median_low_h", [](const Paired& p) { return p.median_low; })
          .with("median_high_h", [](const Paired& p) { return p.median_high; })
          .with("median_where_they_differ_h", [](const Paired& p) { return p.median_where_apart; })
          .with("mean_difference_h", [](const Paired& p) { return p.mean_difference; })
          .with("mean_low_h", [](const Paired& p) { return p.mean_interval.low; })
          .with("mean_high_h", [](const Paired& p) { return p.mean_interval.high; });
  return Shape<PairedFutures>()
      .with("against_option", [](const PairedFutures&) { return 1; })
      .with("drawn", [](const PairedFutures& f) { return f.drawn; })
      .with("without_result", [](const PairedFutures& f) { return f.without_result; })
      .with("horizon_h", [](const PairedFutures& f) { return f.horizon_h; })
      .with("confidence", [](const PairedFutures& f) { return f.confidence; })
      .part("able_until_first_person", paired, [](const PairedFutures& f) { return f.able; })
      .part("alive_until_first_person", paired, [](const PairedFutures& f) { return f.alive; });
}

// ---- the comparison
// -------------------------------------------------------------------------------------------------

struct Numbered {
  const Option* option;
  std::size_t number;
};
Shape<Numbered> option_shape() {
  return Shape<Numbered>()
      .with("option", [](const Numbered& n) { return n.number; })
      .with("label", [](const Numbered& n) { return plain(n.option->label, Letters::utf8, most_letters); })
      .with("name", [](const Numbered& n) { return plain(n.option->own.scenario->scenario.name); })
      .part(
          "own_stores", figures_shape(),
          [](const Numbered& n) -> const auto& { return n.option->own.figures; })
      .part("equal_stores", figures_shape(),
            [](const Numbered& n) {
              return n.option->equal ? std::optional(n.option->equal->figures) : std::nullopt;
            })
      .with("equal_stores_refused",
            [](const Numbered& n) {
              const std::string& why = n.option->equal_refused;
              return why.empty() ? Text() : Text(plain(why, Letters::utf8, most_letters));
            })
      .part(
          "range", range_shape(),
          [](const Numbered& n) {
            const Figures& own = n.option->own.figures;
            return range_of(own.able, own.alive, n.option->members, own.horizon_s);
          },
          range_sentence)
      .part("common_futures", futures_shape(), [](const Numbered& n) { return n.option->futures; })
      .parts(
          "cautions", caution_shape(),
          [](const Numbered& n) -> const auto& { return n.option->own.scenario->cautions; });
}

using scenario::Difference;
// @param name what the places that differ are called: "pointer" or "item"
Shape<Difference> difference_shape(const char* name) {
  const auto value = Shape<scenario::InForce>()
                         .with("value", [](const scenario::InForce& i) { return plain(i.value); })
                         .with("default", [](const scenario::InForce& i) { return i.filled_in; });
  return Shape<Difference>()
      .with(name, [](const Difference& d) { return plain(d.pointer); })
      .with("unit", [](const Difference& d) { return d.unit; })
      .parts(
          "values", value, [](const Difference& d) -> const auto& { return d.values; },
          "one for each option");
}

std::vector<const scenario::ValidScenario*> scenarios(const Comparison& comparison) {
  std::vector<const scenario::ValidScenario*> out;
  for (const Option& option : comparison.options) out.push_back(option.own.scenario);
  return out;
}

struct Told {
  std::size_t option;
  std::vector<std::string> sentences;
};

const Shape<Comparison>& comparison_shape() {
  const auto told = Shape<Told>()
                        .with("option", [](const Told& t) { return t.option; })
                        .with("against_option", [](const Told&) { return 1; })
                        .with("sentences", [](const Told& t) { return t.sentences; });
  static const Shape<Comparison> shape =
      result_shape<Comparison>(comparison_format)
          .with("one_case", [](const Comparison& c) { return one_case_each(c); })
          .with(
              "no_common_futures",
              [](const Comparison& c) { return c.no_futures.empty() ? Text() : Text(c.no_futures); },
              "why there are none")
          .parts("inputs_that_differ", difference_shape("pointer"),
                 [](const Comparison& c) { return scenario::differences(scenarios(c)); })
          .parts("stores_that_differ", difference_shape("item"),
                 [](const Comparison& c) { return scenario::differences_aboard(scenarios(c)); })
          .word("equal_stores", {"all options carry the same", "those of option 1"},
                [](const Comparison& c) {
                  return c.same_stores ? "all options carry the same" : "those of option 1";
                })
          .parts("options", option_shape(),
                 [](const Comparison& c) {
                   std::vector<Numbered> out;
                   for (const Option& option : c.options) out.push_back({&option, out.size() + 1});
                   return out;
                 })
          .parts("conclusions", told, [](const Comparison& c) {
            std::vector<Told> out;
            for (const Conclusion& each : conclusions(c)) out.push_back({out.size() + 2, all_of(each)});
            return out;
          });
  return shape;
}

}  // namespace
}  // namespace comparison_result

std::string comparison_json(const Comparison& comparison) {
  return json_text(comparison_result::comparison_shape().of(comparison));
}

std::string comparison_schema() {
  return comparison_result::comparison_shape().schema_text("Result of bide compare");
}

}  // namespace bide::report
