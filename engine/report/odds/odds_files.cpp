#include <fmt/format.h>

#include <array>
#include <nlohmann/json.hpp>

#include "bide/core/notice.hpp"
#include "bide/core/units.hpp"
#include "bide/report/odds/odds.hpp"
#include "bide/report/run/json_parts.hpp"
#include "bide/report/words/words.hpp"
#include "bide/study/sampling/distribution.hpp"

namespace bide::report {

namespace {

using Json = nlohmann::ordered_json;

Json of(const std::optional<double>& value) {
  return value ? Json(*value) : Json(nullptr);
}

Json of(const study::Chance& c) {
  return {{"count", c.count}, {"share", c.share}, {"low", c.interval.low}, {"high", c.interval.high}};
}

// A time that is null lies beyond the horizon; an end that is not known says so.
Json of(const study::Window& w) {
  Json times = Json::array();
  for (std::size_t q = 0; q < study::quantiles.size(); ++q) {
    const study::QuantileByRank& r = w.until[q];
    times.push_back({{"share_ended", study::quantiles[q]},
                     {"at_h", of(r.time)},
                     {"low_h", of(r.low)},
                     {"low_known", r.low_known},
                     {"high_h", of(r.high)},
                     {"high_known", r.high_known}});
  }
  return {{"until", times}, {"not_reached_within_horizon", of(w.beyond)}};
}

Json of(const std::array<study::Window, study::who_count>& windows) {
  return {{"first_person", of(windows[study::first_person])},
          {"half_of_crew", of(windows[study::half_of_crew])},
          {"last_person", of(windows[study::last_person])}};
}

Json of(const study::HelpOdds& h, const scenario::Rescue& rescue) {
  Json out{{"while_all_able", of(h.all_able)},
           {"while_some_able", of(h.some_able)},
           {"while_all_alive", of(h.all_alive)},
           {"while_some_alive", of(h.some_alive)},
           {"none_within_horizon", of(h.none_by_horizon)}};
  if (!rescue.held_back_above) {
    out["independent_of_weather_and_crew"] = "assumed";
    return out;
  }
  out["independent_of_crew"] = "assumed";
  const scenario::HeldBackAbove& above = *rescue.held_back_above;
  out["held_back_above"] = {{"wind_speed_m_s", of(above.wind_speed_m_s)},
                            {"wave_height_m", of(above.wave_height_m)}};
  constexpr double low = 0.1, high = 0.9;
  out["needed_h"] = {{"low", study::rescue_h(rescue, low)},
                     {"middle", study::rescue_h(rescue, 0.5)},
                     {"high", study::rescue_h(rescue, high)}};
  out["held_back"] = {{"at_all", of(h.held_back.at_all)},
                      {"no_weather_within_horizon", of(h.held_back.no_weather)},
                      {"low_h", of(h.held_back.low_h)},
                      {"middle_h", of(h.held_back.middle_h)},
                      {"high_h", of(h.held_back.high_h)}};
  return out;
}

Json of(const study::LaunchOdds& l) {
  constexpr std::array<const char*, study::ways_to_reach> reached{"dry", "wet", "never"};
  constexpr std::array<const char*, study::ways_to_lose> lost{
      "nothing",        "painter_not_fast", "swept_off",    "held_down",   "too_shallow",
      "lift_too_small", "not_inflating",    "pulled_under", "not_righted", "nobody_climbed_in"};
  Json out = Json::object();
  for (std::size_t i = 0; i < study::ways_to_reach; ++i)
    out[reached[i]] = {{"share", of(l.reached[i].share)},
                       {"median_first_able_h", of(l.reached[i].first_able_h)},
                       {"median_last_alive_h", of(l.reached[i].last_alive_h)}};
  Json causes = Json::object();
  for (std::size_t i = 1; i < study::ways_to_lose; ++i)
    if (l.lost[i].count > 0) causes[lost[i]] = of(l.lost[i]);
  out["lost_by"] = causes;
  out["minutes_in_water"] = {{"low", of(l.low_min)}, {"middle", of(l.middle_min)}, {"high", of(l.high_min)}};
  out["inverted"] = of(l.inverted);
  return out;
}

Json of(const study::SignalsLeft& s) {
  return {{"futures", s.futures},
          {"flares", {{"low", s.low}, {"middle", s.middle}, {"high", s.high}}},
          {"some_flares", of(s.some_flares)},
          {"lamp", of(s.lamp)},
          {"beacon", of(s.beacon)}};
}

}  // namespace

std::string odds_csv(const study::OddsAnswer& m) {
  std::string out = fmt::format("# {} possible futures, not a forecast\n# {}\n# {}\n# {}\n", m.odds.futures,
                                standing_notice, standing_advice, made_by_line());
  if (m.started_h_ago)
    out += fmt::format("# time_h counts from now, {}\n", iso_minute(m.scenario.start_unix_s));
  out +=
      "time_h,all_able,all_able_low,all_able_high,some_able,some_able_low,some_able_high,all_alive,all_alive_"
      "low,"
      "all_alive_high,some_alive,some_alive_low,some_alive_high\n";
  for (const study::AtTime& t : m.odds.times) {
    out += fmt::format("{:.6g}", t.at_h);
    for (const study::Chance* c : {&t.all_able, &t.some_able, &t.all_alive, &t.some_alive})
      out += fmt::format(",{:.6g},{:.6g},{:.6g}", c->share, c->interval.low, c->interval.high);
    out += '\n';
  }
  return out;
}

std::string odds_json(const study::OddsAnswer& m) {
  const study::Odds& o = m.odds;
  Json out{{"format", odds_format},
           {"notice", standing_notice},
           {"advice", standing_advice},
           {"made_by", made_by()},
           {"scenario", m.scenario.scenario.name},
           {"cautions", json_cautions(m.scenario.cautions)},
           {"start_time_utc", iso_minute(m.scenario.start_unix_s - m.started_h_ago.value_or(0) * hour_s)},
           {"hours_count_from", m.started_h_ago ? "now" : "start"},
           {"hours_count_from_utc", iso_minute(m.scenario.start_unix_s)},
           {"local_time_is_utc_plus_h", zone_hours(m.scenario.scenario.position.longitude_deg)},
           {"seed", m.seed},
           {"samples", m.samples},
           {"horizon_h", o.horizon_h},
           {"confidence", o.confidence},
           {"known", {{"alive_at_h", of(m.known.alive_at_h)}, {"now_h", of(m.known.now_h)}}},
           {"futures", o.futures},
           {"ruled_out", o.ruled_out},
           {"able", of(o.able)},
           {"alive", of(o.alive)}};
  Json times = Json::array();
  for (const study::AtTime& t : o.times)
    times.push_back({{"at_h", t.at_h},
                     {"all_able", of(t.all_able)},
                     {"some_able", of(t.some_able)},
                     {"all_alive", of(t.all_alive)},
                     {"some_alive", of(t.some_alive)}});
  out["against_time"] = times;
  Json causes = Json::array();
  for (const study::CausesBy& c : o.causes) {
    Json ended = Json::object();
    for (const auto& [limit, part] : c.ended) ended[system::name_of(limit)] = part;
    causes.push_back({{"by_h", c.by_h}, {"first_able_ended_by", ended}});
  }
  out["causes"] = causes;
  out["help"] = o.help ? of(*o.help, *m.scenario.scenario.uncertain->rescue) : Json(nullptr);
  out["launch"] = m.launch ? of(*m.launch) : Json(nullptr);
  out["signals_left_when_help_comes"] = m.signals ? of(*m.signals) : Json(nullptr);
  Json unknowns = Json::array();
  for (const study::Unknown& u : m.unknowns)
    unknowns.push_back({{"name", u.name},
                        {"kind", u.kind == study::FactorKind::epistemic ? "epistemic" : "aleatory"},
                        {"variance_share", u.reduction.of_variance},
                        {"low", u.reduction.of_variance_interval.low},
                        {"high", u.reduction.of_variance_interval.high},
                        {"width_share", u.reduction.of_width}});
  out["unknowns"] = unknowns;
  out["nested"] = nullptr;
  if (m.nested)
    out["nested"] = {{"truths", m.nested->outer},
                     {"cases_each", m.nested->inner},
                     {"median_over_truths_low_h", m.nested->truths_low},
                     {"median_over_truths_high_h", m.nested->truths_high},
                     {"cases_low_h", m.nested->cases_low},
                     {"cases_high_h", m.nested->cases_high}};
  Json failed = Json::array();
  for (const study::FailedSample& f : m.failed) failed.push_back({{"sample", f.index}, {"reason", f.reason}});
  out["failed"] = failed;
  constexpr int indent = 2;
  return out.dump(indent, ' ', true, Json::error_handler_t::replace) + "\n";
}

}  // namespace bide::report
