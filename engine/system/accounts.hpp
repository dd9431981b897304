// Which ledger a running total belongs to, and on which side.
//
// States: none. Inputs: none. Validity: not applicable. Source: bookkeeping. A total that is not here is kept
// for reports only. Water, food and salt that change hands at stops are booked in Held
// (timeline/balance.cpp).
#pragma once

#include <array>

#include "bide/system/coefficients.hpp"

namespace bide::system {

enum class Ledger : int { heat, water, co2, food_energy, salt };
inline constexpr std::array ledger_names{"heat", "water", "co2", "food_energy", "salt"};

enum class Entry : int {
  came,
  went,
  to_cabin,    // from a person to the cabin: went for the person, came for the cabin,
  from_people  // where the sum over people has this side
};

struct Account {
  int entry;
  Ledger ledger;
  Entry side;
};

inline constexpr std::array cabin_accounts{Account{at::total_from_bodies, Ledger::heat, Entry::from_people},
                                           Account{at::total_from_sun, Ledger::heat, Entry::came},
                                           Account{at::total_latent, Ledger::heat, Entry::came},
                                           Account{at::total_through_canopy, Ledger::heat, Entry::went},
                                           Account{at::total_to_sea, Ledger::heat, Entry::went},
                                           Account{at::total_by_air, Ledger::heat, Entry::went},
                                           Account{at::total_water_in, Ledger::water, Entry::came},
                                           Account{at::total_vapour_out, Ledger::water, Entry::went},
                                           Account{at::total_co2_made, Ledger::co2, Entry::came},
                                           Account{at::total_co2_out, Ledger::co2, Entry::went}};

inline constexpr std::array person_accounts{
    Account{body::at::total_metabolic, Ledger::heat, Entry::came},
    Account{body::at::total_sun, Ledger::heat, Entry::came},
    Account{body::at::total_to_air, Ledger::heat, Entry::to_cabin},
    Account{body::at::total_to_canopy, Ledger::heat, Entry::to_cabin},
    Account{body::at::total_to_floor_water, Ledger::heat, Entry::to_cabin},
    Account{body::at::total_to_floor, Ledger::heat, Entry::went},
    Account{body::at::total_to_sea, Ledger::heat, Entry::went},
    Account{body::at::total_to_tube, Ledger::heat, Entry::went},
    Account{body::at::total_evaporation, Ledger::heat, Entry::went},
    // The dry part comes back in what the cabin had from bodies.
    Account{body::at::total_breath, Ledger::heat, Entry::went},
    Account{body::at::total_metabolic_water, Ledger::water, Entry::came},
    Account{body::at::total_wetting, Ledger::water, Entry::came},
    Account{body::at::total_urine, Ledger::water, Entry::went},
    Account{body::at::total_vomit, Ledger::water, Entry::went},
    Account{body::at::total_overboard, Ledger::water, Entry::went},
    Account{body::at::total_oxidised, Ledger::food_energy, Entry::went},
    Account{body::at::total_salt_lost, Ledger::salt, Entry::went}};

// Does a flux that goes from and to such ends fit the side of the total it is booked under?
template <std::size_t size>
constexpr bool fits(int total, bool from_a_node, bool to_a_node, const std::array<Account, size>& accounts) {
  for (const Account& a : accounts)
    if (a.entry == total)
      return a.side == Entry::came   ? !from_a_node
             : a.side == Entry::went ? !to_a_node
                                     : from_a_node && to_a_node;
  return true;
}

}  // namespace bide::system
