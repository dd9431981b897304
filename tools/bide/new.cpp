// bide new: writes a scenario from the catalogue, the climate of a place and a few answers or flags.
#include <fmt/core.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <functional>
#include <iostream>
#include <limits>
#include <memory>
#include <optional>

#include "bide/climate/month.hpp"
#include "bide/core/notice.hpp"
#include "bide/core/printable.hpp"
#include "bide/scenario/nearest.hpp"
#include "bide/scenario/patch.hpp"
#include "bide/scenario/sea_areas.hpp"
#include "bide/scenario/words.hpp"
#include "commands.hpp"
#include "output.hpp"
#include "point.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

constexpr Allowed<int> crew_sizes{1, 100}, months{1, 12};

struct Answers {
  std::optional<int> crew, month;
  std::optional<double> days;
  std::optional<std::string> raft, pack, place, season, clothing, boarding;
  std::string weather = "variable";
  std::optional<double> air_degC, water_degC, wind_m_s;
  std::string name = "unnamed scenario", output;
  bool force = false;
};

// An answer that cannot be used; what() says why.
struct BadAnswer : std::runtime_error {
  using std::runtime_error::runtime_error;
};

// Asks on a terminal for what was not given; an empty answer, or no terminal, leaves `usual`.
template <class T>
T ask(const std::optional<T>& given, const std::string& question, const T& usual) {
  if (given) return *given;
  if (!isatty(STDIN_FILENO)) return usual;
  for (;;) {
    say("{} [{}]: ", question, usual);
    std::string line;
    if (!std::getline(std::cin, line) || line.empty()) return usual;
    if constexpr (std::is_same_v<T, std::string>) {
      return line;
    } else {
      if (const auto value = number_in<T>(line)) return *value;
      say("A number, please.\n");
    }
  }
}

struct Place {
  climate::Point point;
  std::string words;
};

std::vector<std::string_view> area_names() {
  std::vector<std::string_view> out;
  for (const scenario::SeaArea& area : scenario::sea_areas().sea_areas) out.push_back(area.title);
  return out;
}

Place place_of(const std::string& text) {
  if (const scenario::SeaArea* area = scenario::find_sea_area(text))
    return {{area->latitude_deg, area->longitude_deg}, area->title};
  const std::optional<climate::Point> point = point_in(text);
  if (!point)
    throw BadAnswer(
        fmt::format("place {}: give \"latitude,longitude\" or the name of a sea (bide catalogue seas){}",
                    text, scenario::did_you_mean(text, area_names())));
  if (!on_earth(*point))
    throw BadAnswer(fmt::format("place {}: latitude is -90 to 90, longitude -180 to 180", text));
  return {*point, fmt::format("{:g},{:g}", point->latitude_deg, point->longitude_deg)};
}

// The climate of a place and month; none when every quantity it would give was given.
std::optional<climate::Month> climate_of(const Place& place, int month, bool needed) {
  if (!needed) return std::nullopt;
  auto found = climate::month_at(place.point, month);
  if (const std::string* why = std::get_if<std::string>(&found))
    throw BadAnswer(fmt::format("place {} {}; or give --air, --water and --wind", place.words, *why));
  return std::get<climate::Month>(found);
}

// "Biscay in February": takes the month off the end of the place.
// @return 1 to 12, or empty when no month is named
std::optional<int> take_month(std::string& place) {
  constexpr std::array<std::string_view, 12> names{"january",   "february", "march",    "april",
                                                   "may",       "june",     "july",     "august",
                                                   "september", "october",  "november", "december"};
  const std::size_t in = place.rfind(" in ");
  if (in == std::string::npos) return std::nullopt;
  std::string word = place.substr(in + std::string_view(" in ").size());
  for (char& letter : word) letter = static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
  const auto at = std::find(names.begin(), names.end(), word);
  if (at == names.end()) return std::nullopt;
  place.resize(in);
  return static_cast<int>(at - names.begin()) + 1;
}

int month_of(const Answers& answers, double latitude_deg) {
  constexpr std::array<std::string_view, 4> seasons{"winter", "spring", "summer", "autumn"};
  constexpr int months_per_season = 3, months_per_year = 12, half_year = 6;
  const int usual = 6;
  if (!answers.season) return ask(answers.month, "Month, 1 to 12", usual);
  const auto at = std::find(seasons.begin(), seasons.end(), *answers.season) - seasons.begin();
  const int northern = 1 + months_per_season * static_cast<int>(at);  // January, April, July, October
  return latitude_deg < 0 ? (northern - 1 + half_year) % months_per_year + 1 : northern;
}

