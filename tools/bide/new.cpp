// bide new: writes a scenario from the catalogue, the climate of a place and a few answers or flags.
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <variant>

#include "bide/climate/month.hpp"
#include "bide/core/file.hpp"
#include "bide/core/notice.hpp"
#include "bide/core/printable.hpp"
#include "bide/core/time_utc.hpp"
#include "bide/core/units.hpp"
#include "bide/report/words/input.hpp"
#include "bide/scenario/crew_words.hpp"
#include "bide/scenario/nearest.hpp"
#include "bide/scenario/new_scenario.hpp"
#include "bide/scenario/patch.hpp"
#include "bide/scenario/sea_areas.hpp"
#include "bide/scenario/words.hpp"
#include "commands.hpp"
#include "dialogue.hpp"
#include "files.hpp"
#include "output.hpp"
#include "place.hpp"
#include "point.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

constexpr Allowed<int> crew_sizes{1, 100}, months{1, 12};
constexpr Allowed<double> any_days{0.01, 60};

struct Answers {
  std::optional<int> month;
  std::optional<double> days;
  std::optional<std::string> crew, start, raft, pack, place, season, clothing, boarding;
  std::string weather = "variable";
  std::optional<double> air_degC, water_degC, wind_m_s;
  std::string name = "unnamed scenario", output;
  bool force = false, ask = false;
};

// Key and title of each entry of a list of the catalogue.
template <class Kind>
std::string listed(const std::vector<Kind>& kinds) {
  std::string out;
  for (const Kind& kind : kinds)
    out += fmt::format("{}  {}: {}", out.empty() ? "" : "\n", kind.key, kind.title);
  return out;
}

template <class Kind>
Question of_catalogue(const char* text, std::string usual, const std::vector<Kind>& kinds) {
  return {text, std::move(usual), [&kinds] { return listed(kinds); },
          [&kinds](const std::string& answer) {
            std::vector<std::string_view> keys;
            for (const Kind& kind : kinds) keys.push_back(kind.key);
            return std::find(keys.begin(), keys.end(), answer) != keys.end()
                       ? std::string()
                       : fmt::format("{} is not in the list{}", answer, scenario::did_you_mean(answer, keys));
          }};
}

template <class Number>
Question of_number(const char* text, Number usual, Allowed<Number> allowed, const char* choices) {
  return {text, fmt::format("{}", usual), [choices] { return std::string(choices); },
          [allowed](const std::string& answer) {
            const auto value = number_in<Number>(answer);
            return value && *value >= allowed.low && *value <= allowed.high
                       ? std::string()
                       : fmt::format("a number from {} to {}, please", allowed.low, allowed.high);
          }};
}

// Why a function refuses an answer; empty when it takes it.
template <class Use>
std::function<std::string(const std::string&)> refusal_of(Use use) {
  return [use](const std::string& answer) {
    try {
      use(answer);
      return std::string();
    } catch (const BadAnswer& bad) {
      return std::string(bad.what());
    }
  };
}

// The climate of a place and month; none when every quantity it would give was given.
std::optional<climate::Month> climate_of(const Place& place, int month, bool needed) {
  if (!needed) return std::nullopt;
  auto found = climate::month_at(place.point, month);
  if (const std::string* why = std::get_if<std::string>(&found))
    throw BadAnswer(fmt::format("place {} {}; or give --air, --water and --wind", place.words, *why));
  return std::get<climate::Month>(found);
}

int month_of(const Answers& answers, const Dialogue& dialogue, const Place& place, bool climate_needed) {
  constexpr std::array<std::string_view, 4> seasons{"winter", "spring", "summer", "autumn"};
  constexpr int months_per_season = 3, months_per_year = 12, half_year = 6;
  const int usual = 6;
  if (answers.start) return civil_from_unix_s(parse_time_utc(*answers.start).value()).month;
  if (answers.month) return *answers.month;
  if (!answers.season) {
    Question question = of_number("Month", usual, months, "1 for January to 12 for December");
    question.wrong = [number = question.wrong, &place, climate_needed](const std::string& answer) {
      const std::string no_month = number(answer);
      return no_month.empty() ? refusal_of([&](const std::string& month) {
        climate_of(place, number_in<int>(month).value(), climate_needed);
      })(answer)
                              : no_month;
    };
    return number_in<int>(dialogue.ask({}, question)).value();
  }
  const auto at = std::find(seasons.begin(), seasons.end(), *answers.season) - seasons.begin();
  const int northern = 1 + months_per_season * static_cast<int>(at);  // January, April, July, October
  return place.point.latitude_deg < 0 ? (northern - 1 + half_year) % months_per_year + 1 : northern;
}

std::string raft_for(int crew) {
  if (const scenario::RaftKind* raft = scenario::usual_raft(crew)) return raft->key;
  throw BadAnswer(fmt::format("no raft of the catalogue holds {} persons; name one with --raft", crew));
}

