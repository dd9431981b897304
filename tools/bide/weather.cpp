// bide weather FILE...: CF NetCDF, and buoys' text beside it, to a weather file of a scenario.
#include <fmt/format.h>

#include <memory>
#include <optional>

#include "bide/core/notice.hpp"
#include "bide/core/time_utc.hpp"
#include "bide/weather/load.hpp"
#include "cf/own_process.hpp"
#include "cf/reader.hpp"
#include "cf/refused.hpp"
#include "commands.hpp"
#include "files.hpp"
#include "output.hpp"
#include "point.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

namespace fs = std::filesystem;

static_assert(scenario::usual_longest_gap_h == 3);  // as the text says
constexpr std::string_view long_help =
    "What is read\n"
    "  NetCDF with latitude and longitude in one dimension each and a time of the real calendar (`time` or\n"
    "  `valid_time`), by the CF conventions: air temperature, dew point or relative humidity, sea "
    "temperature,\n"
    "  wind (speed, or eastward and northward), pressure, cloud, rain, wave height, wave period. Variables "
    "are\n"
    "  known by their names in the common reanalyses and climate models (t2m, d2m, sst, u10, v10, msl, tcc, "
    "tp,\n"
    "  swh, mp2, mwp; tas, hurs, tos, uas, vas, sfcWind, psl, clt, pr), else by their CF standard names. "
    "Files\n"
    "  may hold different variables, times or grids. Grids in two dimensions, levels and members are "
    "refused.\n"
    "\n"
    "The cell\n"
    "  The nearest cell of the sea: the nearest that has a sea temperature. Air, wind, cloud and rain are "
    "taken\n"
    "  from the cell nearest to that one, waves from the nearest cell that has waves. Each distance is "
    "printed.\n"
    "\n"
    "Rain\n"
    "  Written in mm/h. An amount (tp) becomes the mean rate over the hours up to its row: see --rain.\n"
    "\n"
    "Buoys\n"
    "  A buoy's record (NDBC standard meteorological text) replaces whole columns: each quantity that it "
    "gives\n"
    "  from --from to --to without a gap longer than 3 h comes from the buoy alone, every other from the "
    "grid.\n"
    "  Nothing is mixed within a column. Whether the buoy lies near the place is yours to know.\n"
    "\n"
    "The output\n"
    "  A CSV file for {\"weather\": {\"kind\": \"csv\", \"file\": ...}}. Lines that begin with # say where "
    "each\n"
    "  column comes from. Wind is at 10 m. An empty field is a missing value. What the scenario must state\n"
    "  because the files do not give it is printed.\n";

struct WeatherArguments {
  std::vector<std::string> files;
  std::string place, from, to, rain, output;
  std::optional<double> reach_km, buoy_wind_height_m;
  bool force = false;
};

constexpr double usual_reach_km = 100, usual_buoy_wind_height_m = 5;

struct WrongUsage : std::runtime_error {
  using std::runtime_error::runtime_error;
};

climate::Point place_of(const std::string& text) {
  const std::optional<climate::Point> point = point_in(text);
  if (!point || !on_earth(*point))
    throw WrongUsage(fmt::format(
        "--place: found \"{}\"; allowed \"latitude,longitude\", -90 to 90 and -180 to 180 degrees", text));
  return *point;
}

double time_of(const char* name, const std::string& text) {
  const std::optional<double> time = parse_time_utc(text);
  if (!time)
    throw WrongUsage(
        fmt::format("{}: found \"{}\"; allowed an ISO 8601 time such as 2020-01-31T18:00Z", name, text));
  return *time;
}

cf::RainRule rain_of(const std::string& text) {
  constexpr double longest_h = 8784;  // a leap year
  if (text.empty()) return {};
  if (text == "running") return {true, {}};
  const auto hours = number_in<double>(text);
  if (!hours || !(*hours > 0) || *hours > longest_h)
    throw WrongUsage(fmt::format("--rain: found \"{}\"; allowed \"running\", or hours above 0 and up to {}",
                                 text, longest_h));
  return {false, hours};
}

struct Question {
  cf::Request request;
  cf::RainRule rain;
  std::vector<fs::path> grids, buoys;
};

Question question_of(const WeatherArguments& arguments) {
  Question out;
  out.rain = rain_of(arguments.rain);
  out.request = {place_of(arguments.place),
                 {time_of("--from", arguments.from), time_of("--to", arguments.to)},
                 arguments.reach_km.value_or(usual_reach_km),
                 out.rain.running};
  if (out.request.span.end_unix_s <= out.request.span.begin_unix_s)
    throw WrongUsage(
        fmt::format("--to: found {}; allowed a time after --from, {}", arguments.to, arguments.from));
  for (const std::string& file : arguments.files)
    (cf::is_for_netcdf(file) ? out.grids : out.buoys).emplace_back(file);
  return out;
}

