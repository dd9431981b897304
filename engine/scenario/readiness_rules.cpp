// Rules of "readiness", of its chances and of the launch: dates, and what may stand beside what.
#include "bide/scenario/due.hpp"
#include "bide/scenario/part_that_sets.hpp"
#include "bide/scenario/rules.hpp"
#include "bide/scenario/words.hpp"

namespace bide::scenario {
namespace {

void check_dates(const Scenario& s, Reader& reader) {
  const Readiness& r = *s.readiness;
  const auto start = start_of(s);
  const auto look = [&](const char* key, const std::optional<std::string>& date, bool in_the_past) {
    const std::string at = child("/readiness", key);
    if (!date || !reader.sound(at)) return;
    const auto day_s = date_unix_s(*date);
    if (!day_s)
      reader.report(at, fmt::format("found {}; allowed a date such as \"2030-06-30\"", in_quotes(*date)));
    else if (in_the_past && start && reader.sound("/start_time_utc") && *day_s > *start)
      reader.report(at, fmt::format("found {}, after the start; allowed a date before it", *date));
  };
  look("raft_made", r.raft_made, true);
  look("raft_serviced", r.raft_serviced, true);
  look("release_unit_expires", r.release_unit_expires, false);
  look("pack_expires", r.pack_expires, false);
  look("signals_expire", r.signals_expire, false);
  look("medicines_expire", r.medicines_expire, false);
  const std::string serviced = "/readiness/raft_serviced";
  if (r.raft_made && r.raft_serviced && reader.sound(serviced) && reader.sound("/readiness/raft_made") &&
      *date_unix_s(*r.raft_serviced) < *date_unix_s(*r.raft_made))
    reader.report(serviced, fmt::format("found {}, before raft_made, {}; allowed from then on",
                                        *r.raft_serviced, *r.raft_made));
}

// What a launch draws: whether and how the raft is boarded. Work in the water stays as stated.
bool drawn_by_launch(const std::string& pointer) {
  return pointer == "/raft" || pointer == "/boarding" ||
         (pointer.starts_with("/boarding/") && !pointer.starts_with("/boarding/in_water"));
}

void check_launch(const Scenario& s, const Launch& launch, Reader& reader) {
  const std::string at = "/uncertain/launch";
  if (!reader.sound(at) || !reader.sound("/raft")) return;
  if (!s.raft) reader.report(at, "found a launch without a raft; allowed with a raft");
  if (const std::string other = part_that_sets(*s.uncertain, drawn_by_launch); !other.empty())
    reader.report(at, fmt::format("found beside {}, which sets boarding; allowed one of the two", other));
  const WeatherKind weather = s.weather.kind;
  if (reader.sound("/weather") && (weather == WeatherKind::csv || weather == WeatherKind::ndbc))
    reader.report(at, fmt::format("found with weather of kind {}; allowed with weather that states the air "
                                  "temperature, in which the raft inflates",
                                  word(weather)));
  const bool by_hand = launch.way == LaunchWay::by_hand;
  const auto alone = [&](bool stated, const char* key, bool fits, const char* with) {
    if (stated && !fits)
      reader.report(child(at, key), fmt::format("found a value; allowed only with way {}", with));
  };
  alone(launch.sinks_after_min.has_value(), "sinks_after_min", by_hand, "by_hand");
  alone(launch.water_depth_m.has_value(), "water_depth_m", !by_hand, "float_free");
  alone(launch.stowage_height_m > 0, "stowage_height_m", !by_hand, "float_free");
  alone(launch.packed_buoyancy_N.has_value(), "packed_buoyancy_N", !by_hand, "float_free");
}

}  // namespace

void check_readiness(const Scenario& s, Reader& reader) {
  if (s.readiness && reader.sound("/readiness")) check_dates(s, reader);
  if (!s.uncertain) return;
  const std::string at = "/uncertain/readiness";
  if (const auto& chances = s.uncertain->readiness; chances && reader.sound(at)) {
    const bool serviced = s.readiness && s.readiness->raft_serviced;
    if (!chances->neglected && !serviced)
      reader.report(at,
                    "found neither /readiness/raft_serviced nor neglected here; allowed with one of them");
    if (!s.raft && reader.sound("/raft"))
      reader.report(at, "found chances without a raft; allowed with a raft");
  }
  if (s.uncertain->launch) check_launch(s, *s.uncertain->launch, reader);
}

}  // namespace bide::scenario
