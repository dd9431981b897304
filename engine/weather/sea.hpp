// Wind at raft height, waves from wind, and how they move a raft up and down.
//
// States: none. Inputs: wind speed, or significant height and mean zero-crossing period of the waves; the
// length of what floats. Validity: deep water; neutral air; waves raised by the wind are those of a fully
// developed sea (an upper bound: short fetch or a rising wind gives less, swell from elsewhere more). The
// raft follows waves longer than twice its length and ignores shorter ones; its own heave resonance is not
// modelled. Source: Pierson & Moskowitz 1964 and Stewart 2008 ch. 16 (waves), the two-parameter Bretschneider
// spectrum S(w) = A w^-5 exp(-B w^-4), ISO 2631-1:1997 annex A (W_f), logarithmic wind profile.
#pragma once

#include <array>
#include <cstddef>

#include "bide/core/scalar.hpp"

namespace bide::weather {

// Wind speed at another height, by the logarithmic profile over the open sea.
// @param wind_m_s      speed at from_height_m, m/s, at least 0
// @param from_height_m above the sea, m, [0.5, 20]
// @param to_height_m   above the sea, m, [0.5, 20]
// @return m/s
double wind_at_height_m_s(double wind_m_s, double from_height_m, double to_height_m);

struct SeaState {
  double wave_height_m;  // significant
  double wave_period_s;  // mean zero-crossing

  bool operator==(const SeaState&) const = default;
};

// Waves of a sea fully developed by a steady wind.
// @param wind_10m_m_s wind speed at 10 m, m/s, at least 0
SeaState fully_developed_sea(double wind_10m_m_s);

// Zero-crossing period of the fully developed sea that has this significant height.
// @param wave_height_m significant height, m, at least 0
// @return s
double period_of_height_s(double wave_height_m);

// Angular frequency of the wave twice as long as the raft.
// @param raft_length_m m, above 0
// @return rad/s
double cut_off_rad_s(double raft_length_m);

// Root mean square of the vertical acceleration of a body that follows the surface up to the cut-off: the
// square root of A/4 E1(B / cut^4), E1 the exponential integral.
// @param sea           height and period of the waves; without waves the result is 0
// @param cut_off_rad_s shorter waves do not move the body, rad/s, above 0
// @return m/s2
double vertical_acceleration_m_s2(const SeaState& sea, double cut_off_rad_s);

// W_f, the frequency weighting of vertical motion for seasickness, meant for 0.1 to 0.5 Hz.
// @param frequency_Hz Hz, above 0
// @return weight, dimensionless
double motion_weight(double frequency_Hz);

// The part of a weighted acceleration that depends on the raft alone: nodes of a quadrature in the logarithm
// of frequency, from 0.01 Hz to the cut-off.
struct MotionBand {
  static constexpr std::size_t nodes = 129, blocks = (nodes + block_width - 1) / block_width;
  std::array<BlockLanes, blocks> inverse_fourth_s4;  // w^-4
  std::array<BlockLanes, blocks> weight;  // W_f^2 times the quadrature's own weight; 0 behind the last node
};
// @param cut_off_rad_s shorter waves do not move the raft, rad/s, above 0
MotionBand motion_band(double cut_off_rad_s);

// Root mean square of the vertical acceleration weighted with W_f (a_w of ISO 2631-1); the quadrature is
// accurate to 1e-6.
// @param sea  height and period of the waves, period at most 35 s
// @param band of the raft
// @return m/s2
double weighted_acceleration_m_s2(const SeaState& sea, const MotionBand& band);

}  // namespace bide::weather
