#include "night.hpp"

#include <fmt/format.h>

#include <chrono>
#include <cmath>

#include "bide/core/csv.hpp"
#include "bide/core/printable.hpp"
#include "bide/core/text.hpp"
#include "bide/core/time_utc.hpp"
#include "bide/core/units.hpp"
#include "bide/scenario/moment.hpp"
#include "place.hpp"

namespace bide::tool {
namespace {

constexpr const char* no_file = "command line";
constexpr const char* moments = "allowed a time before now, as 9h, 90min or 2d, or UTC, as 2031-02-03T18:00Z";

double this_minute_unix_s() {
  const std::chrono::duration<double> now = std::chrono::system_clock::now().time_since_epoch();
  return std::floor(now.count() / minute_s) * minute_s;
}

// "unknown" is the same as leaving it out.
std::optional<std::string> known(const std::optional<std::string>& word) {
  return word == "unknown" ? std::nullopt : word;
}

struct Reading {
  scenario::Diagnostics wrong;

  void refuse(const char* flag, std::string message) { wrong.push_back({no_file, flag, std::move(message)}); }

  double now(const std::optional<std::string>& text) {
    if (!text) return this_minute_unix_s();
    const auto at = parse_time_utc(*text);
    if (!at)
      refuse("--now", fmt::format("found {}; allowed UTC, as 2031-02-03T18:00Z", scenario::in_quotes(*text)));
    return at.value_or(0);
  }

  std::optional<double> moment(const char* flag, const std::optional<std::string>& text, double now_unix_s) {
    if (!text) return std::nullopt;
    const auto at = scenario::parse_moment(*text, now_unix_s);
    if (!at) refuse(flag, fmt::format("found {}; {}", scenario::in_quotes(*text), moments));
    return at;
  }

  void people(const NightFlags& flags, scenario::Situation& s) {
    if (!flags.crew) {
      if (!flags.persons) refuse("--persons", "missing; how many are they? Or describe them by --crew");
      s.persons = flags.persons.value_or(1);
      return;
    }
    auto crew = scenario::read_crew(*flags.crew);
    if (const auto* why = std::get_if<std::string>(&crew))
      refuse("--crew", *why);
    else
      s.crew = std::get<std::vector<scenario::KnownPerson>>(std::move(crew));
  }

  std::optional<scenario::FirstMinutes> first_minutes(const std::optional<std::string>& text) {
    if (!text) return std::nullopt;
    const std::vector<std::string> ends = split(*text, ',');
    const auto low = parse_number(ends.front()), high = parse_number(ends.back());
    if (ends.size() == 2 && low && high && 0 <= *low && *low <= *high && *high <= 1)
      return scenario::FirstMinutes{*low, *high};
    refuse("--first-minutes", fmt::format("found {}; allowed two shares from 0 to 1, the least first, as "
                                          "0.05,0.2",
                                          scenario::in_quotes(*text)));
    return std::nullopt;
  }

