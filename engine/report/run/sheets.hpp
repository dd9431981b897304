// One run as sheets of a spreadsheet: result, people, cabin, timeline, stores, assumptions.
//
// Inputs: the run and its members, as for the summary. Texts of any origin are made printable here; whoever
// writes them must write them as text, never as formulas.
#pragma once

#include <vector>

#include "bide/report/run/material.hpp"
#include "bide/report/words/answer.hpp"
#include "bide/report/words/sheet.hpp"

namespace bide::report {

// @param answer as the summary leads with it (run_answer)
std::vector<Sheet> run_sheets(const Material& material, const Answer& answer);

}  // namespace bide::report
