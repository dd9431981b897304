#include "bide/report/run/sheets.hpp"

#include <fmt/format.h>

#include "bide/core/notice.hpp"
#include "bide/core/people.hpp"
#include "bide/core/time_utc.hpp"
#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/run/inputs.hpp"
#include "bide/report/run/sentences.hpp"
#include "bide/report/run/timeline_fields.hpp"
#include "bide/report/words/made_by.hpp"
#include "bide/report/words/text.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

constexpr std::size_t most_letters = 1000;

SheetCell text(const std::string& words) {
  return plain(words, Letters::utf8, most_letters);
}

SheetCell hours(const std::optional<double>& at_s) {
  return at_s ? SheetCell(*at_s / hour_s) : SheetCell(std::string());
}

Sheet sheet(const Material& m, const char* name, std::vector<std::string> columns) {
  return {name,
          {plain(m.scenario.scenario.name), one_case, std::string(standing_notice),
           std::string(standing_advice), made_by_line()},
          std::move(columns),
          {}};
}

Sheet result(const Material& m, const Answer& answer) {
  Sheet out = sheet(m, "result", {"asked", "answer"});
  for (const AnswerLine& each : answer) out.rows.push_back({each.asks, text(each.says)});
  for (const std::string& caution : caution_sentences(m.scenario))
    out.rows.push_back({"Caution", text(caution)});
  return out;
}

Sheet people(const Material& m) {
  Sheet out = sheet(m, "people",
                    {"person", "able_until_h", "able_ended_by", "alive_until_h", "alive_ended_by",
                     "next_limit", "margin_left_fraction", "lowest_core_degC", "worst_water_deficit_pct",
                     "shivering_h", "hand_task_possible_h", "cold_injuries_possible"});
  out.notes.emplace_back("An empty time is not reached within " + horizon(m.outcome.horizon_s) + ".");
  for (std::size_t i = 0; i < m.outcome.persons.size(); ++i) {
    const outcome::PersonOutcome& p = m.outcome.persons[i];
    std::string injuries;
    for (const timeline::Injury& each : p.injuries)
      injuries += fmt::format("{}{} from {:.6g} h", injuries.empty() ? "" : "; ",
                              outcome::short_cause(each.limit), each.time_s / hour_s);
    out.rows.push_back({person_label(static_cast<int>(i)), hours(p.able.at_s),
                        outcome::short_cause(p.able.limit), hours(p.alive.at_s),
                        outcome::short_cause(p.alive.limit), outcome::short_cause(p.next_limit),
                        p.next_margin_fraction, p.lowest_core_degC, p.worst_water_deficit_pct, p.shivering_h,
                        p.hands_h, text(injuries)});
  }
  return out;
}

Sheet cabin(const Material& m) {
  Sheet out = sheet(m, "cabin", {"figure", "value", "unit", "at_h"});
  const auto add = [&out](const char* figure, const std::optional<double>& value, const char* unit,
                          const std::optional<double>& at_s = {}) {
    if (value) out.rows.push_back({figure, *value, unit, hours(at_s)});
  };
  const outcome::CabinOutcome& c = m.outcome.cabin;
  if (const auto& coldest = c.coldest_inside_degC)
    add("coldest_inside", coldest->value, "degC", coldest->time_s);
  if (const auto& warmest = c.warmest_inside_degC)
    add("warmest_inside", warmest->value, "degC", warmest->time_s);
  if (m.timeline.in_raft) {
    add("co2_above_5000_ppm", c.co2_above_5000_ppm_h, "h");
    add("co2_above_15000_ppm", c.co2_above_15000_ppm_h, "h");
    add("co2_above_30000_ppm", c.co2_above_30000_ppm_h, "h");
  }
  add("condensate", c.condensate_L_day, "L a day");
  add("flares_left", m.outcome.signals.flares, "");
  add("lamp_left", m.outcome.signals.lamp_h, "h");
  add("beacon_left", m.outcome.signals.beacon_h, "h");
  return out;
}

Sheet timeline(const Material& m) {
  const std::vector<TimelineField> fields = timeline_fields(m.timeline);
  Sheet out = sheet(m, "timeline", {"time_h", "time_utc"});
  for (const TimelineField& field : fields) out.columns.push_back(field.name);
  for (std::size_t i = 0; i < m.timeline.time_s.size(); ++i) {
    std::vector<SheetCell> row{m.timeline.time_s[i] / hour_s,
                               format_time_utc(m.timeline.start_unix_s + m.timeline.time_s[i])};
    for (const TimelineField& field : fields) row.emplace_back((*field.values)[i]);
    out.rows.push_back(std::move(row));
  }
  return out;
}

Sheet stores(const Material& m) {
  Sheet out = sheet(m, "stores", {"store", "unit", "at_start", "out_after_h", "left_at_end"});
  for (const outcome::StoreOutcome& store : m.outcome.stores) {
    const bool gone = store.state == outcome::StoreState::runs_out;
    out.rows.push_back({text(store.name), store.unit, store.at_start,
                        gone ? hours(store.at_s) : SheetCell(std::string()), store.left});
  }
  return out;
}

Sheet assumptions(const Material& m) {
  Sheet out = sheet(m, "assumptions", {"input", "value", "unit", "stated", "in_the_file"});
  for (const InputInForce& each : inputs_in_force(m.scenario))
    out.rows.push_back(
        {text(each.words), text(each.value), each.unit, each.stated ? "yes" : "default", each.pointer});
  for (const std::string& each : m.timeline.assumptions)
    out.rows.push_back({"assumed", text(each), "", "", ""});
  return out;
}

}  // namespace

std::vector<Sheet> run_sheets(const Material& m, const Answer& answer) {
  return {result(m, answer), people(m), cabin(m), timeline(m), stores(m), assumptions(m)};
}

}  // namespace bide::report
