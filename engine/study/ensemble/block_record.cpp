#include "bide/study/ensemble/block_record.hpp"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <utility>

#include "bide/body/hands.hpp"
#include "bide/core/units.hpp"
#include "bide/system/readings.hpp"
#include "bide/system/tasks.hpp"
#include "bide/timeline/balance.hpp"

namespace bide::study {

namespace {

// Columns of a row: the cabin's, then each person's.
enum CabinColumn : std::size_t { inside_air, co2_ppm, water, food, flares, lamp, beacon, cabin_columns };
enum PersonColumn : std::size_t {
  core,
  finger,
  deficit,
  osmolality,
  shivering,
  ability,
  cold_feet,
  person_columns
};

std::size_t place(std::size_t person, PersonColumn column) {
  return cabin_columns + person * person_columns + column;
}

// When a store runs out: 0 when there was none, beyond the horizon when it lasts.
double out_at_s(const outcome::StoreFigures& store) {
  switch (store.state) {
    case outcome::StoreState::none_aboard:
      return 0;
    case outcome::StoreState::runs_out:
      return store.at_s;
    default:
      return beyond_horizon;
  }
}

// The most output times there are: the grid from 0, and the end.
std::size_t rows_of(const system::Structure& s) {
  return static_cast<std::size_t>(s.end_s / s.output_interval_s) + 2;
}

}  // namespace

BlockRecord::BlockRecord(system::System<T>& system, std::vector<T> start, double near_margin)
    : system_(&system),
      start_(std::move(start)),
      rate_(start_.size()),
      most_rows_(rows_of(system.compiled().structure)),
      columns_((cabin_columns + person_columns * system.held.persons.size()) * most_rows_),
      shivered_J_(system.held.persons.size(), T(0)),
      balances_(system.held.persons.size()),
      near_margin_(near_margin) {
  time_s_.reserve(most_rows_);
  for (std::size_t p = 0; p < system.held.persons.size(); ++p) {
    const body::Build<T>& person = system.compiled().persons[p];
    levels_.push_back(system::levels_of(system.compiled().limits, person));
    const auto offset = static_cast<std::size_t>(system::person_offset(static_cast<int>(p)));
    started_.push_back(system::quantities_of(person, start_.data() + offset, start_[system::at::co2]));
  }
  near_s_.fill(T(beyond_horizon));
}

void BlockRecord::row(double t, const std::vector<T>& x) {
  const auto& compiled = system_->compiled();
  const system::Held<T>& held = system_->held;
  const bool first = time_s_.empty();
  if (first) system_->slope(t, x, rate_);
  const auto keep = [&, i = time_s_.size()](std::size_t start, std::initializer_list<T> values) {
    for (const T& value : values) columns_[start++ * most_rows_ + i] = value;
  };
  keep(inside_air, {x[system::at::air], T(ppm) * x[system::at::co2], held.stock.water_L, held.stock.food_kJ,
                    held.stock.hand_flares + held.stock.rockets, held.stock.lamp_h, held.stock.beacon_h});
  for (std::size_t p = 0; p < held.persons.size(); ++p) {
    namespace at = body::at;
    const int offset = system::person_offset(static_cast<int>(p));
    const T* y = x.data() + offset;
    const T shivered_J = y[at::total_shivering];
    const T shivering_W = first ? rate_[static_cast<std::size_t>(offset + at::total_shivering)]
                                : (shivered_J - shivered_J_[p]) / T(t - time_s_.back());
    shivered_J_[p] = shivered_J;
    keep(place(p, core),
         {system::core_degC(y), y[at::finger], system::water_deficit_pct(compiled.persons[p], y),
          system::osmolality_mOsm_kg(compiled.persons[p], y), shivering_W,
          held.persons[p].able * system::hand_pace(system::Task::sachet, compiled.persons[p], y),
          y[at::total_cold_feet]});
  }
  time_s_.push_back(t);
  balance(x);
  nearness(t, x);
  end_lanes(t, x);
}

// The dead keep what they had.
void BlockRecord::balance(const std::vector<T>& x) {
  for (std::size_t p = 0; p < balances_.size(); ++p) {
    const auto offset = static_cast<std::size_t>(system::person_offset(static_cast<int>(p)));
    const system::HeldPerson<T>& person = system_->held.persons[p];
    const Balance<T> now = balance_of(start_.data() + offset, x.data() + offset, person);
    for (std::size_t i = 0; i < now.size(); ++i)
      balances_[p][i] = select(person.living > T(0), now[i], balances_[p][i]);
  }
}

void BlockRecord::nearness(double t, const std::vector<T>& x) {
  const auto& persons = system_->compiled().persons;
  for (std::size_t p = 0; p < persons.size(); ++p) {
    const auto offset = static_cast<std::size_t>(system::person_offset(static_cast<int>(p)));
    const auto now = system::quantities_of(persons[p], x.data() + offset, x[system::at::co2]);
    const Mask<T> lives = system_->held.persons[p].living > T(0);
    for (std::size_t i = 0; i < system::level_count; ++i) {
      const system::LimitRow& limit = system::limits[i];
      if (!system::ends(limit.meaning)) continue;
      const T left = system::margin_left(limit, levels_[p].by_limit[i], started_[p][limit.of], now[limit.of]);
      near_s_[i] = select(lives & (left <= T(near_margin_)), smaller(near_s_[i], T(t)), near_s_[i]);
    }
  }
}

void BlockRecord::end_lanes(double t, const std::vector<T>& x) {
  const system::Structure& s = system_->compiled().structure;
  T living(0);
  for (const auto& person : system_->held.persons) living += person.living;
  const auto ends_now = [&](int i) {
    return !ends_[static_cast<std::size_t>(i)].reached && (t >= s.end_s || !(lane(living, i) > 0));
  };
  bool some = false;
  for (int i = 0; i < lanes; ++i) some = some || ends_now(i);
  if (!some) return;
  const auto ledgers = timeline::ledgers(*system_, start_, x);
  for (int i = 0; i < lanes; ++i) {
    if (!ends_now(i)) continue;
    End& end = ends_[static_cast<std::size_t>(i)];
    end.reached = true;
    end.rows = time_s_.size();
    const auto finite = [&](const T& value) { return std::isfinite(lane(value, i)); };
    bool all = std::all_of(x.begin(), x.end(), finite);
    for (std::size_t at = 0; at < columns_.size(); at += most_rows_)
      all = all && finite(columns_[at + time_s_.size() - 1]);
    if (!all)
      end.failure = "a state variable is no longer a finite number";
    else if (const auto failure = timeline::broken(ledgers[static_cast<std::size_t>(i)], t / day_s))
      end.failure = failure->message;
  }
}

bool BlockRecord::all_ended() const {
  return std::all_of(ends_.begin(), ends_.end(), [](const End& end) { return end.reached; });
}

std::vector<double> BlockRecord::column(int l, std::size_t at, std::size_t rows) const {
  std::vector<double> out(rows);
  for (std::size_t i = 0; i < rows; ++i) out[i] = lane(columns_[at * most_rows_ + i], l);
  return out;
}

PersonResult BlockRecord::read_person(int l, std::size_t p, const std::vector<double>& time_s,
                                      const timeline::Fate& fate) const {
  const double end_s = time_s.back(), alive_s = fate.alive_until_s.value_or(end_s);
  const auto of = [&](PersonColumn c) { return column(l, place(p, c), time_s.size()); };
  PersonResult r{outcome::person_figures(
      time_s, {of(core), of(finger), of(deficit), of(osmolality), of(shivering), of(ability)}, fate, end_s)};
  r.able_until_s = fate.able_until_s.value_or(beyond_horizon);
  r.alive_until_s = fate.alive_until_s.value_or(beyond_horizon);
  r.unconscious_s = fate.unconscious_s.value_or(beyond_horizon);
  r.able_cause = fate.able_cause, r.alive_cause = fate.alive_cause, r.next_cause = fate.next_cause;
  r.next_margin_fraction = fate.nearest_margin_fraction;
  for (std::size_t i = 0; i < r.balance.size(); ++i) r.balance[i] = lane(balances_[p][i], l);
  r.cold_feet_h = outcome::value_at(time_s, of(cold_feet), alive_s).value_or(0) / hour_s;
  return r;
}

void BlockRecord::read_cabin(int l, const std::vector<double>& time_s, double until_s,
                             SampleResult& out) const {
  const outcome::CabinFigures cabin = outcome::cabin_figures(
      time_s, {column(l, inside_air, time_s.size()), column(l, co2_ppm, time_s.size())},
      system_->compiled().structure.boarding_s, until_s);
  const auto value = [](const std::optional<outcome::Extreme>& extreme) {
    return extreme ? extreme->value : not_there;
  };
  out.coldest_inside_degC = value(cabin.coldest_inside_degC);
  out.warmest_inside_degC = value(cabin.warmest_inside_degC);
  out.highest_co2_ppm = value(cabin.highest_co2_ppm);
  out.mean_inside_degC = cabin.mean_inside_degC.value_or(not_there);
  out.co2_above_5000_ppm_h = cabin.co2_above_5000_ppm_h;
  out.co2_above_15000_ppm_h = cabin.co2_above_15000_ppm_h;
  out.co2_above_30000_ppm_h = cabin.co2_above_30000_ppm_h;
}

void BlockRecord::read_signals(int l, const std::vector<double>& time_s, double at_s,
                               SampleResult& out) const {
  const bool carried = system_->compiled().structure.has_raft;
  const auto left = [&](CabinColumn at) {
    if (!carried) return 0.0;
    return outcome::value_at(time_s, column(l, at, time_s.size()), at_s).value_or(not_there);
  };
  out.flares_left = left(flares);
  out.lamp_left_h = left(lamp);
  out.beacon_left_h = left(beacon);
}

SampleResult BlockRecord::read(int l, const timeline::Watch<T>& watch, double signals_at_s) const {
  SampleResult out;
  const End& end = ends_[static_cast<std::size_t>(l)];
  out.horizon_s = system_->compiled().structure.end_s;
  out.failure = end.failure;
  if (!out.failure.empty()) return out;
  const std::vector<double> time_s(time_s_.begin(), time_s_.begin() + static_cast<std::ptrdiff_t>(end.rows));
  const std::vector<timeline::Fate> fates = watch.fates(out.horizon_s, l);
  for (std::size_t i = 0; i < near_s_.size(); ++i) out.near_s[i] = lane(near_s_[i], l);
  double last_alive_s = 0;
  for (std::size_t p = 0; p < fates.size(); ++p) {
    out.persons.push_back(read_person(l, p, time_s, fates[p]));
    last_alive_s = std::max(last_alive_s, out.persons.back().alive_until_s);
  }
  const outcome::StoreFigures water_L = outcome::store_figures(time_s, column(l, water, end.rows));
  out.water_out_s = out_at_s(water_L);
  out.water_left_L = water_L.left;
  out.food_out_s = out_at_s(outcome::store_figures(time_s, column(l, food, end.rows)));
  if (signals_at_s <= time_s.back()) read_signals(l, time_s, signals_at_s, out);
  if (system_->compiled().structure.has_raft)
    read_cabin(l, time_s, std::min(last_alive_s, time_s.back()), out);
  return out;
}

}  // namespace bide::study
