// The parts of the terminal summary, in the order they are printed.
#pragma once

#include "bide/outcome/outcome.hpp"
#include "bide/report/run/terminal.hpp"
#include "bide/report/words/page.hpp"

namespace bide::report {

struct Material {
  const outcome::Outcome& outcome;
  const timeline::Timeline& timeline;
  const scenario::ValidScenario& scenario;
};

void print_answer(
    Page& page, const Material& material);  // able and alive until, what ends it, where to ask what buys time
void print_figures(Page& page, const Material& material);  // stores, air, water, hands
void print_charts(Page& page, const Material& material);
void print_events(Page& page, const Material& material);
void print_evidence(Page& page, const Material& material);
void print_basis(Page& page, const Material& material);  // assumptions, what is not modelled, cautions

}  // namespace bide::report
