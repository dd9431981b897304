#include <fmt/format.h>

#include <algorithm>

#include "bide/constants/hands.hpp"
#include "bide/core/people.hpp"
#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/run/run_parts.hpp"
#include "bide/report/run/sentences.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report::pages {
namespace {

constexpr std::size_t most_rows = 8;  // a longer table is folded

std::string hours_or_none(double value_h) {
  return value_h > 0 ? duration(value_h * hour_s) : "none";
}

std::string injuries(const outcome::PersonOutcome& person) {
  std::string out;
  for (const timeline::Injury& each : person.injuries)
    out += fmt::format("{}{} from {} on", out.empty() ? "" : "; ", outcome::short_cause(each.limit),
                       duration(each.time_s));
  return out.empty() ? "none" : out;
}

document::Table figures(const Material& m) {
  document::Table out{"While each is alive, in the central case",
                      {{"", false},
                       {"lowest core", true},
                       {"shivering", true},
                       {"most water lost", true},
                       {"fingers not yet clumsy", true}},
                      {}};
  const bool hurt = std::any_of(m.outcome.persons.begin(), m.outcome.persons.end(),
                                [](const auto& each) { return !each.injuries.empty(); });
  if (hurt)
    out.columns.push_back({"cold injury or frostbite possible", false});
  else
    out.caption += "; no cold injury, no frostbite";
  for (std::size_t i = 0; i < m.outcome.persons.size(); ++i) {
    const outcome::PersonOutcome& p = m.outcome.persons[i];
    out.rows.push_back({person_label(static_cast<int>(i)), temperature(p.lowest_core_degC),
                        hours_or_none(p.shivering_h), percent(p.worst_water_deficit_pct),
                        fmt::format("{} of {} able", hours_or_none(p.hands_h), duration(p.able_h * hour_s))});
    if (hurt) out.rows.back().push_back(injuries(p));
  }
  out.folded = out.rows.size() > most_rows;
  return out;
}

// What a date of a bare face's frostbite rests on.
std::string about_faces() {
  using namespace constants;
  return fmt::format(
      "Frostbite of the face counts where no canopy keeps the wind off. The date is the earliest at which a "
      "bare, dry face may freeze, for the one person in twenty who freezes first, in a steady wind of {:g} "
      "km/h or "
      "more. It is sooner in spray and gusts, and later with the face covered, which is not in the model. In "
      "less wind, or "
      "where it would take more than {:g} min, nothing counts, though a face can freeze there too.",
      face_least_wind_km_h.value, face_longest_min.value);
}

}  // namespace

document::Section people_section(const Material& m) {
  document::Section out{"Each person", {document::List{person_sentences(m)}, figures(m)}};
  const bool face = std::any_of(m.outcome.persons.begin(), m.outcome.persons.end(), [](const auto& person) {
    return std::any_of(person.injuries.begin(), person.injuries.end(), [](const timeline::Injury& each) {
      return each.limit == system::Limit::frostbite_face;
    });
  });
  if (face) out.blocks.push_back(document::Paragraph{about_faces(), false, false});
  return out;
}

}  // namespace bide::report::pages