// "4", or people by sex and age.
std::vector<scenario::KnownPerson> crew_of(const std::string& text) {
  if (const auto persons = number_in<int>(text)) {
    if (*persons < crew_sizes.low || *persons > crew_sizes.high)
      throw BadAnswer(
          fmt::format("--crew: found \"{}\"; allowed {} to {}", text, crew_sizes.low, crew_sizes.high));
    return scenario::usual_crew(*persons);
  }
  auto crew = scenario::read_crew(text);
  if (const auto* why = std::get_if<std::string>(&crew))
    throw BadAnswer(fmt::format("--crew: {}, or a number of people", *why));
  return std::get<std::vector<scenario::KnownPerson>>(std::move(crew));
}

// What validation has against these people, whatever else the scenario holds.
void check_crew(const std::string& text) {
  scenario::Node document = scenario::empty_object();
  put(document, "/format", std::string(scenario::format_word));
  for (const scenario::KnownPerson& known : crew_of(text))
    append(document, "crew", scenario::person_node(known));
  const auto validated = scenario::validate_document(std::move(document), "crew", {});
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&validated))
    for (const scenario::Diagnostic& each : *wrong)
      if (each.pointer.rfind("/crew/", 0) == 0)
        throw BadAnswer(fmt::format("{}: {}", report::input_words(each.pointer), each.message));
}

std::string sea_names() {
  std::string out = "  latitude,longitude as 45.5,-5, or one of:";
  for (const scenario::SeaArea& area : scenario::sea_areas().sea_areas) out += " " + area.title + ",";
  out.back() = '.';
  return out + " \"in February\" may follow.";
}

std::string boarding_of(const Answers& answers, const Dialogue& dialogue) {
  const auto check = [](const std::string& answer) {
    const auto& ways = scenario::words_of<scenario::BoardingKind>;
    if (std::find(ways.begin(), ways.end(), answer) == ways.end() || answer == "none")
      throw BadAnswer(fmt::format("boarding {}: allowed dry, swim or float_free", answer));
  };
  return dialogue.ask(answers.boarding,
                      {"Boarding", "dry",
                       [] {
                         return std::string(
                             "  dry: stepped into the raft\n  swim: swam to it for 10 minutes\n"
                             "  float_free: in the water until the raft rose and inflated");
                       },
                       refusal_of(check)});
}

// States what was answered, and leaves the rest to the defaults.
scenario::Node build(const Answers& answers, const Dialogue& dialogue) {
  const double usual_days = 5;
  const auto check_answered = [&answers](const std::string& text) {
    check_crew(text);
    if (!answers.raft) raft_for(static_cast<int>(crew_of(text).size()));
  };
  const std::vector<scenario::KnownPerson> crew = crew_of(dialogue.ask(
      answers.crew, {"Crew", "4",
                     [] {
                       return std::string(
                           "  a number of people, or each by sex and age, with kg and m where known:\n"
                           "  M40 F38 M12:45:1.52");
                     },
                     refusal_of(check_answered)}));
  const scenario::Catalogue& all = scenario::catalogue();
  const std::string raft =
      answers.raft
          ? *answers.raft
          : dialogue.ask({}, of_catalogue("Raft", raft_for(static_cast<int>(crew.size())), all.rafts));
  const scenario::RaftKind* kind = scenario::find_raft(raft);
  const std::string pack =
      dialogue.ask(answers.pack, of_catalogue("Pack", kind ? kind->pack : std::string("none"), all.packs));
  const bool climate_needed = !(answers.air_degC && answers.water_degC && answers.wind_m_s);
  const auto check_place = [climate_needed](std::string text) {
    const std::optional<int> month = take_month(text);
    const Place place = place_of(text);
    for (int any = months.low; !month && any < months.high; ++any)
      if (refusal_of([&](const std::string&) { climate_of(place, any, climate_needed); })("").empty()) return;
    climate_of(place, month.value_or(months.high), climate_needed);
  };
  std::string where = dialogue.ask(answers.place, {"Place", "Biscay", sea_names, refusal_of(check_place)});
  const std::optional<int> named = take_month(where);
  if (named && (answers.month || answers.season || answers.start))
    throw BadAnswer("the month is given twice: with the place, and by --month, --season or --start");
  const Place place = place_of(where);
  const int month = named ? *named : month_of(answers, dialogue, place, climate_needed);
  const std::optional<climate::Month> climate = climate_of(place, month, climate_needed);
  const double days = answers.days
                          ? *answers.days
                          : number_in<double>(dialogue.ask({}, of_number("Days", usual_days, any_days,
                                                                         "  days that are followed")))
                                .value();
  const std::string clothing =
      dialogue.ask(answers.clothing, of_catalogue("Clothing", "temperate_sailing", all.ensembles));
  const std::string boarding = boarding_of(answers, dialogue);
  const bool varies = answers.weather == word(scenario::WeatherKind::variable);
  return scenario::new_scenario(
      {answers.name,
       crew,
       clothing,
       raft,
       pack,
       boarding,
       place.point,
       place.words,
       month,
       answers.start ? std::optional(parse_time_utc(*answers.start).value()) : std::nullopt,
       days * day_h,
       varies ? scenario::WeatherKind::variable : scenario::WeatherKind::constant,
       {answers.air_degC, answers.water_degC, answers.wind_m_s},
       climate});
}

