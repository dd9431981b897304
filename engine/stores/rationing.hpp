// Who asks for how much water and food at an issue, and who gets what.
//
// States: none here (the stock is the caller's). Inputs: the rule, hours since boarding, thirst 0 to 1,
// litres and kJ. Flags are numbers 0 or 1, so that lanes can differ. Validity: any; a rule gives out what it
// says, however unwise. Source: the rules as survival-craft instructions have them (IMO A.657(16), from
// memory: nothing in the first 24 h except for the injured, then half a litre a day); shares are ours.
#pragma once

#include <cmath>

#include "bide/constants/stores.hpp"
#include "bide/constants/water.hpp"
#include "bide/core/scalar.hpp"
#include "bide/core/units.hpp"
#include "bide/scenario/scenario.hpp"

namespace bide::stores {

// The rationing plan of a scenario, resolved; the amounts are arguments of the functions below.
struct RationPlan {
  scenario::RationingRule rule{};
  double spread_days = 0;  // days over which the rule `spread` divides the water
  int issues_per_day = 1;  // at least 1
  bool injured_first = true, food_only_with_water = true;
  bool operator==(const RationPlan&) const = default;
};

// Water that one living, conscious person asks for at an issue.
//
// fixed_per_day: an equal part of the daily amount. none_first_day: the same, but nothing before hour 24,
// except for the injured if they come first. spread: the water left, divided by the planned issues left and
// by the living; from the last planned issue on, all that is left. by_thirst, asked every hour:
// thirst times what the gut passes in an hour, so that people drink what they lose, short of a deficit that
// grows with it. Drinking at will left 0.8 (drinkers) and 2.5 % of mass (the reluctant) after six hours of
// walking at 40 degC (Szlyk 1989), 1.3 % on a cool march (Nolte 2011).
// @param plan              the rule and its settings
// @param water_L_per_day   of each person, L/d, at least 0, for the rules that hand out a fixed amount
// @param hours_since_start since boarding, h, at least 0
// @param thirst            of this person, 0 none to 1 full; clamped
// @param injured           1 if this person is injured, else 0
// @param water_left_L      fresh water aboard, L, at least 0
// @param living            number alive, at least 1
// @return L
template <class T>
inline T water_request_L(const RationPlan& plan, T water_L_per_day, double hours_since_start, T thirst,
                         T injured, T water_left_L, T living) {
  using namespace constants;
  using scenario::RationingRule;
  const T daily_share = water_L_per_day / T(plan.issues_per_day);
  switch (plan.rule) {
    case RationingRule::none_first_day: {
      const bool first_day = hours_since_start < no_water_first_h;
      const T exempt = plan.injured_first ? injured : T(0);
      return first_day ? T(daily_share * exempt) : daily_share;
    }
    case RationingRule::spread: {
      const double issue_h = day_h / plan.issues_per_day;
      // Issues at the start and every issue_h after it; the one due now counts among those left.
      const double left = std::floor((plan.spread_days * day_h - hours_since_start) / issue_h + 0.5);
      return water_left_L / (living * T(left > 1 ? left : 1));
    }
    case RationingRule::by_thirst:
      return T(gut_absorption_L_h) * clamp(thirst, 0.0, 1.0);
    case RationingRule::fixed_per_day:
      break;
  }
  return daily_share;
}

// Food that one person asks for at an issue.
// @param plan            food_only_with_water: without water no food is asked for
// @param food_kJ_per_day of each person, kJ/d, at least 0
// @param watered         1 if this person was given water in the last 24 h, this issue included, else 0
// @return kJ
template <class T>
inline T food_request_kJ(const RationPlan& plan, T food_kJ_per_day, T watered) {
  const T share = food_kJ_per_day / T(plan.issues_per_day);
  return plan.food_only_with_water ? T(share * watered) : share;
}

// Hands out a stock. The injured are served first, if the plan says so; each round shares what is left in
// proportion to what each asked. Nothing is given beyond the stock.
// @param asked         amount by person, at least 0, in the unit of the stock; 0 for those who take no part
// @param injured       by person, 1 if injured, else 0
// @param persons       number of persons
// @param injured_first whether the injured are served first
// @param stock         what is there, at least 0; reduced by what is given
// @param given         filled with the amount by person
template <class T>
inline void serve(const T* asked, const T* injured, int persons, bool injured_first, T& stock, T* given) {
  constexpr double tiny = 1e-12;
  for (int i = 0; i < persons; ++i) given[i] = T(0);
  for (int round = injured_first ? 0 : 1; round < 2; ++round) {
    T total(0);
    const auto asks_now = [&](int i) {
      if (!injured_first) return asked[i];
      return T(asked[i] * (round == 0 ? injured[i] : T(T(1) - injured[i])));
    };
    for (int i = 0; i < persons; ++i) total += asks_now(i);
    const T cut = smaller(T(stock / larger(total, T(tiny))), T(1));
    for (int i = 0; i < persons; ++i) given[i] += cut * asks_now(i);
    stock = positive_part(T(stock - cut * total));
  }
}

// Share of a dose of medicine for each person who wants one. Too few doses are not given to the first of a
// list: who would get them is not known, so each person has the same chance of a dose and is protected by
// that share, as sickness itself is an expected share and not drawn.
// @param doses   doses in the stock, at least 0
// @param wanted  number of persons who want one, 0 or more
template <class T>
inline T dose_share(T doses, T wanted) {
  return smaller(T(doses / larger(wanted, T(1))), T(1));
}

}  // namespace bide::stores
