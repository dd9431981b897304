// The fields of "uncertain", described like all others (describe.hpp includes this).
#pragma once

#include "bide/scenario/describe_readiness.hpp"
#include "bide/scenario/field.hpp"
#include "bide/scenario/uncertain.hpp"
#include "bide/scenario/weather_ranges.hpp"

namespace bide::scenario {

inline constexpr double largest_stated =
    1e9;  // of a distribution's numbers; the input's own range is tighter

template <class V>
void describe(As<Distribution>, V&& v) {
  using D = Distribution;
  constexpr std::string_view unit = "in the unit of the input";
  constexpr Absent by_kind = stays_empty("allowed and required only with the kinds that have it");
  v(&D::kind, word_of("kind", required, "Shape of the distribution."));
  v(&D::low, number("low", unit, -largest_stated, largest_stated, by_kind, "Least value."));
  v(&D::high, number("high", unit, -largest_stated, largest_stated, by_kind, "Greatest value."));
  v(&D::mean, number("mean", unit, -largest_stated, largest_stated, by_kind, "Mean, before truncation."));
  v(&D::sd, number("sd", unit, 0, largest_stated, by_kind, "Standard deviation, before truncation."));
  v(&D::median, number("median", unit, 0, largest_stated, by_kind, "Median of a lognormal."));
  v(&D::geometric_sd,
    number("geometric_sd", "1", 1, 100, by_kind, "Geometric standard deviation of a lognormal."));
  v(&D::mode, number("mode", unit, -largest_stated, largest_stated, by_kind, "Most likely value."));
  v(&D::values, list("values", 1, longest_sample, stays_empty("required for discrete and empirical"),
                     "What it may be: numbers, words or truth values."));
  v(&D::weights, list("weights", 1, longest_sample, stays_empty("discrete: each value is as likely"),
                      "Relative weights of the values."));
}

template <class V>
void describe(As<SharedInput>, V&& v) {
  using S = SharedInput;
  v(&S::name, text("name", required, "What is shared."));
  v(&S::pointers, list("pointers", 1, longest_array, required, "The inputs that get the same draw."));
  v(&S::distribution, object("distribution", required, "What is drawn."));
}

template <class V>
void describe(As<Together>, V&& v) {
  using T = Together;
  v(&T::first, text("first", required, "Pointer of an uncertain input, or name of a group."));
  v(&T::second, text("second", required, "The other one."));
  v(&T::correlation,
    number("correlation", "1", -1, 1, required, "Correlation of their normal scores (Gaussian copula)."));
}

template <class V>
void describe(As<Alternative>, V&& v) {
  using A = Alternative;
  v(&A::name, text("name", required, "The situation."));
  v(&A::weight,
    number("weight", "1", 0, largest_stated, required, "Relative weight among the alternatives."));
  v(&A::set, named("set", longest_array, stays_empty("the scenario as it stands"),
                   "Values by pointer, put in after all else; null takes the field away."));
}

template <class V>
void describe(As<UncertainFailure>, V&& v) {
  using U = UncertainFailure;
  v(&U::failure, word_of("failure", required, "What may fail."));
  v(&U::probability, number("probability", "1", 0, 1, required, "That it happens at all."));
  v(&U::at_h,
    object("at_h", required,
           "Hours after the start, rounded to whole ones; beyond the duration it does not happen."));
  v(&U::in_waves_from_m,
    number("in_waves_from_m", "m", wave_height_range_m.low, wave_height_range_m.high,
           stays_empty("in any sea"),
           "Least significant wave height at that hour; in a lower sea it does not happen."));
}

template <class V>
void describe(As<FirstMinutes>, V&& v) {
  using F = FirstMinutes;
  v(&F::low, number("low", "1", 0, 1, required, "Least share of those who enter the water."));
  v(&F::high, number("high", "1", 0, 1, required, "Greatest share of those who enter the water."));
}

template <class V>
void describe(As<UnknownPerson>, V&& v) {
  using U = UnknownPerson;
  v(&U::pointer, text("pointer", required, "The person, as /crew/0."));
  v(&U::unknown, list("unknown", 1, 3, stays_empty("height, mass and fat"), "What is not known."));
}

template <class V>
void describe(As<HeldBackAbove>, V&& v) {
  using H = HeldBackAbove;
  constexpr Absent unlimited = stays_empty("does not hold help back; one of the two is required");
  v(&H::wind_speed_m_s, number("wind_speed_m_s", "m/s", 0.1, wind_range_m_s.high, unlimited,
                               "Help cannot work in more wind than this, at 10 m."));
  v(&H::wave_height_m, number("wave_height_m", "m", 0.1, wave_height_range_m.high, unlimited,
                              "Help cannot work in higher waves than this, significant height."));
}

template <class V>
void describe(As<Rescue>, V&& v) {
  using R = Rescue;
  constexpr Absent by_kind = stays_empty("allowed and required only with the kinds that have it");
  v(&R::kind, word_of("kind", required, "How the time of help is distributed; none: no help comes."));
  v(&R::at_h, number("at_h", "h", 0, longest_h, by_kind, "Hours after the start."));
  v(&R::median_h, number("median_h", "h", 0.01, longest_h, by_kind, "Median of a lognormal."));
  v(&R::geometric_sd,
    number("geometric_sd", "1", 1, 100, by_kind, "Geometric standard deviation of a lognormal."));
  v(&R::scale_h, number("scale_h", "h", 0.01, longest_h, by_kind, "Scale of a Weibull: 63 % come before."));
  v(&R::shape, number("shape", "1", 0.1, 20, by_kind, "Shape of a Weibull."));
  v(&R::hours,
    list("hours", 1, longest_sample, stays_empty("required for empirical"), "Hours of cases on record."));
  v(&R::held_back_above,
    object("held_back_above", stays_empty("weather has no bearing on help"),
           "Weather that holds help back: the hours drawn are then hours at or below these limits."));
}

template <class V>
void describe(As<Known>, V&& v) {
  using K = Known;
  v(&K::alive_at_h, number("alive_at_h", "h", 0, longest_h, stays_empty("nothing is known"),
                           "Last hour after the start at which all were known to be alive."));
  v(&K::now_h, number("now_h", "h", 0, longest_h, stays_empty("no question about now"),
                      "Hours after the start at which the question is asked."));
}

template <class V>
void describe(As<Uncertain>, V&& v) {
  using U = Uncertain;
  v(&U::inputs, named("inputs", most_uncertain_inputs, stays_empty("no input is uncertain"),
                      "Distributions of inputs, by JSON pointer; one pointer may stand once."));
  v(&U::groups, list("groups", 0, longest_array, stays_empty("none"), "One draw shared by several inputs."));
  v(&U::together,
    list("together", 0, longest_array, stays_empty("all are independent"), "Correlated pairs of inputs."));
  v(&U::alternatives,
    list("alternatives", 0, longest_array, stays_empty("one situation"), "Situations of which one holds."));
  v(&U::events, list("events", 0, longest_array, stays_empty("none"), "Failures that may happen."));
  v(&U::readiness, object("readiness", stays_empty("the raft is as written"),
                          "Failures of a raft by its state of service: drawn for the raft first, then for "
                          "each part."));
  v(&U::launch, object("launch", stays_empty("boarding is as written"),
                       "A launch as a chain of steps, from which boarding is drawn."));
  v(&U::lost_in_first_minutes,
    object("lost_in_first_minutes", stays_empty("nobody is lost in the first minutes"),
           "Share of those who enter the water that its first minutes cost (cold shock, water breathed in, "
           "heart), as a range; no share is published."));
  v(&U::crew_unknown, yes_or_no("crew_unknown", otherwise_false(),
                                "Height, mass and fat of everybody are drawn from a population survey."));
  v(&U::unknown_persons,
    list("unknown_persons", 0, largest_crew, stays_empty("none"), "People of whom something is unknown."));
  v(&U::person_spread, yes_or_no("person_spread", otherwise_false(),
                                 "Shivering, resting heat, sweat, swimming in the cold and cold limits "
                                 "differ from person to person."));
  v(&U::weather, yes_or_no("weather", otherwise_false(),
                           "Another weather of the same means for each sample; with weather kind variable."));
  v(&U::unmeasured,
    yes_or_no("unmeasured", otherwise_false(),
              "Canopy heat loss, leakage, the law of shivering and the model's own error are drawn."));
  v(&U::rescue, object("rescue", stays_empty("help is not considered"), "When help arrives."));
  v(&U::known, object("known", stays_empty("nothing beyond the start"), "Facts at the last contact."));
}

}  // namespace bide::scenario
