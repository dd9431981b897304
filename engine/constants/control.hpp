// The body's thermal controller: gains and the few additions that cold exposure needs.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

// Stolwijk 1971, kcal/h turned into W (x 1.163).
inline constexpr Sourced sweat_per_head_core{372.2, "W/K", "stolwijk1971", "CSW 320 kcal/(h K)",
                                             Trust::second_hand};
inline constexpr Sourced sweat_per_skin{33.7, "W/K", "stolwijk1971", "SSW 29.0 kcal/(h K)",
                                        Trust::second_hand};
inline constexpr Sourced sweat_response_min{
    10,
    "min",
    "malchaire1991",
    "abstract: sweat rate as a first-order system, 10 min, 25 min up to 50 W/m2; ISO 7933 takes 10 throughout"
    " (public transcription)",
    Trust::seen,
    10,
    25};
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
inline constexpr Sourced greatest_sweat_W_m2{
    400, "W/m2", "iso7933", "sweat cap of the heat-strain standard, at hard work", Trust::second_hand,
    250, 400};
inline constexpr Sourced greatest_wettedness{
    0.85, "-", "iso7933", "of the skin, people not used to heat", Trust::second_hand, 0.7, 1.0};

// ---- used to heat
inline constexpr Sourced acclimatised_sweat_W_m2{500, "W/m2", "iso7933", "a quarter more than 400",
                                                 Trust::second_hand};
inline constexpr Sourced acclimatised_wettedness{1.0, "-", "iso7933", "of the skin, people used to heat",
                                                 Trust::second_hand};
inline constexpr Sourced acclimatised_shift_K{
    0.36,
    "K",
    "hessemer1986",
    "abstract: seven men, an hour at rest in 55 degC on five days: thresholds of sweating, skin flow and "
    "shivering lower by 0.36 K of mean body temperature, slopes unchanged; here of the core",
    Trust::seen,
    0.15,
    0.5};
// A neutral body's oesophageal temperature against the model's trunk-core set point, 36.89.
inline constexpr Sourced neutral_core{37.0, "degC", "tikuisis1999", "reference core of the shivering law",
                                      Trust::second_hand};

// The day of the core.
inline constexpr Sourced core_rhythm_range_K{
    0.57,
    "K",
    "stephenson1984",
    "abstract: threshold of sweating 0.57 K higher at 16 than at 04 h, resting core alike",
    Trust::seen,
    0.4,
    0.8};
inline constexpr Sourced least_core_solar_h{
    5.0,         "h",
    "baehr2000", "abstract: least core at 05:02 (03:50 to 06:01 by type); taken as solar time",
    Trust::seen, 3.8,
    6.0};

// Artery to vein counter-current exchange of hands and feet, W/K, both sides, from the 17-segment descendant
// (Takahashi et al. 2021), each side .762 and .992. That of arms and legs follows from their vessels
// (constants/vessels.hpp); the descendant has 1.78 and 2.54 W/K there, both sides.
inline constexpr Sourced countercurrent_hands{1.524, "W/K", "takahashi2021", "2 x .762", Trust::derived};
inline constexpr Sourced countercurrent_feet{1.984, "W/K", "takahashi2021", "2 x .992", Trust::derived};

// Resting awake, sitting: about 1.15 of the basal rate (seated quiet 0.9 met = 52 W/m2 against the
// model's 45.9).
inline constexpr Sourced awake_rest_factor{
    1.15, "-", "", "seated quiet 52 W/m2 over basal 45.9 W/m2", Trust::derived, 1.1, 1.25};
inline constexpr Sourced asleep_factor{0.95, "-", "kreider1987", "sleep metabolism 0.95 x basal",
                                       Trust::seen};

inline constexpr Sourced sleep_depth_h{
    2.0,
    "h",
    "milan1966",
    "time constant; report: heat asleep fell through the night, 58 W/m2 at 2230 to 45 at 0600",
    Trust::judgement,
    0.5,
    5.0};

// What skin without sweat passes, over the saturation density at its own temperature: a mean by area.
// Trunk, limbs and scalp, 0.91 of the skin: 6 to 10 g/(m2 h) into the dry air of a capsule, which 0.0338
// kg/m3 (32 degC) drives: 6.6e-5 m/s. On the forearm 9.69 g/(m2 h) in a room; 21 degC and 50 % taken (from
// memory), skin of 31.5 degC: 0.024 kg/m3, through a film that passes 3e-3 m/s: 1.17e-4. Mean 9.0e-5. Palms,
// 0.025: 49.3 g/(m2 h) in the same rooms: 7.0e-4. Soles, 0.03: toe tips 47 g/(m2 h) in dry oxygen: 3.9e-4.
// Face, 0.035: ears 19 g/(m2 h) in dry oxygen: 1.6e-4. Palms up to 100 g/(m2 h) in dry air and finger tips 74
// agree. Together 8.2e-5 + 1.8e-5 + 1.2e-5 + 0.6e-5.
inline constexpr Sourced skin_vapour_conductance_m_s{
    1.2e-4,
    "m/s",
    "skinevaporation",
    "three abstracts, by area as above. Low end: trunk and limbs in dry air alone. High end: 3.05e-3 W/(m2 "
    "Pa) of ISO 7730 after Fanger 1970, by transcriptions, x 461.5 J/(kg K) x 306 K / 2.43e6 J/kg",
    Trust::derived,
    0.66e-4,
    1.8e-4};

// Flow of cold tissue at rest falls with its need of oxygen.
inline constexpr Sourced muscle_flow_q10{
    2.0,
    "-",
    "fiala1999",
    "metabolism of tissue x 2 for 10 K and flow in proportion, recalled; a forearm kept for two hours at 13"
    " degC had about a fifth of its flow at 35 degC (Barcroft & Edholm 1943, recalled)",
    Trust::from_memory,
    1.5,
    2.5};

// Deep veins take over from surface veins as the skin constricts; at a neutral state blood returns near the
// surface.
inline constexpr Sourced countercurrent_full_constriction{
    20, "-", "", "constriction command at which all blood returns deep", Trust::judgement, 5, 60};
// ---- past sixty
inline constexpr Sourced old_age_constriction{
    0.64,
    "-",
    "degroot2007",
    "abstract: 46 people of 71 and 36 of 23 years in mild cold lost 42 (SE 3) and 53 (4) % of their skin's "
    "conductance: (1 / 0.58 - 1) / (1 / 0.47 - 1)",
    Trust::derived,
    0.49,
    0.84};

// Constriction command that counts as full for the fluid shift.
inline constexpr Sourced full_skin_constriction{
    40, "-", "", "command of a resting man at a mean skin temperature of 26 degC", Trust::judgement, 20, 80};

}  // namespace bide::constants
