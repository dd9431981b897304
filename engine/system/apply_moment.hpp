// What every event works on: the moment, who can lend a hand, and wetting people. Included by apply.hpp.
#pragma once

#include "bide/body/labour.hpp"
#include "bide/constants/control.hpp"
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

// Whether a person's oxygen uptake carries a work, and they have done with the last. A small child's does
// not.
// @param work_W its heat above rest, W; 0: no labour, which can be done beside another
// @return 1 or 0; 0 as well for who is not able
template <class T>
inline T has_breath_for(Moment<T>& m, int p, T work_W) {
  const HeldPerson<T>& h = m.held().persons[static_cast<std::size_t>(p)];
  constexpr double nothing_J = 1;
  const auto busy = (work_W > T(0)) & (h.work_left_J > T(nothing_J));
  return h.able * h.living * select((work_W > m.build(p).greatest_work_W) | busy, T(0), T(1));
}

// Whether a person can do a task: with breath for its work, and hands.
template <class T>
inline T can_do(Moment<T>& m, int p, Task task, T work_W) {
  return has_breath_for(m, p, work_W) * hand_can(task, m.build(p), m.person(p));
}

// Whether somebody can do a task. One that is needed and fails for hands alone, cold or hurt, is noted.
// @param needed above 0: the task is due
// @param work_W its heat above rest, W
// @return 1 or 0
template <class T>
inline T crew_can(Moment<T>& m, Task task, T needed, T work_W = T(0)) {
  T breath(0), hands(0);
  for (int p = 0; p < m.structure().persons; ++p) {
    breath += has_breath_for(m, p, work_W);
    hands += can_do(m, p, task, work_W);
  }
  if (lane(needed, 0) > 0 && lane(hands, 0) <= 0 && lane(breath, 0) > 0)
    m.note(NoteKind::hands_failed, -1, 0, 0, static_cast<int>(task));
  return select(hands > T(0), T(1), T(0));
}

// Work shared evenly by those who can do it, from the next check on.
// @param work_W heat above rest of one who does it, W, above 0
// @param time_s that it takes one, s
template <class T>
void share_work(Moment<T>& m, Task task, T work_W, T time_s) {
  T people(0);
  for (int p = 0; p < m.structure().persons; ++p) people += can_do(m, p, task, work_W);
  const T each_s = time_s / larger(people, T(1));
  for (int p = 0; p < m.structure().persons; ++p) {
    HeldPerson<T>& h = m.held().persons[static_cast<std::size_t>(p)];
    const T does = can_do(m, p, task, work_W) * select(each_s > T(0), T(1), T(0));
    h.work_left_J += does * work_W * each_s;
    h.work_pace_W += does * (work_W - h.work_pace_W);
    h.work_time_s += does * (each_s - h.work_time_s);
  }
}

// What a person can keep up for as long as the work in hand takes, above rest, W.
template <class T>
inline T sustained_W(const body::Build<T>& b, const HeldPerson<T>& h) {
  const T rest_W = T(constants::awake_rest_factor) * b.basal_total_W;
  return positive_part(T(body::sustainable_share(h.work_time_s) * (b.greatest_work_W + rest_W) - rest_W));
}

// What a person does of it until the next check: at the work's own pace, or at what they can keep up; the
// rest is left for later. Who is not able leaves it.
template <class T>
void set_labour(Moment<T>& m, int p) {
  HeldPerson<T>& h = m.held().persons[static_cast<std::size_t>(p)];
  const T interval_s(m.structure().check_interval_s);
  h.work_left_J *= h.able * h.living;
  h.labour_W = smaller(T(h.work_left_J * T(1 / m.structure().check_interval_s)),
                       smaller(h.work_pace_W, sustained_W(m.build(p), h)));
  h.work_left_J = positive_part(T(h.work_left_J - h.labour_W * interval_s));
}

}  // namespace bide::system
