#include "bide/report/provision/provision.hpp"

#include <fmt/format.h>

#include <cmath>

#include "bide/core/notice.hpp"
#include "bide/core/time_utc.hpp"
#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/words/page.hpp"
#include "bide/report/words/words.hpp"
#include "bide/scenario/needs.hpp"

namespace bide::report {
std::string ended_by_words(system::Limit limit) {
  return limit == system::Limit::none ? "no result" : outcome::short_cause(limit);
}

std::string last_day_utc(const study::Provision& in) {
  constexpr std::size_t day_letters = 10;
  return format_time_utc(in.asked.start_unix_s + in.question.until_h * hour_s).substr(0, day_letters);
}

namespace {

using study::DoseChanged;
using study::KitTried;
using study::Provision;
using study::ProvisionItem;

std::string share_words(const KitTried& tried) {
  return fmt::format("{} of {} futures ({})", tried.met, tried.of,
                     percent(100.0 * static_cast<double>(tried.met) / static_cast<double>(tried.of)));
}

std::string ended_words(const KitTried& tried) {
  std::string out;
  constexpr std::size_t most = 3;
  for (std::size_t i = 0; i < std::min(most, tried.ended.size()); ++i)
    out += fmt::format("{}{} ({})", i == 0 ? "" : ", ", ended_by_words(tried.ended[i].limit),
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
      return fmt::format("{}; {} ends {} in place of {}. {}", out, ended_by_words(each.limit), each.futures,
                         ended_by(least, each.limit), why);
  return fmt::format("{}. {}", out, why);
}

std::string cost_words(const study::Cost& cost) {
  return fmt::format("{} kg, {} L of room", two_figures(cost.mass_kg), two_figures(cost.volume_L));
}

// "10 x ..." of each item of a kit.
std::vector<std::string> packing_list(const Provision& in, const study::Kit& kit) {
  std::vector<std::string> out;
  for (std::size_t i = 0; i < kit.size(); ++i) {
    if (kit[i] == 0) continue;
    const scenario::Lever doses = scenario::doses_of(*in.items[i].offer, kit[i]);
    const scenario::Burden burden = scenario::burden_of(doses, in.asked);
    out.push_back(fmt::format("{}: {}", burden.items, cost_words({burden.mass_kg, burden.volume_L, kit[i]})));
  }
  return out;
}

// "2031-06-24": the day, in UTC, on which the time asked for ends.
std::vector<std::string> needs_list(const Page& page, const Provision& in) {
  std::vector<std::string> out;
  for (const scenario::Need& each : scenario::needs_of(in.asked, in.question.until_h))
    out.push_back(page.outside(each.words) + ".");
  return out;
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

void print_curve(Page& page, const Provision& in) {
  page.heading(fmt::format("CONFIDENCE AGAINST WEIGHT, with the same items{}",
                           in.question.limits.any() ? ", within the limits" : ""));
  for (const study::KitForShare& point : in.curve) {
    const std::string share = fmt::format("{} of futures", percent(pct * point.share));
    page.item(point.least ? fmt::format("{}: {} ({} of {}); {}.", share, cost_words(point.least->cost),
                                        point.least->met, point.least->of, kit_words(in, point.least->kit))
                          : share + ": not reached with as much of them as is offered.");
  }
  page.item("Taken from the futures of the search itself, so each share is slightly too high.");
}

void print_found(Page& page, const Provision& in) {
  const KitTried &least = *in.least, &fresh = *in.least_fresh;
  const bool nothing = least.cost.count == 0;
  page.paragraph(nothing ? "What is aboard already is enough: nothing needs to be added."
                         : fmt::format("The least kit to add: {}.", cost_words(least.cost)));
  for (const std::string& row : packing_list(in, least.kit)) page.item(row);
  if (!nothing)
    page.item(
        fmt::format("Each with an expiry date after {}, when the time asked for ends; so for what the "
                    "raft's own pack holds.",
                    last_day_utc(in)));
  page.paragraph(
      fmt::format("Target: {}. On {} fresh futures it is met in {}: at least {}, with 95 % confidence. "
                  "Without it: {}.",
                  target_words(in), fresh.of, share_words(fresh), percent(100 * fresh.at_least),
                  share_words(in.without)));
  if (!fresh.ended.empty())
    page.paragraph(fmt::format("What still ends it in the other futures: {}.", ended_words(fresh)));

  if (!nothing) {
    page.heading("WITH ONE DOSE LESS OF EACH");
    for (const DoseChanged& each : in.one_less)
      page.item(fmt::format("{}: {} in place of {}{}{}.", in.items[each.item].one_dose, each.tried.met,
                            least.met, each.tried.ended.empty() ? "" : "; ends by ",
                            ended_words(each.tried)));
  }
  page.heading("WITH ONE DOSE MORE OF EACH");
  for (const DoseChanged& each : in.one_more)
    page.item(fmt::format("{} (+{}): {}", in.items[each.item].one_dose,
                          cost_words(in.items[each.item].item.each),
                          dose_words(least, each.tried, in.items[each.item].offer->why)));
  print_curve(page, in);
  if (!in.others.empty()) {
    page.heading("OTHER KITS THAT MEET IT, the lightest seen");
    for (const KitTried& each : in.others)
      page.item(
          fmt::format("{}: {}; {}.", cost_words(each.cost), kit_words(in, each.kit), share_words(each)));
  }
}

void print_none(Page& page, const Provision& in) {
  const bool limited = in.question.limits.any();
  page.paragraph(fmt::format("No kit{} of what is offered can be shown to meet the target: {}.",
                             limited ? " within the weight and room allowed" : "", target_words(in)));
  page.paragraph(fmt::format("Without any: {}.", share_words(in.without)));
  if (in.without_limits)
    page.paragraph(fmt::format("It is the limit that binds. Without one: {}; {}; {}.",
                               cost_words(in.without_limits->cost), kit_words(in, in.without_limits->kit),
                               share_words(*in.without_limits)));
  else if (limited && in.failed_fresh.empty())
    page.paragraph("It is not the limit that binds: without one no kit meets it either.");
  const auto tell = [&](const std::string& what, const KitTried& tried) {
    page.paragraph(fmt::format("{} ({}): {}{}{}.", what, cost_words(tried.cost), share_words(tried),
                               tried.ended.empty() ? "" : "; what ends it then: ", ended_words(tried)));
  };
  const char* however = limited ? ", whatever it weighs" : "";
  tell(fmt::format("With as much of everything as is offered{}", however), *in.all);
  if (in.nearest->met > in.all->met) {
    tell(fmt::format("The best found: all of what never harms, and of the rest what gains{}", however),
         *in.nearest);
    page.item(kit_words(in, in.nearest->kit) + ".");
  }
  page.paragraph("How much of each is offered stands at the end; more of it was not tried.");
  print_curve(page, in);
}

}  // namespace

std::string provision_text(const Provision& in, Letters letters, int width) {
  Page page(width, letters);
  if (in.least)
    print_found(page, in);
  else
    print_none(page, in);
  if (!in.failed_fresh.empty()) {
    page.heading("LIGHTER KITS THAT FAILED ON FRESH FUTURES");
    for (const KitTried& each : in.failed_fresh)
      page.item(
          fmt::format("{}: {}; {}.", cost_words(each.cost), kit_words(in, each.kit), share_words(each)));
  }
  if (const auto needs = needs_list(page, in); !needs.empty()) {
    page.heading("WHAT SINGLE PEOPLE NEED");
    for (const std::string& each : needs) page.item(each);
  }
  page.heading("HOW THIS WAS FOUND");
  page.item(fmt::format(
      "Every kit of the offers below is looked at in the order of weight, on the same {} futures; "
      "{} had to be run, over {} futures in all; what follows from kits with more or less is not run.",
      in.question.futures, in.kits_run, in.futures_run));
  if (in.made_uncertain)
    page.item(
        "The file says nothing of what is uncertain: how people differ and what nobody has measured are "
        "drawn. Its weather is one case, as entered.");
  if (in.spread_water)
    page.item(
        "The file states no rule of rationing: the water aboard is spread over the days to the target.");
  for (const ProvisionItem& each : in.items)
    page.item(each.left_out.empty()
                  ? fmt::format("{}, up to {} of: {}, {}.", each.title, each.item.most, each.one_dose,
                                cost_words(each.item.each))
                  : fmt::format("{}: left out, {}.", each.title, page.outside(each.left_out)));
  page.item(
      "Signals, tools, first aid and medicines are not weighed here: they do not change how long people "
      "last in the model. Carry what the raft's instructions and your rules ask for.");
  page.line();
  page.paragraph(standing_notice);
  page.paragraph(standing_advice);
  return page.text();
}

}  // namespace bide::report
