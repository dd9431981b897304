// The body's thermal controller: gains and the few additions that cold exposure needs.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

// Stolwijk 1971, kcal/h turned into W (x 1.163).
inline constexpr Sourced sweat_per_head_core{372.2, "W/K", "stolwijk1971", "CSW 320 kcal/(h K)",
                                             Trust::second_hand};
inline constexpr Sourced sweat_per_skin{33.7, "W/K", "stolwijk1971", "SSW 29.0 kcal/(h K)",
                                        Trust::second_hand};
inline constexpr Sourced dilatation_per_head_core{117, "L/(h K)", "stolwijk1971", "CDIL", Trust::second_hand};
inline constexpr Sourced dilatation_per_skin{7.5, "L/(h K)", "stolwijk1971", "SDIL", Trust::second_hand};
inline constexpr Sourced constriction_per_head_core{
    5.0, "1/K", "stolwijk1971", "CCON; later descendants use 10.8", Trust::second_hand, 5.0, 10.8};
inline constexpr Sourced constriction_per_skin{
    5.0, "1/K", "stolwijk1971", "SCON; later descendants use 10.8", Trust::second_hand, 5.0, 10.8};
inline constexpr Sourced local_skin_factor{10.0, "K", "stolwijk1971", "BULL, flow and sweat x 2^(error/10 K)",
                                           Trust::second_hand};
inline constexpr Sourced blood_heat{
    1.163, "W h/(L K)", "stolwijk1971", "1 kcal/(L K) carried by blood", Trust::second_hand, 1.067, 1.163};
inline constexpr Sourced flow_per_muscle_heat{0.8598, "L/(h W)", "stolwijk1971",
                                              "1 L/h more flow per kcal/h of work or shivering, 1/1.163",
                                              Trust::second_hand};
inline constexpr Sourced greatest_sweat{500,
                                        "W/m2",
                                        "iso7933",
                                        "sweat cap of the heat-strain standard, acclimatised 500, else 400",
                                        Trust::second_hand,
                                        400,
                                        500};
// A neutral body's oesophageal temperature against the model's trunk-core set point, 36.89.
inline constexpr Sourced neutral_core{37.0, "degC", "tikuisis1999", "reference core of the shivering law",
                                      Trust::second_hand};

// Artery to vein counter-current exchange, W/K, both sides, from the 17-segment descendant (Takahashi et al.
// 2021): upper arm and shoulder .537, forearm .351, hand .762; thigh .826, lower leg .444, foot .992, each
// side.
inline constexpr Sourced countercurrent_arms{1.776, "W/K", "takahashi2021", "2 x (.537 + .351)",
                                             Trust::derived};
inline constexpr Sourced countercurrent_hands{1.524, "W/K", "takahashi2021", "2 x .762", Trust::derived};
inline constexpr Sourced countercurrent_legs{2.540, "W/K", "takahashi2021", "2 x (.826 + .444)",
                                             Trust::derived};
inline constexpr Sourced countercurrent_feet{1.984, "W/K", "takahashi2021", "2 x .992", Trust::derived};

// Resting awake, sitting: about 1.15 of the basal rate (seated quiet 0.9 met = 52 W/m2 against the
// model's 45.9).
inline constexpr Sourced awake_rest_factor{
    1.15, "-", "", "seated quiet 52 W/m2 over basal 45.9 W/m2", Trust::derived, 1.1, 1.25};
inline constexpr Sourced asleep_factor{0.95, "-", "kreider1987", "sleep metabolism 0.95 x basal",
                                       Trust::seen};

// The skin is never dry: 6 % of it loses water as if wet.
inline constexpr Sourced least_wettedness{0.06, "-", "gagge1971", "skin diffusion", Trust::second_hand};

// Deep veins take over from surface veins as the skin constricts; at a neutral state blood returns near the
// surface.
inline constexpr Sourced countercurrent_full_constriction{
    20, "-", "", "constriction command at which all blood returns deep", Trust::judgement, 5, 60};
// Constriction command that counts as full for the fluid shift.
inline constexpr Sourced full_skin_constriction{
    40, "-", "", "command of a resting man at a mean skin temperature of 26 degC", Trust::judgement, 20, 80};

}  // namespace bide::constants
