#include "bide/scenario/new_scenario.hpp"

#include <fmt/format.h>

#include <cmath>

#include "bide/core/time_utc.hpp"
#include "bide/scenario/patch.hpp"
#include "bide/scenario/words.hpp"

namespace bide::scenario {
namespace {

bool varies(const NewScenario& facts) {
  return facts.weather == WeatherKind::variable;
}

// What the reader of the file has to know about its weather.
std::string setting_of(const NewScenario& facts) {
  std::string out = "Invented. ";
  if (!facts.climate) return out + "Weather as given.";
  out += fmt::format("{} of month {} at {}, from ship reports",
                     varies(facts) ? "Weather that varies about the means" : "Mean weather", facts.month,
                     facts.place_words);
  constexpr double near_km = 200;
  if (facts.climate->farthest_km > near_km)
    out += fmt::format("; the nearest {} is {:.0f} km away", facts.climate->farthest,
                       facts.climate->farthest_km);
  constexpr double few_reports_deg = 60;
  if (std::abs(facts.place.latitude_deg) > few_reports_deg)
    out += "; this far from the equator reports are few";
  return out + ". Rain is a law of latitude and may be out by a factor of three.";
}

void put_weather(Node& document, const NewScenario& facts) {
  put_month_weather(document, facts.weather, facts.stated, facts.climate);
  const double air_degC =
      facts.stated.air_degC.value_or(facts.climate.value_or(climate::Month{}).air_temperature_degC);
  put(document, "/routine/opening_fraction_day", usual_opening_by_day(air_degC));
  if (varies(facts))
    for (const char* drawn : {"weather", "person_spread", "unmeasured"})
      put(document, fmt::format("/uncertain/{}", drawn), true);
}

void put_crew(Node& document, const NewScenario& facts) {
  for (const KnownPerson& known : facts.crew) {
    Node person = person_node(known);
    put(person, "/clothing", facts.clothing);
    append(document, "crew", std::move(person));
  }
}

}  // namespace

Node new_scenario(const NewScenario& facts) {
  Node out = empty_object();
  put(out, "/format", std::string(format_word));
  put(out, "/name", facts.name);
  put(out, "/setting", setting_of(facts));
  put(out, "/start_time_utc",
      facts.start_unix_s ? format_time_utc(*facts.start_unix_s)
                         : fmt::format("2031-{:02}-15T12:00:00Z", facts.month));
  put(out, "/duration_h", facts.duration_h);
  put(out, "/position/latitude_deg", facts.place.latitude_deg);
  put(out, "/position/longitude_deg", facts.place.longitude_deg);
  put_weather(out, facts);
  put(out, "/raft/kind", facts.raft);
  put_crew(out, facts);
  put(out, "/boarding/kind", facts.boarding);
  put(out, "/stores/pack", facts.pack);
  return out;
}

const RaftKind* usual_raft(int persons) {
  const RaftKind* best = nullptr;
  for (const RaftKind& raft : catalogue().rafts) {
    const bool ordinary = raft.floor == FloorKind::inflated;
    if (ordinary && raft.capacity_persons >= persons &&
        (!best || raft.capacity_persons < best->capacity_persons))
      best = &raft;
  }
  return best;
}

std::vector<KnownPerson> usual_crew(int persons) {
  constexpr double usual_age_years = 40;
  std::vector<KnownPerson> out;
  for (int i = 0; i < persons; ++i)
    out.push_back({i % 2 == 0 ? Sex::male : Sex::female, usual_age_years, {}, {}});
  return out;
}

}  // namespace bide::scenario
