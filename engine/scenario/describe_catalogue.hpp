// Every field of a catalogue entry and of a climate table, listed once, in the manner of describe.hpp.
#pragma once

#include "bide/scenario/catalogue.hpp"
#include "bide/scenario/describe.hpp"
#include "bide/scenario/sea_areas.hpp"

namespace bide::scenario {

namespace detail {
template <class S, class V>
void describe_heading(V&& v) {
  v(&S::key, text("key", required, "The word a scenario uses."));
  v(&S::title, text("title", required, "What it is, in words."));
  v(&S::source, {"source", {}, 1, 600, required, "Publication, or how the numbers came about."});
}
}  // namespace detail

template <class V>
void describe(As<RaftKind>, V&& v) {
  using R = RaftKind;
  detail::describe_heading<R>(v);
  v(&R::capacity_persons, number("capacity_persons", "persons", 1, 100, required, "Persons it is made for."));
  v(&R::floor, word_of("floor", required, "Kind of floor."));
  v(&R::canopy, word_of("canopy", required, "Kind of canopy."));
  v(&R::floor_area_m2, number("floor_area_m2", "m2", 0.3, 60, required, "Floor area inside the tubes."));
  v(&R::canopy_height_m, number("canopy_height_m", "m", 0, 2.5, required, "Height inside at the middle."));
  v(&R::tube_diameter_m,
    number("tube_diameter_m", "m", 0.1, 0.8, required, "Diameter of one buoyancy tube."));
  v(&R::opening_area_m2, number("opening_area_m2", "m2", 0.02, 10, required, "All entrances, fully open."));
  v(&R::rain_catch_area_m2,
    number("rain_catch_area_m2", "m2", 0, 60, required, "Plan area of the rain collector."));
  v(&R::pack, text("pack", required, "The pack it usually carries."));
}

template <class V>
void describe(As<PackItem>, V&& v) {
  using P = PackItem;
  v(&P::item, text("item", required, "Catalogue key of the item."));
  v(&P::per_person, number("per_person", "units", 0, 1000, otherwise(0), "For each person of the capacity."));
  v(&P::per_raft, number("per_raft", "units", 0, 1000, otherwise(0), "For each raft."));
  v(&P::at_least, number("at_least", "units", 0, 1000, otherwise(0), "Never fewer than this."));
  v(&P::more_from_13_persons, number("more_from_13_persons", "units", 0, 1000, otherwise(0),
                                     "More, in rafts for 13 persons and above."));
}

template <class V>
void describe(As<PackKind>, V&& v) {
  using P = PackKind;
  detail::describe_heading<P>(v);
  v(&P::smallest_capacity_persons,
    number("smallest_capacity_persons", "persons", 1, 100, required, "Smallest raft that carries it."));
  v(&P::largest_capacity_persons,
    number("largest_capacity_persons", "persons", 1, 100, required, "Largest raft that carries it."));
  v(&P::items, list("items", 0, longest_array, required, "Contents."));
}

template <class V>
void describe(As<Ensemble>, V&& v) {
  using E = Ensemble;
  detail::describe_heading<E>(v);
  v(&E::covered_fraction,
    number("covered_fraction", "1", 0, 1, required, "Covered share of each segment's skin."));
  v(&E::insulation_m2K_W,
    number("insulation_m2K_W", "m2K/W", 0, 1, required, "Dry, intrinsic, of the covered part."));
  v(&E::mass_kg, number("mass_kg", "kg", 0, 20, required, "Dry mass."));
  v(&E::water_capacity_kg,
    number("water_capacity_kg", "kg", 0, 20, required, "Held when soaked and drained."));
  v(&E::vapour_permeability_index,
    number("vapour_permeability_index", "1", 0.01, 0.6, required, "i_m of ISO 9920."));
  v(&E::waterproof, yes_or_no("waterproof", required, "Stays dry inside when immersed."));
  v(&E::immersed_insulation_m2K_W, number("immersed_insulation_m2K_W", "m2K/W", 0, 0.5, required,
                                          "Whole body, in the water, water film excluded."));
}

template <class V>
void describe(As<Covering>, V&& v) {
  using C = Covering;
  detail::describe_heading<C>(v);
  v(&C::covered_fraction, number("covered_fraction", "1", 0, 1, required, "Covered share of the skin."));
  v(&C::insulation_m2K_W,
    number("insulation_m2K_W", "m2K/W", 0, 1, required, "Dry, intrinsic, of the covered part."));
  v(&C::mass_kg, number("mass_kg", "kg", 0, 20, required, "Dry mass of the pair."));
  v(&C::water_capacity_kg,
    number("water_capacity_kg", "kg", 0, 20, required, "Held by the pair when soaked and drained."));
}

template <class V>
void describe(As<ItemKind>, V&& v) {
  using I = ItemKind;
  detail::describe_heading<I>(v);
  v(&I::role, word_of("role", required, "What it is for."));
  v(&I::water_L, number("water_L", "L", 0, 100, otherwise(0), "Drinking water per unit."));
  v(&I::energy_kJ, number("energy_kJ", "kJ", 0, 50000, otherwise(0), "Food energy per unit."));
  v(&I::carbohydrate_g, number("carbohydrate_g", "g", 0, 5000, otherwise(0), "Carbohydrate per unit."));
  v(&I::fat_g, number("fat_g", "g", 0, 5000, otherwise(0), "Fat per unit."));
  v(&I::protein_g, number("protein_g", "g", 0, 5000, otherwise(0), "Protein per unit."));
  v(&I::sodium_mmol, number("sodium_mmol", "mmol", 0, 2000, otherwise(0), "Sodium per unit."));
  v(&I::output_L_h,
    number("output_L_h", "L/h, for a still L per MJ", 0, 50, otherwise(0), "Fresh water made."));
  v(&I::area_m2, number("area_m2", "m2", 0, 20, otherwise(0), "Area of a still, or of a vessel's mouth."));
  v(&I::holds_L, number("holds_L", "L", 0, 100, otherwise(0), "Rain that a vessel holds."));
  v(&I::work_W, number("work_W", "W", 0, 500, otherwise(0), "Mechanical work of the person at it."));
  v(&I::burn_s, number("burn_s", "s", 0, 3600, otherwise(0), "Burning time."));
  v(&I::hours, number("hours", "h", 0, 1000, otherwise(0), "Hours it runs."));
  v(&I::light_cd, number("light_cd", "cd", 0, 1e6, otherwise(0), "Luminous intensity of a light."));
  v(&I::light_at_m,
    number("light_at_m", "m", 0, 1000, otherwise(0), "Height of the light above the sea, in a raft."));
  v(&I::bail_L,
    number("bail_L", "L", 0, 20, otherwise(0), "Water moved per stroke, or taken up by a sponge."));
  v(&I::mass_kg, number("mass_kg", "kg", 0, 100, otherwise(0), "Mass per unit."));
}

template <class V>
void describe(As<SeaArea>, V&& v) {
  using A = SeaArea;
  v(&A::key, text("key", required, "The word a scenario uses."));
  v(&A::title, text("title", required, "Its name."));
  v(&A::latitude_deg, number("latitude_deg", "deg", -90, 90, required, "Of a place inside it."));
  v(&A::longitude_deg, number("longitude_deg", "deg", -180, 180, required, "Of a place inside it."));
}

template <class V>
void describe(As<SeaAreas>, V&& v) {
  v(&SeaAreas::source, text("source", required, "Where names and positions are from."));
  v(&SeaAreas::sea_areas, list("sea_areas", 1, longest_array, required, "Names and places."));
}

template <class V>
void describe(As<Catalogue>, V&& v) {
  v(&Catalogue::rafts, list("rafts", 0, longest_array, required, "Rafts."));
  v(&Catalogue::packs, list("packs", 0, longest_array, required, "Packs."));
  v(&Catalogue::ensembles, list("ensembles", 0, longest_array, required, "Clothing."));
  v(&Catalogue::gloves, list("gloves", 0, longest_array, required, "Gloves and mittens."));
  v(&Catalogue::boots, list("boots", 0, longest_array, required, "Boots."));
  v(&Catalogue::items, list("items", 0, longest_array, required, "Items."));
}

}  // namespace bide::scenario