void check_utf8(const Answers& answers) {
  for (const std::optional<std::string>& each : {std::optional(answers.name), answers.crew, answers.raft,
                                                 answers.pack, answers.place, answers.clothing})
    if (each)
      if (const auto bad = why_not_utf8(*each)) throw BadAnswer(fmt::format("{}: {}", *each, *bad));
}

// Another name for a file that exists, so that the answers are not lost.
std::string free_name(const Answers& answers, const Dialogue& dialogue) {
  const auto taken = [](const std::string& path) {
    std::error_code error;
    if (std::filesystem::exists(path, error)) return path + " exists; another name, please";
    return why_not_writable(path).value_or("");
  };
  if (!dialogue.asks() || answers.force || answers.output.empty() || taken(answers.output).empty())
    return answers.output;
  return dialogue.ask({}, {answers.output + " exists. File to write", "standard output",
                           [] { return std::string("  any name of a file that does not exist"); }, taken});
}

int write_new(const Answers& answers) {
  const Dialogue dialogue(answers.ask || isatty(STDIN_FILENO) == 1);
  if (const int code = check(Files{{}, {answers.output}}); code != exit_ok)
    return code;  // before any question
  std::string text;
  try {
    check_utf8(answers);
    if (answers.start && !parse_time_utc(*answers.start))
      throw BadAnswer(
          fmt::format("--start: found \"{}\"; allowed UTC, as 2031-02-03T18:00Z", *answers.start));
    text = scenario::write_document(build(answers, dialogue));
  } catch (const BadAnswer& bad) {
    say("bide new: {}\n", bad.what());
    return exit_usage;
  }
  const scenario::Validated result = scenario::validate_text(text, "new scenario", {});
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&result)) {
    complain(*wrong);
    return exit_input_refused;
  }
  const std::string name = free_name(answers, dialogue);
  const int code = put(text, name == "standard output" ? "" : name, answers.force);
  if (code != exit_ok) return code;
  complain(std::get<scenario::ValidScenario>(result).cautions);
  say("{}\n{}\n", standing_notice, standing_advice);
  return exit_ok;
}

}  // namespace

void add_new(Program& program) {
  auto answers = std::make_shared<Answers>();
  Answers& a = *answers;
  Command command = program.command("new", "Write a scenario from the catalogue and a few answers or flags");
  command.text("--crew", a.crew,
               "Number of people, or the people, as \"M40 F38 M12:45:1.52\" (sex, age; kg and m if known)");
  command.text("--raft", a.raft, "Raft, by its key (bide catalogue rafts)");
  command.text("--pack", a.pack, "Pack, by its key (bide catalogue packs); the raft's usual one if left out");
  command.text("--place", a.place,
               "Where: \"latitude,longitude\", or a sea, such as Biscay, or \"Biscay in February\"");
  command.word("--weather", a.weather, {"variable", "constant"},
               "Weather that varies from hour to hour about the month's means, or the means themselves");
  const Argument month =
      command.number("--month", a.month, months, "Month of the start, in place of a season");
  Argument season = command.word("--season", a.season, {"winter", "spring", "summer", "autumn"},
                                 "Season of the start, by hemisphere, in place of a month");
  season.excludes(month);
  command.text("--start", a.start, "Start in UTC, as 2031-02-03T18:00Z, in place of month and season")
      .excludes(month)
      .excludes(season);
  command.number("--days", a.days, any_days, "Days to simulate");
  command.text("--clothing", a.clothing, "What everybody wears, by its key (bide catalogue ensembles)");
  command.word("--boarding", a.boarding, {"dry", "swim", "float_free"}, "How the raft is reached");
  command.number("--air", a.air_degC, range_of("/weather/air_temperature_degC"),
                 "Air temperature in place of the month's, degC");
  command.number("--water", a.water_degC, range_of("/weather/water_temperature_degC"),
                 "Sea temperature in place of the month's, degC");
  command.number("--wind", a.wind_m_s, range_of("/weather/wind_speed_m_s"),
                 "Wind at 10 m in place of the month's, m/s");
  command.text("--name", a.name, "Title of the scenario");
  command.text("-o,--output", a.output, "File to write; standard output if left out");
  command.flag("--force", a.force, "Overwrite the file if it exists");
  command.flag("--ask", a.ask, "Ask for what is not given, even when the answers come from a file or a pipe");
  command.does([answers] { return write_new(*answers); });
}

}  // namespace bide::tool
