// Slopes of everything that is not solved implicitly: water, fuel, running totals. One evaluation at the
// weighted mean stage gives the exact integral of the frozen fluxes (they are affine in the implicit
// entries).
//
// States: see body/layout and coefficients.hpp. Inputs: frozen coefficients, implicit entries of `x` and
// their slopes. Outputs: the other entries of `k`. Source: bookkeeping; every flux is that of cabin_links.hpp
// and person_links.hpp, which the solver used.
#pragma once

#include <utility>

#include "bide/system/accounts.hpp"
#include "bide/system/cabin_links.hpp"
#include "bide/system/person_links.hpp"

namespace bide::system {

// Rates of the entries of a block from `first` on, by their places.
template <class T, int first, int end>
struct Rates {
  static constexpr auto size = static_cast<std::size_t>(end - first);
  std::array<T, size> rate = empty_sums<T, size>();

  template <int entry>
  constexpr T& at() {
    static_assert(entry >= first && entry < end);
    return rate[static_cast<std::size_t>(entry - first)];
  }

  void store(T* k) const { store(k, std::make_index_sequence<size>{}); }

 private:
  // Places known to the compiler: the rates stay in registers until here. What nothing was added to is minus
  // zero, and would be printed as such.
  template <std::size_t... i>
  void store(T* k, std::index_sequence<i...>) const {
    ((k[first + static_cast<int>(i)] = rate[i] + T(0)), ...);
  }
};

// Sum of the absolute rates of the accounts of one ledger.
template <const auto& accounts, Ledger ledger, class T, int first, int end, std::size_t... i>
inline T turnover(Rates<T, first, end>& r, std::index_sequence<i...>) {
  T sum(0);
  const auto add = [&]<std::size_t j>() {
    if constexpr (accounts[j].ledger == ledger) sum += abs(r.template at<accounts[j].entry>());
  };
  (add.template operator()<i>(), ...);
  return sum;
}
template <const auto& accounts, Ledger ledger, class T, int first, int end>
inline T turnover(Rates<T, first, end>& r) {
  return turnover<accounts, ledger>(r, std::make_index_sequence<accounts.size()>{});
}

// What one person adds to the running totals, the water of body and gut, and the clothing of a segment.
template <class T>
struct PersonTally : Rates<T, body::at::body_water, body::at::count> {
  State<T> state;
  T clothing_kg_s;                     // into the clothing of the segment at hand
  T evaporated_kg_s = empty_sum<T>();  // into the cabin

  explicit PersonTally(const State<T>& s) : state(s) {}

  template <class From, class To, int... booked>
  [[gnu::always_inline]] void link(const T& coefficient, const From& from, const To& to, Book<booked>...) {
    static_assert((fits(booked, is_node<From>, is_node<To>, person_accounts) && ...));
    if constexpr (sizeof...(booked) > 0 || is_wet<From> || is_wet<To>) {
      const T f = flux(coefficient, from, to, state);
      ((this->template at<booked>() += f), ...);
      if constexpr (is_wet<From>) add(liquid_of(from), T(-f));
      if constexpr (is_wet<To>) add(liquid_of(to), f);
      // Where both ends are this person's, the heat stays with them.
      static_assert(is_wet<From> || !is_wet<To>, "a person's evaporation is stated outward");
      if constexpr (is_wet<From> && !is_wet<To>)
        this->template at<body::at::total_evaporation>() += felt(f, from);
      if constexpr (std::is_same_v<To, Cabin<system::at::vapour>>) evaporated_kg_s += f;
    }
  }
  template <class From, class To, int... booked>
  [[gnu::always_inline]] void flow(const T& amount, From from, To to, Book<booked>...) {
    static_assert((fits(booked, is_node<From>, is_node<To>, person_accounts) && ...));
    ((this->template at<booked>() += amount), ...);
    add(from, T(-amount));
    add(to, amount);
  }

