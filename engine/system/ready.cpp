#include "bide/system/ready.hpp"

#include <fmt/format.h>

#include <optional>
#include <string>
#include <utility>

#include "bide/system/crew_order.hpp"
#include "bide/system/events.hpp"
#include "bide/system/system.hpp"

namespace bide::system {

namespace {

using scenario::Diagnostic;
using scenario::Diagnostics;
using scenario::ValidScenario;

std::optional<Diagnostic> full_cabin(const ValidScenario& v, const Compiled<double>& compiled) {
  if (compiled.raft.volume_m3 > 0) return std::nullopt;
  double crew_kg = 0;
  for (const body::Build<double>& person : compiled.persons) crew_kg += person.mass_kg;
  const double people_m3 = cabin::body_volume_m3(crew_kg);
  return Diagnostic{
      v.file, "/crew",
      fmt::format("found {} people of {:.3g} m3 together in a cabin of {:.3g} m3; allowed fewer, or "
                  "a larger raft, so that air is left",
                  v.scenario.crew.size(), people_m3, compiled.raft.volume_m3 + people_m3)};
}

std::optional<Diagnostic> too_many_events(const ValidScenario& v, const Structure& s) {
  const double rows = s.end_s / s.output_interval_s;
  const double all = rows + static_cast<double>(s.stops.size());
  if (all <= static_cast<double>(most_time_events)) return std::nullopt;
  return Diagnostic{
      v.file, "/duration_h",
      fmt::format("found {} h with more than {} time events (rows of the weather file, recorded "
                  "rows, chores); allowed at most so many: a shorter duration, or fewer rows",
                  v.scenario.duration_h, most_time_events)};
}

// The lethal limit that somebody is past, in words.
std::string lethal_words(const body::Build<double>& b, const double* y, double co2_fraction,
                         const Levels<double>& common) {
  const Quantities<double> values = quantities_of(b, y, co2_fraction);
  const Levels<double> levels = levels_of(common, b);
  for (std::size_t i = 0; i < level_count; ++i) {
    const LimitRow& row = limits[i];
    if (row.meaning != Meaning::lethal || !beyond(row, values[row.of], levels.by_limit[i])) continue;
    const QuantityRow& of = quantities[row.of];
    return fmt::format("found a start at {:.4g}{} (lethal: {} {:.4g}{})", values[row.of] / of.per_stated,
                       of.unit, row.clause, levels.by_limit[i] / of.per_stated, of.unit);
  }
  return "found a start unconscious, with the sea over the mouth";
}

// Apart from those who are stated or drawn to be lost then.
Diagnostics dead_at_the_start(const ValidScenario& v, const weather::Record& weather,
                              const Compiled<double>& compiled) {
  const Forcings<double> forcings(weather);
  System<double> system(compiled, forcings);
  std::vector<double> x = system.start();
  const ScheduledStop first{0, StopKind::check, 0};
  apply(first, system, x, nullptr);
  std::vector<std::string> words(compiled.persons.size());
  for (std::size_t i = 0; i < words.size(); ++i)
    if (!(system.held.persons[i].living > 0) && !(compiled.persons[i].lost > 0))
      words[i] = lethal_words(compiled.persons[i], x.data() + person_offset(static_cast<int>(i)), x[at::co2],
                              compiled.limits);
  words = in_file_order(std::move(words), compiled.file_place);
  Diagnostics out;
  for (std::size_t i = 0; i < words.size(); ++i)
    if (!words[i].empty())
      out.push_back({v.file, fmt::format("/crew/{}", i), words[i] + "; allowed somebody who is alive then"});
  return out;
}

}  // namespace

std::variant<Compiled<double>, Diagnostics> make_ready(const ValidScenario& v,
                                                       const weather::Record& weather) {
  Compiled<double> compiled = compile(v, weather);
  if (auto full = full_cabin(v, compiled)) return Diagnostics{*full};
  if (auto many = too_many_events(v, compiled.structure)) return Diagnostics{*many};
  Diagnostics dead = dead_at_the_start(v, weather, compiled);
  if (!dead.empty()) return dead;
  return compiled;
}

}  // namespace bide::system