std::string usual_raft(int crew) {
  const scenario::RaftKind* best = nullptr;
  for (const scenario::RaftKind& raft : scenario::catalogue().rafts) {
    const bool ordinary = raft.floor == scenario::FloorKind::inflated;
    if (ordinary && raft.capacity_persons >= crew &&
        (!best || raft.capacity_persons < best->capacity_persons))
      best = &raft;
  }
  if (!best)
    throw BadAnswer(fmt::format("no raft of the catalogue holds {} persons; name one with --raft", crew));
  return best->key;
}

// Adults of mean size in the United States survey of 2009 to 2012, women and men in turn.
void put_crew(scenario::Node& document, int persons, const std::string& clothing) {
  for (int i = 0; i < persons; ++i) {
    const bool man = i % 2 == 0;
    scenario::Node person = scenario::empty_object();
    put(person, "/sex", std::string(word(man ? scenario::Sex::male : scenario::Sex::female)));
    put(person, "/age_years", 40.0);
    put(person, "/height_m", man ? 1.76 : 1.62);
    put(person, "/mass_kg", man ? 88.6 : 75.6);
    put(person, "/clothing", clothing);
    append(document, "crew", std::move(person));
  }
}

// What was answered goes before what the climate says. The climate is not known better than to a hundredth.
void put_weather(scenario::Node& document, const Answers& answers,
                 const std::optional<climate::Month>& month) {
  put(document, "/weather/kind", answers.weather);
  const auto put_one = [&](const char* key, const std::optional<double>& answer, double of_month) {
    constexpr double hundredths = 100;
    const std::string pointer = fmt::format("/weather/{}", key);
    if (answer)
      put(document, pointer, *answer);
    else if (month)
      put(document, pointer, std::round(of_month * hundredths) / hundredths);
  };
  const climate::Month m = month.value_or(climate::Month{});
  put_one("air_temperature_degC", answers.air_degC, m.air_temperature_degC);
  put_one("water_temperature_degC", answers.water_degC, m.sea_temperature_degC);
  put_one("relative_humidity_pct", std::nullopt, m.relative_humidity_pct);
  put_one("wind_speed_m_s", answers.wind_m_s, m.wind_speed_m_s);
  put_one("cloud_cover_fraction", std::nullopt, m.cloud_cover_fraction);
  put_one("pressure_hPa", std::nullopt, m.pressure_hPa);
  if (answers.weather != word(scenario::WeatherKind::variable)) return;
  put_one("wind_spread_fraction", std::nullopt,
          std::min(m.wind_spread_m_s / m.wind_speed_m_s, constants::no_prevailing_direction.value));
  put_one("air_temperature_spread_K", std::nullopt, m.air_temperature_spread_K);
  put_one("rain_mm_h", std::nullopt, m.rain_mm_h);
  put_one("rain_hours_fraction", std::nullopt, m.rain_share);
  for (const char* drawn : {"weather", "person_spread", "unmeasured"})
    put(document, fmt::format("/uncertain/{}", drawn), true);
}

// What the reader of the file has to know about its weather.
std::string setting_of(const Answers& answers, const Place& place, int month,
                       const std::optional<climate::Month>& climate) {
  std::string out = "Invented. ";
  if (!climate) return out + "Weather as given.";
  out += fmt::format("{} of month {} at {}, from ship reports",
                     answers.weather == "variable" ? "Weather that varies about the means" : "Mean weather",
                     month, place.words);
  constexpr double near_km = 200;
  if (climate->farthest_km > near_km)
    out += fmt::format("; the nearest {} is {:.0f} km away", climate->farthest, climate->farthest_km);
  constexpr double few_reports_deg = 60;
  if (std::abs(place.point.latitude_deg) > few_reports_deg)
    out += "; this far from the equator reports are few";
  return out + ". Rain is a law of latitude and may be out by a factor of three.";
}

