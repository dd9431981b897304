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

#include "body/build.hpp"
#include "body/control.hpp"
#include "body/exchange.hpp"
#include "constants/control.hpp"
#include "system/fitted.hpp"
#include "system/freeze_cabin.hpp"

namespace bide::system {

inline constexpr int segments = body::segment_count;

// Everything but the head is under water when immersed to the neck.
inline constexpr std::array<double, segments> immersed_share{0, 1, 1, 1, 1, 1};
// A protective aid or its hood leaves the face out.
inline constexpr std::array<double, segments> aid_share{0.5, 1, 1, 1, 1, 1};

// How one segment's skin is shared out, as fractions; they sum to 1.
template <class T>
struct Shares {
  T exposed, floor, puddle, wading, tube, touching, immersed;
};

template <class T>
inline Shares<T> shares(int s, const Surroundings<T>& around, T in_water) {
  const T folded = in_water * T(immersed_share[s]) * around.folded[s];
  const T under = in_water * T(immersed_share[s]) - folded;
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

// What covers a segment this step.
template <class T>
struct Cover {
  T covered, wetness, resistance;         // of the clothing, m2 K/W
  T convection, radiation, transfer_m_s;  // of the surface, under the aid if one is worn
  T wet_surface;                          // share of the clothing that evaporates like water
  T area_factor;
};

template <class T>
inline Cover<T> cover(const body::Build<T>& b, int s, const T* x, const Surroundings<T>& around,
                      const HeldPerson<T>& held, T aid_resistance, const Fitted<T>& fitted) {
  using namespace cabin;
  Cover<T> c;
  constexpr double nothing_kg = 1e-6;
  c.covered = b.covered[s];
  c.wetness =
      clamp(T(x[body::at::clothing_water + s] / (b.clothing_capacity_kg[s] + T(nothing_kg))), 0.0, 1.0);
  c.resistance = larger(b.insulation_m2K_W[s], T(constants::cloth_resistance_m2K_W.value)) *
                 wet_insulation_factor(c.wetness, fitted.soaked_insulation);
  c.wet_surface = evaporating_share(c.wetness);
  c.area_factor = clothing_area_factor(b.insulation_m2K_W[s]);
  const T aid = held.wears_aid * T(aid_share[s]);
  // The aid is one more resistance over both films and a near-barrier to vapour.
  const T films = around.convection_W_m2K + around.radiation_W_m2K;
  const T kept = T(1) / (T(1) + films * aid_resistance * aid);
  c.convection = around.convection_W_m2K * kept;
  c.radiation = around.radiation_W_m2K * kept;
  c.transfer_m_s = around.transfer_m_s + (around.transfer_under_aid_m_s - around.transfer_m_s) * aid;
  return c;
}

template <class T>
inline void set_saturation(body::Surface<T>& s, T degC) {
  const auto saturation = saturation_density_and_slope(degC);
  s.density_slope_kg_m3_K = saturation.slope_kg_m3_K;
  s.density_at_zero_kg_m3 = saturation.density_kg_m3 - saturation.slope_kg_m3_K * degC;
}

// Sea water against skin and clothing: a soaked ensemble insulates as its immersed insulation, wherever it
// covers.
template <class T>
inline void freeze_immersion(const body::Build<T>& b, T area, T under, T covered,
                             const Surroundings<T>& around, body::Surface<T>& skin, body::Surface<T>& cloth,
                             T& skin_to_cloth) {
  skin.to_sea += area * under * (T(1) - covered) * around.water_film_W_m2K;
  cloth.to_sea += area * under * covered * around.water_film_W_m2K;
  skin_to_cloth += area * under * covered /
                   larger(b.immersed_insulation_m2K_W, T(constants::cloth_resistance_m2K_W.value));
}

// Floor, puddle and tube, from the skin through pressed clothing; water that stands on the floor.
//
// Cloth under water holds water where in air, even soaked, it keeps air: 1 clo is 11.5 mm of cloth and gaps
// (AMS Glossary of Meteorology), worth 0.019 m2 K/W full of still water and 0.016 by the catalogue, but 0.050
// soaked in air (constants/fitted.hpp). So it counts as a swimmer's, in a puddle too, however wet it was
// before. A seat presses it thin. Standing water presses a waterproof suit, but not cloth that it passes.
template <class T>
inline void freeze_contact(const body::Build<T>& b, T area, const Shares<T>& share, const Cover<T>& c,
                           const Surroundings<T>& around, T pad_m2K_W, T pad_cover, body::Surface<T>& skin) {
  using namespace cabin;
  const T pressed = c.covered * pressed_insulation_m2K_W(c.resistance);
  const T suit = b.waterproof * pressed;
  const T flooded = (T(1) - b.waterproof) * c.covered *
                    larger(b.immersed_insulation_m2K_W, T(constants::cloth_resistance_m2K_W.value));
  skin.to_floor =
      area * share.floor *
      seat_to_sea_W_m2K(pressed, around.seated_floor_m2K_W, around.under_floor_W_m2K, pad_m2K_W, pad_cover);
  skin.to_floor_water =
      area * (share.puddle * skin_to_puddle_W_m2K(T(suit + pressed_insulation_m2K_W(flooded)), pad_cover) +
              share.wading * skin_to_puddle_W_m2K(T(suit + flooded), pad_cover));
  skin.to_tube = area * share.tube * back_to_tube_W_m2K(pressed);
}

// Skin, clothing and the vapour between them. Returns the sweat that runs off, kg/s: wet skin withholds most
// of what cannot evaporate.
template <class T>
inline T freeze_segment_surfaces(const body::Build<T>& b, int s, const T* x, const Surroundings<T>& around,
                                 const HeldPerson<T>& held, T aid_resistance, T pad_m2K_W, T pad_cover,
                                 T sweat_W, const Fitted<T>& fitted, body::PersonCoefficients<T>& out) {
  using namespace body;
  Surface<T>& skin_side = out.skin_surface[s];
  Surface<T>& cloth_side = out.clothing_surface[s];
  const T area = b.area_m2[s];
  const Shares<T> share = shares(s, around, held.in_water);
  const Cover<T> c = cover(b, s, x, around, held, aid_resistance, fitted);
  const T bare_area = area * share.exposed * (T(1) - c.covered);
  const T clad_area = area * share.exposed * c.covered;
  const T outer_area = clad_area * c.area_factor;

  skin_side.to_air = bare_area * c.convection;
  skin_side.to_canopy = bare_area * c.radiation;
  skin_side.to_sea = T(0);
  cloth_side.to_air = outer_area * c.convection;
  cloth_side.to_canopy = outer_area * c.radiation;
  cloth_side.to_floor = cloth_side.to_tube = cloth_side.to_floor_water = cloth_side.to_sea = T(0);
  T to_cloth = clad_area / c.resistance;
  freeze_contact(b, area, share, c, around, pad_m2K_W, pad_cover, skin_side);
  freeze_immersion(b, area, share.immersed, c.covered, around, skin_side, cloth_side, to_cloth);
  out.conductance_W_K[s][skin] = to_cloth;

  set_saturation(skin_side, x[body::at::node(s, body::skin)]);
  set_saturation(cloth_side, x[body::at::node(s, clothing)]);
  const T skin_saturation =
      skin_side.density_at_zero_kg_m3 + skin_side.density_slope_kg_m3_K * x[body::at::node(s, body::skin)];
  const T cloth_saturation =
      cloth_side.density_at_zero_kg_m3 + cloth_side.density_slope_kg_m3_K * x[body::at::node(s, clothing)];

  // Vapour paths of a wholly wet skin, m3/s.
  const T bare_path = bare_area * c.transfer_m_s;
  const T through_cloth = clad_area * cabin::vapour_conductance_m_s(c.resistance, b.permeability_index,
                                                                    T(constants::typical_surface_degC.value));
  const T outer_path = outer_area * c.transfer_m_s;
  const T dry_path =
      bare_path + (T(1) - c.wet_surface) * cabin::in_series(through_cloth, outer_path + T(tiny_W_K));
  const T to_wet_cloth = c.wet_surface * through_cloth;
  const T most_kg_s = dry_path * positive_part(T(skin_saturation - around.vapour_kg_m3)) +
                      to_wet_cloth * positive_part(T(skin_saturation - cloth_saturation));
  const T sweat_kg_s = sweat_W / around.latent_heat_J_kg;
  constexpr double tiny_kg_s = 1e-15;
  const T least(constants::least_wettedness.value);
  const T wettedness = least + (T(1) - least) * smaller(T(sweat_kg_s / (most_kg_s + T(tiny_kg_s))), T(1));
  skin_side.evaporation_m3_s = wettedness * dry_path;
  out.distillation_m3_s[s] = wettedness * to_wet_cloth;
  cloth_side.evaporation_m3_s = c.wet_surface * outer_path;
  return (T(1) - fitted.wet_skin_withholds) * positive_part(T(sweat_kg_s - most_kg_s));
}

// Fingers are hands without a core: bare or gloved, never under the seat.
template <class T>
inline void freeze_finger(const body::Build<T>& b, const T* x, const Surroundings<T>& around,
                          const HeldPerson<T>& held, T aid_resistance, const Fitted<T>& fitted,
                          body::PersonCoefficients<T>& out) {
  using namespace body;
  Surface<T>& f = out.finger_surface;
  const Cover<T> c = cover(b, hands, x, around, held, aid_resistance, fitted);
  const T under = held.in_water;
  const T exposed = b.finger_area_m2 * (T(1) - under);
  const T films = c.convection + c.radiation;
  const T through_glove = T(1) - c.covered + c.covered / (T(1) + films * c.resistance);
  f.to_air = exposed * c.convection * through_glove;
  f.to_canopy = exposed * c.radiation * through_glove;
  f.to_floor = f.to_tube = f.to_floor_water = T(0);
  f.to_sea = b.finger_area_m2 * under * (T(1) - c.covered) * around.water_film_W_m2K +
             b.finger_area_m2 * under * c.covered *
                 cabin::immersed_W_m2K(b.immersed_insulation_m2K_W, around.water_film_W_m2K);
  set_saturation(f, x[body::at::finger]);
  f.evaporation_m3_s = exposed * (T(1) - c.covered) * T(constants::least_wettedness.value) * c.transfer_m_s;
}

}  // namespace bide::system
