#include "bide/weather/sea.hpp"

#include <boost/math/special_functions/expint.hpp>
#include <boost/math/special_functions/pow.hpp>
#include <cmath>
#include <numbers>

#include "bide/constants/weather.hpp"

namespace bide::weather {
namespace {

using namespace constants;
using boost::math::pow;
using std::numbers::pi;

// Bretschneider's A (m2/s4) and B (1/s4) from height and zero-crossing period.
struct Spectrum {
  double A, B;
};
Spectrum spectrum(const SeaState& sea) {
  const double B = pow<4>(2 * pi / sea.wave_period_s) / pi;
  return {pow<2>(sea.wave_height_m) * B / 4, B};
}

constexpr double vanishes = 700;  // exp(-x) and E1(x) are next to nothing, and slow beyond

bool calm(const SeaState& sea) {
  return !(sea.wave_height_m > 0 && sea.wave_period_s > 0);
}

// Modulus of 1 + p / Q + p^2 at p = i x: the standard's filters are quotients of such second-order terms.
double second_order(double x, double q) {
  return std::hypot(1 - x * x, x / q);
}

}  // namespace

double wind_at_height_m_s(double wind_m_s, double from_height_m, double to_height_m) {
  return wind_m_s * std::log(to_height_m / sea_roughness_m) / std::log(from_height_m / sea_roughness_m);
}

SeaState fully_developed_sea(double wind_10m_m_s) {
  return {wave_height_factor * pow<2>(wind_10m_m_s) / gravity_m_s2,
          zero_crossing_factor_s2_m * wind_19_5_ratio * wind_10m_m_s};
}

double period_of_height_s(double wave_height_m) {
  return fully_developed_sea(std::sqrt(wave_height_m * gravity_m_s2 / wave_height_factor)).wave_period_s;
}

double cut_off_rad_s(double raft_length_m) {
  return std::sqrt(pi * gravity_m_s2 / raft_length_m);
}

double vertical_acceleration_m_s2(const SeaState& sea, double cut_off_rad_s) {
  if (calm(sea)) return 0;
  const Spectrum s = spectrum(sea);
  const double argument = s.B / pow<4>(double{cut_off_rad_s});
  if (argument > vanishes) return 0;
  return std::sqrt(s.A / 4 * boost::math::expint(1u, argument));
}

double motion_weight(double frequency_Hz) {
  const double p = frequency_Hz;
  const double high_pass = 1 / second_order(wf_high_pass_Hz / p, std::numbers::sqrt2 / 2);
  const double low_pass = 1 / second_order(p / wf_low_pass_Hz, std::numbers::sqrt2 / 2);
  const double transition = 1 / second_order(p / wf_transition_Hz, wf_transition_Q);
  const double step = second_order(p / wf_step_from_Hz, wf_step_from_Q) /
                      second_order(p / wf_step_to_Hz, wf_step_to_Q) * pow<2>(wf_step_from_Hz / wf_step_to_Hz);
  return high_pass * low_pass * transition * step;
}

MotionBand motion_band(double cut_off_rad_s) {
  // In x = ln w the integral of w^4 S(w) W_f^2 dw is that of A exp(-B w^-4) W_f^2 dx: smooth. Simpson's rule.
  constexpr double lowest_Hz = 0.01, three = 3;
  constexpr std::size_t intervals = MotionBand::nodes - 1;
  const double low = std::log(2 * pi * lowest_Hz), high = std::log(cut_off_rad_s);
  const double step = (high - low) / static_cast<double>(intervals);
  MotionBand band;
  for (std::size_t i = 0; i <= intervals; ++i) {
    const double w = std::exp(low + step * static_cast<double>(i));
    const double simpson = i == 0 || i == intervals ? 1 : (i % 2 == 1 ? 4 : 2);
    const std::size_t block = i / block_width;
    const int lane = static_cast<int>(i % block_width);
    band.inverse_fourth_s4[block].set(lane, 1 / pow<4>(w));
    band.weight[block].set(lane, simpson * step / three * pow<2>(motion_weight(w / (2 * pi))));
  }
  return band;
}

double weighted_acceleration_m_s2(const SeaState& sea, const MotionBand& band) {
  if (calm(sea)) return 0;
  const Spectrum s = spectrum(sea);
  BlockLanes sums = 0;
  for (std::size_t i = 0; i < MotionBand::blocks; ++i) {
    const BlockLanes decay = s.B * band.inverse_fourth_s4[i];
    sums += band.weight[i] * select(decay > vanishes, 0, exp(-smaller(decay, vanishes)));
  }
  double sum = 0;
  for (int lane = 0; lane < block_width; ++lane) sum += sums[lane];
  return std::sqrt(s.A * sum);
}

}  // namespace bide::weather
