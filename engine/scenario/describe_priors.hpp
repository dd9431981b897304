// Every field of the priors, listed once: what scenarios/catalogue/priors.json is held to when it is read.
#pragma once

#include "bide/scenario/describe_catalogue.hpp"
#include "bide/scenario/describe_uncertain.hpp"
#include "bide/scenario/priors.hpp"

namespace bide::scenario {

template <class V>
void describe(As<Prior>, V&& v) {
  using P = Prior;
  detail::describe_heading<P>(v);
  v(&P::ask, text("ask", required, "The question that settles it."));
  v(&P::inputs, list("inputs", 1, longest_array, required, "Inputs drawn, by pointer."));
  v(&P::shared, yes_or_no("shared", otherwise_false(), "One draw for all persons."));
  v(&P::distribution, object("distribution", stays_empty("drawn by a rule of its own"), "What is drawn."));
}

template <class V>
void describe(As<RaftFamily>, V&& v) {
  detail::describe_heading<RaftFamily>(v);
  v(&RaftFamily::weight, number("weight", "1", 0, 1000, required, "Relative weight among the families."));
}

template <class V>
void describe(As<Growth>, V&& v) {
  using G = Growth;
  v(&G::age_years, number("age_years", "years", 1, 20, required, "Age."));
  v(&G::height_male_m, number("height_male_m", "m", 0.6, 2.3, required, "Median height of boys."));
  v(&G::mass_male_kg, number("mass_male_kg", "kg", 8, 250, required, "Median mass of boys."));
  v(&G::height_female_m, number("height_female_m", "m", 0.6, 2.3, required, "Median height of girls."));
  v(&G::mass_female_kg, number("mass_female_kg", "kg", 8, 250, required, "Median mass of girls."));
}

template <class V>
void describe(As<Priors>, V&& v) {
  using P = Priors;
  v(&P::priors, list("priors", 1, longest_array, required, "What is assumed, and how to learn better."));
  v(&P::rafts, list("rafts", 1, longest_array, required, "Families of rafts."));
  v(&P::sizes, list("sizes", 1, longest_array, required, "Weights of the sizes, the smallest first."));
  v(&P::boarding, list("boarding", 1, longest_array, required, "How the raft was reached."));
  v(&P::growth_source, {"growth_source", {}, 1, 600, required, "Where the sizes of children are from."});
  v(&P::growth, list("growth", 2, longest_array, required, "Sizes of children, youngest first."));
}

}  // namespace bide::scenario
