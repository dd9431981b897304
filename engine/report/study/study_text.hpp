// The summary of a study as text and as JSON.
#pragma once

#include <string>

#include "bide/study/questions/study.hpp"
#include "bide/study/questions/summary.hpp"

namespace bide::report {

std::string study_text(const study::Study& study, const study::Summary& summary);
std::string study_json(const study::Study& study, const study::Summary& summary);
std::string study_summary_schema();

// Why a figure has no sensitivities.
std::string no_dependence(const study::Dependence& d);

// Explains the sensitivities that a design gives.
std::string how_to_read(scenario::DesignKind kind);

// "4,096 runs of a saltelli design (512 base samples, 6 inputs or groups)"
std::string design_words(const study::Study& study);

}  // namespace bide::report
