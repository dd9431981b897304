// Seasickness: dose of motion, share of people who would be sick, adaptation, medicine, water lost.
//
// States: dose, m2/s3 (integral of the weighted vertical acceleration squared), adaptation, 0 to 1. Inputs:
// weighted rms acceleration (ISO 2631-1 W_f), significant wave height, whether the craft is enclosed.
// Outputs are expected values: severity is the share of people like this one who would be vomiting, and a
// single run lets each person lose that share of what a sick person loses. Validity: the dose law 20 min to 6
// h and up to 70 %; enclosed rafts by one trial and a textbook, in waves of 1 m and more; days beyond by
// adaptation. Sources: each function's own; numbers in constants/seasickness.hpp.
#pragma once

#include "bide/constants/body.hpp"
#include "bide/constants/seasickness.hpp"
#include "bide/core/scalar.hpp"
#include "bide/core/units.hpp"

namespace bide::body {

// Slope of the dose: a_w^2 up to the dose that six hours of the present motion give (the last half hour of it
// approached smoothly); above that, when the sea has eased, the dose fades with a time constant of 6 h.
// @param a_w_m_s2   weighted acceleration, root mean square (ISO 2631-1 W_f), m/s2, at least 0
// @param dose_m2_s3 dose so far, m2/s3, at least 0
// @return m2/s4
template <class T>
inline T dose_rate_m2_s4(T a_w_m_s2, T dose_m2_s3) {
  using namespace constants;
  const T square = a_w_m_s2 * a_w_m_s2;
  const T left = T(dose_longest_h * hour_s) * square - dose_m2_s3;
  return select(left > T(0), smaller(square, left * T(1 / (dose_rounding_h * hour_s))),
                left * T(1 / (dose_recovery_h * hour_s)));
}

// Share of unadapted people who vomit, by the dose alone: K_m sqrt(dose) %, at most 70 % (ISO 2631-1 annex
// D).
// @param dose_m2_s3 dose of motion, m2/s3
// @return [0, 0.7]
template <class T>
inline T vomiting_by_dose(T dose_m2_s3) {
  using namespace constants;
  return smaller(T(vomiting_per_dose / pct) * sqrt(positive_part(dose_m2_s3)), T(vomiting_greatest));
}

// Share of people sick in an enclosed craft, reached over two hours of motion: 75 % in 1 m waves (Landolt &
// Monaco 1989), 95 % in rough sea, none in flat water.
// @param a_w_m_s2      weighted acceleration, root mean square, m/s2, at least 0
// @param dose_m2_s3    dose of motion, m2/s3, at least 0
// @param wave_height_m significant wave height, m, at least 0
// @return [0, 0.95]
template <class T>
inline T sick_in_enclosed_craft(T a_w_m_s2, T dose_m2_s3, T wave_height_m) {
  using namespace constants;
  constexpr double tiny_m2_s4 = 1e-12;
  const T sea = T(enclosed_sick) * smoothstep(wave_height_m, 0.0, enclosed_wave_m) +
                T(rough_sick - enclosed_sick) * smoothstep(wave_height_m, enclosed_wave_m, rough_wave_m);
  const T exposed_s = dose_m2_s3 / larger(T(a_w_m_s2 * a_w_m_s2), T(tiny_m2_s4));
  return sea * smoothstep(exposed_s, 0.0, enclosed_onset_h * hour_s);
}

// Severity now: the larger of both laws, its odds multiplied by susceptibility, less what adaptation and
// medicine prevent.
// @param a_w_m_s2       weighted acceleration, root mean square, m/s2, at least 0
// @param dose_m2_s3     dose of motion, m2/s3, at least 0
// @param wave_height_m  significant wave height, m, at least 0
// @param enclosed       0 open to 1 under a canopy
// @param susceptibility odds ratio, above 0; 1 for the population mean
// @param adaptation     0 none to 1 full
// @param medicine       share of sickness prevented now, [0, 1]
// @return [0, 1]
template <class T>
inline T sickness_target(T a_w_m_s2, T dose_m2_s3, T wave_height_m, T enclosed, T susceptibility,
                         T adaptation, T medicine) {
  const T share = larger(vomiting_by_dose(dose_m2_s3),
                         enclosed * sick_in_enclosed_craft(a_w_m_s2, dose_m2_s3, wave_height_m));
  const T own = susceptibility * share / (T(1) - share + susceptibility * share);
  return own * (T(1) - adaptation) * (T(1) - medicine);
}

// Slope of adaptation, towards 1 during motion; adaptation is not lost again.
// @param a_w_m_s2   weighted acceleration, root mean square, m/s2, at least 0
// @param adaptation so far, [0, 1]
// @return 1/s, at least 0
template <class T>
inline T adaptation_rate_per_s(T a_w_m_s2, T adaptation) {
  using namespace constants;
  return smoothstep(a_w_m_s2, 0.0, adaptation_motion_m_s2) * (T(1) - adaptation) *
         T(1 / (adaptation_time_days * day_s));
}

// Share of sickness prevented by a transdermal hyoscine patch (Attias 1987): the means of three days, placed
// at mid-day and joined by straight lines. A tablet prevents the constant tablet_protection.
// @param hours since it was put on, h
// @return [0, 1]; 0 before it and after the third day
double patch_protection(double hours);

// Expected loss of water by vomiting.
// @param severity of seasickness, [0, 1]
// @return kg/s
template <class T>
inline T vomit_rate_kg_s(T severity) {
  using namespace constants;
  return T(vomit_kg_day / day_s) * severity;
}

}  // namespace bide::body
