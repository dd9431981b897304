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

// Whether a person's oxygen uptake carries a work. A small child's does not.
// @param work_W its heat above rest, W
// @return 1 or 0; 0 as well for who is not able
template <class T>
inline T has_breath_for(Moment<T>& m, int p, T work_W) {
  const HeldPerson<T>& h = m.held().persons[static_cast<std::size_t>(p)];
  return h.able * h.living * select(work_W > m.build(p).greatest_work_W, T(0), T(1));
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

// A work that one person could do.
template <class T>
struct Work {
  Task task;
  T heat_W;     // above rest, at its own pace, above 0
  T kept_up_s;  // for how long that pace is asked for, above 0
  T due_s;      // within which it is to be done, above 0
};

// The heat above rest at which a person does a work: its own, or what they can keep up for so long, W.
template <class T>
inline T pace_W(const body::Build<T>& b, const Work<T>& work) {
  const T rest_W = T(constants::awake_rest_factor) * b.basal_total_W;
  const T sustained_W = body::sustainable_share(work.kept_up_s) * (b.greatest_work_W + rest_W) - rest_W;
  return smaller(work.heat_W, positive_part(sustained_W));
}

// What a person can give of a work within the time it is due: less at a slower pace, and less while other
// work is in hand.
// @return [0, 1]
template <class T>
inline T gives(Moment<T>& m, int p, const Work<T>& work) {
  const HeldPerson<T>& h = m.held().persons[static_cast<std::size_t>(p)];
  const T pace = pace_W(m.build(p), work);
  constexpr double tiny_W = 1e-9;
  const T in_hand_s = h.work_left_J / larger(h.work_pace_W, T(tiny_W));
  return can_do(m, p, work.task, work.heat_W) * pace / work.heat_W *
         positive_part(T(T(1) - in_hand_s / work.due_s));
}

// What those who can do a work give of it together.
// @return [0, 1]
template <class T>
inline T given_by_all(Moment<T>& m, const Work<T>& work) {
  T sum(0);
  for (int p = 0; p < m.structure().persons; ++p) sum += gives(m, p, work);
  return smaller(sum, T(1));
}

// Work shared by those who can do it, as much as each can give, from the next check on.
// @param time_s that it takes one at its own pace, s, at least 0
template <class T>
void share_work(Moment<T>& m, const Work<T>& work, T time_s) {
  T sum(0);
  for (int p = 0; p < m.structure().persons; ++p) sum += gives(m, p, work);
  constexpr double nobody = 1e-9;
  const T each_J = work.heat_W * time_s / larger(sum, T(nobody));
  for (int p = 0; p < m.structure().persons; ++p) {
    HeldPerson<T>& h = m.held().persons[static_cast<std::size_t>(p)];
    const T does_J = each_J * gives(m, p, work);
    h.work_pace_W = select(does_J > T(0), pace_W(m.build(p), work), h.work_pace_W);
    h.work_left_J += does_J;
  }
}

// What a person does of it until the next check, at the pace of the work taken on last; the rest is left for
// later. Who is not able leaves it.
template <class T>
void set_labour(Moment<T>& m, int p) {
  HeldPerson<T>& h = m.held().persons[static_cast<std::size_t>(p)];
  const T interval_s(m.structure().check_interval_s);
  h.work_left_J *= h.able * h.living;
  h.labour_W = smaller(T(h.work_left_J * T(1 / m.structure().check_interval_s)), h.work_pace_W);
  h.work_left_J = positive_part(T(h.work_left_J - h.labour_W * interval_s));
}

}  // namespace bide::system
