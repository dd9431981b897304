// Odds for other programs.
#include <array>

#include "bide/core/units.hpp"
#include "bide/report/json/common.hpp"
#include "bide/report/odds/odds.hpp"
#include "bide/report/words/words.hpp"
#include "bide/study/sampling/distribution.hpp"

namespace bide::report {
namespace odds_result {
namespace {

using study::Chance, study::HelpOdds, study::LaunchOdds, study::Window;
using Windows = std::array<Window, study::who_count>;
using Odds = study::OddsAnswer;

constexpr const char* null_is_beyond = "null: beyond the horizon";

Shape<Chance> chance_shape() {
  return Shape<Chance>()
      .with("count", [](const Chance& c) { return c.count; })
      .with(
          "share", [](const Chance& c) { return Exact{c.share}; }, "of the futures")
      .with("low", [](const Chance& c) { return Exact{c.interval.low}; })
      .with("high", [](const Chance& c) { return Exact{c.interval.high}; });
}

struct Until {
  double share;
  const study::QuantileByRank* rank;
};
Shape<Window> window_shape() {
  const auto until = Shape<Until>()
                         .with("share_ended", [](const Until& u) { return u.share; })
                         .with(
                             "at_h", [](const Until& u) { return Exact{u.rank->time}; }, null_is_beyond)
                         .with(
                             "low_h", [](const Until& u) { return Exact{u.rank->low}; }, null_is_beyond)
                         .with(
                             "low_known", [](const Until& u) { return u.rank->low_known; },
                             "false: too few futures to say where the interval begins")
                         .with(
                             "high_h", [](const Until& u) { return Exact{u.rank->high}; }, null_is_beyond)
                         .with("high_known", [](const Until& u) { return u.rank->high_known; });
  return Shape<Window>()
      .parts("until", until,
             [](const Window& w) {
               std::vector<Until> out;
               for (std::size_t q = 0; q < study::quantiles.size(); ++q)
                 out.push_back({study::quantiles[q], &w.until[q]});
               return out;
             })
      .part("not_reached_within_horizon", chance_shape(), [](const Window& w) { return w.beyond; });
}
Shape<Windows> windows_shape() {
  return Shape<Windows>()
      .part("first_person", window_shape(), [](const Windows& w) { return w[study::first_person]; })
      .part("half_of_crew", window_shape(), [](const Windows& w) { return w[study::half_of_crew]; })
      .part("last_person", window_shape(), [](const Windows& w) { return w[study::last_person]; });
}

Shape<study::AtTime> at_time_shape() {
  using At = study::AtTime;
  return Shape<At>()
      .with("at_h", [](const At& t) { return Exact{t.at_h}; })
      .part("all_able", chance_shape(), [](const At& t) { return t.all_able; })
      .part("some_able", chance_shape(), [](const At& t) { return t.some_able; })
      .part("all_alive", chance_shape(), [](const At& t) { return t.all_alive; })
      .part("some_alive", chance_shape(), [](const At& t) { return t.some_alive; });
}

std::vector<std::pair<std::string, Exact>> named_shares(const study::CauseShares& shares) {
  std::vector<std::pair<std::string, Exact>> out;
  for (const auto& [limit, part] : shares) out.emplace_back(system::name_of(limit), Exact{part});
  return out;
}

Shape<study::Aboard> aboard_shape() {
  using study::Aboard;
  return Shape<Aboard>()
      .with(
          "coldest_low_degC", [](const Aboard& a) { return Exact{a.coldest_low_degC}; },
          "inside; 1 in 10 futures with a cabin comes lower; null: no cabin in any")
      .with("coldest_middle_degC", [](const Aboard& a) { return Exact{a.coldest_middle_degC}; })
      .with("coldest_high_degC", [](const Aboard& a) { return Exact{a.coldest_high_degC}; })
      .part(
          "no_water", chance_shape(), [](const Aboard& a) { return a.no_water; },
          "no drinking water aboard at the start")
      .part(
          "water_out", chance_shape(), [](const Aboard& a) { return a.water_out; },
          "what there was runs out within the horizon")
      .with(
          "water_out_middle_h", [](const Aboard& a) { return Exact{a.water_out_middle_h}; },
          "by which half of those futures have run out; null: none has");
}

Shape<study::CausesBy> causes_shape() {
  return Shape<study::CausesBy>()
      .with("by_h", [](const study::CausesBy& c) { return Exact{c.by_h}; })
      .named_values(
          "first_able_ended_by", [](const study::CausesBy& c) { return named_shares(c.ended); },
          "share of the futures, by the limit that ended it");
}

// Help as the scenario states it, and what came of it.
struct Help {
  const HelpOdds* odds;
  const scenario::Rescue* rescue;
};
Shape<Help> help_shape() {
  using Above = scenario::HeldBackAbove;
  const auto held = [](const Help& h) { return h.rescue->held_back_above.has_value(); };
  const auto above = Shape<Above>()
                         .with("wind_speed_m_s", [](const Above& a) { return Exact{a.wind_speed_m_s}; })
                         .with("wave_height_m", [](const Above& a) { return Exact{a.wave_height_m}; });
  const auto needed =
      Shape<Help>()
          .with("low", [](const Help& h) { return Exact{study::rescue_h(*h.rescue, 0.1)}; })
          .with("middle", [](const Help& h) { return Exact{study::rescue_h(*h.rescue, 0.5)}; })
          .with("high", [](const Help& h) { return Exact{study::rescue_h(*h.rescue, 0.9)}; });
  using Held = study::HeldBack;
  const auto back =
      Shape<Held>()
          .part("at_all", chance_shape(), [](const Held& h) { return h.at_all; })
          .part("no_weather_within_horizon", chance_shape(), [](const Held& h) { return h.no_weather; })
          .with("low_h", [](const Held& h) { return Exact{h.low_h}; })
          .with("middle_h", [](const Held& h) { return Exact{h.middle_h}; })
          .with("high_h", [](const Held& h) { return Exact{h.high_h}; });
  return Shape<Help>()
      .part("while_all_able", chance_shape(), [](const Help& h) { return h.odds->all_able; })
      .part("while_some_able", chance_shape(), [](const Help& h) { return h.odds->some_able; })
      .part("while_all_alive", chance_shape(), [](const Help& h) { return h.odds->all_alive; })
      .part("while_some_alive", chance_shape(), [](const Help& h) { return h.odds->some_alive; })
      .part("none_within_horizon", chance_shape(), [](const Help& h) { return h.odds->none_by_horizon; })
      .word("independent_of_weather_and_crew", {"assumed"}, [](const Help&) { return "assumed"; })
      .where([held](const Help& h) { return !held(h); })
      .word("independent_of_crew", {"assumed"}, [](const Help&) { return "assumed"; })
      .where(held)
      .part("held_back_above", above, [](const Help& h) { return *h.rescue->held_back_above; })
      .where(held)
      .part(
          "needed_h", needed, [](const Help& h) { return h; }, "without weather that holds it back")
      .where(held)
      .part("held_back", back, [](const Help& h) { return h.odds->held_back; })
      .where(held);
}

Shape<LaunchOdds> launch_shape() {
  using Reached = study::ReachedOdds;
  const auto reached =
      Shape<Reached>()
          .part("share", chance_shape(), [](const Reached& r) { return r.share; })
          .with("median_first_able_h", [](const Reached& r) { return Exact{r.first_able_h}; })
          .with("median_last_alive_h", [](const Reached& r) { return Exact{r.last_alive_h}; });
  const auto minutes = Shape<LaunchOdds>()
                           .with("low", [](const LaunchOdds& l) { return Exact{l.low_min}; })
                           .with("middle", [](const LaunchOdds& l) { return Exact{l.middle_min}; })
                           .with("high", [](const LaunchOdds& l) { return Exact{l.high_min}; });
  return Shape<LaunchOdds>()
      .part("dry", reached, [](const LaunchOdds& l) { return l.reached[0]; })
      .part("wet", reached, [](const LaunchOdds& l) { return l.reached[1]; })
      .part("never", reached, [](const LaunchOdds& l) { return l.reached[2]; })
      .named("lost_by", chance_shape(),
             [](const LaunchOdds& l) {
               constexpr std::array<const char*, study::ways_to_lose> lost{
                   "nothing",        "painter_not_fast", "swept_off",    "held_down",   "too_shallow",
                   "lift_too_small", "not_inflating",    "pulled_under", "not_righted", "nobody_climbed_in"};
               std::vector<std::pair<std::string, Chance>> out;
               for (std::size_t i = 1; i < study::ways_to_lose; ++i)
                 if (l.lost[i].count > 0) out.emplace_back(lost[i], l.lost[i]);
               return out;
             })
      .part(
          "minutes_in_water", minutes, [](const LaunchOdds& l) { return l; }, "of those who came aboard wet")
      .named(
          "aboard_by_min", chance_shape(),
          [](const LaunchOdds& l) {
            std::vector<std::pair<std::string, Chance>> out;
            for (std::size_t i = 0; i < l.aboard_by.size(); ++i)
              out.emplace_back(std::to_string(static_cast<int>(study::aboard_by_min[i])), l.aboard_by[i]);
            return out;
          },
          "share of the futures in which people are aboard by that minute")
      .part("inverted", chance_shape(), [](const LaunchOdds& l) { return l.inverted; });
}

Shape<study::SignalsLeft> signals_left_shape() {
  using Left = study::SignalsLeft;
  const auto flares = Shape<Left>()
                          .with("low", [](const Left& s) { return Exact{s.low}; })
                          .with("middle", [](const Left& s) { return Exact{s.middle}; })
                          .with("high", [](const Left& s) { return Exact{s.high}; });
  return Shape<Left>()
      .with(
          "futures", [](const Left& s) { return s.futures; }, "in which help comes while somebody is alive")
      .part("flares", flares, [](const Left& s) { return s; })
      .part("some_flares", chance_shape(), [](const Left& s) { return s.some_flares; })
      .part("lamp", chance_shape(), [](const Left& s) { return s.lamp; })
      .part("beacon", chance_shape(), [](const Left& s) { return s.beacon; });
}

Shape<scenario::FirstMinutes> first_minutes_shape() {
  using Range = scenario::FirstMinutes;
  return Shape<Range>()
      .with(
          "low", [](const Range& r) { return Exact{r.low}; }, "share of those who enter the water")
      .with("high", [](const Range& r) { return Exact{r.high}; });
}

Shape<study::Unknown> unknown_shape() {
  using study::Unknown;
  return Shape<Unknown>()
      .with("name", [](const Unknown& u) { return u.name; })
      .word(
          "kind", {"epistemic", "aleatory"},
          [](const Unknown& u) { return u.kind == study::FactorKind::epistemic ? "epistemic" : "aleatory"; })
      .with(
          "variance_share", [](const Unknown& u) { return Exact{u.reduction.of_variance}; },
          "by which the variance of the first person's able until would fall if this were known")
      .with("low", [](const Unknown& u) { return Exact{u.reduction.of_variance_interval.low}; })
      .with("high", [](const Unknown& u) { return Exact{u.reduction.of_variance_interval.high}; })
      .with("width_share", [](const Unknown& u) { return Exact{u.reduction.of_width}; });
}

Shape<study::NestedBands> nested_shape() {
  using Bands = study::NestedBands;
  return Shape<Bands>()
      .with("truths", [](const Bands& b) { return b.outer; })
      .with("cases_each", [](const Bands& b) { return b.inner; })
      .with("median_over_truths_low_h", [](const Bands& b) { return Exact{b.truths_low}; })
      .with("median_over_truths_high_h", [](const Bands& b) { return Exact{b.truths_high}; })
      .with("cases_low_h", [](const Bands& b) { return Exact{b.cases_low}; })
      .with("cases_high_h", [](const Bands& b) { return Exact{b.cases_high}; });
}

const Shape<Odds>& odds_shape() {
  const auto known = Shape<Odds>()
                         .with("alive_at_h", [](const Odds& m) { return Exact{m.known.alive_at_h}; })
                         .with("now_h", [](const Odds& m) { return Exact{m.known.now_h}; });
  const auto failed = Shape<study::FailedSample>()
                          .with("sample", [](const study::FailedSample& f) { return f.index; })
                          .with("reason", [](const study::FailedSample& f) { return f.reason; });
  static const Shape<Odds> shape =
      result_shape<Odds>(odds_format)
          .with("scenario", [](const Odds& m) { return m.scenario.scenario.name; })
          .parts("cautions", caution_shape(), [](const Odds& m) { return m.scenario.cautions; })
          .with("start_time_utc",
                [](const Odds& m) {
                  return iso_minute(m.scenario.start_unix_s - m.started_h_ago.value_or(0) * hour_s);
                })
          .word("hours_count_from", {"now", "start"},
                [](const Odds& m) { return m.started_h_ago ? "now" : "start"; })
          .with("hours_count_from_utc", [](const Odds& m) { return iso_minute(m.scenario.start_unix_s); })
          .with("local_time_is_utc_plus_h",
                [](const Odds& m) { return zone_hours(m.scenario.scenario.position.longitude_deg); })
          .with("seed", [](const Odds& m) { return m.seed; })
          .with("samples", [](const Odds& m) { return m.samples; })
          .with("horizon_h", [](const Odds& m) { return Exact{m.odds.horizon_h}; })
          .with(
              "confidence", [](const Odds& m) { return Exact{m.odds.confidence}; }, "of every low and high")
          .part("known", known, [](const Odds& m) { return m; })
          .with(
              "futures", [](const Odds& m) { return m.odds.futures; }, "that agree with what is known")
          .with("ruled_out", [](const Odds& m) { return m.odds.ruled_out; })
          .part("able", windows_shape(), [](const Odds& m) { return m.odds.able; })
          .part("alive", windows_shape(), [](const Odds& m) { return m.odds.alive; })
          .parts("against_time", at_time_shape(), [](const Odds& m) { return m.odds.times; })
          .parts("causes", causes_shape(), [](const Odds& m) { return m.odds.causes; })
          .named_values(
              "first_alive_ended_by", [](const Odds& m) { return named_shares(m.odds.alive_ended); },
              "share of the futures, by the limit that ended it within the horizon")
          .parts(
              "first_unable", chance_shape(),
              [](const Odds& m) {
                const auto& all = m.odds.first_unable;
                return std::vector<Chance>(all.begin(), all.begin() + std::ssize(m.scenario.scenario.crew));
              },
              "by place in the crew: whose ability ends first, within the horizon; several may at once")
          .part("aboard", aboard_shape(), [](const Odds& m) { return m.odds.aboard; })
          .part("help", help_shape(),
                [](const Odds& m) {
                  return m.odds.help
                             ? std::optional(Help{&*m.odds.help, &*m.scenario.scenario.uncertain->rescue})
                             : std::nullopt;
                })
          .part(
              "lost_in_first_minutes", first_minutes_shape(),
              [](const Odds& m) { return m.scenario.scenario.uncertain->lost_in_first_minutes; },
              "as the scenario states; null: they are left out. How often somebody was lost stands in "
              "first_alive_ended_by")
          .part("launch", launch_shape(), [](const Odds& m) { return m.launch; })
          .part("signals_left_when_help_comes", signals_left_shape(), [](const Odds& m) { return m.signals; })
          .parts("unknowns", unknown_shape(), [](const Odds& m) { return m.unknowns; })
          .part(
              "nested", nested_shape(), [](const Odds& m) { return m.nested; },
              "chance and ignorance apart; null: one kind alone, or too few futures")
          .parts("failed", failed, [](const Odds& m) { return m.failed; });
  return shape;
}

}  // namespace
}  // namespace odds_result

std::string odds_json(const study::OddsAnswer& material) {
  return json_text(odds_result::odds_shape().of(material));
}

std::string odds_schema() {
  return odds_result::odds_shape().schema_text("Result of bide odds");
}

}  // namespace bide::report
