#include "bide/timeline/fate.hpp"

#include <algorithm>
#include <utility>

#include "bide/constants/routine.hpp"

namespace bide::timeline {

namespace {

// Share of the way from the normal value to a level that is left; negative beyond it.
double margin(std::size_t i, const Levels<double>& levels, const Quantities& values) {
  const LevelKind& kind = level_kinds[i];
  return (values[static_cast<std::size_t>(kind.quantity)] - levels[i]) / (kind.normal - levels[i]);
}

// Limits of ability that are passed now, and since when; the first lapse longer than allowed ends "able".
class Lapse {
 public:
  explicit Lapse(Fate& fate) : fate_(&fate) {}

  void into(Limit limit, double t) { open_.push_back({limit, t}); }
  void out_of(Limit limit, double t) {
    if (open_.size() == 1) close(t);
    std::erase_if(open_, [&](const auto& o) { return o.first == limit; });
  }
  void end(double end_s) {
    if (open_.empty()) return;
    // Death ends ability whatever the length of the lapse before it.
    if (fate_->alive_until_s && !fate_->able_until_s) end_ability();
    close(fate_->alive_until_s.value_or(end_s));
  }

 private:
  Fate* fate_;
  std::vector<std::pair<Limit, double>> open_;

  void end_ability() {
    fate_->able_until_s = open_.front().second;
    fate_->able_cause = open_.front().first;
  }
  void close(double t) {
    if (!open_.empty() && !fate_->able_until_s && t - open_.front().second > constants::lapse_s.value)
      end_ability();
  }
};

void pass(const Passing& c, Fate& fate, Lapse& lapse) {
  const bool airway = c.limit == Limit::lost_airway;
  const auto i = static_cast<std::size_t>(c.limit);
  const bool into = airway || c.upward == level_kinds[i].bad_above;
  if (airway || level_kinds[i].meaning == Meaning::lethal) {
    if (into && !fate.alive_until_s) fate.alive_until_s = c.time_s, fate.alive_cause = c.limit;
    return;
  }
  if (!into) return lapse.out_of(c.limit, c.time_s);
  lapse.into(c.limit, c.time_s);
  if (level_kinds[i].meaning == Meaning::unconscious && !fate.unconscious_s) fate.unconscious_s = c.time_s;
}

// Of the limits not passed, the one nearest at the time ability ends (or at the end).
void find_next(Fate& fate, const Levels<double>& levels, const AtStops& stops, double end_s) {
  if (stops.time_s.empty()) return;
  const double when = fate.able_until_s.value_or(end_s);
  auto at = std::upper_bound(stops.time_s.begin(), stops.time_s.end(), when);
  if (at != stops.time_s.begin()) --at;
  const Quantities& values = stops.values[static_cast<std::size_t>(at - stops.time_s.begin())];
  fate.nearest_margin_fraction = 1;
  for (std::size_t i = 0; i < level_count; ++i) {
    const double left = margin(i, levels, values);
    if (static_cast<Limit>(i) == fate.able_cause || !(left > 0) || !(left < fate.nearest_margin_fraction))
      continue;
    fate.nearest_margin_fraction = left;
    fate.next_cause = static_cast<Limit>(i);
  }
}

}  // namespace

Fate read_fate(int person, const std::vector<Passing>& passings, const Levels<double>& levels,
               const AtStops& stops, double end_s) {
  Fate fate;
  Lapse lapse(fate);
  // Starting beyond a limit counts from the start.
  for (std::size_t i = 0; i < level_count; ++i)
    if (level_kinds[i].meaning != Meaning::lethal && !stops.time_s.empty() &&
        margin(i, levels, stops.values.front()) < 0)
      lapse.into(static_cast<Limit>(i), 0);
  for (const Passing& c : passings)
    if (c.person == person) pass(c, fate, lapse);
  lapse.end(end_s);
  if (fate.alive_until_s && (!fate.able_until_s || *fate.able_until_s > *fate.alive_until_s))
    fate.able_until_s = fate.alive_until_s, fate.able_cause = fate.alive_cause;
  find_next(fate, levels, stops, end_s);
  return fate;
}

}  // namespace bide::timeline