std::vector<cf::Buoy> read_buoys(const std::vector<fs::path>& paths) {
  std::vector<cf::Buoy> out;
  std::string wrong;
  for (const fs::path& path : paths) {
    weather::Parsed parsed = weather::read_observations(path, scenario::WeatherKind::ndbc);
    if (const auto* problems = std::get_if<weather::Problems>(&parsed))
      for (const std::string& each : *problems)
        wrong += fmt::format("{}{}: {}", wrong.empty() ? "" : "\n", path.string(), each);
    else
      out.push_back({path.filename().string(), std::move(std::get<weather::Observations>(parsed))});
  }
  if (!wrong.empty()) throw cf::Refused(wrong);
  return out;
}

// What is read, in sentences for a terminal.
std::string told(const cf::Columns& columns) {
  std::string out;
  for (const cf::Column& column : columns.columns)
    for (const std::string& origin : column.origin)
      out += fmt::format("{}: {}\n", weather::facts(column.quantity).words, origin);
  for (const std::string& note : columns.notes) out += "note: " + note + "\n";
  for (const std::string& each : cf::left_to_the_scenario(columns)) out += "note: " + each + "\n";
  return out;
}

int make(const WeatherArguments& arguments, const Question& question, Watched& watched) {
  try {
    cf::Reading reading =
        cf::read(question.grids, question.request, [&](std::size_t file) { watched.at(file); });
    const cf::Span& span = question.request.span;
    cf::Columns columns = cf::columns_of(reading.series, span, question.rain);
    columns.notes.insert(columns.notes.begin(), reading.notes.begin(), reading.notes.end());
    cf::take_buoys(columns, read_buoys(question.buoys),
                   arguments.buoy_wind_height_m.value_or(usual_buoy_wind_height_m), span);
    std::vector<std::string> comments{
        fmt::format("weather at latitude {}, longitude {}, {} to {}, by bide weather",
                    question.request.place.latitude_deg, question.request.place.longitude_deg,
                    format_time_utc(span.begin_unix_s), format_time_utc(span.end_unix_s)),
        "wind at 10 m; an amount of rain is the mean rate over the hours up to its row; an empty field is a "
        "missing value"};
    for (const std::string& file : reading.files) comments.push_back("file " + file);
    const int code = put(cf::to_csv(columns, comments), arguments.output, arguments.force);
    if (code == exit_ok) say_text(told(columns));
    return code;
  } catch (const cf::Refused& wrong) {
    say("{}\n", wrong.what());
    return exit_input_refused;
  } catch (const std::exception& fault) {  // it would not leave this process
    say("bide: {}\n", fault.what());
    return exit_run_failed;
  }
}

int weather_file(const WeatherArguments& arguments) {
  Question question;
  try {
    question = question_of(arguments);
  } catch (const WrongUsage& wrong) {
    say("bide weather: {}\n", wrong.what());
    return exit_usage;
  }
  if (question.grids.empty()) {
    say("bide weather: found no NetCDF file; allowed one or more, and buoys' text beside them (a scenario "
        "reads a "
        "buoy's text by itself: weather of kind \"ndbc\")\n");
    return exit_usage;
  }
  Files files;
  for (const std::string& file : arguments.files) files.read.emplace_back(file);
  if (arguments.output != "-") files.written.emplace_back(arguments.output);
  if (const int code = check(files); code != exit_ok) return code;
  // A damaged file can crash the library that reads it, or keep it busy for ever.
  const auto end = in_own_process([&](Watched& watched) { return make(arguments, question, watched); });
  if (const int* code = std::get_if<int>(&end)) return *code;
  const Died& died = std::get<Died>(end);
  say("{}: is damaged: the NetCDF library failed on it ({}); allowed a whole NetCDF file\n",
      question.grids[died.thing].string(), died.how);
  return exit_input_refused;
}

}  // namespace

void add_weather(Program& program) {
  auto arguments = std::make_shared<WeatherArguments>();
  WeatherArguments& a = *arguments;
  Command command = program.command(
      "weather", "Write a weather file for one place from NetCDF files of a reanalysis or a climate model");
  command.texts("files", a.files, "NetCDF files (by the CF conventions), and text files of buoys").required();
  command.text("--place", a.place, "\"latitude,longitude\" in degrees, north and east above 0").required();
  command.text("--from", a.from, "First time needed, such as 2020-01-01T00:00Z").required();
  command.text("--to", a.to, "Last time needed").required();
  constexpr Allowed<double> reaches_km{1, 1000}, heights_m{1, 20};
  command.number("--reach", a.reach_km, reaches_km,
                 "Farthest that a cell may lie from the place, km; 100 if left out");
  command.text(
      "--rain", a.rain,
      "Over how many hours each amount of rain was accumulated (1 in an hourly reanalysis, whatever the step "
      "of the file), or \"running\" for a total that grows from a start. Left out: by the file's bounds of "
      "time, or 1 where its times are an hour apart");
  command.number("--buoy-wind-height", a.buoy_wind_height_m, heights_m,
                 "Height of a buoy's wind, m; 5 if left out. It is brought to 10 m by a logarithmic profile");
  command.text("-o,--output", a.output, "File to write; standard output if left out");
  command.flag("--force", a.force, "Overwrite the file if it exists");
  command.footer(fmt::format("{}\n{}", long_help, standing_notice));
  command.does([arguments] { return weather_file(*arguments); });
}

}  // namespace bide::tool
