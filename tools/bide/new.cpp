// bide new: writes a scenario from the catalogue, a climate table and a few answers or flags.
#include <fmt/core.h>
#include <unistd.h>

#include <array>
#include <charconv>
#include <functional>
#include <iostream>
#include <limits>
#include <memory>
#include <optional>

#include "bide/core/notice.hpp"
#include "bide/core/printable.hpp"
#include "bide/scenario/sea_areas.hpp"
#include "bide/scenario/words.hpp"
#include "bide/scenario/write.hpp"
#include "commands.hpp"
#include "output.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

constexpr Allowed<int> crew_sizes{1, 100}, months{1, 12};

struct Answers {
  std::optional<int> crew, month;
  std::optional<double> days;
  std::optional<std::string> raft, pack, place, season, clothing, boarding;
  std::optional<double> air_degC, water_degC, wind_m_s;
  std::string name = "unnamed scenario", output;
  bool force = false;
};

// An answer that cannot be used; what() says why.
struct BadAnswer : std::runtime_error {
  using std::runtime_error::runtime_error;
};

template <class T>
std::optional<T> number_in(std::string_view text) {
  T value{};
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return value;
}

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
  double latitude_deg = 0, longitude_deg = 0;
  const scenario::SeaArea* area = nullptr;  // its climate; null when every quantity was given
  std::string words;
};

std::string area_keys() {
  std::string out;
  for (const scenario::SeaArea& area : scenario::sea_areas()) out += (out.empty() ? "" : ", ") + area.key;
  return out;
}

