#include "bide/report/compare/compare_page.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "bide/core/units.hpp"
#include "bide/report/compare/compare_cells.hpp"
#include "bide/report/compare/compare_futures.hpp"
#include "bide/report/document/lines.hpp"
#include "bide/report/document/values.hpp"
#include "bide/report/document/window_chart.hpp"
#include "bide/report/run/answer_lines.hpp"
#include "bide/report/run/evidence_words.hpp"
#include "bide/report/run/foot.hpp"
#include "bide/report/run/sentences.hpp"
#include "bide/report/run/weather_curves.hpp"
#include "bide/report/words/input.hpp"
#include "bide/report/words/units.hpp"
#include "bide/report/words/words.hpp"
#include "bide/scenario/differences.hpp"

namespace bide::report::pages {
namespace {

using outcome::Figures;

constexpr std::size_t most_options = 6;  // drawn; as many as there are looks of a line

std::string option_name(std::size_t place) {
  return fmt::format("option {}", place + 1);
}

std::size_t drawn(const Comparison& comparison) {
  return std::min(comparison.options.size(), most_options);
}

document::Table differences_table(const char* caption, const std::vector<scenario::Difference>& differences,
                                  std::size_t options) {
  document::Table out;
  out.caption = caption;
  out.columns = {{"", false}};
  for (std::size_t i = 0; i < options; ++i) out.columns.push_back({option_name(i), false});
  for (const scenario::Difference& each : differences) {
    std::vector<std::string> row{input_words(each.pointer) +
                                 (each.unit.empty() ? "" : ", " + unit_signs(each.unit))};
    for (const scenario::InForce& value : each.values)
      row.push_back(value.value + (value.filled_in ? " (default)" : ""));
    out.rows.push_back(std::move(row));
  }
  return out;
}

document::Section options_section(const Comparison& comparison) {
  std::vector<const scenario::ValidScenario*> all;
  document::List names;
  for (std::size_t i = 0; i < comparison.options.size(); ++i) {
    const Option& option = comparison.options[i];
    all.push_back(option.own.scenario);
    names.items.push_back(fmt::format("Option {}: {}.", i + 1, option_title(option)));
  }
  document::Section out{"What is compared", {names}};
  out.blocks.push_back(differences_table("Inputs that differ", scenario::differences(all), all.size()));
  if (const auto aboard = scenario::differences_aboard(all); !aboard.empty())
    out.blocks.push_back(differences_table("Stores aboard that differ", aboard, all.size()));
  return out;
}

document::Section equal_section(const Comparison& comparison) {
  document::Section out{"With equal stores", {}};
  if (comparison.same_stores) {
    out.blocks.push_back(document::Paragraph{"All options carry the same stores."});
    return out;
  }
  std::vector<ComparedFigures> equal{{option_name(0), &comparison.options.front().own.figures, nullptr}};
  for (std::size_t i = 1; i < comparison.options.size(); ++i)
    if (comparison.options[i].equal)
      equal.push_back({option_name(i), &comparison.options[i].equal->figures, nullptr});
  if (equal.size() > 1)
    out.blocks.push_back(
        figures_table("The stores of option 1 in every option: the central case alone", equal, Rows::all));
  for (std::size_t i = 1; i < comparison.options.size(); ++i)
    if (!comparison.options[i].equal_refused.empty())
      out.blocks.push_back(document::Paragraph{fmt::format(
          "Option {} cannot carry the stores of option 1: {}", i + 1, comparison.options[i].equal_refused)});
  return out;
}

// Until when in each option; every option is drawn.
document::Chart picture(const Comparison& comparison) {
  std::vector<WindowRow> rows;
  double horizon_s = 0;
  for (const auto& [name, state] :
       {std::pair{"able: first person", &Figures::able}, {"alive: first person", &Figures::alive}})
    for (std::size_t i = 0; i < comparison.options.size(); ++i) {
      const Option& option = comparison.options[i];
      rows.push_back(window_row(fmt::format("{}, {}", name, option_name(i)), option.own.figures.*state,
                                option.members, state, &outcome::CrewTimes::first_s));
      horizon_s = std::max(horizon_s, option.own.figures.horizon_s);
    }
  document::Chart out = window_chart(rows, horizon_s);
  out.title = "Until when, first person of each option";
  out.told = true;
  return out;
}

std::vector<ComparedFigures> own_figures(const Comparison& comparison) {
  std::vector<ComparedFigures> out;
  for (std::size_t i = 0; i < comparison.options.size(); ++i)
    out.push_back({option_name(i), &comparison.options[i].own.figures, &comparison.options[i]});
  return out;
}

// The first screen: the verdict, the picture, which is warmer, one table.
document::Section answer_section(const Comparison& comparison) {
  document::Section out{"The answer", {}, false, true};
  for (const Conclusion& each : conclusions(comparison))
    for (std::size_t i = 0; i < each.brief.size(); ++i)
      out.blocks.push_back(document::Paragraph{each.brief[i], i == 0});
  out.blocks.push_back(picture(comparison));
  out.blocks.push_back(
      figures_table("Each with the water and food it carries", own_figures(comparison), Rows::asked_first));
  out.blocks.push_back(document::Facts{comparison_answer(comparison)});
  return out;
}

document::Section apart_section(const Comparison& comparison) {
  document::Section out{"What sets them apart", {document::Paragraph{one_case_each(comparison)}}};
  for (const Conclusion& each : conclusions(comparison)) {
    document::List list{{each.verdict.begin() + 1, each.verdict.end()}};
    for (const auto* more : {&each.warmth, &each.others})
      list.items.insert(list.items.end(), more->begin(), more->end());
    out.blocks.push_back(std::move(list));
  }
  out.blocks.push_back(
      figures_table("All figures, each with its own stores", own_figures(comparison), Rows::all));
  return out;
}

// In how many futures each option lasts longer than the first.
document::Chart futures_chart(const Comparison& comparison) {
  document::Chart out;
  out.title = "Who is able longer, future by future";
  out.sentence =
      "Of the futures drawn, under the same weather, people and failures: in how many the first person of "
      "each option is able longer than in option 1, in how many shorter, and in how many there is no "
      "difference to see.";
  out.x = {"option"};
  out.y = {"futures", "", true};
  std::vector<std::vector<double>> counts(4);
  for (std::size_t i = 1; i < comparison.options.size(); ++i) {
    if (!comparison.options[i].futures) continue;
    const study::Paired& able = comparison.options[i].futures->able;
    out.categories.push_back(option_name(i));
    const std::size_t parts[] = {able.second_longer.count, able.first_longer.count, able.same.count,
                                 able.indistinguishable.count};
    for (std::size_t part = 0; part < counts.size(); ++part)
      counts[part].push_back(static_cast<double>(parts[part]));
  }
  out.series =
      document::stack({"longer than option 1", "shorter", "the same time", "both after the end"}, counts);
  return out;
}

document::Section futures_section(const Comparison& comparison) {
  document::Section out{"Under common futures", {}};
  document::List list;
  for (std::size_t i = 1; i < comparison.options.size(); ++i)
    if (comparison.options[i].futures)
      for (std::string& sentence :
           futures_sentences(*comparison.options[i].futures, "option 1", option_name(i)))
        list.items.push_back(std::move(sentence));
  out.blocks.push_back(std::move(list));
  if (document::Chart chart = futures_chart(comparison); !chart.categories.empty())
    out.blocks.push_back(std::move(chart));
  return out;
}

// The person whose ability ends first; where nobody's does, the one nearest to a limit.
std::size_t first_to_fail(const timeline::Timeline& timeline) {
  const auto& fates = timeline.fates;
  const auto key = [&](const timeline::Fate& fate) {
    return std::pair(fate.able_until_s.value_or(timeline.horizon_s), fate.nearest_margin_fraction);
  };
  return static_cast<std::size_t>(
      std::min_element(fates.begin(), fates.end(),
                       [&](const auto& a, const auto& b) { return key(a) < key(b); }) -
      fates.begin());
}

document::Chart overlay(const char* title, const char* sentence, document::Axis y,
                        const std::vector<Curve>& curves, double horizon_s) {
  document::Chart out;
  out.title = title;
  out.sentence = sentence;
  out.x = time_axis(horizon_s);
  out.y = std::move(y);
  out.series = lines(curves);
  return out;
}

// The weather of each option, where it is not the same in all.
void add_weather(document::Section& section, const Comparison& comparison, double horizon_s) {
  const auto add = [&](const char* title, const char* sentence, const document::Axis& y, auto values) {
    std::vector<Curve> curves;
    bool differs = false;
    for (std::size_t i = 0; i < drawn(comparison); ++i) {
      const timeline::Timeline& t = *comparison.options[i].own.timeline;
      curves.push_back({option_name(i), &t.time_s, &(t.*values), t.horizon_s});
      differs = differs || t.*values != *curves.front().values;
    }
    if (differs) section.blocks.push_back(overlay(title, sentence, y, curves, horizon_s));
  };
  add("Air outside", "Air outside in each option against time.", {"temperature", "°C"},
      &timeline::Timeline::outside_air_degC);
  for (const WeatherCurve& curve : weather_curves) add(curve.title, curve.sentence, curve.y, curve.values);
}

document::Section course_section(const Comparison& comparison) {
  std::vector<Curve> inside, air, core, deficit;
  double horizon_s = 0;
  for (std::size_t i = 0; i < drawn(comparison); ++i) {
    const timeline::Timeline& t = *comparison.options[i].own.timeline;
    const std::string name = option_name(i);
    horizon_s = std::max(horizon_s, t.horizon_s);
    double last_s = 0;
    for (const timeline::Fate& fate : t.fates)
      last_s = std::max(last_s, fate.alive_until_s.value_or(t.horizon_s));
    if (t.in_raft) {
      inside.push_back({name, &t.time_s, &t.inside_air_degC, last_s});
      air.push_back({name, &t.time_s, &t.co2_ppm, last_s});
    }
    const std::size_t person = first_to_fail(t);
    const double until_s = t.fates[person].alive_until_s.value_or(t.horizon_s);
    core.push_back({name, &t.time_s, &t.persons[person].core_degC, until_s});
    deficit.push_back({name, &t.time_s, &t.persons[person].water_deficit_pct, until_s});
  }
  document::Section out{"The stays, one over the other", {}};
  if (comparison.options.size() > drawn(comparison))
    out.blocks.push_back(document::Paragraph{
        fmt::format("The first {} of {} options are drawn.", drawn(comparison), comparison.options.size())});
  if (!inside.empty())
    out.blocks.push_back(overlay("Inside the raft", "Air inside the raft of each option against time.",
                                 {"temperature", "°C"}, inside, horizon_s));
  out.blocks.push_back(
      overlay("Core of the person nearest to a limit",
              "Deep body temperature, in each option, of the person who fails first or comes nearest "
              "to it, while alive; another may be colder.",
              {"core", "°C"}, core, horizon_s));
  out.blocks.push_back(
      overlay("Water deficit of the same person",
              "Water lost and not replaced, in per cent of body mass, of that person while alive.",
              {"water deficit", "% of body mass", true}, deficit, horizon_s));
  if (!air.empty())
    out.blocks.push_back(overlay("Carbon dioxide inside",
                                 "Carbon dioxide in the air of each raft against time.", {"CO2", "ppm", true},
                                 air, horizon_s));
  add_weather(out, comparison, horizon_s);
  return out;
}

// The time in which all that is drawn can be compared.
outcome::Window window_of(const Comparison& comparison) {
  const timeline::Timeline& first = *comparison.options.front().own.timeline;
  outcome::Window out = outcome::common_window(first, first);
  for (std::size_t i = 1; i < drawn(comparison); ++i) {
    const outcome::Window pair = outcome::common_window(first, *comparison.options[i].own.timeline);
    out.from_s = std::max(out.from_s, pair.from_s);
    out.to_s = std::min(out.to_s, pair.to_s);
  }
  return out;
}

document::Chart body_chart(const Comparison& comparison, const outcome::Window& window) {
  using outcome::BodyHeat;
  static constexpr std::pair<const char*, double BodyHeat::*> parts[] = {
      {"to the air", &BodyHeat::air_W},        {"to canopy or sky", &BodyHeat::canopy_W},
      {"to the floor", &BodyHeat::floor_W},    {"to water", &BodyHeat::water_W},
      {"by drying", &BodyHeat::evaporation_W}, {"with the breath", &BodyHeat::breath_W}};
  document::Chart out;
  out.title = "Where one person's warmth goes";
  out.sentence = fmt::format(
      "Heat that a person loses by each way, mean over the crew and over {} in which all are "
      "aboard and alive.",
      duration(window.to_s - window.from_s));
  out.x = {"option"};
  out.y = {"heat lost", "W", true};
  std::vector<std::string> names;
  std::vector<std::vector<double>> watts;
  bool gained = false;
  for (const auto& part : parts) {
    names.emplace_back(part.first);
    watts.emplace_back();
    for (std::size_t i = 0; i < drawn(comparison); ++i) {
      watts.back().push_back(body_heat(*comparison.options[i].own.timeline, window).*part.second);
      gained = gained || watts.back().back() < 0;
    }
  }
  for (std::size_t i = 0; i < drawn(comparison); ++i) out.categories.push_back(option_name(i));
  if (!gained) {
    out.series = document::stack(names, watts);
    return out;
  }
  // Heat gained has no place in a stack: a dot for each flow, then.
  out.sentence += " Below zero is heat gained.";
  for (std::size_t part = 0; part < names.size(); ++part) {
    document::Series dots{names[part], document::Kind::points, {}, {}};
    for (std::size_t i = 0; i < watts[part].size(); ++i)
      dots.points.push_back({static_cast<double>(i), watts[part][i]});
    out.series.push_back(std::move(dots));
  }
  return out;
}

// Kelvins by which each option is warmer inside than the first, and what makes them.
document::Chart warmer_chart(const Comparison& comparison, const outcome::Window& window) {
  using outcome::WarmerBecause;
  static constexpr std::pair<const char*, double WarmerBecause::*> parts[] = {
      {"what the canopy passes for each kelvin", &WarmerBecause::canopy_K},
      {"what openings and leaks pass for each kelvin", &WarmerBecause::air_K},
      {"heat of the bodies", &WarmerBecause::bodies_K},
      {"sun", &WarmerBecause::sun_K},
      {"heat lost to the sea", &WarmerBecause::sea_K},
      {"air outside", &WarmerBecause::outside_K},
      {"condensation and heat stored", &WarmerBecause::rest_K}};
  document::Chart out;
  out.title = "What makes it warmer or colder inside than in option 1";
  out.sentence =
      "Each part of the difference in inside temperature, in kelvins that add up to it. Above zero makes "
      "the option warmer than option 1.";
  out.x = {"by"};
  out.y = {"inside, against option 1", "K", true};
  for (const auto& part : parts) out.categories.emplace_back(part.first);
  const outcome::CabinHeat base = cabin_heat(*comparison.options.front().own.timeline, window);
  for (std::size_t i = 1; i < drawn(comparison); ++i) {
    const auto because = warmer_because(base, cabin_heat(*comparison.options[i].own.timeline, window));
    if (!because) continue;
    document::Series series{option_name(i),
                            drawn(comparison) == 2 ? document::Kind::bars : document::Kind::points,
                            {},
                            static_cast<int>(i)};
    for (std::size_t part = 0; part < std::size(parts); ++part)
      series.points.push_back({static_cast<double>(part), (*because).*parts[part].second});
    out.series.push_back(std::move(series));
  }
  return out;
}

document::Section warmth_section(const Comparison& comparison) {
  document::Section out{"Where does the warmth go?", {}};
  const outcome::Window window = window_of(comparison);
  if (window.to_s <= window.from_s) {
    out.blocks.push_back(
        document::Paragraph{"There is no time in which all are aboard and alive in every option."});
    return out;
  }
  out.blocks.push_back(body_chart(comparison, window));
  const bool rafts = std::all_of(comparison.options.begin(), comparison.options.end(),
                                 [](const Option& option) { return option.own.timeline->in_raft; });
  if (!rafts) return out;
  if (document::Chart chart = warmer_chart(comparison, window); !chart.series.empty())
    out.blocks.push_back(std::move(chart));
  return out;
}

// Of each option, or once where it is the same for all.
document::Section evidence_section(const Comparison& comparison) {
  document::Section out{"Evidence", {}};
  const auto key = [](const Option& option) {
    std::vector<std::string> all{how_sure(option.own.figures)};
    const std::vector<Judged> results = judged(option.own.figures);
    for (const std::vector<std::string>& list : std::array{left_out_sentences(results), data_ends(results)})
      all.insert(all.end(), list.begin(), list.end());
    return all;
  };
  const std::vector<Option>& options = comparison.options;
  const bool same = std::all_of(options.begin(), options.end(),
                                [&](const Option& each) { return key(each) == key(options.front()); });
  for (std::size_t i = 0; i < (same ? 1 : options.size()); ++i) {
    if (!same) out.blocks.push_back(document::Paragraph{capitalised(option_name(i)) + ":"});
    for (document::Block& block : evidence_blocks(judged(options[i].own.figures)))
      out.blocks.push_back(std::move(block));
  }
  return out;
}

std::optional<document::Section> cautions_section(const Comparison& comparison) {
  document::List list;
  for (std::size_t i = 0; i < comparison.options.size(); ++i)
    for (const scenario::Diagnostic& caution : comparison.options[i].own.scenario->cautions)
      list.items.push_back(
          fmt::format("Option {}: {}: {}", i + 1, input_words(caution.pointer), caution.message));
  if (list.items.empty()) return std::nullopt;
  return document::Section{"Cautions", {list}};
}

}  // namespace

document::Page compare_page(const Comparison& comparison) {
  document::Page page;
  page.title = "Options side by side";
  const Option& first = comparison.options.front();
  const bool versions = !first.put_in.empty();  // of one scenario, which have its name
  if (versions) page.lead = first.own.scenario->scenario.name + ". ";
  for (std::size_t i = 0; i < comparison.options.size(); ++i) {
    const Option& option = comparison.options[i];
    page.lead += fmt::format("{} {}: {}", i == 0 ? "Option" : "; option", i + 1, option_title(option));
  }
  page.lead += fmt::format(". {}", what_able_means);
  page.foot = foot_of(*comparison.options.front().own.scenario);
  page.rest = "Why, inputs that differ, equal stores, all figures, cautions";
  page.sections = {answer_section(comparison), apart_section(comparison), equal_section(comparison),
                   options_section(comparison)};
  if (comparison.no_futures.empty()) page.sections.push_back(futures_section(comparison));
  for (auto section : {warmth_section, course_section}) page.sections.push_back(section(comparison));
  page.sections.push_back(evidence_section(comparison));
  if (auto cautions = cautions_section(comparison)) page.sections.push_back(std::move(*cautions));
  return page;
}

}  // namespace bide::report::pages
