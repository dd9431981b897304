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

using system::beyond;
using system::level_count;
using system::Limit;
using system::limits;
using system::Meaning;
using system::quantity::core;

// One lane's values at a stop, once.
template <class T>
void keep(AtStops& kept, double stop_s, const system::Quantities<T>& all, int l) {
  if (!kept.time_s.empty() && kept.time_s.back() == stop_s) return;
  kept.time_s.push_back(stop_s);
  system::Quantities<double>& values = kept.values.emplace_back();
  for (std::size_t q = 0; q < system::quantity::count; ++q) values[q] = lane(all[q], l);
}

// Somewhere between the two ends a level lies, in some lane.
template <class T>
bool crossed(const system::Quantities<T>& from, const system::Quantities<T>& to,
             const system::Levels<T>& levels) {
  Mask<T> found = T(0) > T(0);
  for (std::size_t i = 0; i < level_count; ++i) {
    const Mask<T> was = beyond(limits[i], from[limits[i].of], levels.by_limit[i]),
                  is = beyond(limits[i], to[limits[i].of], levels.by_limit[i]);
    found = found | (was & !is) | (is & !was);
  }
  return any(found);
}

// Those limits that one lane crosses between two states, with both values and the level.
template <class T, class Visit>
void each_crossed(int l, const system::Quantities<T>& from, const system::Quantities<T>& to,
                  const system::Levels<T>& levels, Visit visit) {
  for (std::size_t i = 0; i < level_count; ++i) {
    const auto q = limits[i].of;
    const double level = lane(levels.by_limit[i], l), y0 = lane(from[q], l), y1 = lane(to[q], l);
    if (beyond(limits[i], y0, level) != beyond(limits[i], y1, level)) visit(limits[i], y0, y1, level);
  }
}

}  // namespace

template <class T>
Watch<T>::Watch(const system::Compiled<T>& compiled)
    : compiled_(&compiled), persons_(static_cast<std::size_t>(compiled.structure.persons)) {
  for (const body::Build<T>& person : compiled.persons)
    levels_.push_back(system::levels_of(compiled.limits, person));
}

template <class T>
system::Quantities<T> Watch<T>::read(int person, const std::vector<T>& x) const {
  return system::quantities_of(compiled_->persons[static_cast<std::size_t>(person)],
                               x.data() + system::person_offset(person), x[system::at::co2]);
}

template <class T>
void Watch<T>::begin(double t, const std::vector<T>& x, const system::Held<T>& held) {
  const bool first = stop_s_ < 0;
  for (std::size_t p = 0; p < persons_.size(); ++p) {
    Person& person = persons_[p];
    const system::Quantities<T> now = read(static_cast<int>(p), x);
    if (first) starts_beyond(static_cast<int>(p), t, now);
    for (int i = 0; i < lanes; ++i)
      if (!first && lane(held.persons[p].living, i) <= 0 && !person.death[static_cast<std::size_t>(i)])
        keep(person.kept[static_cast<std::size_t>(i)], stop_s_, person.at_stop, i);
    if (!first && crossed(person.value, now, levels_[p])) carried(static_cast<int>(p), t, now);
    person.value = person.at_stop = now;
    person.before_s = 0;  // a stop may have bent the curve
    for (int i = 0; i < lanes; ++i) {
      std::optional<Death>& death = person.death[static_cast<std::size_t>(i)];
      if (lane(held.persons[p].living, i) <= 0 && !death) death = date(static_cast<int>(p), i, t, now);
    }
  }
  stop_s_ = t;
  if (first)
    for (Person& person : persons_)
      for (int i = 0; i < lanes; ++i) keep(person.kept[static_cast<std::size_t>(i)], t, person.at_stop, i);
}

// Whoever starts beyond a limit passes it at the start.
template <class T>
void Watch<T>::starts_beyond(int index, double t, const system::Quantities<T>& now) {
  const system::Levels<T>& levels = levels_[static_cast<std::size_t>(index)];
  for (std::size_t l = 0; l < lanes; ++l)
    for (std::size_t i = 0; i < level_count; ++i)
      if (const int at = static_cast<int>(l);
          beyond(limits[i], lane(now[limits[i].of], at), lane(levels.by_limit[i], at)))
        crossings_[l].push_back({index, limits[i].id, t, 0, false, limits[i].side == system::Side::above});
}

// What happens at a stop may carry a value across a level: food salts the blood, a capsize changes the air.
template <class T>
void Watch<T>::carried(int index, double t, const system::Quantities<T>& now) {
  Person& person = persons_[static_cast<std::size_t>(index)];
  for (int i = 0; i < lanes; ++i) {
    const auto l = static_cast<std::size_t>(i);
    if (person.death[l]) continue;
    each_crossed(i, person.value, now, levels_[static_cast<std::size_t>(index)],
                 [&](const system::LimitRow& row, double y0, double y1, double) {
                   keep(person.kept[l], t, now, i);
                   crossings_[l].push_back({index, row.id, t, 0, false, y1 > y0});
                 });
  }
}

