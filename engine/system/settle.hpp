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

inline constexpr double tiny_J_K = 1e-9;  // keeps 0/0 out of surfaces that are not there

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

// The latent heat of what a surface gave off beyond what it held, brought back to it until it is as warm as
// the air: it dried within the step, and was cooled by water that it did not have.
// @return J, the part of the heat that the surface takes
template <class T>
T warm_again_J(int node, T heat_J, T capacity_J_K, StepEnd<T>& end) {
  const auto k = static_cast<std::size_t>(node);
  const T taken = smaller(heat_J, T(capacity_J_K * positive_part(end.x[at::air] - end.x[k])));
  end.shift(node, taken / (capacity_J_K + T(tiny_J_K)));
  return taken;
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

// Water back to dry surfaces as fog, with the part of its heat that they have not taken, then what the air
// holds: at most what a haze is (fog_width beyond saturation), and never less than the driest of what it was,
// the outside, and saturation at the coldest surface. More than that ventilation cannot have carried out.
template <class T>
void settle_vapour(const CabinCoefficients<T>& c, T enclosed, T fallen_back_kg, T fallen_back_J,
                   StepEnd<T>& end) {
  // Heat is given to the air all through the step, and air that is renewed carries its part out.
  const T carried_J_K = T(end.length_s) * c.air_exchange_W_K;
  const T capacity = c.capacity[at::air] + carried_J_K;
  const T start = end.start(at::vapour);
  const T degC = end.x[at::air] + fallen_back_J / capacity;
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
  const T heat = fallen_back_J + c.latent_heat_J_kg * fog_kg;
  end.shift(at::vapour, (kept_in_kg - left_kg - fog_kg - fallen_back_kg) / c.volume_m3);
  const T warmed_K = heat / capacity;
  end.shift(at::air, warmed_K);
  end.x[at::water_mass] += fog_kg;
  end.x[at::total_vapour_out] += left_kg - kept_in_kg;
  end.x[at::total_latent] += heat;
  end.x[at::total_stored] += c.capacity[at::air] * warmed_K;
  end.x[at::total_by_air] += carried_J_K * warmed_K;
}

template <class T>
void settle(const Coefficients<T>& c, const Held<T>& held, StepEnd<T>& end) {
  settle_co2(c.cabin, end);
  const T latent = c.cabin.latent_heat_J_kg;
  const T film = overdrawn_kg(end.x[at::film_mass]);
  end.x[at::total_condensed] += film;
  T fallen_back = film, to_cabin_J(0), to_people_J(0);
  to_cabin_J += warm_again_J(at::canopy, T(latent * film), c.cabin.capacity[at::canopy], end);
  for (std::size_t p = 0; p < c.persons.size(); ++p) {
    const auto offset = static_cast<std::size_t>(person_offset(static_cast<int>(p)));
    T* y = end.x.data() + offset;
    end.x[at::water_mass] +=
        run_off_kg(end.mean_slopes.data() + offset, T(end.length_s), held.persons[p].in_water, y);
    for (int s = 0; s < body::segment_count; ++s) {
      // Seldom: nothing is lacking, and then all that follows is 0.
      if (!any(y[body::at::clothing_water + s] < T(0))) continue;
      const T cloth = overdrawn_kg(y[body::at::clothing_water + s]);
      y[body::at::total_clothing_evaporation] -= cloth;
      fallen_back += cloth;
      const T taken = warm_again_J(static_cast<int>(offset) + body::at::node(s, body::clothing),
                                   T(latent * cloth), c.persons[p].capacity_J_K[s][body::clothing], end);
      y[body::at::total_evaporation] -= taken;
      y[body::at::total_stored] += taken;
      to_people_J += taken;
    }
  }
  const T floor = overdrawn_kg(end.x[at::water_mass]);
  end.x[at::total_floor_evaporation] -= floor;
  fallen_back += floor;
  to_cabin_J += warm_again_J(at::floor_water, T(latent * floor), c.cabin.capacity[at::floor_water], end);
  end.x[at::total_latent] += to_cabin_J;
  end.x[at::total_stored] += to_cabin_J;
  settle_vapour(c.cabin, held.enclosed, fallen_back, T(latent * fallen_back - to_cabin_J - to_people_J), end);
}

}  // namespace bide::system
