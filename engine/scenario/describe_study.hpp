// The fields of a study file, described like those of a scenario.
#pragma once

#include "bide/constants/limits.hpp"
#include "bide/scenario/describe.hpp"
#include "bide/scenario/study_file.hpp"

namespace bide::scenario {

template <class V>
void describe(As<DesignGroup>, V&& v) {
  using G = DesignGroup;
  v(&G::name, text("name", required, "What they have in common."));
  v(&G::inputs, list("inputs", 1, longest_array, required,
                     "Pointers or names of what varies; /crew/*/mass_kg means everybody's."));
}

template <class V>
void describe(As<Design>, V&& v) {
  using D = Design;
  v(&D::kind, word_of("kind", required, "Where the samples lie."));
  v(&D::samples,
    number("samples", "1", 1, most_samples, stays_empty("required but for grid and points, which have none"),
           "Runs of random, latin_hypercube and sobol; base samples of saltelli, each two runs more "
           "than there are inputs; trajectories of morris, each one run more."));
  v(&D::levels, number("levels", "1", 2, 1000, otherwise(4),
                       "Grid: values of an input that is not a list. Morris: levels of each input, even."));
  v(&D::seed, number("seed", "1", 0, 2'000'000'000, otherwise(1), "Another one gives other samples."));
  v(&D::groups, list("groups", 0, longest_array, stays_empty("each input by itself"),
                     "Saltelli: inputs whose share is asked for together."));
  v(&D::points, text("points", stays_empty("required for points, refused for every other kind"),
                     "CSV file, relative to this one: a row for each run, a column for each input, headed by "
                     "its pointer or name."));
  v(&D::scale,
    word_of(
        "scale", otherwise_word("unit"),
        "Points only. unit: places from 0 to 1 in the distributions of the inputs; natural: values of those "
        "inputs that are numbers, places of the others."));
}

template <class V>
void describe(As<StudyFile>, V&& v) {
  using S = StudyFile;
  v(&S::format, text("format", required, "The words \"bide study 1\"."));
  v(&S::name, text("name", otherwise_word("unnamed study"), "A title."));
  v(&S::setting, text("setting", otherwise_word("not stated"), "Where this is made up."));
  v(&S::scenario, text("scenario", required, "Scenario file, relative to this one."));
  v(&S::uncertain,
    object("uncertain", stays_empty("that of the scenario"), "What varies, in place of the scenario's own."));
  v(&S::design, object("design", required, "Where the samples lie, and how many."));
  v(&S::outputs, list("outputs", 1, longest_array,
                      stays_empty("until when the first and last are able and alive, "
                                  "the coldest core, the greatest water deficit"),
                      "Figures that are summed up; the record holds all of them."));
  v(&S::at_h, list("at_h", 1, 50,
                   stays_empty("24 h, 72 h and the end, as far as they are within the time "
                               "simulated"),
                   "Hours after the start at which the shares that last longer are given."));
  v(&S::near_margin, number("near_margin", "1", 0, 1, otherwise(constants::near_margin),
                            "Share of the way from the normal value to a limit that is left where somebody "
                            "counts as near it."));
}

}  // namespace bide::scenario
