#include "bide/study/sampling/raft_draw.hpp"

#include <algorithm>
#include <boost/math/special_functions/beta.hpp>
#include <cmath>
#include <limits>

#include "bide/constants/boarding.hpp"
#include "bide/constants/readiness.hpp"
#include "bide/constants/weather.hpp"
#include "bide/core/units.hpp"
#include "bide/scenario/due.hpp"
#include "bide/scenario/resolve.hpp"
#include "bide/study/sampling/distribution.hpp"

namespace bide::study {

namespace c = constants;
using scenario::FailureKind;
using scenario::Launch;
using scenario::LaunchWay;

namespace {

// Minutes in the water are rounded up to these: futures that board together march in lock step.
constexpr double whole_min = 5;

// The quantile of a share of which so many of so many are known.
double share_of_count(double cases, double of, double u) {
  return boost::math::ibeta_inv(cases + 0.5, of - cases + 0.5, u);
}

double uniform_between(double low, double high, double u) {
  return low + (high - low) * u;
}

// Chances of the failures of a neglected raft.
struct Chances {
  double not_inflating = 0, tube_leaking = 0, valve_lost = 0, floor_failed = 0, lamp_dead = 0;
};

double sea_weight_kN_m3() {
  constexpr double N_per_kN = 1000;
  return c::sea_density_kg_m3 * c::gravity_m_s2 / N_per_kN;
}

// The numbers of one raft.
struct Numbers {
  double painter, swept, ready, depth, link, inflates, chamber, inverted, righted, across, tube, valve, floor,
      lamp;
};

struct Draw {
  const RaftBefore& before;
  const TakeNumber& take;
  bool neglected = false;
  Chances chances = {};

  double number(const std::string& name) const { return take(name, FactorKind::aleatory); }

  double chance(const std::optional<double>& stated, const char* name, double cases, double of) const {
    if (stated) return *stated;
    return share_of_count(cases, of, take(std::string("readiness: share ") + name, FactorKind::epistemic));
  }

  void service() {
    const auto& r = before.uncertain.readiness;
    if (!r) return;
    const double is = r->neglected.value_or(scenario::neglected_chance(before.months_overdue));
    neglected = number("readiness: neglected") < is;
    chances.not_inflating =
        chance(r->not_inflating, "not inflating", c::not_inflating_cases, c::not_inflating_of);
    chances.tube_leaking = chance(r->tube_leaking, "leaking", c::tube_leaking_cases, c::tube_leaking_of);
    chances.valve_lost = chance(r->valve_lost, "losing a valve", c::valve_lost_cases, c::valve_lost_of);
    chances.floor_failed =
        chance(r->floor_failed, "with a failed floor", c::floor_failed_cases, c::floor_failed_of);
    chances.lamp_dead = chance(r->lamp_dead, "with dead lamps", c::lamp_dead_cases, c::lamp_dead_of);
    if (!neglected) chances = {};
  }

  Numbers numbers(int raft) const {
    const std::string of = raft == 0 ? "" : "second raft: ";
    const bool readiness = before.uncertain.readiness.has_value(),
               launch = before.uncertain.launch.has_value();
    const auto fails = [&](const char* name) { return readiness ? number("readiness: " + of + name) : 1; };
    const auto step = [&](const char* name) { return launch ? number("launch: " + of + name) : 1; };
    return {step("painter"),   step("swept off"), step("made ready"), step("release depth"),
            step("weak link"), fails("inflates"), step("chambers"),   step("inverted"),
            step("righted"),   step("across"),    fails("tube"),      fails("valve"),
            fails("floor"),    fails("lamps")};
  }

  // Failures of a raft that is reached.
  std::vector<FailureKind> failures(const Numbers& n, bool half) const {
    std::vector<FailureKind> out;
    if (half || n.tube < chances.tube_leaking || n.valve < chances.valve_lost)
      out.push_back(FailureKind::tube_leaking);
    if (n.floor < chances.floor_failed) out.push_back(FailureKind::floor_not_inflated);
    if (n.lamp < chances.lamp_dead) out.push_back(FailureKind::lamp_dead);
    return out;
  }

  LostBy floats_free(const Launch& launch, const Numbers& n, double depth_m, bool half) const {
    const scenario::Readiness* r = before.readiness;
    if (r && (r->no_extra_lashings == false || r->painter_by_weak_link == false)) return LostBy::held_down;
    if (launch.water_depth_m &&
        *launch.water_depth_m < std::max(depth_m, launch.painter_length_m) + launch.stowage_height_m)
      return LostBy::too_shallow;
    const double pull_N = neglected ? c::inflation_pull_failed_N : c::inflation_pull_N;
    if (launch.packed_buoyancy_N && *launch.packed_buoyancy_N < pull_N) return LostBy::lift_too_small;
    if (n.inflates < chances.not_inflating) return LostBy::not_inflating;
    const double lift_kN =
        c::tube_volume_m3_person * sea_weight_kN_m3() * before.capacity_persons * (half ? 0.5 : 1);
    if (lift_kN < uniform_between(c::weak_link_kN.low, c::weak_link_kN.high, n.link))
      return LostBy::pulled_under;
    return LostBy::nothing;
  }

