// One person's surfaces for one step: who touches what, through which clothing, and what evaporates.
//
// States read: skin and clothing temperatures, water in the clothing. Inputs: Surroundings, held state,
// build, the sweat commanded. Outputs: the surfaces of PersonCoefficients. Validity and source: each function
// in cabin/.
//
// A segment's skin is shared out: a part presses on the floor (dry or in a puddle), a part is under water
// that stands on the floor, a part leans on the tube, a part touches neighbours (no exchange), the rest faces
// air and canopy - bare or through clothing. Immersed, all but the head faces the sea, less what a folded
// posture covers.
#pragma once

#include "bide/body/build.hpp"
#include "bide/body/control.hpp"
#include "bide/body/exchange.hpp"
#include "bide/body/hands.hpp"
#include "bide/body/sweating.hpp"
#include "bide/constants/control.hpp"
#include "bide/core/packs.hpp"
#include "bide/system/fitted.hpp"
#include "bide/system/freeze_cabin.hpp"

namespace bide::system {

inline constexpr int segments = body::segment_count;

// Everything but the head is under water when immersed to the neck.
inline constexpr std::array<double, segments> immersed_share{0, 1, 1, 1, 1, 1};
// The hood of a protective aid leaves the face out.
inline constexpr double hood_share = 0.5;

// How one segment's skin is shared out, as fractions; they sum to 1.
template <class T>
struct Shares {
  T exposed, floor, puddle, wading, tube, touching, immersed;
};

// @param in_water    1 or 0
// @param left_behind 1 or 0; 1: the head is under water as well
template <class T>
inline Shares<T> shares(int s, const Surroundings<T>& around, T in_water, T left_behind) {
  const T immersed = in_water * larger(T(immersed_share[s]), left_behind);
  const T folded = immersed * around.folded[s];
  const T under = immersed - folded;
  const T aboard = T(1) - in_water;
  const T wading = aboard * around.submerged[s];
  const T rest = aboard - wading;
  const T seat = rest * T(cabin::seat_share[s]);
  const T puddle = seat * around.pooled_share;
  const T tube = rest * T(cabin::back_share[s]);
  const T touching = folded + rest * T(cabin::huddle_share[s]) * around.neighbours;
  const T exposed = T(1) - under - wading - seat - tube - touching;
  return {exposed, seat - puddle, puddle, wading, tube, touching, under};
}

// Vapour from skin without sweat, for each m2: through the skin itself, then through what lies over it. Burns
// pass more, and lie evenly over the body.
// @param beyond_m_s vapour conductance of clothing and film over that skin, m/s, at least 0
// @return m/s, times a difference of vapour density
template <class T>
inline T from_dry_skin_m_s(const body::Build<T>& b, T beyond_m_s) {
  const T whole = cabin::in_series(b.skin_vapour_conductance_m_s, beyond_m_s);
  const T burnt = cabin::in_series(b.burnt_skin_vapour_conductance_m_s, beyond_m_s);
  return whole + b.burned * (burnt - whole);
}

// The films of a surface, under the aid where one is worn.
template <class T>
struct Films {
  T convection_W_m2K, radiation_W_m2K, transfer_m_s;
  T from_dry_skin_m_s;
};

// What a person wears this step, the same for all segments.
template <class T>
struct Worn {
  Films<T> at_head, elsewhere;
  T immersed_m2K_W, immersed_W_m2K;  // clothing that holds water, and its inverse
  T water_film_W_m2K;                // of this body in open water
  T vapour_per_heat_m3K_J;           // that clothing in air passes
  T per_latent_heat_kg_J;
};

// @param covered share of the surface that an aid covers, which is one more resistance over both films and a
// near-barrier to vapour
template <class T>
inline Films<T> films(const body::Build<T>& b, const Surroundings<T>& around, T aid_resistance, T covered) {
  const T all = around.convection_W_m2K + around.radiation_W_m2K;
  const T kept = T(1) / (T(1) + all * aid_resistance * covered);
  const T transfer_m_s =
      around.transfer_m_s + (around.transfer_under_aid_m_s - around.transfer_m_s) * covered;
  return {around.convection_W_m2K * kept, around.radiation_W_m2K * kept, transfer_m_s,
          from_dry_skin_m_s(b, transfer_m_s)};
}

// @param swims how hard, as a share of slow swimming
template <class T>
inline Worn<T> wear(const body::Build<T>& b, const Surroundings<T>& around, const HeldPerson<T>& held,
                    T aid_resistance, T swims) {
  Worn<T> w;
  w.at_head = films(b, around, aid_resistance, T(held.wears_aid * T(hood_share)));
  w.elsewhere = films(b, around, aid_resistance, held.wears_aid);
  w.immersed_m2K_W = larger(b.immersed_insulation_m2K_W, T(constants::cloth_resistance_m2K_W.value));
  w.immersed_W_m2K = T(1) / w.immersed_m2K_W;
  w.water_film_W_m2K = around.water_film_W_m2K +
                       (T(constants::water_film_swimming_W_m2K.value) - around.water_film_W_m2K) * swims;
  w.vapour_per_heat_m3K_J =
      cabin::vapour_per_heat_m3K_J(b.permeability_index, T(constants::typical_surface_degC.value));
  w.per_latent_heat_kg_J = T(1) / around.latent_heat_J_kg;
  return w;
}

// What covers a segment this step.
template <class T>
struct Cover {
  T covered, resistance;  // of the clothing, m2 K/W
  T wet_surface;          // share of the clothing that evaporates like water
};

template <class T>
inline Cover<T> cover(const body::Build<T>& b, int s, const T* x, const Fitted<T>& fitted) {
  using namespace cabin;
  const T wetness = clamp(T(x[body::at::clothing_water + s] * b.per_clothing_capacity[s]), 0.0, 1.0);
  const T resistance = larger(b.insulation_m2K_W[s], T(constants::cloth_resistance_m2K_W.value)) *
                       wet_insulation_factor(wetness, fitted.soaked_insulation);
  return {b.covered[s], resistance, evaporating_share(wetness)};
}

// Saturation at a surface as a line in its temperature: the tangent, or, where vapour condenses, the chord to
// the temperature at which it no longer does. The tangent at a cold surface in steam rises too slowly, and
// would let the latent heat of one step carry the surface far beyond the air. The chord of a convex curve is
// the steeper of the two just where vapour condenses.
// @param degC              of the surface
// @param vapour_kg_m3      of the air
// @param saturated_at_degC where the vapour would be at saturation
template <class T>
struct SaturationLine {
  T at_zero_kg_m3, slope_kg_m3_K;
};
template <class T>
inline SaturationLine<T> saturation_line(T degC, T vapour_kg_m3, T saturated_at_degC) {
  constexpr double least_K = 0.1;  // below it the two are one
  T per_K;
  const auto saturation =
      saturation_density_and_slope(degC, larger(T(saturated_at_degC - degC), T(least_K)), per_K);
  const T chord = (vapour_kg_m3 - saturation.density_kg_m3) * per_K;
  const T slope = larger(saturation.slope_kg_m3_K, chord);
  return {saturation.density_kg_m3 - slope * degC, slope};
}

// At every surface of a person.
template <class T>
inline void freeze_saturation(const T* x, const Surroundings<T>& around, body::PersonCoefficients<T>& out) {
  in_packs<T, 2 * segments + 1>(
      [&](int i) {
        if (i == 2 * segments) return x[body::at::finger];
        return i < segments ? x[body::at::node(i, body::skin)]
                            : x[body::at::node(i - segments, body::clothing)];
      },
      [&](auto degC) {
        using Packed = decltype(degC);
        return saturation_line(degC, Packed(around.vapour_kg_m3), Packed(around.saturated_at_degC));
      },
      [&](int i, const SaturationLine<T>& line) {
        const auto set = [&](auto& surface) {
          surface.density_at_zero_kg_m3 = line.at_zero_kg_m3;
          surface.density_slope_kg_m3_K = line.slope_kg_m3_K;
        };
        if (i < segments)
          set(out.skin_surface[i]);
        else if (i < 2 * segments)
          set(out.clothing_surface[i - segments]);
        else
          set(out.finger_surface);
      });
}

// Sea water against skin and clothing: a soaked ensemble insulates as its immersed insulation, wherever it
// covers.
template <class T>
inline void freeze_immersion(T area, T under, T covered, const Worn<T>& worn, body::Surface<T>& skin,
                             body::OuterSurface<T>& cloth, T& skin_to_cloth) {
  const T clad = area * under * covered;
  skin.to_sea = area * under * (T(1) - covered) * worn.water_film_W_m2K;
  cloth.to_sea = clad * worn.water_film_W_m2K;
  skin_to_cloth += clad * worn.immersed_W_m2K;
}

// Floor, puddle and tube, from the skin through pressed clothing; water that stands on the floor.
//
// Cloth under water holds water where in air, even soaked, it keeps air: 1 clo is 11.5 mm of cloth and gaps
// (AMS Glossary of Meteorology), worth 0.019 m2 K/W full of still water and 0.016 by the catalogue, but 0.050
// soaked in air (constants/fitted.hpp). So it counts as a swimmer's, in a puddle too, however wet it was
// before. A seat presses it thin. Standing water presses a waterproof suit, but not cloth that it passes.
template <class T>
inline void freeze_contact(const body::Build<T>& b, int s, const Shares<T>& share, const Cover<T>& c,
                           const Surroundings<T>& around, const Worn<T>& worn, body::Surface<T>& skin) {
  using namespace cabin;
  const T area = b.area_m2[s];
  const T pressed = c.covered * pressed_insulation_m2K_W(c.resistance);
  const T suit = b.waterproof * pressed;
  const T flooded = (T(1) - b.waterproof) * c.covered * worn.immersed_m2K_W;
  skin.to_floor_water = area * share.wading * skin_to_puddle_W_m2K(T(suit + flooded), b.seat_pad_cover);
  skin.to_floor = skin.to_tube = T(0);
  if (seat_share[s] > 0) {
    skin.to_floor = area * share.floor *
                    seat_to_sea_W_m2K(pressed, around.seated_floor_m2K_W, around.under_floor_W_m2K,
                                      b.seat_pad_m2K_W, b.seat_pad_cover);
    skin.to_floor_water +=
        area * share.puddle *
        skin_to_puddle_W_m2K(T(suit + pressed_insulation_m2K_W(flooded)), b.seat_pad_cover);
  }
  if (back_share[s] > 0) skin.to_tube = area * share.tube * back_to_tube_W_m2K(pressed);
}

// What glands give of the sweat commanded, and the part of it that runs off; the rest of it evaporates.
template <class T>
struct Sweat {
  T given_kg_s, runs_off_kg_s;
};

// Skin, clothing and the vapour between them, and the sweat: wet skin withholds most of what cannot
// evaporate.
template <class T>
inline Sweat<T> freeze_segment_surfaces(const body::Build<T>& b, int s, const T* x,
                                        const Surroundings<T>& around, const Shares<T>& share,
                                        const Worn<T>& worn, T sweat_W, const Fitted<T>& fitted,
                                        body::PersonCoefficients<T>& out) {
  using namespace body;
  Surface<T>& skin_side = out.skin_surface[s];
  OuterSurface<T>& cloth_side = out.clothing_surface[s];
  const T area = b.area_m2[s];
  const Cover<T> c = cover(b, s, x, fitted);
  const Films<T>& film = s == head ? worn.at_head : worn.elsewhere;
  const T bare_area = area * share.exposed * (T(1) - c.covered);
  const T clad_area = area * share.exposed * c.covered;
  const T outer_per_clad = cabin::clothing_area_factor(b.insulation_m2K_W[s]);
  const T outer_area = clad_area * outer_per_clad;

  skin_side.to_air = bare_area * film.convection_W_m2K;
  skin_side.to_canopy = bare_area * film.radiation_W_m2K;
  cloth_side.to_air = outer_area * film.convection_W_m2K;
  cloth_side.to_canopy = outer_area * film.radiation_W_m2K;
  const T per_resistance = T(1) / c.resistance;
  T to_cloth = clad_area * per_resistance;
  freeze_contact(b, s, share, c, around, worn, skin_side);
  freeze_immersion(area, share.immersed, c.covered, worn, skin_side, cloth_side, to_cloth);
  out.conductance_W_K[s][skin] = to_cloth;

  const T skin_saturation =
      skin_side.density_at_zero_kg_m3 + skin_side.density_slope_kg_m3_K * x[body::at::node(s, body::skin)];
  const T cloth_saturation =
      cloth_side.density_at_zero_kg_m3 + cloth_side.density_slope_kg_m3_K * x[body::at::node(s, clothing)];

  // Vapour passes from the skin to the air, bare or through dry cloth, or into wet cloth: m/s by m2 of skin,
  // then m3/s of a wholly wet skin and of one without sweat.
  const T through_cloth_m_s = worn.vapour_per_heat_m3K_J * per_resistance;
  const T clad_m_s = cabin::in_series(through_cloth_m_s, T(outer_per_clad * film.transfer_m_s));
  const T wet_clad_area = clad_area * c.wet_surface;
  const T dry_clad_area = clad_area - wet_clad_area;
  const T dry_path = bare_area * film.transfer_m_s + dry_clad_area * clad_m_s;
  const T to_wet_cloth = wet_clad_area * through_cloth_m_s;
  const T diffusion = bare_area * film.from_dry_skin_m_s + dry_clad_area * from_dry_skin_m_s(b, clad_m_s);
  const T diffusion_to_cloth = wet_clad_area * from_dry_skin_m_s(b, through_cloth_m_s);
  const T most_kg_s = dry_path * positive_part(T(skin_saturation - around.vapour_kg_m3)) +
                      to_wet_cloth * positive_part(T(skin_saturation - cloth_saturation));
  const T sweat_kg_s = sweat_W * worn.per_latent_heat_kg_J;
  const T wetted = sweat_wettedness(sweat_kg_s, most_kg_s, b.greatest_wettedness);
  skin_side.evaporation_m3_s = diffusion + wetted * (dry_path - diffusion);
  out.distillation_m3_s[s] = diffusion_to_cloth + wetted * (to_wet_cloth - diffusion_to_cloth);
  cloth_side.evaporation_m3_s = c.wet_surface * outer_area * film.transfer_m_s;
  const T beyond = positive_part(T(sweat_kg_s - wetted * most_kg_s));
  return {sweat_kg_s - fitted.wet_skin_withholds * beyond, (T(1) - fitted.wet_skin_withholds) * beyond};
}

// Fingers are hands without a core: bare or gloved, never under the seat.
template <class T>
inline void freeze_finger(const body::Build<T>& b, const T* x, const HeldPerson<T>& held, const Worn<T>& worn,
                          const Fitted<T>& fitted, body::PersonCoefficients<T>& out) {
  using namespace body;
  OuterSurface<T>& f = out.finger_surface;
  const Cover<T> c = cover(b, hands, x, fitted);
  const Films<T>& film = worn.elsewhere;
  const T under = held.in_water;
  const T exposed = b.finger_area_m2 * (T(1) - under);
  const T all = film.convection_W_m2K + film.radiation_W_m2K;
  const T through_glove = T(1) - c.covered + c.covered / (T(1) + all * c.resistance);
  f.to_air = exposed * film.convection_W_m2K * through_glove;
  f.to_canopy = exposed * film.radiation_W_m2K * through_glove;
  const T in_water_W_m2K = finger_to_water_W_m2K(worn.water_film_W_m2K);
  f.to_sea = b.finger_area_m2 * under *
             ((T(1) - c.covered) * in_water_W_m2K +
              c.covered * cabin::immersed_W_m2K(b.immersed_insulation_m2K_W, in_water_W_m2K));
  f.evaporation_m3_s = exposed * (T(1) - c.covered) * film.from_dry_skin_m_s;
}

}  // namespace bide::system
