#include <fmt/format.h>

#include <algorithm>

#include "bide/core/people.hpp"
#include "bide/core/units.hpp"
#include "bide/report/document/window_chart.hpp"
#include "bide/report/run/events.hpp"
#include "bide/report/run/run_parts.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report::pages {
namespace {

using document::Kind;
using document::Point;
using document::Series;

constexpr std::size_t most_persons = 6, most_events = 12;

// Rows of the chart and what lies in them.
struct Rows {
  std::vector<std::string> names;
  double row(const std::string& name) {
    const auto known = std::find(names.begin(), names.end(), name);
    if (known != names.end()) return static_cast<double>(known - names.begin());
    names.push_back(name);
    return static_cast<double>(names.size() - 1);
  }
};

// @param open whether it goes on after the run
void add(Series& series, double row, double from_s, double to_s, bool open = false) {
  if (to_s > from_s) series.points.push_back({row, Point::none, from_s / hour_s, to_s / hour_s, "", open});
}

void add_light(const Material& m, Rows& rows, Series& light) {
  double from_s = 0;
  const double row = rows.row("daylight");
  for (const Point& night : nights(m).points) {
    add(light, row, from_s, night.low * hour_s);
    from_s = night.high * hour_s;
  }
  add(light, row, from_s, m.timeline.horizon_s);
}

// Each person of a small crew, else the first, half of the crew and the last.
void add_persons(const Material& m, Rows& rows, Series& able, Series& unable) {
  const auto add_row = [&](const std::string& name, const std::optional<double>& able_s,
                           const std::optional<double>& alive_s) {
    const double row = rows.row(name), until_s = able_s.value_or(m.outcome.horizon_s);
    add(able, row, 0, until_s, !able_s);
    add(unable, row, until_s, alive_s.value_or(m.outcome.horizon_s), !alive_s);
  };
  const outcome::CrewTimes &able_s = m.outcome.able, &alive_s = m.outcome.alive;
  if (m.outcome.persons.size() > most_persons) {
    add_row("first of the crew", able_s.first_s, alive_s.first_s);
    add_row("half of the crew", able_s.half_s, alive_s.half_s);
    add_row("last of the crew", able_s.last_s, alive_s.last_s);
    return;
  }
  for (const std::vector<int>& group : alike(m)) {
    const outcome::PersonOutcome& person = m.outcome.persons[static_cast<std::size_t>(group.front())];
    add_row(person_names(group), person.able.at_s, person.alive.at_s);
  }
}

void add_stores(const Material& m, Rows& rows, Series& aboard) {
  for (const outcome::StoreOutcome& store : m.outcome.stores) {
    if (store.state == outcome::StoreState::none_aboard) continue;
    const bool out = store.state == outcome::StoreState::runs_out;
    add(aboard, rows.row(store.name), 0, out ? store.at_s : m.outcome.horizon_s, !out);
  }
}

// From opening for air to closing again, by the rule on heat and foul air.
void add_air(const Material& m, Rows& rows, Series& open) {
  bool is_open = false;
  double from_s = 0;
  for (const timeline::Event& event : m.timeline.events) {
    if (event.kind == system::NoteKind::opened_for_air && !is_open) {
      is_open = true;
      from_s = event.time_s;
    } else if (event.kind == system::NoteKind::closed_again && is_open) {
      is_open = false;
      add(open, rows.row("opened for air"), from_s, event.time_s);
    }
  }
  if (is_open) add(open, rows.row("opened for air"), from_s, m.outcome.watched_s);
}

document::Chart chart(const Material& m) {
  document::Chart out;
  Rows rows;
  Series light{"daylight", Kind::spans, {}, 4}, able{"able", Kind::spans, {}, 0},
      unable{"alive, not able", Kind::spans, {}, 1}, aboard{"some left aboard", Kind::spans, {}, 3},
      open{"entrances open for air", Kind::spans, {}, 2};
  add_light(m, rows, light);
  add_persons(m, rows, able, unable);
  add_stores(m, rows, aboard);
  add_air(m, rows, open);
  for (Series* each : {&light, &able, &unable, &aboard, &open})
    if (!each->points.empty()) out.series.push_back(std::move(*each));
  out.title = "The stay";
  out.sentence =
      "Who is able and alive, what is left aboard and when the entrances stand open for air, from "
      "the start to the end of the run. A bar that ends in an arrow goes on after it.";
  out.x = {"what"};
  out.y = time_axis(m.timeline.horizon_s);
  out.categories = rows.names;
  return out;
}

document::Table events(const Material& m) {
  const int zone_h = zone_hours(m.scenario.scenario.position.longitude_deg);
  const auto picked = pick_events(m.timeline.events, most_events);
  document::Table out;
  out.caption = fmt::format("Events, {} of {}", picked.size(), m.timeline.events.size());
  out.columns = {{"when", false}, {"h", true}, {"what", false}};
  out.on_paper = false;
  for (const PickedEvent& pick : picked) {
    const timeline::Event& event = *pick.event;
    std::string text = event.text;
    if (pick.of_its_kind > 1) text += fmt::format(" (first of {})", pick.of_its_kind);
    out.rows.push_back({both_clocks(m.timeline.start_unix_s, event.time_s, zone_h),
                        fmt::format("{:.1f}", event.time_s / hour_s), text});
  }
  return out;
}

}  // namespace

document::Section stay_section(const Material& m) {
  return {"The stay, hour by hour", {chart(m), cabin_table(m), events(m)}};
}

}  // namespace bide::report::pages
