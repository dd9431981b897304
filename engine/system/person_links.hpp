// Every flux of one person, inside and to the cabin, stated once: what it joins, its coefficient, its running
// total.
//
// States: temperatures, and the water of body, gut and clothing. Inputs: frozen coefficients. Validity: one
// time step. Source: see the functions in body/ and cabin/.
#pragma once

#include <utility>

#include "bide/system/coefficients.hpp"
#include "bide/system/links.hpp"

namespace bide::system {

// Skin, clothing or fingers as a wet surface.
template <class Node, class Liquid, class Surface, class T>
[[gnu::always_inline]] constexpr auto wet_surface(const Surface& s, const T& latent_heat_J_kg) {
  return Wet<Node, Liquid, T>{s.density_at_zero_kg_m3, s.density_slope_kg_m3_K, latent_heat_J_kg};
}

// What every surface has.
template <class Node, class Liquid, class Evaporated, class Surface, class T, class Visitor>
[[gnu::always_inline]] constexpr void open_links(const Surface& s, const body::PersonCoefficients<T>& c,
                                                 Visitor& v) {
  using namespace body::at;
  v.link(s.to_air, Node{}, Cabin<at::air>{}, Book<total_to_air>{});
  v.link(s.to_canopy, Node{}, Cabin<at::canopy>{}, Book<total_to_canopy>{});
  v.link(s.to_sea, Node{}, Known<T>{c.sea_degC}, Book<total_to_sea>{});
  v.link(s.evaporation_m3_s, wet_surface<Node, Liquid>(s, c.latent_heat_J_kg), Cabin<at::vapour>{},
         Evaporated{});
}

// What only the skin has, which is pressed on floor and tube and may be under water.
template <class Node, class T, class Visitor>
[[gnu::always_inline]] constexpr void contact_links(const body::Surface<T>& s,
                                                    const body::PersonCoefficients<T>& c, Visitor& v) {
  using namespace body::at;
  v.link(s.to_floor_water, Node{}, Cabin<at::floor_water>{}, Book<total_to_floor_water>{});
  v.link(s.to_floor, Node{}, Known<T>{c.floor_degC}, Book<total_to_floor>{});
  v.link(s.to_tube, Node{}, Known<T>{c.tube_degC}, Book<total_to_tube>{});
}

template <class T, class Visitor, int... tissue>
[[gnu::always_inline]] constexpr void tissue_links(const body::PersonCoefficients<T>& c, int s, Visitor& v,
                                                   std::integer_sequence<int, tissue...>) {
  (v.flow(c.source_W[s][tissue], Outside{}, Layer<tissue>{}), ...);
  v.flow(c.source_W[s][body::clothing], Outside{}, Layer<body::clothing>{});
  (v.link(c.conductance_W_K[s][tissue], Layer<tissue>{}, Layer<tissue + 1>{}), ...);
  (v.link(c.perfusion_W_K[s][tissue], Blood{}, Layer<tissue>{}), ...);
}

// One segment, core to clothing.
template <class T, class Visitor>
[[gnu::always_inline]] constexpr void segment_links(const body::PersonCoefficients<T>& c, int s, Visitor& v) {
  using namespace body;
  namespace own = body::at;
  using Skin = Layer<skin>;
  using Cloth = Layer<clothing>;
  using BodyWater = Own<own::body_water>;
  const auto& on_skin = c.skin_surface[s];
  const auto& on_cloth = c.clothing_surface[s];
  tissue_links(c, s, v, std::make_integer_sequence<int, tissue_count>{});
  v.link(c.distillation_m3_s[s], wet_surface<Skin, BodyWater>(on_skin, c.latent_heat_J_kg),
         wet_surface<Cloth, ClothingWater>(on_cloth, c.latent_heat_J_kg), Book<own::total_distilled>{},
         Book<own::total_skin_water>{});
  open_links<Skin, BodyWater, Book<own::total_skin_water>>(on_skin, c, v);
  contact_links<Skin>(on_skin, c, v);
  open_links<Cloth, ClothingWater, Book<own::total_clothing_evaporation>>(on_cloth, c, v);
}

template <class T, class Visitor>
[[gnu::always_inline]] constexpr void finger_links(const body::PersonCoefficients<T>& c, Visitor& v) {
  using namespace body;
  namespace own = body::at;
  v.flow(c.finger_source_W, Outside{}, Finger{});
  v.link(c.finger_perfusion_W_K, Blood{}, Finger{});
  open_links<Finger, Own<own::body_water>, Book<own::total_skin_water>>(c.finger_surface, c, v);
}

// Water of body and gut. What sweat drips goes on to clothing, floor or sea (segment_flows, and the amounts
// there). Heat made and sun come to many nodes at once, as sources less the heat of breath; only their totals
// stand here.
template <class T, class Visitor>
[[gnu::always_inline]] constexpr void person_flows(const body::PersonCoefficients<T>& c, Visitor& v) {
  using namespace body::at;
  v.flow(c.metabolic_W, Outside{}, Outside{}, Book<total_metabolic>{});
  v.flow(c.sun_W, Outside{}, Outside{}, Book<total_sun>{});
  v.flow(T(c.breath_dry_W + c.breath_latent_W), Outside{}, Outside{}, Book<total_breath>{});
  v.flow(c.absorption_kg_s, Own<gut_water>{}, Own<body_water>{});
  v.flow(c.metabolic_water_kg_s, Outside{}, Own<body_water>{}, Book<total_metabolic_water>{});
  v.flow(c.urine_kg_s, Own<body_water>{}, Outside{}, Book<total_urine>{});
  v.flow(c.vomit_kg_s, Own<body_water>{}, Outside{}, Book<total_vomit>{});
  v.flow(c.breath_water_kg_s, Own<body_water>{}, Outside{}, Book<total_breath_water>{});
  v.flow(c.sweat_drip_kg_s, Own<body_water>{}, Outside{}, Book<total_sweat_drip>{});
  v.flow(c.overboard_kg_s, Outside{}, Outside{}, Book<total_overboard>{});
  v.flow(c.wetting_kg_s, Outside{}, Outside{}, Book<total_wetting>{});
  v.flow(c.liquid_to_floor_kg_s, Outside{}, Own<total_clothing_drain>{});
}

// Liquid water of one segment's clothing. @param fog_kg_s that settles on this person, booked to the floor
template <class T, class Visitor>
[[gnu::always_inline]] constexpr void segment_flows(const body::PersonCoefficients<T>& c, int s,
                                                    const T& fog_kg_s, Visitor& v) {
  using ToFloor = Own<body::at::total_clothing_drain>;
  v.flow(c.clothing_gain_kg_s[s], Outside{}, ClothingWater{});
  v.flow(c.clothing_drain_kg_s[s], ClothingWater{}, ToFloor{});
  v.flow(T(fog_kg_s * c.catch_share[s]), ToFloor{}, ClothingWater{});
}

}  // namespace bide::system