  RaftDrawn launch() const {
    const Launch& launch = *before.uncertain.launch;
    const bool by_hand = launch.way == LaunchWay::by_hand;
    const double gone_min =
        launch.sinks_after_min
            ? std::get<double>(quantile(*launch.sinks_after_min, number("launch: deck gone")))
            : std::numeric_limits<double>::infinity();
    scenario::Distribution swim;
    swim.kind = scenario::DistributionKind::triangular;
    swim.low = c::swim_min.low, swim.mode = c::swim_min.value, swim.high = c::swim_min.high;
    const double swim_min = std::get<double>(quantile(swim, number("launch: swim")));
    const double men = share_of_count(c::men_boarded, c::boarded_of,
                                      take("launch: share of men who climb in", FactorKind::epistemic)),
                 women = share_of_count(c::women_boarded, c::boarded_of,
                                        take("launch: share of women who climb in", FactorKind::epistemic));
    double nobody = 1;
    for (const Climber& each : before.crew)
      nobody *= 1 - climbs_in(each.sex == scenario::Sex::male ? men : women, each);
    const bool somebody_climbs = number("launch: climbing in") >= nobody;
    const double deepest_m =
        before.release_past_date ? c::release_deepest_worn_m.value : c::release_depth_m.high;
    std::vector<Numbers> rafts;
    for (int i = 0; i < launch.rafts; ++i) rafts.push_back(numbers(i));

    RaftDrawn out;
    LaunchDrawn& l = out.launch.emplace();
    double order_min = 0;  // since the order to launch
    for (const Numbers& n : rafts) {
      const bool half = n.chamber < launch.one_chamber;
      const double depth_m = uniform_between(c::release_depth_m.low, deepest_m, n.depth);
      const double inflation_min = inflation_minutes(before.air_degC);
      order_min +=
          uniform_between(c::ready_to_launch_min.low, c::ready_to_launch_min.high, n.ready) + inflation_min;
      l.inverted = n.inverted < launch.inflates_inverted;
      l.lost_by = n.swept < launch.swept_off            ? LostBy::swept_off
                  : n.painter < launch.painter_not_fast ? LostBy::painter_not_fast
                  : !by_hand                            ? floats_free(launch, n, depth_m, half)
                  : n.inflates < chances.not_inflating  ? LostBy::not_inflating
                                                        : LostBy::nothing;
      if (l.lost_by == LostBy::nothing && l.inverted && n.righted < launch.not_righted)
        l.lost_by = LostBy::not_righted;
      if (l.lost_by != LostBy::nothing) continue;
      const bool on_deck = by_hand && order_min <= gone_min;
      if (on_deck && n.across < launch.steps_across) {
        l.reached = Reached::dry;
        l.aboard_min = order_min;
      } else if (!somebody_climbs) {
        l.lost_by = LostBy::nobody_climbed_in;
        break;  // they are in the water, and would not get into another raft either
      } else {
        double minutes = swim_min;
        if (!by_hand)
          minutes = scenario::float_free_minutes(depth_m, inflation_min, swim_min);
        else if (!on_deck)
          minutes += order_min - gone_min;
        l.reached = Reached::wet;
        l.minutes = std::ceil(minutes / whole_min) * whole_min;
        l.aboard_min = by_hand ? order_min + swim_min : minutes;
      }
      out.failures = failures(n, half);
      return out;
    }
    l.reached = Reached::never;
    l.inverted = false;
    out.no_raft = true;
    return out;
  }

  RaftDrawn drawn() const {
    if (before.uncertain.launch) return launch();
    RaftDrawn out;
    if (!before.uncertain.readiness) return out;
    const Numbers n = numbers(0);
    out.no_raft = n.inflates < chances.not_inflating;
    if (!out.no_raft) out.failures = failures(n, false);
    return out;
  }
};

}  // namespace

double inflation_minutes(double air_degC) {
  const double cold = std::clamp(
      (c::inflation_usual_degC - air_degC) / (c::inflation_usual_degC - c::inflation_coldest_degC), 0.0, 1.0);
  return uniform_between(c::inflation_min.low, c::inflation_min.high, cold);
}

double climbs_in(double share, const Climber& climber) {
  if (!climber.soaked) return share;
  const double load = c::clothes_soak_up_kg / climber.mass_kg;
  return share * std::clamp((c::boarding_reserve_most - load) /
                                (c::boarding_reserve_most - c::boarding_reserve_least),
                            0.0, 1.0);
}

RaftDrawn draw_raft(const RaftBefore& before, const TakeNumber& take) {
  Draw draw{before, take};
  draw.service();
  RaftDrawn out = draw.drawn();
  out.neglected = draw.neglected;
  return out;
}

}  // namespace bide::study
