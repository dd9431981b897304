#include "bide/report/levers/levers_page.hpp"

#include <fmt/format.h>

#include "bide/outcome/cause.hpp"
#include "bide/report/levers/levers_section.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report::pages {
namespace {

std::string first_words(const outcome::CrewTimes& times, double horizon_s) {
  return times.first_s ? duration(*times.first_s) : not_reached(horizon_s);
}

}  // namespace

html::Page levers_page(const study::LeversTried& levers, const scenario::ValidScenario& scenario) {
  const double h = levers.base.horizon_s;
  html::Page page;
  page.title = scenario.scenario.name;
  page.lead = scenario.scenario.setting;
  html::Section as_it_is{"As it is", {}};
  as_it_is.blocks.push_back(
      html::Paragraph{fmt::format("Able until, first person: {}. Alive until, first person: {}.",
                                  first_words(levers.base.able, h), first_words(levers.base.alive, h)),
                      true});
  if (levers.base.able_limit != system::Limit::none)
    as_it_is.blocks.push_back(
        html::Paragraph{"Ended by " + outcome::short_cause(levers.base.able_limit) + "."});
  page.sections = {std::move(as_it_is), levers_section(levers)};
  html::List sources;
  for (const study::LeverTried& each : levers.tried)
    sources.items.push_back(each.lever->title + ": " + each.lever->source);
  page.sections.push_back({"Where the changes come from", {std::move(sources)}});
  return page;
}

}  // namespace bide::report::pages
