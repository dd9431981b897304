#include "bide/timeline/fate.hpp"

#include <algorithm>
#include <utility>

#include "bide/constants/routine.hpp"

namespace bide::timeline {

namespace {

using system::level_count;
using system::Limit;
using system::Meaning;

// A spell in which some limit of ability is passed; the first one longer than allowed ends "able", with the
// limit that began it, whichever others came and went meanwhile.
class Lapse {
 public:
  explicit Lapse(Fate& fate) : fate_(&fate) {}

  void into(Limit limit, double t) {
    if (open_.empty()) begun_ = {limit, t};
    open_.push_back(limit);
  }
  void out_of(Limit limit, double t) {
    if (std::erase(open_, limit) > 0 && open_.empty()) close(t);
  }
  void end(double end_s) {
    if (open_.empty()) return;
    // Death ends ability whatever the length of the lapse before it.
    if (fate_->alive_until_s && !fate_->able_until_s) end_ability();
    close(fate_->alive_until_s.value_or(end_s));
  }

 private:
  Fate* fate_;
  std::vector<Limit> open_;
  std::pair<Limit, double> begun_;

  void end_ability() {
    fate_->able_until_s = begun_.second;
    fate_->able_cause = begun_.first;
  }
  void close(double t) {
    if (!fate_->able_until_s && t - begun_.second > constants::lapse_s.value) end_ability();
  }
};

void pass(const Crossing& c, Fate& fate, Lapse& lapse) {
  const system::LimitRow& row = system::row_of(c.limit);
  if (row.meaning == Meaning::injury) fate.injuries.push_back({c.limit, c.time_s});
  if (!system::ends(row.meaning) || row.meaning == Meaning::lethal) return;  // deaths are found aboard
  if (c.upward != (row.side == system::Side::above)) return lapse.out_of(c.limit, c.time_s);
  lapse.into(c.limit, c.time_s);
  if (row.meaning == Meaning::unconscious && !fate.unconscious_s) fate.unconscious_s = c.time_s;
}

// Of the limits not passed, the one nearest at the time ability ends (or at the end).
void find_next(Fate& fate, const system::Levels<double>& levels, const AtStops& stops, double end_s) {
  if (stops.time_s.empty()) return;
  const double when = fate.able_until_s.value_or(end_s);
  auto at = std::upper_bound(stops.time_s.begin(), stops.time_s.end(), when);
  if (at != stops.time_s.begin()) --at;
  const system::Quantities<double>& values =
      stops.values[static_cast<std::size_t>(at - stops.time_s.begin())];
  fate.nearest_margin_fraction = 1;
  for (std::size_t i = 0; i < level_count; ++i) {
    const system::LimitRow& limit = system::limits[i];
    if (!system::ends(limit.meaning)) continue;
    const double left =
        system::margin_left(limit, levels.by_limit[i], stops.values.front()[limit.of], values[limit.of]);
    if (static_cast<Limit>(i) == fate.able_cause || !(left > 0) || !(left < fate.nearest_margin_fraction))
      continue;
    fate.nearest_margin_fraction = left;
    fate.next_cause = static_cast<Limit>(i);
  }
}

}  // namespace

Fate read_fate(int person, const std::vector<Crossing>& crossings, const system::Levels<double>& levels,
               const AtStops& stops, const std::optional<Death>& death, double end_s) {
  Fate fate;
  if (death) fate.alive_until_s = death->time_s, fate.alive_cause = death->limit;
  Lapse lapse(fate);
  for (const Crossing& c : crossings)
    if (c.person == person && c.time_s <= fate.alive_until_s.value_or(end_s)) pass(c, fate, lapse);
  lapse.end(end_s);
  if (fate.alive_until_s && (!fate.able_until_s || *fate.able_until_s > *fate.alive_until_s))
    fate.able_until_s = fate.alive_until_s, fate.able_cause = fate.alive_cause;
  find_next(fate, levels, stops, end_s);
  return fate;
}

}  // namespace bide::timeline
