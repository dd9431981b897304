// Numbers of sky radiation, wind near the surface and the sea state.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

// ---- sun through the air and clouds
inline constexpr Sourced haurwitz_scale_W_m2{1098, "W/m2", "haurwitz1945",
                                             "GHI = 1098 cos z exp(-0.059 / cos z)", Trust::second_hand};
inline constexpr Sourced haurwitz_extinction{0.059, "-", "haurwitz1945",
                                             "GHI = 1098 cos z exp(-0.059 / cos z)", Trust::second_hand};
inline constexpr Sourced cloud_dimming{0.75, "-", "kasten1980",
                                       "G = Gc (1 - 0.75 (N/8)^3.4), Hamburg, 10 years", Trust::second_hand};
inline constexpr Sourced cloud_dimming_power{
    3.4, "-", "kasten1980", "G = Gc (1 - 0.75 (N/8)^3.4), Hamburg, 10 years", Trust::second_hand};

// ---- beam and diffuse light
inline constexpr Sourced solar_constant_W_m2{1361, "W/m2", "kopp2011", "1360.8 (0.5)", Trust::from_memory};
// Diffuse share of the global irradiance by clearness k (erbs1982, all from memory): 1 - 0.09 k to k = 0.22,
// then a polynomial in k by ascending powers, 0.165 from k = 0.8 on.
inline constexpr Sourced diffuse_cloudy_slope{0.09, "-", "erbs1982", "eq. 1, k to 0.22", Trust::from_memory};
inline constexpr Sourced diffuse_cloudy_to{0.22, "-", "erbs1982", "eq. 1", Trust::from_memory};
inline constexpr double diffuse_polynomial[] = {0.9511, -0.1604, 4.388, -16.638, 12.336};
inline constexpr Sourced diffuse_clear{0.165, "-", "erbs1982", "eq. 1, k above 0.80", Trust::from_memory};
inline constexpr Sourced diffuse_clear_from{0.80, "-", "erbs1982", "eq. 1", Trust::from_memory};
// Area that a seated person shows to the sun over the radiating area, by the sun's elevation: the mean over
// thirteen directions, 0 to 180 degrees from the front, the ends by half.
#define BIDE_SEATED(name, value)                                                                            \
  inline constexpr Sourced name {                                                                           \
    value, "-", "arens2015", "projected area factors of a seated person, after Fanger 1970", Trust::derived \
  }
BIDE_SEATED(seated_share_0_deg, 0.269);
BIDE_SEATED(seated_share_15_deg, 0.284);
BIDE_SEATED(seated_share_30_deg, 0.246);
BIDE_SEATED(seated_share_45_deg, 0.236);
BIDE_SEATED(seated_share_60_deg, 0.216);
BIDE_SEATED(seated_share_75_deg, 0.192);
BIDE_SEATED(seated_share_90_deg, 0.177);
#undef BIDE_SEATED
inline constexpr double seated_elevation_deg[] = {0, 15, 30, 45, 60, 75, 90};
inline constexpr double seated_projected_share[] = {seated_share_0_deg.value,  seated_share_15_deg.value,
                                                    seated_share_30_deg.value, seated_share_45_deg.value,
                                                    seated_share_60_deg.value, seated_share_75_deg.value,
                                                    seated_share_90_deg.value};

// ---- long-wave from the sky
inline constexpr Sourced brutsaert_scale{1.24, "hPa^-1/7 K^1/7", "brutsaert1975", "1.24 (e/T)^(1/7)",
                                         Trust::second_hand};
inline constexpr Sourced brutsaert_power{1.0 / 7.0, "-", "brutsaert1975", "1.24 (e/T)^(1/7)",
                                         Trust::second_hand};
inline constexpr Sourced cloud_longwave_gain{0.17, "-", "bras1990", "eq. 2.43: 1 + 0.17 N^2",
                                             Trust::second_hand};
inline constexpr Sourced sky_emissivity_least{
    0.5,
    "-",
    "",
    "of clear air, however dry; cold dry plateaus were remembered as 0.5 to 0.65, from memory",
    Trust::judgement,
    0.4,
    0.65};

// ---- wind
inline constexpr Sourced sea_roughness_m{
    2e-4, "m", "", "open sea, 5-15 m/s: the middle of Charnock's 4e-5 to 8e-4 m", Trust::judgement,
    4e-5, 8e-4};
inline constexpr Sourced wind_reference_height_m{10, "m", "", "height that weather reports refer to",
                                                 Trust::definition};
inline constexpr Sourced raft_wind_height_m{
    1, "m", "", "about the top of a small raft's canopy; shelter in wave troughs is unmeasured",
    Trust::judgement};

// ---- waves
inline constexpr Sourced gravity_m_s2{9.80665, "m/s2", "", "standard gravity", Trust::definition};
inline constexpr Sourced wave_height_factor{
    0.22, "-", "stewart2008", "ch. 16: H_1/3 = 0.22 U10^2/g, Pierson and Moskowitz 1964", Trust::seen};
inline constexpr Sourced wind_19_5_ratio{1.026, "-", "stewart2008", "ch. 16: U19.5 = 1.026 U10", Trust::seen};
inline constexpr Sourced zero_crossing_factor_s2_m{
    0.518876, "s2/m", "stewart2008",
    "T_z = 2 pi sqrt(m0/m2) = 0.518876 U19.5 of the Pierson-Moskowitz spectrum, alpha 0.0081, beta 0.74",
    Trust::derived};
inline constexpr Sourced floater_length_m{
    1, "m", "", "a person in a lifejacket, without a raft: follows waves longer than about twice this",
    Trust::judgement};

// ---- ISO 2631-1 W_f, vertical motion and seasickness; frequencies in Hz
#define BIDE_WF(name, value, unit)                               \
  inline constexpr Sourced name {                                \
    value, unit, "iso2631", "table A.1, W_f", Trust::from_memory \
  }
BIDE_WF(wf_high_pass_Hz, 0.08, "Hz");
BIDE_WF(wf_low_pass_Hz, 0.63, "Hz");
BIDE_WF(wf_transition_Hz, 0.25, "Hz");
BIDE_WF(wf_transition_Q, 0.86, "-");
BIDE_WF(wf_step_from_Hz, 0.0625, "Hz");
BIDE_WF(wf_step_from_Q, 0.80, "-");
BIDE_WF(wf_step_to_Hz, 0.10, "Hz");
BIDE_WF(wf_step_to_Q, 0.80, "-");
#undef BIDE_WF

}  // namespace bide::constants
