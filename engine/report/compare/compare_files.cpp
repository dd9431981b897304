// A comparison for other programs: JSON and CSV.
#include <fmt/format.h>

#include <iterator>

#include "bide/core/csv.hpp"
#include "bide/core/notice.hpp"
#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/compare/compare.hpp"
#include "bide/report/compare/compare_futures.hpp"
#include "bide/report/run/json_parts.hpp"
#include "bide/report/run/range.hpp"
#include "bide/report/words/words.hpp"
#include "bide/scenario/differences.hpp"

namespace bide::report {
namespace {

using Json = nlohmann::ordered_json;
using outcome::Figures;

Json times_json(const outcome::CrewTimes& times, double horizon_s) {
  const bool all = times.last_s.has_value();
  return {{"first_h", json_hours(times.first_s)},
          {"half_h", json_hours(times.half_s)},
          {"last_h", json_hours(times.last_s)},
          {"reached_count", times.reached},
          {"persons_count", times.persons},
          {"null_means", all ? Json(nullptr) : Json(not_reached(horizon_s))}};
}

Json cause(system::Limit limit) {
  return limit == system::Limit::none ? Json(nullptr) : Json(outcome::short_cause(limit));
}

Json coldest_json(const std::optional<outcome::Coldest>& coldest) {
  if (!coldest) return nullptr;
  return {{"degC", json_number(coldest->degC)},
          {"at_h", json_hours(coldest->time_s)},
          {"by_night", coldest->dark}};
}

Json figures_json(const Figures& f) {
  Json stores = Json::array();
  for (const outcome::StoreOutcome& store : f.stores)
    if (store.state == outcome::StoreState::runs_out)
      stores.push_back({{"store", plain(store.store)}, {"at_h", json_hours(store.at_s)}});
  return {{"able_until", times_json(f.able, f.horizon_s)},
          {"alive_until", times_json(f.alive, f.horizon_s)},
          {"able_ended_by", cause(f.able_limit)},
          {"alive_ended_by", cause(f.alive_limit)},
          {"next_limit", cause(f.next_limit)},
          {"next_limit_margin_left_fraction", json_number(f.next_margin_fraction)},
          {"coldest_inside", coldest_json(f.coldest_inside)},
          {"lowest_core_degC", json_number(f.lowest_core_degC)},
          {"highest_core_degC", json_number(f.highest_core_degC)},
          {"worst_water_deficit_pct", json_number(f.worst_water_deficit_pct)},
          {"co2_above_5000_ppm_h", f.in_raft ? json_number(f.foul_air_h) : Json(nullptr)},
          {"highest_co2_ppm", f.in_raft ? json_number(f.highest_co2_ppm) : Json(nullptr)},
          {"stores_out", stores},
          {"horizon_h", json_number(f.horizon_s / hour_s)}};
}

Json differences_json(const std::vector<scenario::Difference>& differences, const char* name) {
  Json out = Json::array();
  for (const scenario::Difference& difference : differences) {
    Json values = Json::array();
    for (const scenario::InForce& each : difference.values)
      values.push_back({{"value", plain(each.value)}, {"default", each.filled_in}});
    out.push_back({{name, plain(difference.pointer)}, {"unit", difference.unit}, {"values", values}});
  }
  return out;
}

}  // namespace

std::string comparison_json(const Comparison& comparison) {
  Json json;
  json["format"] = comparison_format;
  json["notice"] = {std::string(standing_notice), std::string(standing_advice)};
  json["made_by"] = made_by();
  json["one_case"] = one_case_each(comparison);
  json["no_common_futures"] = comparison.no_futures.empty() ? Json(nullptr) : Json(comparison.no_futures);
  std::vector<const scenario::ValidScenario*> scenarios;
  for (const Option& option : comparison.options) scenarios.push_back(option.own.scenario);
  json["inputs_that_differ"] = differences_json(scenario::differences(scenarios), "pointer");
  json["stores_that_differ"] = differences_json(scenario::differences_aboard(scenarios), "item");
  json["equal_stores"] = comparison.same_stores ? "all options carry the same" : "those of option 1";
  json["options"] = Json::array();
  for (std::size_t i = 0; i < comparison.options.size(); ++i) {
    const Option& option = comparison.options[i];
    Json each;
    each["option"] = i + 1;
    each["label"] = plain(option.label, Letters::utf8, 400);
    each["name"] = plain(option.own.scenario->scenario.name);
    each["own_stores"] = figures_json(option.own.figures);
    each["equal_stores"] = option.equal ? figures_json(option.equal->figures) : Json(nullptr);
    each["equal_stores_refused"] =
        option.equal_refused.empty() ? Json(nullptr) : Json(plain(option.equal_refused, Letters::utf8, 400));
    const Figures& own = option.own.figures;
    each["range"] = range_json(own.able, own.alive, option.members, own.horizon_s);
    each["common_futures"] = option.futures ? futures_json(*option.futures) : Json(nullptr);
    each["cautions"] = json_cautions(option.own.scenario->cautions);
    json["options"].push_back(each);
  }
  json["conclusions"] = Json::array();
  const auto lists = conclusions(comparison);
  for (std::size_t i = 0; i < lists.size(); ++i)
    json["conclusions"].push_back(
        {{"option", i + 2}, {"against_option", 1}, {"sentences", all_of(lists[i])}});
  return json_text(json);
}

std::string comparison_csv(const Comparison& comparison) {
  fmt::memory_buffer out;
  const auto to = std::back_inserter(out);
  fmt::format_to(to, "# {}\n# {}\n# {}\n# {}\n", one_case_each(comparison), standing_notice, standing_advice,
                 made_by_line());
  fmt::format_to(to,
                 "# An empty time is not reached within horizon_h. Earliest and latest are the ends of the "
                 "range, told of own stores.\n");
  fmt::format_to(
      to,
      "option,label,stores,horizon_h,able_first_h,able_half_h,able_last_h,alive_first_h,alive_half_h,"
      "alive_last_h,able_first_earliest_h,able_first_latest_h,alive_first_earliest_h,alive_first_latest_h,"
      "able_ended_by,coldest_inside_degC,coldest_inside_h,lowest_core_degC,worst_water_deficit_"
      "pct,"
      "co2_above_5000_ppm_h,stores_out,futures,able_longer_than_option_1_in,able_shorter_than_option_1_in,"
      "able_median_difference_h\n");
  const auto time = [&](const std::optional<double>& at_s) {
    if (at_s)
      fmt::format_to(to, ",{:.6g}", *at_s / hour_s);
    else
      out.push_back(',');
  };
  const auto row = [&](std::size_t number, const Option& option, const char* stores, const Figures& f) {
    fmt::format_to(to, "{},{},{},{:.6g}", number, csv_cell(plain(option.label, Letters::utf8, 400)), stores,
                   f.horizon_s / hour_s);
    for (const outcome::CrewTimes* times : {&f.able, &f.alive}) {
      time(times->first_s);
      time(times->half_s);
      time(times->last_s);
    }
    const bool own = &f == &option.own.figures;
    for (const study::CrewState state : {&outcome::Endurance::able, &outcome::Endurance::alive}) {
      const bool ranged = own && !option.members.empty();
      const study::TimeRange range =
          ranged ? study::range_over(f.*state, option.members, state, &outcome::CrewTimes::first_s)
                 : study::TimeRange{};
      time(range.earliest_s);
      time(range.latest_s);
    }
    fmt::format_to(to, ",{},{},{},{:.6g},{:.6g},{},", outcome::short_cause(f.able_limit),
                   f.coldest_inside ? fmt::format("{:.6g}", f.coldest_inside->degC) : "",
                   f.coldest_inside ? fmt::format("{:.6g}", f.coldest_inside->time_s / hour_s) : "",
                   f.lowest_core_degC, f.worst_water_deficit_pct,
                   f.in_raft ? fmt::format("{:.6g}", f.foul_air_h) : "");
    std::string stores_out;
    for (const outcome::StoreOutcome& store : f.stores)
      if (store.state == outcome::StoreState::runs_out)
        stores_out +=
            fmt::format("{}{} {:.6g} h", stores_out.empty() ? "" : "; ", store.store, store.at_s / hour_s);
    fmt::format_to(to, "{}", csv_cell(plain(stores_out)));
    if (own && option.futures) {
      const study::Paired& able = option.futures->able;
      fmt::format_to(to, ",{},{},{},{:.6g}\n", able.samples, able.second_longer.count,
                     able.first_longer.count, able.median_difference);
    } else {
      fmt::format_to(to, ",,,,\n");
    }
  };
  for (std::size_t i = 0; i < comparison.options.size(); ++i) {
    const Option& option = comparison.options[i];
    row(i + 1, option, "own", option.own.figures);
    if (option.equal) row(i + 1, option, "of option 1", option.equal->figures);
  }
  return fmt::to_string(out);
}

}  // namespace bide::report
