// What follows from the dates and the stowage of a raft, in every run.
//
// States: none. Inputs: a scenario; its start counts as the day of departure. Sources:
// constants/readiness.hpp and constants/signals.hpp. Validity: a signal works or it does not, the same chance
// for each.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bide/scenario/validate.hpp"

namespace bide::scenario {

// Midnight UTC of a date as "2031-02-28".
// @return s since 1970; empty for any other text
std::optional<double> date_unix_s(const std::string& date);

// Whether a stated date is over; false where it is not stated. A date is good to the end of its day.
// @param date   as date_unix_s() reads it
// @param time_s s since 1970
bool is_past(const std::optional<std::string>& date, double time_s);

// Months by which the service of the raft is overdue; 0 or less is in date, empty is not known.
// @param readiness dates and interval
// @param time_s    s since 1970
std::optional<double> months_overdue(const Readiness& readiness, double time_s);

// Chance that a raft is neglected: the number for rafts in date, and from there in proportion to 1.
// @param months_overdue of the service; 0 or less is in date
// @return [0, 1]
double neglected_chance(double months_overdue);

// Share of the signals that fail; empty where their date is not stated.
std::optional<double> signals_that_fail(const Scenario& scenario);

// How many of equal signals work, as a quantile of the binomial distribution.
// @param count    whole number, at least 0
// @param fails    chance that one fails, [0, 1)
// @param position share of cases with fewer, [0, 1]
// @return whole number, [0, count]
int signals_working(int count, double fails, double position);

// One line of the list before departure.
struct Due {
  enum class State { due, in_order, unknown };
  State state = State::unknown;
  std::string what, words;
};
// Of a scenario with "readiness"; empty without.
std::vector<Due> readiness_list(const ValidScenario& scenario);

}  // namespace bide::scenario
