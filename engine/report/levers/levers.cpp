#include "bide/report/levers/levers.hpp"

#include <fmt/format.h>

#include "bide/core/notice.hpp"
#include "bide/report/levers/levers_words.hpp"
#include "bide/report/run/answer_lines.hpp"
#include "bide/report/run/range.hpp"
#include "bide/report/words/page.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

using study::Gain;
using study::LeverTried;

bool of(const LeverTried& tried, int sign) {
  return tried.state == LeverTried::State::tried && study::direction(tried) == sign;
}

void print_tried(Page& page, const study::LeversTried& levers, int sign, const char* heading) {
  bool any = false;
  const double h = levers.base.horizon_s;
  for (const LeverTried& tried : levers.tried) {
    if (!of(tried, sign)) continue;
    if (!any) page.heading(heading);
    any = true;
    const std::string why = reason_words(levers, tried);
    page.item(tried.lever->title + burden_words(tried.burden) + ": " + bought_words(tried, h) +
              air_words(levers, tried) + "." + (why.empty() ? "" : " " + why));
  }
}

void print_reasons(Page& page, const study::LeversTried& levers, LeverTried::State state,
                   const char* heading) {
  bool any = false;
  for (const LeverTried& tried : levers.tried) {
    if (tried.state != state) continue;
    if (!any) page.heading(heading);
    any = true;
    page.item(fmt::format("{}: {}.", tried.lever->title, page.outside(tried.reason)));
  }
}

}  // namespace

Answer levers_answer(const study::LeversTried& levers, const scenario::ValidScenario& scenario) {
  constexpr std::size_t most = 3;
  return answer_of({levers.base, scenario, levers.base_members}, most_bought_words(levers, most));
}

std::string levers_text(const study::LeversTried& levers, const scenario::ValidScenario& scenario,
                        Letters letters, int width, bool full) {
  Page page(width, letters);
  page.paragraph(page.outside(scenario.scenario.name));
  page.line();
  page.answer(levers_answer(levers, scenario));
  if (full) {
    page.line();
    page.paragraph(what_gains_are);
    print_tried(page, levers, 1, "WHAT BUYS TIME, OR MARGIN WHERE NO LIMIT IS REACHED; the most first");
    print_tried(page, levers, -1, "WHAT WOULD COST TIME OR MARGIN HERE");
    print_tried(page, levers, 0, "NO GAIN OR LOSS THAT THE MODEL CAN SEPARATE FROM DOING NOTHING");
    print_reasons(page, levers, LeverTried::State::withheld, "WITHHELD");
    print_reasons(page, levers, LeverTried::State::not_applicable, "ALREADY DONE, OR DOES NOT APPLY");
  } else {
    page.paragraph("Every change tried, with weight, room and price in air: --full.");
  }
  page.line();
  page.paragraph(standing_notice);
  page.paragraph(standing_advice);
  return page.text();
}

}  // namespace bide::report
