#include "timeline/watch.hpp"

#include <algorithm>
#include <cmath>

#include "constants/routine.hpp"
#include "march/crossing.hpp"
#include "system/readings.hpp"

namespace bide::timeline {

namespace {

enum Quantity : int { core, deficit, osmolality, co2, fat, protein_used };

// The accuracy claimed for core temperature, and the share and time that a located time may be off by.
constexpr double core_error_K = 0.02, time_share = 0.01, time_error_s = 60;
constexpr double hour_s = 3600;

}  // namespace

Watch::Watch(const system::Compiled<double>& compiled) : compiled_(&compiled) {
  const system::LimitValues<double>& l = compiled.limits;
  const system::Structure& s = compiled.structure;
  levels_ = {
      {"able_core_low", Meaning::unable, core, l.able_core_low_degC, false, 37},
      {"able_core_high", Meaning::unable, core, l.able_core_high_degC, true, 37},
      {"able_water_deficit", Meaning::unable, deficit, l.able_water_deficit_pct, true, 0},
      {"able_co2", Meaning::unable, co2, l.able_co2_fraction, true, 0},
      {"unconscious_core", Meaning::unconscious, core, l.unconscious_core_degC, false, 37},
      {"lethal_core_low", Meaning::lethal, core, l.lethal_core_low_degC, false, 37},
      {"lethal_core_high", Meaning::lethal, core, l.lethal_core_high_degC, true, 37},
      {"lethal_water_deficit", Meaning::lethal, deficit, l.lethal_water_deficit_pct, true, 0},
      {"lethal_osmolality", Meaning::lethal, osmolality, l.lethal_osmolality_mOsm_kg, true, 287},
      {"lethal_co2", Meaning::lethal, co2, l.lethal_co2_fraction, true, 0},
      {"lethal_fat", Meaning::lethal, fat, l.lethal_fat_kg_left, false, 10},
      {"lethal_protein", Meaning::lethal, protein_used, l.lethal_protein_fraction_used, true, 0},
  };
  persons_.resize(static_cast<std::size_t>(s.persons));
  history_.resize(persons_.size());
}

void Watch::read(int person, const std::vector<double>& x, Quantities& values) const {
  const auto& build = compiled_->persons[static_cast<std::size_t>(person)];
  const double* block = x.data() + system::person_offset(person);
  values[core] = system::core_degC(block);
  values[deficit] = system::water_deficit_pct(build, block);
  values[osmolality] = system::osmolality_mOsm_kg(build, block);
  values[co2] = x[system::at::co2];
  values[fat] = block[body::at::fat_mass];
  values[protein_used] = 1 - block[body::at::protein_mass] / build.protein_kg;
}

bool Watch::passed_lethal(int person) const {
  return std::any_of(crossings.begin(), crossings.end(), [&](const Crossing& c) {
    return c.person == person && (c.limit == "lost_airway" || c.limit.rfind("lethal", 0) == 0);
  });
}

void Watch::begin(double t, const std::vector<double>& x, const system::Held<double>& held) {
  for (std::size_t p = 0; p < persons_.size(); ++p) {
    Person& person = persons_[p];
    read(static_cast<int>(p), x, person.value);
    person.has_slope = false;  // a stop may have bent the curve
    // Dead without having passed a lethal level: the sea rose over an unconscious person.
    if (held.persons[p].living <= 0) {
      if (person.living && !passed_lethal(static_cast<int>(p)))
        crossings.push_back({static_cast<int>(p), "lost_airway", t, 0, false, false});
      person.living = false;
      continue;
    }
    std::vector<double> margins;
    margins.reserve(levels_.size());
    for (const Level& l : levels_)
      margins.push_back((person.value[static_cast<std::size_t>(l.quantity)] - l.level) /
                        (l.normal - l.level));
    history_[p].push_back({t, std::move(margins)});
  }
}

void Watch::after_step(double t0, double t1, const std::vector<double>& x, const std::vector<double>& slopes,
                       const system::Held<double>& held) {
  Quantities now, slope;
  for (std::size_t p = 0; p < persons_.size(); ++p) {
    Person& person = persons_[p];
    const int index = static_cast<int>(p);
    read(index, x, now);
    for (int q = 0; q < quantity_count; ++q) slope[q] = (now[q] - person.value[q]) / (t1 - t0);
    Quantities before = person.has_slope ? person.slope : slope;
    // Only temperature bends enough within a step for the cubic to matter; the rest are followed by their
    // chord.
    if (!slopes.empty())
      slope[core] = slopes[static_cast<std::size_t>(system::person_offset(index) +
                                                    body::at::node(body::trunk, body::core))];
    if (!person.has_slope) before[core] = 2 * (now[core] - person.value[core]) / (t1 - t0) - slope[core];
    if (held.persons[p].living > 0)
      for (const Level& l : levels_) {
        const double y0 = person.value[l.quantity], y1 = now[l.quantity];
        if ((y0 > l.level) == (y1 > l.level)) continue;
        const double at =
            march::crossing_time(t0, y0, before[l.quantity], t1, y1, slope[l.quantity], l.level);
        const double rate = (y1 - y0) / (t1 - t0);
        const bool grazing =
            l.quantity == core && core_error_K / std::abs(rate) > std::max(time_share * at, time_error_s);
        crossings.push_back({index, l.name, at, rate * hour_s, grazing, y1 > y0});
        const bool drowning =
            l.meaning == Meaning::unconscious && y1 < y0 && held.persons[p].airway_open_to_sea > 0;
        if (drowning) crossings.push_back({index, "lost_airway", at, rate * hour_s, grazing, false});
      }
    person.value = now;
    person.slope = slope;
    person.has_slope = true;
  }
}

std::vector<PersonFate> Watch::fates(double end_s) const {
  std::vector<PersonFate> out(persons_.size());
  for (std::size_t p = 0; p < persons_.size(); ++p) {
    PersonFate& fate = out[p];
    // How many limits are passed, and since when; the first lapse longer than allowed ends "able".
    std::vector<std::pair<std::string, double>> open;
    const auto close = [&](double t) {
      if (!open.empty() && !fate.able_until_s && t - open.front().second > constants::lapse_s.value) {
        fate.able_until_s = open.front().second;
        fate.able_cause = open.front().first;
      }
    };
    // Starting beyond a limit counts from the start.
    for (std::size_t i = 0; i < levels_.size(); ++i)
      if (levels_[i].meaning != Meaning::lethal && !history_[p].empty() && history_[p].front().second[i] < 0)
        open.push_back({levels_[i].name, 0});
    for (const Crossing& c : crossings) {
      if (c.person != static_cast<int>(p)) continue;
      if (c.limit == "lost_airway") {
        if (!fate.alive_until_s) fate.alive_until_s = c.time_s, fate.alive_cause = c.limit;
        continue;
      }
      const auto level =
          std::find_if(levels_.begin(), levels_.end(), [&](const Level& l) { return l.name == c.limit; });
      const bool into = c.upward == level->bad_above;
      if (level->meaning == Meaning::lethal) {
        if (into && !fate.alive_until_s) fate.alive_until_s = c.time_s, fate.alive_cause = c.limit;
        continue;
      }
      if (into) {
        open.push_back({c.limit, c.time_s});
        if (level->meaning == Meaning::unconscious && !fate.unconscious_s) fate.unconscious_s = c.time_s;
      } else {
        if (open.size() == 1) close(c.time_s);
        std::erase_if(open, [&](const auto& o) { return o.first == c.limit; });
      }
    }
    if (!open.empty()) {
      const double until = fate.alive_until_s.value_or(end_s);
      // Death ends ability whatever the length of the lapse before it.
      if (fate.alive_until_s && !fate.able_until_s)
        fate.able_until_s = open.front().second, fate.able_cause = open.front().first;
      close(until);
    }
    if (fate.alive_until_s && (!fate.able_until_s || *fate.able_until_s > *fate.alive_until_s))
      fate.able_until_s = fate.alive_until_s, fate.able_cause = fate.alive_cause;

    // The next limit: of those not passed, the one nearest at the time ability ends (or at the end).
    const double when = fate.able_until_s.value_or(end_s);
    const auto& history = history_[p];
    if (history.empty()) continue;
    auto at = std::upper_bound(history.begin(), history.end(), when,
                               [](double t, const auto& entry) { return t < entry.first; });
    if (at != history.begin()) --at;
    fate.nearest_margin_fraction = 1;
    for (std::size_t i = 0; i < levels_.size(); ++i)
      if (levels_[i].name != fate.able_cause && at->second[i] > 0 &&
          at->second[i] < fate.nearest_margin_fraction) {
        fate.nearest_margin_fraction = at->second[i];
        fate.next_cause = levels_[i].name;
      }
  }
  return out;
}

}  // namespace bide::timeline
