// What the end of a step puts right, so that no amount is taken that is not there.
//
// The implicit step is linear and of second order, and no such method keeps every amount positive (Bolley &
// Crouzeix 1978, from memory): where the air is renewed many times within a step it overshoots, and a surface
// that dries within it gives off more water than it held. Each flux named here is limited by what there was
// to move; the amount goes back the way it came, and the running totals with it, so that the ledgers close as
// before.
//
// States read and written: vapour, CO2 and temperature of the air; water on floor, canopy, clothing and in
// the body; running totals. Inputs: the coefficients of the step, the length of the step, mean slopes over
// it. Validity: one step. Source: mass balance.
#pragma once

#include "bide/cabin/co2.hpp"
#include "bide/core/moist_air.hpp"
#include "bide/system/coefficients.hpp"
#include "bide/system/held.hpp"

namespace bide::system {

// The end of a step: x at its end, slopes of the implicit entries at its end, and those that the next step is
// extrapolated with.
template <class T>
struct StepEnd {
  double length_s;
  const std::vector<T>& mean_slopes;  // before anything was settled
  std::vector<T>& x;
  std::vector<T>& end_slopes;
  std::vector<T>& ahead;

  T start(int i) const {
    const auto k = static_cast<std::size_t>(i);
    return x[k] - T(length_s) * mean_slopes[k];
  }
  // A state that moves by `change` more than the step had it.
  void shift(int i, T change) {
    const auto k = static_cast<std::size_t>(i);
    x[k] += change;
    ahead[k] += change * T(1 / length_s);
  }
};

// CO2 acts on nothing within a step, so its balance is solved exactly.
template <class T>
void settle_co2(const CabinCoefficients<T>& c, StepEnd<T>& end) {
  const T before = end.start(at::co2);
  const T after = cabin::co2_after_fraction(before, c.co2_made_m3_s, c.ventilation_m3_s, c.volume_m3,
                                            c.outside_co2, T(end.length_s));
  end.x[at::total_co2_out] += c.volume_m3 * (end.x[at::co2] - after);
  end.x[at::co2] = after;
  end.end_slopes[at::co2] = end.ahead[at::co2] =
      cabin::co2_rate_per_s(after, c.co2_made_m3_s, c.ventilation_m3_s, c.volume_m3, c.outside_co2);
}

// Water that a surface gave off beyond what it held; the surface is left dry.
template <class T>
T overdrawn_kg(T& water_kg) {
  const T lacking = positive_part(-water_kg);
  water_kg += lacking;
  return lacking;
}

// Vapour that condensed on a person's skin was booked as water of the body: it runs off, to the floor or into
// the sea. Amounts over a step, or slopes with a length of one.
template <class T>
T run_off_kg(const T* mean_slopes, T length_s, T in_water, T* y) {
  namespace at = body::at;
  const T caught = positive_part(-(length_s * mean_slopes[at::total_skin_water]));
  y[at::body_water] -= caught;
  y[at::total_skin_water] += caught;
  y[at::total_overboard] += in_water * caught;
  return (T(1) - in_water) * caught;
}

// Water back to dry surfaces as fog, then what the air holds: at most what a haze is (fog_width beyond
// saturation), and never less than the driest of what it was, the outside, and saturation at the coldest
// surface. More than that ventilation cannot have carried out.
template <class T>
void settle_vapour(const CabinCoefficients<T>& c, T enclosed, T fallen_back_kg, StepEnd<T>& end) {
  const T capacity = c.capacity[at::air];
  const T start = end.start(at::vapour);
  const T degC = end.x[at::air] + c.latent_heat_J_kg * fallen_back_kg / capacity;
  const T vapour = end.x[at::vapour] - fallen_back_kg / c.volume_m3;
  const T haze(1 + constants::fog_width);
  const auto saturation = saturation_density_and_slope(degC);
  const T excess = positive_part(vapour - haze * saturation.density_kg_m3);
  // Fog warms the air, which then holds more: one step along the tangent, which errs to the dry side.
  const T fog_kg = enclosed * excess /
                   (T(1) / c.volume_m3 + haze * saturation.slope_kg_m3_K * c.latent_heat_J_kg / capacity);
  const T coldest =
      smaller(smaller(end.x[at::canopy], end.x[at::floor_water]), smaller(c.sea_degC, c.tube_degC));
  const T driest =
      smaller(smaller(start, c.outside_vapour_kg_m3), saturation_density_kg_m3(smaller(coldest, degC)));
  const T left_kg = (T(1) - enclosed) * excess * c.volume_m3;
  const T kept_in_kg = c.volume_m3 * positive_part(driest - vapour);
  const T heat = c.latent_heat_J_kg * (fallen_back_kg + fog_kg);
  end.shift(at::vapour, (kept_in_kg - left_kg - fog_kg - fallen_back_kg) / c.volume_m3);
  end.shift(at::air, heat / capacity);
  end.x[at::water_mass] += fog_kg;
  end.x[at::total_vapour_out] += left_kg - kept_in_kg;
  end.x[at::total_latent] += heat;
  end.x[at::total_stored] += heat;
}

template <class T>
void settle(const Coefficients<T>& c, const Held<T>& held, StepEnd<T>& end) {
  settle_co2(c.cabin, end);
  const T film = overdrawn_kg(end.x[at::film_mass]);
  end.x[at::total_condensed] += film;
  T fallen_back = film;
  for (std::size_t p = 0; p < c.persons.size(); ++p) {
    const auto offset = static_cast<std::size_t>(person_offset(static_cast<int>(p)));
    T* y = end.x.data() + offset;
    end.x[at::water_mass] +=
        run_off_kg(end.mean_slopes.data() + offset, T(end.length_s), held.persons[p].in_water, y);
    for (int s = 0; s < body::segment_count; ++s) {
      const T cloth = overdrawn_kg(y[body::at::clothing_water + s]);
      y[body::at::total_clothing_evaporation] -= cloth;
      fallen_back += cloth;
    }
  }
  const T floor = overdrawn_kg(end.x[at::water_mass]);
  end.x[at::total_floor_evaporation] -= floor;
  fallen_back += floor;
  settle_vapour(c.cabin, held.enclosed, fallen_back, end);
}

}  // namespace bide::system
