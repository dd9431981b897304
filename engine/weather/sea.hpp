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

namespace bide::weather {

// Logarithmic profile over the open sea, heights in m, 0.5 to 20.
double wind_at_height_m_s(double wind_m_s, double from_height_m, double to_height_m);

struct SeaState {
  double wave_height_m;  // significant
  double wave_period_s;  // mean zero-crossing

  bool operator==(const SeaState&) const = default;
};

SeaState fully_developed_sea(double wind_10m_m_s);

// Zero-crossing period of the fully developed sea that has this significant height.
double period_of_height_s(double wave_height_m);

// Angular frequency of the wave twice as long as the raft, rad/s.
double cut_off_rad_s(double raft_length_m);

// Root mean square of the vertical acceleration of what follows the surface up to the cut-off: the square
// root of A/4 E1(B / cut^4), E1 the exponential integral. 0 without waves.
double vertical_acceleration_m_s2(const SeaState& sea, double cut_off_rad_s);

// W_f, the weight of vertical motion of a frequency in causing seasickness, meant for 0.1 to 0.5 Hz.
double motion_weight(double frequency_Hz);

// The part of a weighted acceleration that depends on the raft alone: nodes of a quadrature in the logarithm
// of frequency, from 0.01 Hz to the cut-off.
struct MotionBand {
  static constexpr std::size_t nodes = 129;
  std::array<double, nodes> inverse_fourth_s4;  // w^-4
  std::array<double, nodes> weight;             // W_f^2 times the quadrature's own weight
};
MotionBand motion_band(double cut_off_rad_s);

// The same root mean square with W_f (a_w of ISO 2631-1), for zero-crossing periods to 35 s; the quadrature
// is good to 1e-6.
double weighted_acceleration_m_s2(const SeaState& sea, const MotionBand& band);

}  // namespace bide::weather
