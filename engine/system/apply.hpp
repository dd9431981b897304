// Every event by its kind. Included by the files that instantiate it, one scalar type per file.
#pragma once

#include "bide/system/apply_boarding.hpp"
#include "bide/system/apply_people.hpp"
#include "bide/system/apply_stores.hpp"

namespace bide::system {

template <class T>
void apply(const ScheduledStop& stop, System<T>& system, std::vector<T>& x, Notes notes) {
  Moment<T> m{stop, system, x, notes};
  // Before boarding nothing is done but to watch people.
  const bool aboard = stop.time_s >= m.structure().boarding_s && m.structure().has_raft;
  switch (stop.kind) {
    case StopKind::failure:
      return fail(m);
    case StopKind::board:
      return board(m);
    case StopKind::check:
      return check(m);
    case StopKind::knot:
      return;
    case StopKind::daylight:
      return set_daylight(m);
    case StopKind::sleep:
      return set_sleep(m);
    default:
      break;
  }
  if (!aboard) return;
  switch (stop.kind) {
    case StopKind::wring:
      return wring(m);
    case StopKind::medicine:
      return take_medicine(m);
    case StopKind::drink:
      return give_water(m);
    case StopKind::issue:
      if (m.structure().ration_plan.rule != scenario::RationingRule::by_thirst) give_water(m);
      return give_food(m);
    case StopKind::bail:
      return bail(m);
    case StopKind::make_water:
      return make_water(m);
    case StopKind::signal:
      return fire_signals(m);
    case StopKind::lights:
      return burn_lights(m);
    default:
      return;
  }
}

}  // namespace bide::system