// A check has found somebody dead: since when, and of what. Of the lethal limits that are passed, the one
// passed first; where none is, the sea took the airway, then or when it rose. Who is lost in the first
// minutes is so before anything else.
template <class T>
Death Watch<T>::date(int index, int l, double t, const system::Quantities<T>& now) {
  const system::Levels<T>& levels = levels_[static_cast<std::size_t>(index)];
  std::vector<Crossing>& found = crossings_[static_cast<std::size_t>(l)];
  Death death{t, Limit::lost_airway};
  for (std::size_t i = 0; i < level_count; ++i) {
    if (limits[i].meaning != Meaning::lethal ||
        !beyond(limits[i], lane(now[limits[i].of], l), lane(levels.by_limit[i], l)))
      continue;
    const auto into = std::find_if(found.rbegin(), found.rend(), [&](const Crossing& c) {
      return c.person == index && c.limit == limits[i].id;
    });
    if (into != found.rend() && (death.limit == Limit::lost_airway || into->time_s < death.time_s))
      death = {into->time_s, limits[i].id};
  }
  const std::optional<Death>& under =
      persons_[static_cast<std::size_t>(index)].went_under[static_cast<std::size_t>(l)];
  if (under && under->time_s < death.time_s) death = *under;
  if (lane(compiled_->persons[static_cast<std::size_t>(index)].lost, l) > 0)
    death = {t, Limit::first_minutes};
  if (static_cast<std::size_t>(death.limit) >= level_count)
    found.push_back({index, death.limit, death.time_s, 0, false, false});
  return death;
}

template <class T>
void Watch<T>::after_step(double t0, double t1, const std::vector<T>& x, const std::vector<T>& slopes,
                          const system::Held<T>& held) {
  for (std::size_t p = 0; p < persons_.size(); ++p) {
    Person& person = persons_[p];
    const int index = static_cast<int>(p);
    const system::Quantities<T> now = read(index, x);
    const T* core_slope = slopes.empty() ? nullptr
                                         : slopes.data() + system::person_offset(index) +
                                               body::at::node(body::trunk, body::core);
    if (crossed(person.value, now, levels_[p]))
      for (int i = 0; i < lanes; ++i)
        if (lane(held.persons[p].living, i) > 0) locate(index, i, t0, t1, now, core_slope, held.persons[p]);
    person.core_slope = core_slope != nullptr ? *core_slope : (now[core] - person.value[core]) / T(t1 - t0);
    person.before = person.value;
    person.before_s = t1 - t0;
    person.value = now;
  }
}

template <class T>
void Watch<T>::locate(int index, int l, double t0, double t1, const system::Quantities<T>& now,
                      const T* core_slope, const system::HeldPerson<T>& held) {
  Person& person = persons_[static_cast<std::size_t>(index)];
  each_crossed(l, person.value, now, levels_[static_cast<std::size_t>(index)],
               [&](const system::LimitRow& row, double y0, double y1, double level) {
                 const double rate = (y1 - y0) / (t1 - t0);
                 // Only temperature bends enough within a step for the cubic to matter; the rest follow their
                 // chords.
                 double end = rate, start = rate;
                 if (person.before_s > 0) start = (y0 - lane(person.before[row.of], l)) / person.before_s;
                 if (row.of == core) {
                   if (core_slope != nullptr) end = lane(*core_slope, l);
                   start = person.before_s > 0 ? lane(person.core_slope, l) : 2 * rate - end;
                 }
                 keep(person.kept[static_cast<std::size_t>(l)], stop_s_, person.at_stop, l);
                 const double at = march::crossing_time(t0, y0, start, t1, y1, end, level);
                 const bool grazing = row.of == core &&
                                      core_error_K / std::abs(rate) > std::max(time_share * at, time_error_s);
                 crossings_[static_cast<std::size_t>(l)].push_back(
                     {index, row.id, at, rate * hour_s, grazing, y1 > y0});
                 const bool lifejacket =
                     lane(compiled_->persons[static_cast<std::size_t>(index)].has_lifejacket, l) > 0;
                 if (!system::takes_airway(row.meaning, lifejacket)) return;
                 const bool into = (y1 > y0) == (row.side == system::Side::above);
                 const Limit cause = row.meaning == Meaning::sinking ? row.id : Limit::lost_airway;
                 std::optional<Death>& under = person.went_under[static_cast<std::size_t>(l)];
                 if (!into || lane(held.airway_open_to_sea, l) <= 0)
                   under.reset();
                 else if (!under)
                   under = Death{at, cause};
               });
}

template <class T>
std::vector<Fate> Watch<T>::fates(double end_s, int l) const {
  system::Levels<double> levels;
  std::vector<Fate> out;
  for (std::size_t p = 0; p < persons_.size(); ++p) {
    for (std::size_t i = 0; i < level_count; ++i) levels.by_limit[i] = lane(levels_[p].by_limit[i], l);
    const Person& person = persons_[p];
    const std::optional<Death>& death = person.death[static_cast<std::size_t>(l)];
    AtStops stops = person.kept[static_cast<std::size_t>(l)];
    if (!death) keep(stops, stop_s_, person.at_stop, l);
    out.push_back(read_fate(static_cast<int>(p), crossings(l), levels, stops, death, end_s));
  }
  return out;
}

template class Watch<double>;
template class Watch<BlockLanes>;

}  // namespace bide::timeline
