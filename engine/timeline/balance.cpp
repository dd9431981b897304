#include "bide/timeline/balance.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "bide/constants/fuel.hpp"
#include "bide/system/accounts.hpp"
#include "bide/system/readings.hpp"

namespace bide::timeline {

namespace {

// Change of entry `i` from start to end.
template <class T>
struct Change {
  const T *start, *end;
  T operator()(int i) const { return end[i] - start[i]; }
};

constexpr double fat_kJ_kg = constants::fat_kJ_g.value * constants::g_kg;
constexpr double protein_kJ_kg = constants::protein_kJ_g.value * constants::g_kg;

template <class T>
struct Balance {
  T residual{0}, throughput{0};
  void stored(T x) { residual += x; }
  void came(T x) { residual -= x, throughput += abs(x); }
  void went(T x) { residual += x, throughput += abs(x); }
};

// A balance for each system::Ledger.
template <class T>
struct Balances : std::array<Balance<T>, system::ledger_names.size()> {
  Balance<T>& of(system::Ledger ledger) { return (*this)[static_cast<std::size_t>(ledger)]; }

  // The running totals of a block, each on its side.
  template <std::size_t size>
  void add(const std::array<system::Account, size>& accounts, const Change<T>& change) {
    for (const system::Account& a : accounts) {
      Balance<T>& ledger = of(a.ledger);
      const T total = change(a.entry);
      switch (a.side) {
        case system::Entry::came:
          ledger.came(total);
          break;
        case system::Entry::went:
          ledger.went(total);
          break;
        // These cancel.
        case system::Entry::to_cabin:
          ledger.residual += total;
          break;
        case system::Entry::from_people:
          ledger.residual -= total;
          break;
      }
    }
  }
};

}  // namespace

template <class T>
std::array<std::vector<Ledger>, lane_count<T>> ledgers(const system::System<T>& system,
                                                       const std::vector<T>& start,
                                                       const std::vector<T>& end) {
  namespace cabin_at = system::at;
  const Change<T> cabin{start.data(), end.data()};
  const auto& compiled = system.compiled();
  const auto& held = system.held;
  const T volume = compiled.raft.volume_m3;
  Balances<T> all;
  auto &heat = all.of(system::Ledger::heat), &water = all.of(system::Ledger::water),
       &co2 = all.of(system::Ledger::co2), &food = all.of(system::Ledger::food_energy),
       &salt = all.of(system::Ledger::salt);

  all.add(system::cabin_accounts, cabin);
  heat.stored(cabin(cabin_at::total_stored));
  water.stored(volume * cabin(cabin_at::vapour) + cabin(cabin_at::film_mass) + cabin(cabin_at::water_mass));
  water.came(held.water_shipped_kg);
  water.went(held.water_bailed_kg);
  water.came(held.air_replaced_kg);
  water.throughput += cabin(cabin_at::total_absolute_water);
  co2.stored(volume * cabin(cabin_at::co2));
  // With nobody breathing the rounding of what is stored is all there is to compare with.
  co2.throughput += volume * start[cabin_at::co2];
  co2.came(held.co2_replaced_m3);

  for (int p = 0; p < compiled.structure.persons; ++p) {
    namespace at = body::at;
    const auto offset = static_cast<std::size_t>(system::person_offset(p));
    const Change<T> person{start.data() + offset, end.data() + offset};
    const system::HeldPerson<T>& books = held.persons[static_cast<std::size_t>(p)];
    all.add(system::person_accounts, person);
    heat.stored(person(at::total_stored));
    heat.throughput += person(at::total_absolute_heat);

    T clothing(0);
    for (int s = 0; s < body::segment_count; ++s) clothing += person(at::clothing_water + s);
    water.stored(person(at::body_water) + person(at::gut_water) + clothing);
    water.came(books.drunk_kg);
    water.came(books.soaked_kg);
    water.went(books.wrung_kg);

    food.stored(person(at::glycogen) + T(fat_kJ_kg) * person(at::fat_mass) +
                T(protein_kJ_kg) * person(at::protein_mass) + person(at::gut_carbohydrate) +
                person(at::gut_fat) + person(at::gut_protein));
    food.came(books.eaten_kJ);

    const body::Build<T>& build = compiled.persons[static_cast<std::size_t>(p)];
    salt.stored(person(at::extracellular_osmoles) + system::intracellular_mOsm(build, end.data() + offset) -
                system::intracellular_mOsm(build, start.data() + offset));
    salt.came(books.eaten_salt_mOsm);
  }
  std::array<std::vector<Ledger>, lane_count<T>> out;
  for (int l = 0; l < lane_count<T>; ++l)
    for (std::size_t i = 0; i < all.size(); ++i)
      out[static_cast<std::size_t>(l)].push_back(
          {system::ledger_names[i], lane(all[i].residual, l), lane(all[i].throughput, l)});
  return out;
}

std::optional<Failure> broken(const std::vector<Ledger>& ledgers, double days) {
  constexpr double per_day = 1e-9;
  for (const Ledger& l : ledgers)
    if (!(std::abs(l.relative()) <= per_day * std::max(1.0, days)))
      return Failure{l.name,
                     fmt::format("the {} ledger is off by {:.3g} of its throughput", l.name, l.relative())};
  return std::nullopt;
}

template std::array<std::vector<Ledger>, 1> ledgers(const system::System<double>&, const std::vector<double>&,
                                                    const std::vector<double>&);
template std::array<std::vector<Ledger>, block_width> ledgers(const system::System<BlockLanes>&,
                                                              const std::vector<BlockLanes>&,
                                                              const std::vector<BlockLanes>&);

}  // namespace bide::timeline
