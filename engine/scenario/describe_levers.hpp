// Every field of a lever, listed once: what scenarios/catalogue/levers.json is held to when it is read.
#pragma once

#include "bide/scenario/describe_catalogue.hpp"
#include "bide/scenario/describe_uncertain.hpp"
#include "bide/scenario/levers.hpp"

namespace bide::scenario {

template <class V>
void describe(As<LeverItem>, V&& v) {
  using I = LeverItem;
  v(&I::kind, text("kind", required, "Catalogue key of an item."));
  v(&I::per_person, number("per_person", "1", 0, 100, otherwise(0), "For each person."));
  v(&I::in_all, number("in_all", "1", 0, 100, otherwise(0), "For the raft."));
  v(&I::top_up, yes_or_no("top_up", otherwise_false(), "Adds only what the stores lack of it."));
  v(&I::volume_L, number("volume_L", "L", 0, 100, otherwise(0), "Room one takes."));
}

template <class V>
void describe(As<Lever>, V&& v) {
  using L = Lever;
  detail::describe_heading<L>(v);
  v(&L::set, named("set", longest_array, stays_empty("nothing is set"), "Values put in, by pointer."));
  v(&L::add, list("add", 0, longest_array, stays_empty("nothing is added"), "Items brought aboard."));
  v(&L::raft, word_of("raft", otherwise_word("as_it_is"), "A change of raft."));
  v(&L::mass_kg, number("mass_kg", "kg", 0, 500, otherwise(0), "Weight besides the items."));
  v(&L::volume_L, number("volume_L", "L", 0, 1000, otherwise(0), "Room besides the items."));
  v(&L::needs_rain, yes_or_no("needs_rain", otherwise_false(), "Whether it only acts when it rains."));
  v(&L::closes_openings, yes_or_no("closes_openings", otherwise_false(), "Whether less air comes in by it."));
  v(&L::gains_by, text("gains_by", required, "Why it gains where it does."));
  v(&L::loses_by, text("loses_by", required, "Why it loses where it does."));
  v(&L::of, text("of", stays_empty("a lever of its own"), "Key of the lever of which it is a dose or pair."));
  v(&L::gloves,
    text("gloves", stays_empty("no gloves"), "Catalogue key of gloves for each whose hands are bare."));
  v(&L::pair_volume_L, number("pair_volume_L", "L", 0, 100, otherwise(0), "Room of a pair of these gloves."));
}

template <class V>
void describe(As<KitOffer>, V&& v) {
  using K = KitOffer;
  v(&K::lever, text("lever", required, "Key of a lever that brings items."));
  v(&K::dose, number("dose", "1", 0.01, 1, otherwise(1), "Share of what the lever brings."));
  v(&K::most, number("most", "1", 1, 1000, otherwise(1), "Doses at most."));
  v(&K::more_never_harms,
    yes_or_no("more_never_harms", otherwise_false(), "One dose more ends nothing earlier."));
  v(&K::why, text("why", required, "Why it never harms, or may."));
}

template <class V>
void describe(As<LeverList>, V&& v) {
  v(&LeverList::levers, list("levers", 1, longest_array, required, "Practical changes."));
  v(&LeverList::kit, list("kit", 1, longest_array, required, "Levers that may stand on a packing list."));
}

}  // namespace bide::scenario
