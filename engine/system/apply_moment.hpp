// What every event works on: the moment, who can lend a hand, and wetting people. Included by apply.hpp.
#pragma once

#include "bide/core/units.hpp"
#include "bide/system/clothing_heat.hpp"
#include "bide/system/events.hpp"
#include "bide/system/readings.hpp"
#include "bide/system/tasks.hpp"
#include "bide/weather/weather.hpp"

namespace bide::system {

// The moment an event sees.
template <class T>
struct Moment {
  const ScheduledStop& stop;
  System<T>& system;
  std::vector<T>& x;
  Notes notes;

  const Structure& structure() const { return system.compiled().structure; }
  const RaftBuild<T>& raft() const { return system.compiled().raft; }
  const Amounts<T>& amounts() const { return system.compiled().amounts; }
  Held<T>& held() { return system.held; }
  T* person(int p) { return x.data() + person_offset(p); }
  const body::Build<T>& build(int p) const { return system.compiled().persons[static_cast<std::size_t>(p)]; }
  double since_boarding_h() const { return (stop.time_s - structure().boarding_s) / hour_s; }
  // Lanes leave no notes: whoever wants them replays the sample alone.
  void note(NoteKind kind, int p = -1, double asked = 0, double given = 0, int index = 0) {
    if (notes != nullptr) notes->push_back({stop.time_s, kind, p, index, asked, given});
  }
};

template <class T>
inline T people_able(Moment<T>& m) {
  T sum(0);
  for (const HeldPerson<T>& p : m.held().persons) sum += p.able * p.living;
  return sum;
}

template <class T>
inline T people_living(Moment<T>& m) {
  T sum(0);
  for (const HeldPerson<T>& p : m.held().persons) sum += p.living;
  return sum;
}

// Whether one of those who can help themselves has hands that can do a task. A task that is needed and fails
// for cold hands alone is noted.
// @param needed above 0: the task is due
// @return 1 or 0
template <class T>
inline T crew_can(Moment<T>& m, Task task, T needed) {
  T hands(0);
  for (int p = 0; p < m.structure().persons; ++p) {
    const HeldPerson<T>& h = m.held().persons[static_cast<std::size_t>(p)];
    hands += h.able * h.living * hand_can(task, m.person(p));
  }
  if (lane(needed, 0) > 0 && lane(hands, 0) <= 0 && lane(people_able(m), 0) > 0)
    m.note(NoteKind::hands_failed, -1, 0, 0, static_cast<int>(task));
  return select(hands > T(0), T(1), T(0));
}

// Water added to a person's clothing up to a wetness, at sea temperature: the cloth takes the mixed
// temperature.
template <class T>
void soak(Moment<T>& m, int p, T wetness, T sea_degC) {
  const body::Build<T>& b = m.build(p);
  T* y = m.person(p);
  for (int s = 0; s < body::segment_count; ++s) {
    T& water = y[body::at::clothing_water + s];
    const T target = larger(water, T(wetness * b.clothing_capacity_kg[s] * (T(1) - b.waterproof)));
    const T added = target - water;
    const T before = clothing_capacity_J_K(b, s, water), after = clothing_capacity_J_K(b, s, target);
    T& degC = y[body::at::node(s, body::clothing)];
    degC = sea_degC + (degC - sea_degC) * before / after;
    m.held().persons[static_cast<std::size_t>(p)].soaked_kg += added;
    water = target;
  }
}

// Work, J, done by the able until the next check: spread evenly as power.
template <class T>
void share_work(Moment<T>& m, T work_J) {
  const T able = larger(people_able(m), T(1));
  const T each_W = work_J / (able * T(m.structure().check_interval_s));
  for (HeldPerson<T>& p : m.held().persons) p.labour_W += each_W * p.able * p.living;
}

}  // namespace bide::system