Place place_of(const std::string& text, bool climate_needed) {
  if (const scenario::SeaArea* area = scenario::find_sea_area(text))
    return {area->latitude_deg, area->longitude_deg, area, area->title};
  const std::size_t comma = text.find(',');
  const std::size_t second = comma == std::string::npos ? comma : text.find_first_not_of(' ', comma + 1);
  if (second == std::string::npos)
    throw BadAnswer(fmt::format("place {}: give \"latitude,longitude\" or one of {}", text, area_keys()));
  const auto latitude = number_in<double>(std::string_view(text).substr(0, comma));
  const auto longitude = number_in<double>(std::string_view(text).substr(second));
  if (!latitude || !longitude || !(std::abs(*latitude) <= 90) || !(std::abs(*longitude) <= 180))
    throw BadAnswer(fmt::format("place {}: latitude is -90 to 90, longitude -180 to 180", text));
  if (!climate_needed) return {*latitude, *longitude, nullptr, "open sea"};
  constexpr double reach_km = 1000;  // beyond this the table says little about the place
  const scenario::NearestArea nearest = scenario::nearest_sea_area(*latitude, *longitude);
  if (nearest.distance_km > reach_km)
    throw BadAnswer(
        fmt::format("place {}: the nearest climate table is {:.0f} km off; give --air, --water and --wind",
                    text, nearest.distance_km));
  return {*latitude, *longitude, nearest.area,
          fmt::format("{}, table {:.0f} km away", nearest.area->title, nearest.distance_km)};
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
std::vector<scenario::Person> crew_of(int persons, const std::string& clothing) {
  scenario::Person woman, man;
  woman.sex = scenario::Sex::female;
  woman.height_m = 1.62;
  woman.mass_kg = 75.6;
  man.height_m = 1.76;
  man.mass_kg = 88.6;
  woman.age_years = man.age_years = 40;
  woman.clothing = man.clothing = clothing;
  std::vector<scenario::Person> crew;
  for (int i = 0; i < persons; ++i) crew.push_back(i % 2 == 0 ? man : woman);
  return crew;
}

scenario::Weather weather_of(const Answers& answers, const Place& place, int month) {
  scenario::Weather weather;
  const auto index = static_cast<std::size_t>(month - 1);
  if (const scenario::SeaArea* area = place.area) {
    weather.air_temperature_degC = area->air_temperature_degC[index];
    weather.water_temperature_degC = area->water_temperature_degC[index];
    weather.wind_speed_m_s = area->wind_speed_m_s[index];
    weather.relative_humidity_pct = area->relative_humidity_pct[index];
    weather.pressure_hPa = area->pressure_hPa[index];
    weather.cloud_cover_fraction = area->cloud_cover_fraction[index];
  }
  if (answers.air_degC) weather.air_temperature_degC = answers.air_degC;
  if (answers.water_degC) weather.water_temperature_degC = answers.water_degC;
  if (answers.wind_m_s) weather.wind_speed_m_s = answers.wind_m_s;
  return weather;
}

scenario::Scenario build(const Answers& answers) {
  scenario::Scenario out;
  const int usual_crew = 4;
  const double usual_days = 5, hours_per_day = 24;
  const int crew = ask(answers.crew, "How many persons", usual_crew);
  if (crew < crew_sizes.low || crew > crew_sizes.high)
    throw BadAnswer(fmt::format("crew of {}: allowed 1 to 100", crew));
  scenario::Raft raft;
  raft.kind =
      answers.raft ? *answers.raft : ask(answers.raft, "Raft (see bide catalogue rafts)", usual_raft(crew));
  const scenario::RaftKind* kind = scenario::find_raft(raft.kind);
  out.stores.pack =
      ask(answers.pack, "Pack (see bide catalogue packs)", kind ? kind->pack : std::string("none"));
  const bool climate_needed = !(answers.air_degC && answers.water_degC && answers.wind_m_s);
  const Place place = place_of(
      ask(answers.place, "Place, latitude,longitude or one of " + area_keys(), std::string("northern_ocean")),
      climate_needed);
  const int month = month_of(answers, place.latitude_deg);
  if (month < months.low || month > months.high)
    throw BadAnswer(fmt::format("month {}: allowed 1 to 12", month));
  const double days = ask(answers.days, "Days", usual_days);
  const std::string clothing =
      ask(answers.clothing, "Clothing (see bide catalogue ensembles)", std::string("temperate_sailing"));
  const std::string boarding = ask(answers.boarding, "Boarding: dry, swim or float_free", std::string("dry"));
  const auto& ways = scenario::words_of<scenario::BoardingKind>;
  const auto way = std::find(ways.begin(), ways.end(), boarding);
  if (way == ways.end() || boarding == "none")
    throw BadAnswer(fmt::format("boarding {}: allowed dry, swim or float_free", boarding));
  out.boarding.kind = static_cast<scenario::BoardingKind>(way - ways.begin());
  out.name = answers.name;
  out.setting = place.area ? fmt::format("Invented. Mean weather of month {} by ship climatology: {}.", month,
                                         place.words)
                           : "Invented. Steady weather as given.";
  out.start_time_utc = fmt::format("2031-{:02}-15T12:00:00Z", month);
  out.duration_h = days * hours_per_day;
  out.position = {place.latitude_deg, place.longitude_deg};
  out.weather = weather_of(answers, place, month);
  out.raft = raft;
  out.crew = crew_of(crew, clothing);
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
    text = scenario::write_scenario(build(answers));
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
  command.text("--place", a.place, "\"latitude,longitude\" or one of " + area_keys());
  const Argument month = command.number("--month", a.month, months, "In place of the season");
  command
      .word("--season", a.season, {"winter", "spring", "summer", "autumn"},
            "In place of the month, by hemisphere")
      .excludes(month);
  command.number("--days", a.days, any_number, "Days simulated");
  command.text("--clothing", a.clothing, "Catalogue key of what everybody wears");
  command.word("--boarding", a.boarding, {"dry", "swim", "float_free"}, "How the raft is reached");
  command.number("--air", a.air_degC, any_number, "Air temperature in place of the table's, degC");
  command.number("--water", a.water_degC, any_number, "Sea temperature in place of the table's, degC");
  command.number("--wind", a.wind_m_s, any_number, "Wind at 10 m in place of the table's, m/s");
  command.text("--name", a.name, "Title");
  command.text("-o,--output", a.output, "File to write; standard output if left out");
  command.flag("--force", a.force, "Overwrite the file if it exists");
  command.does([answers] { return write_new(*answers); });
}

}  // namespace bide::tool