  std::string place(const NightFlags& flags, scenario::Situation& s) {
    if (!flags.place) {
      refuse("--place", "missing; where are they? As 58,-12, or the name of a sea (bide catalogue seas)");
      return {};
    }
    try {
      const Place at = place_of(*flags.place);
      s.place = at.point;
      return at.words;
    } catch (const BadAnswer& bad) {
      refuse("--place", bad.what());
      return {};
    }
  }
};

}  // namespace

bool NightFlags::any() const {
  return persons || month || crew || abandoned || place || raft || clothing || boarding || last_contact ||
         name || first_minutes || sea_degC || air_degC || wind_m_s;
}

void add_setting_flags(Command& command, NightFlags& flags, const Argument& scenario_file) {
  constexpr Allowed<int> crew_sizes{1, 100}, months{1, 12};
  Argument persons = command.number("--persons", flags.persons, crew_sizes,
                                    "Without a file: how many people of whom nothing is known");
  persons.excludes(scenario_file);
  command
      .text("--crew", flags.crew,
            "Without a file: the people, as \"M40 F38 M12:45:1.52\" (sex, age; kg and m if known)")
      .excludes(scenario_file)
      .excludes(persons);
  command.number("--month", flags.month, months, "Month whose climate holds, in place of the clock's")
      .excludes(scenario_file);
  command
      .number("--sea", flags.sea_degC, range_of("/weather/water_temperature_degC"),
              "Sea temperature, degC; drawn about the month's mean if left out")
      .excludes(scenario_file);
  command
      .number("--air", flags.air_degC, range_of("/weather/air_temperature_degC"),
              "Mean air temperature in place of the month's, degC")
      .excludes(scenario_file);
  command
      .number("--wind", flags.wind_m_s, range_of("/weather/wind_speed_m_s"),
              "Mean wind at 10 m in place of the month's, m/s")
      .excludes(scenario_file);
  command
      .text("--clothing", flags.clothing, "What they wear, by its key (bide catalogue ensembles), or unknown")
      .excludes(scenario_file);
  command
      .word("--boarding", flags.boarding, {"dry", "swim", "float_free", "unknown"},
            "How the raft was reached")
      .excludes(scenario_file);
}

void add_night_flags(Command& command, NightFlags& flags, const Argument& scenario_file) {
  add_setting_flags(command, flags, scenario_file);
  command
      .text("--abandoned", flags.abandoned,
            "Without a file: when the ship was abandoned, as 9h before now, or UTC")
      .excludes(scenario_file);
  command.text("--place", flags.place, "Without a file: \"latitude,longitude\" or a sea")
      .excludes(scenario_file);
  command
      .text("--raft", flags.raft, "Raft they are in, by its key (bide catalogue rafts), or none, or unknown")
      .excludes(scenario_file);
  command
      .text("--last-contact", flags.last_contact, "When all were last known alive, as 6h before now, or UTC")
      .excludes(scenario_file);
  command
      .text("--first-minutes", flags.first_minutes,
            "Share of those who enter the water lost in its first minutes, least and greatest, as 0.05,0.2; "
            "not counted if left out, for no such share is published")
      .excludes(scenario_file);
  command.text("--ahead", flags.ahead, "Without a file: how long to follow them beyond now")
      .excludes(scenario_file);
  command.text("--name", flags.name, "Title of the answer").excludes(scenario_file);
}

std::variant<scenario::Situation, scenario::Diagnostics> situation_of(const NightFlags& flags,
                                                                      const std::optional<std::string>& now) {
  Reading read;
  scenario::Situation s;
  s.now_unix_s = read.now(now);
  if (!flags.abandoned)
    read.refuse("--abandoned", fmt::format("missing; when was the ship abandoned? {}", moments));
  s.abandoned_unix_s = read.moment("--abandoned", flags.abandoned, s.now_unix_s).value_or(s.now_unix_s);
  s.last_contact_unix_s = read.moment("--last-contact", flags.last_contact, s.now_unix_s);
  const auto ahead_h = scenario::parse_hours(flags.ahead);
  if (!ahead_h || *ahead_h < 1)
    read.refuse("--ahead",
                fmt::format("found {}; allowed 1h or more, as 36h or 5d", scenario::in_quotes(flags.ahead)));
  s.ahead_h = ahead_h.value_or(1);
  read.people(flags, s);
  const std::string where = read.place(flags, s);
  s.month = flags.month;
  s.sea_degC = flags.sea_degC, s.air_degC = flags.air_degC, s.wind_m_s = flags.wind_m_s;
  s.raft = known(flags.raft), s.clothing = known(flags.clothing), s.boarding = known(flags.boarding);
  s.lost_in_first_minutes = read.first_minutes(flags.first_minutes);
  if (flags.name)
    if (const auto bad = why_not_utf8(*flags.name)) read.refuse("--name", *bad);
  const std::size_t persons = s.crew.empty() ? static_cast<std::size_t>(s.persons) : s.crew.size();
  s.name = flags.name.value_or(
      fmt::format("{} {} abandoned at {}", persons, persons == 1 ? "person" : "people", where));
  if (!read.wrong.empty()) return std::move(read.wrong);
  return s;
}

}  // namespace bide::tool
