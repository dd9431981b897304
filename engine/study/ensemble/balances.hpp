// What came and went over a person's life aboard, term by term: heat, water of the body and the gut, and
// food.
//
// States: none. Inputs: the person's state at the start and later, and the books of events. Positive as each
// name says. Validity: heat made and sun less all that is lost is heat stored, water that came less water
// that went is the change of water, both to rounding (the ledgers of timeline/balance.hpp); food has no such
// sum, because reserves of the body are used too. Source: bookkeeping.
#pragma once

#include <array>
#include <cstddef>

#include "bide/body/layout.hpp"
#include "bide/constants/fuel.hpp"
#include "bide/system/held.hpp"

namespace bide::study {

struct BalanceTerm {
  const char* name;
  const char* unit;
};
inline constexpr std::array balance_terms{
    BalanceTerm{"heat made", "kJ"},          BalanceTerm{"heat from the sun", "kJ"},
    BalanceTerm{"heat lost to air", "kJ"},   BalanceTerm{"heat lost to canopy", "kJ"},
    BalanceTerm{"heat lost to floor", "kJ"}, BalanceTerm{"heat lost to water", "kJ"},
    BalanceTerm{"heat evaporated", "kJ"},    BalanceTerm{"heat breathed out", "kJ"},
    BalanceTerm{"heat stored", "kJ"},        BalanceTerm{"water drunk", "kg"},
    BalanceTerm{"metabolic water", "kg"},    BalanceTerm{"urine", "kg"},
    BalanceTerm{"water breathed out", "kg"}, BalanceTerm{"water through the skin", "kg"},
    BalanceTerm{"sweat that dripped", "kg"}, BalanceTerm{"water vomited", "kg"},
    BalanceTerm{"change of water", "kg"},    BalanceTerm{"food eaten", "kJ"},
    BalanceTerm{"energy used", "kJ"}};

template <class T>
using Balance = std::array<T, balance_terms.size()>;

// The terms so far, in the order of balance_terms.
// @param start the person's block of the state at the start
// @param now   the same, later
// @param books of events since the start
template <class T>
Balance<T> balance_of(const T* start, const T* now, const system::HeldPerson<T>& books) {
  namespace at = body::at;
  const auto change = [&](int entry) { return T(now[entry] - start[entry]); };
  const auto kJ = [&](int total_J) { return T(change(total_J) * T(1 / constants::kJ_J)); };
  return {kJ(at::total_metabolic),
          kJ(at::total_sun),
          kJ(at::total_to_air),
          kJ(at::total_to_canopy),
          kJ(at::total_to_floor) + kJ(at::total_to_tube),
          kJ(at::total_to_floor_water) + kJ(at::total_to_sea),
          kJ(at::total_evaporation),
          kJ(at::total_breath),
          kJ(at::total_stored),
          books.drunk_kg,
          change(at::total_metabolic_water),
          change(at::total_urine),
          change(at::total_breath_water),
          change(at::total_skin_water),
          change(at::total_sweat_drip),
          change(at::total_vomit),
          change(at::body_water) + change(at::gut_water),
          books.eaten_kJ,
          change(at::total_oxidised)};
}

}  // namespace bide::study
