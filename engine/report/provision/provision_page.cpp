#include "bide/report/provision/provision_page.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <utility>

#include "bide/core/time_utc.hpp"
#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/provision/provision_words.hpp"
#include "bide/report/run/foot.hpp"
#include "bide/report/run/sentences.hpp"
#include "bide/report/words/words.hpp"
#include "bide/scenario/needs.hpp"

namespace bide::report {

std::string cause_words(system::Limit limit) {
  return limit == system::Limit::none ? "no result" : outcome::short_cause(limit);
}

std::string last_day_utc(const study::Provision& in) {
  constexpr std::size_t day_letters = 10;
  return format_time_utc(in.asked.start_unix_s + in.question.until_h * hour_s).substr(0, day_letters);
}

namespace pages {
namespace {

using study::DoseChanged;
using study::KitTried;
using study::Provision;
using study::ProvisionItem;

std::string share_of(const KitTried& tried) {
  return percent(pct * static_cast<double>(tried.met) / static_cast<double>(tried.of));
}

std::string share_words(const KitTried& tried) {
  return fmt::format("{} of {} futures ({})", tried.met, tried.of, share_of(tried));
}

std::string ended_words(const KitTried& tried) {
  std::string out;
  constexpr std::size_t most = 3;
  for (std::size_t i = 0; i < std::min(most, tried.ended.size()); ++i)
    out += fmt::format("{}{} ({})", i == 0 ? "" : ", ", cause_words(tried.ended[i].limit),
                       tried.ended[i].futures);
  return out;
}

std::size_t ended_by(const KitTried& tried, system::Limit limit) {
  for (const study::EndedBy& each : tried.ended)
    if (each.limit == limit) return each.futures;
  return 0;
}

// What a dose more does: "285 in place of 282"; where it gains nothing, by what it ends instead.
std::string dose_words(const KitTried& least, const KitTried& with, const std::string& why) {
  std::string out = fmt::format("{} in place of {}", with.met, least.met);
  if (with.met > least.met) return out + ".";
  out += ": buys nothing here";
  for (const study::EndedBy& each : with.ended)
    if (each.futures > ended_by(least, each.limit))
      return fmt::format("{}; {} ends {} in place of {}. {}", out, cause_words(each.limit), each.futures,
                         ended_by(least, each.limit), why);
  return fmt::format("{}. {}", out, why);
}

std::string cost_words(const study::Cost& cost) {
  return fmt::format("{} kg, {} L of room", two_figures(cost.mass_kg), two_figures(cost.volume_L));
}

std::string kit_words(const Provision& in, const study::Kit& kit) {
  std::string out;
  for (std::size_t i = 0; i < kit.size(); ++i)
    if (kit[i] > 0)
      out += fmt::format("{}{}", out.empty() ? "" : "; ",
                         scenario::burden_of(scenario::doses_of(*in.items[i].offer, kit[i]), in.asked).items);
  return out.empty() ? "nothing" : out;
}

std::string target_words(const Provision& in) {
  return fmt::format("everybody {} at {}, in {} of futures", in.question.alive ? "alive" : "able",
                     horizon(in.question.until_h * hour_s), percent(100 * in.question.confidence));
}

std::vector<std::string> needs_list(const Provision& in) {
  std::vector<std::string> out;
  for (const scenario::Need& each : scenario::needs_of(in.asked, in.question.until_h))
    out.push_back(each.words + ".");
  return out;
}

// The kit found, in lines.
Answer found_lines(const Provision& in) {
  const KitTried &least = *in.least, &fresh = *in.least_fresh;
  Answer out;
  if (least.cost.count > 0)
    out = {{"Kit", kit_words(in, least.kit)},
           {"In date", fmt::format("each item's expiry date after {}, when the time asked for ends; so for "
                                   "what the raft's own pack holds",
                                   last_day_utc(in))}};
  out.push_back({"Met", fmt::format("in {} of {} fresh futures ({}): at least {}, with 95 % confidence",
                                    fresh.met, fresh.of, share_of(fresh), percent(pct * fresh.at_least))});
  out.push_back({"Without it", share_words(in.without)});
  out.push_back({"Still ends", fresh.ended.empty() ? "nothing in these futures" : ended_words(fresh)});
  return out;
}

// Why there is none, in lines.
Answer none_lines(const Provision& in) {
  const bool limited = in.question.limits.any();
  const auto tried = [](const KitTried& each) {
    return fmt::format("{}; {}{}{}", cost_words(each.cost), share_words(each),
                       each.ended.empty() ? "" : "; ended by ", ended_words(each));
  };
  Answer out{{"Without any", share_words(in.without)}};
  if (in.without_limits)
    out.push_back({"Limit", fmt::format("it is the limit that binds; without one: {}: {}",
                                        kit_words(in, in.without_limits->kit), tried(*in.without_limits))});
  else if (limited && in.failed_fresh.empty())
    out.push_back({"Limit", "it is not the limit that binds: without one no kit meets it either"});
  out.push_back({"All of it", fmt::format("as much of everything as is offered{}: {}",
                                          limited ? ", whatever it weighs" : "", tried(*in.all))});
  if (in.nearest->met > in.all->met)
    out.push_back({"Best found", fmt::format("all of what never harms, and of the rest what gains{}: {}: {}",
                                             limited ? ", whatever it weighs" : "",
                                             kit_words(in, in.nearest->kit), tried(*in.nearest))});
  return out;
}

std::string verdict(const Provision& in) {
  if (!in.least)
    return fmt::format("No kit{} of what is offered can be shown to meet the target.",
                       in.question.limits.any() ? " within the weight and room allowed" : "");
  return in.least->cost.count == 0 ? "What is aboard already is enough: nothing needs to be added."
                                   : fmt::format("The least kit to add: {}.", cost_words(in.least->cost));
}

// What each share of futures weighs.
document::Chart curve_chart(const Provision& in) {
  document::Chart out;
  out.title = "Confidence against weight";
  out.sentence =
      "What the lightest kit of the same items weighs, for each share of futures in which the target is met. "
      "Shares that none reaches are left out.";
  out.x = {"share of futures"};
  out.y = {"weight", "kg", true};
  document::Series bars{"lightest kit", document::Kind::bars, {}, 0};
  for (const study::KitForShare& point : in.curve) {
    if (!point.least) continue;
    bars.points.push_back({static_cast<double>(out.categories.size()), point.least->cost.mass_kg});
    out.categories.push_back(percent(pct * point.share));
  }
  if (!bars.points.empty()) out.series.push_back(std::move(bars));
  out.told = true;
  return out;
}

document::Section curve_section(const Provision& in) {
  document::Table table{
      fmt::format("With the same items{}", in.question.limits.any() ? ", within the limits" : ""),
      {{"share", true}, {"weight and room", false}, {"met", false}, {"kit", false}},
      {}};
  for (const study::KitForShare& point : in.curve) {
    const std::string share = percent(pct * point.share);
    if (point.least)
      table.rows.push_back({share, cost_words(point.least->cost),
                            fmt::format("{} of {}", point.least->met, point.least->of),
                            kit_words(in, point.least->kit)});
    else
      table.rows.push_back({share, "not reached", "", "with as much of them as is offered"});
  }
  return {"Confidence against weight",
          {std::move(table),
           document::Paragraph{
               "Taken from the futures of the search itself, so each share is slightly too high."}}};
}

document::Section doses_section(const Provision& in) {
  const KitTried& least = *in.least;
  document::Section out{"One dose less or more", {}};
  if (least.cost.count > 0) {
    document::Table less{"One dose less of each: futures in which the target is met",
                         {{"dose", false}, {"met", false}, {"ended by", false}},
                         {}};
    for (const DoseChanged& each : in.one_less)
      less.rows.push_back({in.items[each.item].one_dose,
                           fmt::format("{} in place of {}", each.tried.met, least.met),
                           ended_words(each.tried)});
    out.blocks.push_back(std::move(less));
  }
  document::Table more{"One dose more of each: futures in which the target is met",
                       {{"dose", false}, {"adds", false}, {"met", false}},
                       {}};
  for (const DoseChanged& each : in.one_more)
    more.rows.push_back({in.items[each.item].one_dose, cost_words(in.items[each.item].item.each),
                         dose_words(least, each.tried, in.items[each.item].offer->why)});
  out.blocks.push_back(std::move(more));
  return out;
}

document::List kits(const Provision& in, const std::vector<KitTried>& list) {
  document::List out;
  for (const KitTried& each : list)
    out.items.push_back(
        fmt::format("{}: {}; {}.", cost_words(each.cost), kit_words(in, each.kit), share_words(each)));
  return out;
}

document::Section how_section(const Provision& in) {
  document::List out{{fmt::format(
      "Every kit of the offers below is looked at in the order of weight, on the same {} futures; {} had to "
      "be run, over {} futures in all; what follows from kits with more or less is not run.",
      in.question.futures, in.kits_run, in.futures_run)}};
  if (in.made_uncertain)
    out.items.emplace_back(
        "The file says nothing of what is uncertain: how people differ and what nobody has measured are "
        "drawn. Its weather is one case, as entered.");
  if (in.spread_water)
    out.items.emplace_back(
        "The file states no rule of rationing: the water aboard is spread over the days to the target.");
  for (const ProvisionItem& each : in.items)
    out.items.push_back(each.left_out.empty()
                            ? fmt::format("{}, up to {} of: {}, {}.", each.title, each.item.most,
                                          each.one_dose, cost_words(each.item.each))
                            : fmt::format("{}: left out, {}.", each.title, each.left_out));
  return {"How this was found", {std::move(out)}};
}

document::Section answer_section(const Provision& in) {
  document::Section out{"The answer", {document::Paragraph{verdict(in), true}}, false, true};
  Answer lines = in.least ? found_lines(in) : none_lines(in);
  if (const auto needs = needs_list(in); !needs.empty())
    lines.push_back({"People need", fmt::format("{}", fmt::join(needs, " "))});
  lines.push_back(
      {"How sure",
       fmt::format("searched on {} futures{}, not a forecast; the bound is exact", in.question.futures,
                   in.least ? fmt::format(", checked on {} others", in.least_fresh->of) : "")});
  lines.push_back(
      {"Not in it",
       std::string("Signals, tools, first aid and medicines: they do not change how long people "
                   "last in the model; carry what the raft's instructions and your rules ask for. ") +
           not_in_the_model(in.asked, Told::futures)});
  out.blocks.push_back(document::Facts{std::move(lines)});
  if (document::Chart chart = curve_chart(in); !chart.series.empty()) out.blocks.push_back(std::move(chart));
  return out;
}

}  // namespace

document::Page provision_page(const Provision& in) {
  document::Page page;
  page.title = in.asked.scenario.name;
  page.lead = "Target: " + target_words(in) + ".";
  page.foot =
      fmt::format("{}, seed {}, {} futures", foot_of(in.asked), in.question.seed, in.question.futures);
  page.rest = "One dose less or more, confidence against weight, other kits, how this was found";
  page.sections.push_back(answer_section(in));
  if (in.least) page.sections.push_back(doses_section(in));
  page.sections.push_back(curve_section(in));
  if (!in.others.empty())
    page.sections.push_back({"Other kits that meet it, the lightest seen", {kits(in, in.others)}});
  if (!in.failed_fresh.empty())
    page.sections.push_back({"Lighter kits that failed on fresh futures", {kits(in, in.failed_fresh)}});
  page.sections.push_back(how_section(in));
  return page;
}

}  // namespace pages
}  // namespace bide::report
