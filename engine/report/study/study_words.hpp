// A study in the words that text and page share.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "bide/report/words/answer.hpp"
#include "bide/study/questions/study.hpp"
#include "bide/study/questions/summary.hpp"

namespace bide::report {

// "first able until, within 288 h" -> "able until, first person (within 288 h)"; others as they are.
std::string figure_words(const std::string& name);
std::string number_words(double value);  // three digits; "none" where it is not finite

// "14 h", "after 12 d"; a figure that is no time by three figures.
std::string value_words(const study::Spread& spread, const std::optional<double>& value, double horizon_h);
// "9 in 10 runs between 14 h and 41 h; half between 20 h and 30 h; median 26 h (25 h to 28 h)"
std::string spread_words(const study::Spread& spread, double horizon_h);

// How much of a figure an input decides, in the measure of the design (total index, mean effect, rank
// correlation), its size; empty where the design or the figure gives none.
std::optional<double> weight_of(const study::Dependence& dependence, std::size_t input);

// How each index of a design is estimated, with the source of the estimator: the key it has in JSON, and
// words.
std::vector<std::pair<const char*, std::string>> estimators(scenario::DesignKind kind);

// The spread of the first figures, what decides the first of them most, and what was run.
Answer study_answer(const study::Study& study, const study::Summary& summary);

}  // namespace bide::report
