#include "bide/timeline/watch.hpp"

#include <algorithm>
#include <cmath>

#include "bide/core/units.hpp"
#include "bide/march/crossing.hpp"
#include "bide/system/readings.hpp"

namespace bide::timeline {

namespace {

// The accuracy claimed for core temperature, and the share and time that a located time may be off by.
constexpr double core_error_K = 0.02, time_share = 0.01, time_error_s = 60;

constexpr std::array<const char*, level_count + 2> names{"able_core_low",      "able_core_high",
                                                         "able_water_deficit", "able_co2",
                                                         "unconscious_core",   "lethal_core_low",
                                                         "lethal_core_high",   "lethal_water_deficit",
                                                         "lethal_osmolality",  "lethal_co2",
                                                         "lethal_fat",         "lethal_protein",
                                                         "lost_airway",        ""};

// Somewhere between the two ends a level lies, in some lane.
template <class T>
bool passed(const std::array<T, quantity_count>& from, const std::array<T, quantity_count>& to,
            const Levels<T>& levels) {
  Mask<T> found = T(0) > T(0);
  for (std::size_t i = 0; i < level_count; ++i) {
    const auto q = static_cast<std::size_t>(level_kinds[i].quantity);
    const Mask<T> above = from[q] > levels[i], now_above = to[q] > levels[i];
    found = found | (above & !now_above) | (now_above & !above);
  }
  return any(found);
}

}  // namespace

const char* name_of(Limit limit) {
  return names[static_cast<std::size_t>(limit)];
}

template <class T>
Watch<T>::Watch(const system::Compiled<T>& compiled)
    : compiled_(&compiled), persons_(static_cast<std::size_t>(compiled.structure.persons)) {
  for (const body::Build<T>& person : compiled.persons) levels_.push_back(levels_of(compiled.limits, person));
  for (Person& person : persons_) person.living.fill(true);
}

template <class T>
void Watch<T>::read(int person, const std::vector<T>& x, std::array<T, quantity_count>& values) const {
  const auto& build = compiled_->persons[static_cast<std::size_t>(person)];
  const T* block = x.data() + system::person_offset(person);
  values[core] = system::core_degC(block);
  values[deficit] = system::water_deficit_pct(build, block);
  values[osmolality] = system::osmolality_mOsm_kg(build, block);
  values[co2] = x[system::at::co2];
  values[fat] = block[body::at::fat_mass];
  values[protein_used] = T(1) - block[body::at::protein_mass] / build.protein_kg;
}

template <class T>
void Watch<T>::begin(double t, const std::vector<T>& x, const system::Held<T>& held) {
  const bool first = stop_s_ < 0;
  for (std::size_t p = 0; p < persons_.size(); ++p) {
    Person& person = persons_[p];
    read(static_cast<int>(p), x, person.value);
    person.before_s = 0;  // a stop may have bent the curve
    for (int i = 0; i < lanes; ++i) {
      const auto l = static_cast<std::size_t>(i);
      if (lane(held.persons[p].living, i) > 0 || !person.living[l]) continue;
      if (!first) keep_stop(person, i, person.kept[l]);
      // Dead without having passed a lethal level: the sea rose over an unconscious person.
      if (!person.died[l]) {
        passings_[l].push_back({static_cast<int>(p), Limit::lost_airway, t, 0, false, false});
        person.died[l] = true;
      }
      person.living[l] = false;
    }
    person.at_stop = person.value;
  }
  stop_s_ = t;
  if (first)
    for (Person& person : persons_)
      for (int i = 0; i < lanes; ++i) keep_stop(person, i, person.kept[static_cast<std::size_t>(i)]);
}

template <class T>
void Watch<T>::keep_stop(const Person& person, int l, AtStops& kept) const {
  if (!kept.time_s.empty() && kept.time_s.back() == stop_s_) return;
  kept.time_s.push_back(stop_s_);
  Quantities& values = kept.values.emplace_back();
  for (std::size_t q = 0; q < quantity_count; ++q) values[q] = lane(person.at_stop[q], l);
}

template <class T>
void Watch<T>::after_step(double t0, double t1, const std::vector<T>& x, const std::vector<T>& slopes,
                          const system::Held<T>& held) {
  std::array<T, quantity_count> now;
  for (std::size_t p = 0; p < persons_.size(); ++p) {
    Person& person = persons_[p];
    const int index = static_cast<int>(p);
    read(index, x, now);
    const T* core_slope = slopes.empty() ? nullptr
                                         : slopes.data() + system::person_offset(index) +
                                               body::at::node(body::trunk, body::core);
    if (passed(person.value, now, levels_[p]))
      for (int i = 0; i < lanes; ++i)
        if (lane(held.persons[p].living, i) > 0) locate(index, i, t0, t1, now, core_slope, held.persons[p]);
    person.core_slope = core_slope != nullptr ? *core_slope : (now[core] - person.value[core]) / T(t1 - t0);
    person.before = person.value;
    person.before_s = t1 - t0;
    person.value = now;
  }
}

template <class T>
void Watch<T>::locate(int index, int l, double t0, double t1, const std::array<T, quantity_count>& now,
                      const T* core_slope, const system::HeldPerson<T>& held) {
  Person& person = persons_[static_cast<std::size_t>(index)];
  const Levels<T>& levels = levels_[static_cast<std::size_t>(index)];
  auto& found = passings_[static_cast<std::size_t>(l)];
  for (std::size_t i = 0; i < level_count; ++i) {
    const LevelKind& kind = level_kinds[i];
    const auto q = static_cast<std::size_t>(kind.quantity);
    const double level = lane(levels[i], l), y0 = lane(person.value[q], l), y1 = lane(now[q], l);
    if ((y0 > level) == (y1 > level)) continue;
    const double rate = (y1 - y0) / (t1 - t0);
    // Only temperature bends enough within a step for the cubic to matter; the rest follow their chords.
    double end = rate, start = rate;
    if (person.before_s > 0) start = (y0 - lane(person.before[q], l)) / person.before_s;
    if (kind.quantity == core) {
      if (core_slope != nullptr) end = lane(*core_slope, l);
      start = person.before_s > 0 ? lane(person.core_slope, l) : 2 * rate - end;
    }
    keep_stop(person, l, person.kept[static_cast<std::size_t>(l)]);
    const double at = march::crossing_time(t0, y0, start, t1, y1, end, level);
    const bool grazing =
        kind.quantity == core && core_error_K / std::abs(rate) > std::max(time_share * at, time_error_s);
    found.push_back({index, static_cast<Limit>(i), at, rate * hour_s, grazing, y1 > y0});
    const bool drowning =
        kind.meaning == Meaning::unconscious && y1 < y0 && lane(held.airway_open_to_sea, l) > 0;
    if (drowning) found.push_back({index, Limit::lost_airway, at, rate * hour_s, grazing, false});
    if (drowning || kind.meaning == Meaning::lethal) person.died[static_cast<std::size_t>(l)] = true;
  }
}

template <class T>
std::vector<Fate> Watch<T>::fates(double end_s, int l) const {
  Levels<double> levels;
  std::vector<Fate> out;
  for (std::size_t p = 0; p < persons_.size(); ++p) {
    for (std::size_t i = 0; i < level_count; ++i) levels[i] = lane(levels_[p][i], l);
    const Person& person = persons_[p];
    AtStops stops = person.kept[static_cast<std::size_t>(l)];
    if (person.living[static_cast<std::size_t>(l)]) keep_stop(person, l, stops);
    out.push_back(read_fate(static_cast<int>(p), passings(l), levels, stops, end_s));
  }
  return out;
}

template class Watch<double>;
template class Watch<BlockLanes>;

}  // namespace bide::timeline
