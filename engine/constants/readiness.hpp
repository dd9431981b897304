// What becomes of a raft that is not serviced, and what a launch asks of it.
//
// Validity: counts of rafts are cases that became known because something went wrong, a handful each: their
// interval is the answer, not their share. Nothing is known of how often a serviced raft fails.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

// ---- months for which things are made, or after which they are tested
inline constexpr Sourced service_interval_months{
    12.0,        "months", "msccirc1328", "1.2: rafts of ships, 12 months; extended 30, leisure usually 36",
    Trust::seen, 12.0,     36.0};
inline constexpr Sourced signals_last_months{
    36.0,
    "months",
    "raftstation",
    "flares 3 years; hand and aerial flares of the United States 42 months",
    Trust::second_hand,
    36.0,
    42.0};
inline constexpr Sourced pack_lasts_months{60.0, "months", "raftstation",
                                           "water, food and canopy-light cells 5 years", Trust::second_hand};
inline constexpr Sourced gas_test_months{60.0, "months", "imoa761", "5.3: gas inflation test every 5 years",
                                         Trust::seen};
inline constexpr Sourced pressure_test_after_months{
    120.0, "months", "imoa761", "5.4: extra-pressure test every year after year 10", Trust::seen};
inline constexpr Sourced release_lasts_months{
    24.0, "months", "", "disposable hydrostatic release, else to its printed date; recalled",
    Trust::from_memory};

// ---- how a raft comes to be neglected: its state, from which failures follow
inline constexpr Sourced neglected_in_date{
    0.02,
    "-",
    "",
    "rafts with a certificate that were not opened, or badly packed, are on record; no count",
    Trust::judgement,
    0.0,
    0.2};
inline constexpr Sourced neglected_for_sure_months{
    60.0,
    "months",
    "",
    "past its date everything in it that lasts 5 years is out of date too; linear to here",
    Trust::judgement,
    24.0,
    120.0};

// ---- failures of rafts past their service: so many of so many
inline constexpr Sourced not_inflating_cases{
    2.0, "rafts", "raftcases", "1 of 2 of a trawler, 1 in the Channel, 0 of 2 opened by their owners",
    Trust::derived};
inline constexpr Sourced not_inflating_of{5.0, "rafts", "raftcases", "the same", Trust::derived};
inline constexpr Sourced tube_leaking_cases{
    2.0, "rafts", "raftcases", "a leaking top-up valve, a tube soft within 45 min; 0 in the trawler's",
    Trust::derived};
inline constexpr Sourced tube_leaking_of{3.0, "rafts", "raftcases", "those that inflated", Trust::derived};
inline constexpr Sourced valve_lost_cases{1.0, "rafts", "raftcases", "a relief valve blown out of its tube",
                                          Trust::derived};
inline constexpr Sourced valve_lost_of{3.0, "rafts", "raftcases", "those that inflated", Trust::derived};
inline constexpr Sourced floor_failed_cases{
    1.0, "rafts", "raftcases", "a ferry's of 2018, service not told; the others' faults name no floor",
    Trust::derived};
inline constexpr Sourced floor_failed_of{4.0, "rafts", "raftcases", "that raft and those that inflated",
                                         Trust::derived};
inline constexpr Sourced lamp_dead_cases{1.0, "rafts", "raftcases",
                                         "the occupied one of two in the Gulf of Alaska, service not told",
                                         Trust::derived};
inline constexpr Sourced lamp_dead_of{2.0, "rafts", "raftcases", "the same", Trust::derived};

// ---- launching
inline constexpr Sourced ready_to_launch_min{
    5.0, "min", "imomodu", "10.6.1.3: made ready by two people in less than this", Trust::seen, 1.0, 5.0};
inline constexpr Sourced inflation_usual_degC{18.0, "degC", "lsacode", "4.2.2: 1 min at 18-20 degC",
                                              Trust::second_hand};
inline constexpr Sourced inflation_coldest_degC{-30.0, "degC", "lsacode", "4.2.2: 3 min at -30 degC",
                                                Trust::second_hand};
inline constexpr Sourced inflates_inverted{
    0.5, "-", "boatinginverted", "an instructor's words, not a measurement", Trust::second_hand, 0.0, 1.0};
inline constexpr Sourced steps_across{
    0.6,
    "-",
    "",
    "dry or nearly so from a deck, 50 of 82 by the weights of bide odds without a file",
    Trust::judgement,
    0.2,
    0.95};

// ---- floating free
inline constexpr Sourced release_deepest_worn_m{
    7.6, "m", "cfr46p160062", "160.062-3: to 25 ft after temperature and corrosion tests, 5 to 15 ft new",
    Trust::seen};
inline constexpr Sourced painter_length_m{
    15.0, "m", "lsacode", "4.1.3.2: not less than 10 m more than the stowage height, or 15 m; recalled",
    Trust::from_memory};
inline constexpr Sourced weak_link_kN{
    2.2, "kN", "lsacode", "4.1.6.2: 2.2 +- 0.4 kN; recalled", Trust::from_memory, 1.8, 2.6};
inline constexpr Sourced tube_volume_m3_person{
    0.096, "m3", "lsacode", "4.2.3: main buoyancy tubes over 0.096 m3 for each person", Trust::second_hand};
inline constexpr Sourced sea_density_kg_m3{1025.0, "kg/m3", "", "sea water, usual value", Trust::from_memory};
inline constexpr Sourced inflation_pull_N{150.0, "N", "msc81p2", "5.1.2: at most this opens the cylinder",
                                          Trust::seen};
inline constexpr Sourced inflation_pull_failed_N{
    247.0, "N", "channel2020", "a raft about a year past its service, as the inquiry was reported",
    Trust::second_hand};

// ---- climbing in from the water
inline constexpr Sourced men_boarded{22.0, "men", "selfboarding2005", "of 24, warm calm water, lifejackets",
                                     Trust::seen};
inline constexpr Sourced women_boarded{17.0, "women", "selfboarding2005", "of 24, the same", Trust::seen};
inline constexpr Sourced boarded_of{24.0, "persons", "selfboarding2005", "of either sex, 18 to 52 years",
                                    Trust::seen};
inline constexpr Sourced boarding_reserve_least{
    0.02, "-", "selfboarding2005", "extra load carried over the side, 2 to 23 % of body mass", Trust::seen};
inline constexpr Sourced boarding_reserve_most{0.23, "-", "selfboarding2005", "the same", Trust::seen};
inline constexpr Sourced clothes_soak_up_kg{
    4.3, "kg", "wetclothes1958", "9 to 10 lb within 15 s to 2 min", Trust::seen, 4.1, 4.5};

}  // namespace bide::constants
