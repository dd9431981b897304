#include "bide/report/signals/signals.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "bide/constants/signals.hpp"
#include "bide/core/units.hpp"
#include "bide/report/words/words.hpp"
#include "bide/scenario/due.hpp"
#include "bide/scenario/resolve.hpp"
#include "bide/stores/seen_range.hpp"
#include "bide/weather/sun.hpp"

namespace bide::report {
namespace {

namespace c = constants;
using scenario::ItemRole;
using scenario::StockItem;
using scenario::ValidScenario;

std::string pieces(const ValidScenario& s, ItemRole role, const char* name) {
  const double count = scenario::quantity_of(s.stock, role);
  return count > 0 ? fmt::format("{:g} {}{}", count, name, count == 1 ? "" : "s") : "";
}

std::string listed(const std::vector<std::string>& parts) {
  std::string out;
  for (const std::string& each : parts)
    if (!each.empty()) out += (out.empty() ? "" : ", ") + each;
  return out;
}

double seconds_of_light(const ValidScenario& s) {
  double sum = 0;
  for (const StockItem& item : s.stock)
    if (item.kind->light_cd > 0) sum += item.quantity * item.kind->burn_s;
  return sum;
}

double hours_of(const ValidScenario& s, ItemRole role) {
  double sum = 0;
  for (const StockItem& item : s.stock)
    if (item.kind->role == role) sum += item.quantity * item.kind->hours;
  return sum;
}

void pyrotechnics(const ValidScenario& s, std::vector<std::string>& out) {
  const std::string all =
      listed({pieces(s, ItemRole::hand_flare, "hand flare"), pieces(s, ItemRole::rocket, "rocket"),
              pieces(s, ItemRole::smoke, "smoke signal")});
  if (all.empty()) {
    out.emplace_back("No pyrotechnics are aboard, or none of them works.");
    return;
  }
  const double light_s = seconds_of_light(s), stay_s = s.scenario.duration_h * hour_s;
  std::string text = fmt::format("{}: {:.0f} s of light in all, {} of the {} followed", all, light_s,
                                 percent(pct * light_s / stay_s), horizon(stay_s));
  if (const auto fails = scenario::signals_that_fail(s.scenario))
    text += fmt::format("; those taken to fail ({:.0f} % by a published count) are left out", pct * *fails);
  out.push_back(text + ". They answer somebody in sight.");
  const double planned = s.scenario.routine.flares_per_night,
               count = scenario::quantity_of(s.stock, ItemRole::hand_flare) +
                       scenario::quantity_of(s.stock, ItemRole::rocket);
  if (planned > 0)
    out.push_back(fmt::format("Planned are {:g} a night: {:g} last {:.0f} nights.", planned, count,
                              std::floor(count / planned)));
}

// Hours of the time followed with the sun below the horizon, whole ones, as lamps are counted.
double dark_h(const ValidScenario& s) {
  const scenario::Position& at = s.scenario.position;
  double sum = 0;
  for (double h = 0.5; h < s.scenario.duration_h; ++h)
    sum +=
        weather::sun_position(s.start_unix_s + h * hour_s, at.latitude_deg, at.longitude_deg).elevation_deg <
                weather::horizon_elevation_deg()
            ? 1
            : 0;
  return sum;
}

void cells(const ValidScenario& s, std::vector<std::string>& out) {
  const double lamp_h = hours_of(s, ItemRole::lamp), beacon_h = hours_of(s, ItemRole::beacon);
  const double stay_h = s.scenario.duration_h;
  if (lamp_h > 0) {
    const double dark = dark_h(s);
    out.push_back(fmt::format("Lamps burn for {} in the dark; of the {} followed {} are dark{}.",
                              duration(lamp_h * hour_s), horizon(stay_h * hour_s), duration(dark * hour_s),
                              lamp_h < dark ? ", so they go out before the end" : ""));
  }
  if (beacon_h > 0)
    out.push_back(fmt::format("Beacons send for {} one after the other{}.", duration(beacon_h * hour_s),
                              beacon_h < stay_h ? ", less than the time followed" : ""));
  const auto& air = s.scenario.weather.air_temperature_degC;
  if (lamp_h + beacon_h > 0 && air && *air < 0)
    out.push_back(fmt::format(
        "Below 0 °C cells give less than these hours: at -20 °C alkaline ones {:.0f} to {:.0f} %, "
        "lithium ones {:.0f} to {:.0f} % of their charge (recalled, unsure){}. The hours above are "
        "not reduced.",
        pct * c::alkaline_at_minus_20.low, pct * c::alkaline_at_minus_20.high,
        pct * c::lithium_at_minus_20.low, pct * c::lithium_at_minus_20.high,
        lamp_h > 0 ? fmt::format(": lamps with alkaline ones {} to {}",
                                 duration(lamp_h * c::alkaline_at_minus_20.low * hour_s),
                                 duration(lamp_h * c::alkaline_at_minus_20.high * hour_s))
                   : ""));
}

void ranges(const ValidScenario& s, std::vector<std::string>& out) {
  constexpr double clear_nm = 10, hazy_nm = 3, thick_nm = 1, bridge_m = 20;
  bool some = false;
  for (const StockItem& item : s.stock) {
    const scenario::ItemKind& kind = *item.kind;
    if (!(kind.light_cd > 0)) continue;
    some = true;
    const double horizon_nm = stores::horizon_range_nm(bridge_m, kind.light_at_m);
    const auto seen = [&](double visibility_nm, double threshold_lux) {
      return two_figures(
          std::min(horizon_nm, stores::luminous_range_nm(kind.light_cd, visibility_nm, threshold_lux)));
    };
    std::string text = fmt::format(
        "{}: by night at most {}, {} and {} nautical miles in visibilities of {:g}, "
        "{:g} and {:g} nautical miles",
        kind.title, seen(clear_nm, c::light_threshold_night_lux), seen(hazy_nm, c::light_threshold_night_lux),
        seen(thick_nm, c::light_threshold_night_lux), clear_nm, hazy_nm, thick_nm);
    if (is_pyrotechnic(kind.role))
      text += fmt::format("; by day about {} in {:g} (recalled, unsure)",
                          seen(clear_nm, c::light_threshold_day_lux), clear_nm);
    out.push_back(text + ".");
  }
  if (some)
    out.push_back(fmt::format(
        "For an eye {:g} m above the sea that looks there, by the luminous range of the collision "
        "regulations (recalled) and the horizon. How a search covers an area is not modelled, and no range "
        "here says where not to look.",
        bridge_m));
}

}  // namespace

std::vector<std::string> readiness_lines(const ValidScenario& s) {
  std::vector<std::string> out;
  for (const scenario::Due& each : scenario::readiness_list(s)) {
    using State = scenario::Due::State;
    const char* state = each.state == State::due        ? "DUE"
                        : each.state == State::in_order ? "in order"
                                                        : "not known";
    out.push_back(fmt::format("{}: {}: {}", state, each.what, each.words));
  }
  return out;
}

std::vector<std::string> signal_lines(const ValidScenario& s) {
  const bool aboard = std::any_of(s.stock.begin(), s.stock.end(), [](const StockItem& each) {
    const ItemRole role = each.kind->role;
    return is_pyrotechnic(role) || role == ItemRole::lamp || role == ItemRole::beacon;
  });
  if (!aboard) return {};
  std::vector<std::string> out;
  pyrotechnics(s, out);
  cells(s, out);
  ranges(s, out);
  return out;
}

}  // namespace bide::report