// States what was answered, and leaves the rest to the defaults.
scenario::Node build(const Answers& answers) {
  const int usual_crew = 4;
  const double usual_days = 5, hours_per_day = 24;
  const int crew = ask(answers.crew, "How many persons", usual_crew);
  if (crew < crew_sizes.low || crew > crew_sizes.high)
    throw BadAnswer(fmt::format("crew of {}: allowed 1 to 100", crew));
  const std::string raft =
      answers.raft ? *answers.raft : ask(answers.raft, "Raft (see bide catalogue rafts)", usual_raft(crew));
  const scenario::RaftKind* kind = scenario::find_raft(raft);
  const std::string pack =
      ask(answers.pack, "Pack (see bide catalogue packs)", kind ? kind->pack : std::string("none"));
  const bool climate_needed = !(answers.air_degC && answers.water_degC && answers.wind_m_s);
  std::string where =
      ask(answers.place, "Place, latitude,longitude or the name of a sea", std::string("Biscay"));
  const std::optional<int> named = take_month(where);
  if (named && (answers.month || answers.season))
    throw BadAnswer("the month is given twice: with the place, and by --month or --season");
  const Place place = place_of(where);
  const int month = named ? *named : month_of(answers, place.point.latitude_deg);
  if (month < months.low || month > months.high)
    throw BadAnswer(fmt::format("month {}: allowed 1 to 12", month));
  const std::optional<climate::Month> climate = climate_of(place, month, climate_needed);
  const double days = ask(answers.days, "Days", usual_days);
  const std::string clothing =
      ask(answers.clothing, "Clothing (see bide catalogue ensembles)", std::string("temperate_sailing"));
  const std::string boarding = ask(answers.boarding, "Boarding: dry, swim or float_free", std::string("dry"));
  const auto& ways = scenario::words_of<scenario::BoardingKind>;
  const auto way = std::find(ways.begin(), ways.end(), boarding);
  if (way == ways.end() || boarding == "none")
    throw BadAnswer(fmt::format("boarding {}: allowed dry, swim or float_free", boarding));
  scenario::Node out = scenario::empty_object();
  put(out, "/format", std::string(scenario::format_word));
  put(out, "/name", answers.name);
  put(out, "/setting", setting_of(answers, place, month, climate));
  put(out, "/start_time_utc", fmt::format("2031-{:02}-15T12:00:00Z", month));
  put(out, "/duration_h", days * hours_per_day);
  put(out, "/position/latitude_deg", place.point.latitude_deg);
  put(out, "/position/longitude_deg", place.point.longitude_deg);
  put_weather(out, answers, climate);
  put(out, "/raft/kind", raft);
  put_crew(out, crew, clothing);
  put(out, "/boarding/kind", boarding);
  put(out, "/stores/pack", pack);
  return out;
}

void check_utf8(const Answers& answers) {
  for (const std::optional<std::string>& each :
       {std::optional(answers.name), answers.raft, answers.pack, answers.place, answers.clothing})
    if (each)
      if (const auto bad = first_byte_not_utf8(*each))
        throw BadAnswer(fmt::format("{}: found byte 0x{:02X} at offset {}, which is not UTF-8", *each,
                                    static_cast<unsigned char>((*each)[*bad]), *bad));
}

int write_new(const Answers& answers) {
  std::string text;
  try {
    check_utf8(answers);
    text = scenario::write_document(build(answers));
  } catch (const BadAnswer& bad) {
    say("bide new: {}\n", bad.what());
    return exit_usage;
  }
  const scenario::Validated result = scenario::validate_text(text, "new scenario", {});
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&result)) {
    complain(*wrong);
    return exit_input_refused;
  }
  const int code = put(text, answers.output, answers.force);
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
  constexpr Allowed<double> any_number{std::numeric_limits<double>::lowest(),
                                       std::numeric_limits<double>::max()};
  command.number("--crew", a.crew, crew_sizes, "Number of persons");
  command.text("--raft", a.raft, "Catalogue key of the raft");
  command.text("--pack", a.pack, "Catalogue key of the pack; the raft's usual one if left out");
  command.text("--place", a.place,
               "\"latitude,longitude\", or a sea, such as Biscay, or \"Biscay in February\"");
  command.word("--weather", a.weather, {"variable", "constant"},
               "Hours that vary about the month, or its means");
  const Argument month = command.number("--month", a.month, months, "In place of the season");
  command
      .word("--season", a.season, {"winter", "spring", "summer", "autumn"},
            "In place of the month, by hemisphere")
      .excludes(month);
  command.number("--days", a.days, any_number, "Days simulated");
  command.text("--clothing", a.clothing, "Catalogue key of what everybody wears");
  command.word("--boarding", a.boarding, {"dry", "swim", "float_free"}, "How the raft is reached");
  command.number("--air", a.air_degC, any_number, "Air temperature in place of the month's, degC");
  command.number("--water", a.water_degC, any_number, "Sea temperature in place of the month's, degC");
  command.number("--wind", a.wind_m_s, any_number, "Wind at 10 m in place of the month's, m/s");
  command.text("--name", a.name, "Title");
  command.text("-o,--output", a.output, "File to write; standard output if left out");
  command.flag("--force", a.force, "Overwrite the file if it exists");
  command.does([answers] { return write_new(*answers); });
}

}  // namespace bide::tool