 private:
  template <int i>
  [[gnu::always_inline]] void add(Own<i>, const T& x) {
    if constexpr (i >= body::at::body_water) this->template at<i>() += x;
  }
  template <int l>
  void add(Layer<l>, const T&) {}
  [[gnu::always_inline]] void add(ClothingWater, const T& x) { clothing_kg_s += x; }
  void add(Outside, const T&) {}
};

// What the cabin receives from one person.
template <class T>
struct FromPerson {
  T heat_W, evaporated_kg_s, drained_kg_s;
};

// @param fog_kg_s that settles on this person
template <class T>
inline FromPerson<T> slow_person(const body::PersonCoefficients<T>& c, const T* cabin, T fog_kg_s, const T* x,
                                 T* k) {
  namespace at = body::at;
  PersonTally<T> t({cabin, x});
  person_flows(c, t);
  t.flow(fog_kg_s, Outside{}, Own<at::total_clothing_drain>{});
  T stored = c.blood_capacity_J_K * k[at::blood] + c.finger_capacity_J_K * k[at::finger];
  for (int s = 0; s < body::segment_count; ++s) {
    t.state.segment = s;
    t.clothing_kg_s = empty_sum<T>();
    segment_links(c, s, t);
    segment_flows(c, s, fog_kg_s, t);
    k[at::clothing_water + s] = t.clothing_kg_s;
    for (int l = 0; l < body::layer_count; ++l) stored += c.capacity_J_K[s][l] * k[at::node(s, l)];
  }
  finger_links(c, t);

  // Salt, fuel and the rest change by rates that join no two entries.
  t.template at<at::extracellular_osmoles>() = c.osmole_rate_mOsm_s;
  t.template at<at::urea>() = c.urea_rate_mOsm_s;
  t.template at<at::fluid_shift>() = c.fluid_shift_L_s;
  t.template at<at::glycogen>() = c.glycogen_kJ_s;
  t.template at<at::fat_mass>() = c.fat_kg_s;
  t.template at<at::protein_mass>() = c.protein_kg_s;
  t.template at<at::gut_carbohydrate>() = -c.absorbed_carbohydrate_kJ_s;
  t.template at<at::gut_fat>() = -c.absorbed_fat_kJ_s;
  t.template at<at::gut_protein>() = -c.absorbed_protein_kJ_s;
  t.template at<at::fatigue>() = c.fatigue_per_s;
  t.template at<at::motion_dose>() = c.motion_dose_m2_s4;
  t.template at<at::adaptation>() = c.adaptation_per_s;
  t.template at<at::alcohol>() = c.alcohol_mg_dL_s;
  t.template at<at::fasted>() = c.living;
  t.template at<at::arms_used>() = c.arms_used_per_s;
  t.template at<at::sweat>() = c.sweat_W_s;
  t.template at<at::total_stored>() = stored;
  t.template at<at::total_salt_lost>() = c.salt_loss_mOsm_s;
  t.template at<at::total_oxidised>() = c.oxidised_kJ_s;
  t.template at<at::total_nitrogen>() = c.nitrogen_g_s;
  t.template at<at::total_shivering>() = c.shivering_W;
  t.template at<at::total_cold_feet>() = c.cold_feet;
  t.template at<at::total_frozen>() = c.frozen;
  t.template at<at::total_face>() = c.face;
  t.template at<at::total_absolute_heat>() = turnover<person_accounts, Ledger::heat>(t);
  t.store(k);
  return {k[at::total_to_air] + k[at::total_to_canopy] + k[at::total_to_floor_water] + c.breath_dry_W,
          t.evaporated_kg_s, k[at::total_clothing_drain]};
}

// What the cabin's own fluxes add to its running totals and to its liquid water.
template <class T>
struct CabinTally : Rates<T, at::implicit_count, at::count> {
  State<T> state;

  explicit CabinTally(const State<T>& s) : state(s) {}

  template <class From, class To, int... booked>
  [[gnu::always_inline]] void link(const T& coefficient, const From& from, const To& to, Book<booked>...) {
    static_assert((fits(booked, is_node<From>, is_node<To>, cabin_accounts) && ...));
    if constexpr (sizeof...(booked) > 0 || is_wet<From> || is_wet<To>) {
      const T f = flux(coefficient, from, to, state);
      ((this->template at<booked>() += f), ...);
      if constexpr (is_wet<From>) {
        add(liquid_of(from), T(-f));
        this->template at<at::total_latent>() -= felt(f, from);
      }
      if constexpr (is_wet<To>) {
        add(liquid_of(to), f);
        this->template at<at::total_latent>() += felt(f, to);
      }
      if constexpr (is_wet<From> || is_wet<To>) this->template at<at::total_absolute_water>() += abs(f);
    }
  }
  template <class From, class To, int... booked>
  [[gnu::always_inline]] void flow(const T& amount, From from, To to, Book<booked>...) {
    static_assert((fits(booked, is_node<From>, is_node<To>, cabin_accounts) && ...));
    ((this->template at<booked>() += amount), ...);
    add(from, T(-amount));
    add(to, amount);
  }

 private:
  template <int i>
  [[gnu::always_inline]] void add(Cabin<i>, const T& x) {
    if constexpr (i >= at::implicit_count) this->template at<i>() += x;
  }
  void add(Outside, const T&) {}
};

// Vapour that turns to fog, kg/s.
template <class T>
inline T fog_kg_s(const CabinCoefficients<T>& c, const T* x) {
  const auto link = fog(c);
  return flux(link.coefficient, link.from, link.to, State<T>{x});
}

template <class T>
inline void slow_cabin(const CabinCoefficients<T>& c, const FromPerson<T>& people, const T* x, T* k) {
  using namespace at;
  CabinTally<T> t({x});
  cabin_links(c, t);
  t.flow(T(fog_kg_s(c, x) * c.fog_on_people_share), Cabin<water_mass>{}, Outside{});
  t.flow(people.drained_kg_s, Outside{}, Cabin<water_mass>{});
  t.template at<total_from_bodies>() = people.heat_W;
  t.template at<total_stored>() = c.capacity[air] * k[air] + c.capacity[canopy] * k[canopy] +
                                  c.capacity[floor_water] * k[floor_water] +
                                  c.outer_capacity_J_K * k[outer_skin];
  // Fluxes between water's own entries have been added as they came.
  t.template at<total_absolute_water>() +=
      turnover<cabin_accounts, Ledger::water>(t) + abs(people.evaporated_kg_s) + c.breath_water_kg_s;
  t.store(k);
}

}  // namespace bide::system
