#include "bide/weather/load.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <numbers>

#include "bide/constants/weather.hpp"
#include "bide/core/interpolate.hpp"
#include "bide/core/moist_air.hpp"
#include "bide/core/units.hpp"
#include "bide/weather/csv.hpp"
#include "bide/weather/gaps.hpp"
#include "bide/weather/ndbc.hpp"
#include "bide/weather/sun.hpp"
#include "bide/weather/variable.hpp"

namespace bide::weather {
namespace {

using scenario::Diagnostics;
using scenario::WeatherKind;

constexpr double pascals_per_hPa = 100;

double rain_kg_m2_s(double mm_h) {
  return mm_h / hour_s;
}  // 1 mm is 1 kg/m2

SeaState sea_of(const scenario::SteadyWeather& weather) {
  SeaState sea = fully_developed_sea(weather.wind_speed_m_s);
  if (weather.wave_height_m) sea = {*weather.wave_height_m, period_of_height_s(*weather.wave_height_m)};
  if (weather.wave_period_s) sea.wave_period_s = *weather.wave_period_s;
  return sea;
}

// The air temperature of a daily cycle above its mean; a steady one has none.
// @param hour local solar time, h
double swing_K(const scenario::SteadyWeather&, double) {
  return 0;
}
double swing_K(const scenario::DailyWeather& weather, double hour) {
  const double phase = (hour - weather.warmest_hour_local_h) * (2 * std::numbers::pi / day_h);
  return weather.air_temperature_swing_K * std::cos(phase);
}

double local_hour(const Site& site, double t_s, const SunPosition& sun) {
  return solar_hour(site.start_unix_s + t_s, site.longitude_deg, sun.equation_of_time_min);
}

// Everything follows from the numbers in the scenario.
template <class W>
Record stated_weather(const W& weather, const Site& site, const SunTrack& track) {
  Atmosphere steady{};
  steady.water_temperature_degC = weather.water_temperature_degC;
  steady.wind_10m_m_s = weather.wind_speed_m_s;
  steady.pressure_Pa = pascals_per_hPa * weather.pressure_hPa;
  steady.cloud_cover_fraction = weather.cloud_cover_fraction;
  steady.rain_kg_m2_s = rain_kg_m2_s(weather.rain_mm_h);
  steady.sea = sea_of(weather);
  const double humidity = weather.relative_humidity_pct / pct;

  std::vector<std::string> notes;
  if (!weather.wave_height_m) notes.push_back("wave height: that of a fully developed sea of the wind");
  if (!weather.wave_period_s) notes.push_back("wave period: that of a fully developed sea");
  return RecordBuilder::build(
      site, track, {},
      [&](double t_s, const SunPosition& sun) {
        Atmosphere air = steady;
        air.air_temperature_degC =
            weather.air_temperature_degC + swing_K(weather, local_hour(site, t_s, sun));
        air.vapour_pressure_Pa = humidity * saturation_pressure_Pa(air.air_temperature_degC);
        return air;
      },
      std::move(notes));
}

// Text of the file, or what is wrong with it.
std::variant<std::string, Problems> read_text(const std::filesystem::path& path) {
  constexpr std::uintmax_t largest_bytes = std::uintmax_t{64} << 20U;
  std::error_code error;
  if (!std::filesystem::is_regular_file(path, error)) return Problems{"is no file that can be read"};
  const std::uintmax_t size = std::filesystem::file_size(path, error);
  if (error || size > largest_bytes)
    return Problems{fmt::format("is larger than {} MiB", largest_bytes >> 20U)};
  std::string text(size, '\0');
  std::ifstream in(path, std::ios::binary);
  in.read(text.data(), static_cast<std::streamsize>(size));
  if (!in) return Problems{"cannot be read"};
  return text;
}

// Times of all samples, in seconds of the run.
void append_times(std::vector<double>& times_s, const Samples& samples, const Site& site) {
  for (double unix_s : samples.unix_s) times_s.push_back(unix_s - site.start_unix_s);
}

double value_at(const Samples& samples, double unix_s) {
  return interpolate_linear(samples.unix_s, samples.value, unix_s);
}

// A file's quantities over the run, every gap filled.
struct Columns {
  Samples air, water, dew, humidity, wind, pressure, cloud, rain, wave_height, wave_period;
};

std::variant<Columns, Problems> fill_columns(const Observations& file, const scenario::FileWeather& weather,
                                             Span run, std::vector<std::string>& notes) {
  Problems problems;
  const scenario::WeatherFallback& fallback = weather.fallback;
  const GapRule rule{weather.longest_gap_h * hour_s, file.usual_step_s, std::nullopt};
  const auto fill = [&](Quantity q, const Samples& samples, std::optional<double> value) {
    Filled filled = fill_gaps(q, samples, run, {rule.longest_gap_s, rule.usual_step_s, value});
    problems.insert(problems.end(), filled.problems.begin(), filled.problems.end());
    notes.insert(notes.end(), filled.notes.begin(), filled.notes.end());
    return filled.samples;
  };
  // Cloud and rain are stated in the scenario when the file has no such column.
  const auto or_stated = [&](Quantity q, double value) {
    return fill(q, file[q], file[q].unix_s.empty() ? std::optional(value) : std::nullopt);
  };
  Columns c;
  c.air = fill(Quantity::air_temperature, file[Quantity::air_temperature], fallback.air_temperature_degC);
  c.water =
      fill(Quantity::water_temperature, file[Quantity::water_temperature], fallback.water_temperature_degC);
  if (file[Quantity::relative_humidity].unix_s.empty())
    c.dew = fill(Quantity::dew_point, file[Quantity::dew_point], fallback.dew_point_degC);
  else
    c.humidity = fill(Quantity::relative_humidity, file[Quantity::relative_humidity], std::nullopt);
  Samples wind = file[Quantity::wind_speed];
  for (double& speed : wind.value)
    speed = wind_at_height_m_s(speed, weather.anemometer_height_m, constants::wind_reference_height_m);
  c.wind = fill(Quantity::wind_speed, wind, fallback.wind_speed_m_s);
  const Samples& pressure = file[Quantity::pressure];
  std::optional<double> pressure_hPa = fallback.pressure_hPa;
  if (!pressure_hPa && pressure.unix_s.empty())
    pressure_hPa = constants::standard_pressure_Pa / pascals_per_hPa;
  c.pressure = fill(Quantity::pressure, pressure, pressure_hPa);
  c.cloud = or_stated(Quantity::cloud_cover, weather.cloud_cover_fraction);
  c.rain = or_stated(Quantity::rain, weather.rain_mm_h);
  if (!problems.empty()) return problems;
  FilledWaves waves = fill_waves(file[Quantity::wave_height], file[Quantity::wave_period], c.wind, run, rule);
  notes.insert(notes.end(), waves.notes.begin(), waves.notes.end());
  c.wave_height = std::move(waves.height);
  c.wave_period = std::move(waves.period);
  return c;
}

void note_dew_above_air(const Columns& c, Span run, std::vector<std::string>& notes) {
  int above = 0;
  for (std::size_t i = 0; i < c.dew.unix_s.size(); ++i)
    if (c.dew.unix_s[i] >= run.begin_unix_s && c.dew.unix_s[i] <= run.end_unix_s &&
        c.dew.value[i] > value_at(c.air, c.dew.unix_s[i]))
      ++above;
  if (above > 0)
    notes.push_back(fmt::format("dew point: {} values above air temperature, taken as saturation", above));
}

// @param warmer_K by the hour of the day
Atmosphere atmosphere_of(const Hour& before, const Hour& after, double share,
                         const scenario::VariableWeather& weather, double warmer_K) {
  const auto between = [&](double Hour::*number) {
    return before.*number + share * (after.*number - before.*number);
  };
  Atmosphere air{};
  air.air_temperature_degC = between(&Hour::air_temperature_degC) + warmer_K;
  air.water_temperature_degC = weather.water_temperature_degC;
  air.vapour_pressure_Pa =
      saturation_pressure_Pa(air.air_temperature_degC) * between(&Hour::relative_humidity_pct) / pct;
  air.wind_10m_m_s = between(&Hour::wind_10m_m_s);
  air.pressure_Pa = pascals_per_hPa * weather.pressure_hPa;
  air.cloud_cover_fraction = between(&Hour::cloud_cover_fraction);
  air.rain_kg_m2_s = rain_kg_m2_s(between(&Hour::rain_mm_h));
  air.sea = before.sea;  // waves change by the hour
  return air;
}

Record varying_weather(const scenario::VariableWeather& weather, const Site& site, const SunTrack& track) {
  const std::vector<Hour> hours = variable_hours(weather, site.duration_s);
  std::vector<double> times_s;
  for (std::size_t i = 0; i < hours.size(); ++i) times_s.push_back(hour_s * static_cast<double>(i));
  return RecordBuilder::build(
      site, track, std::move(times_s),
      [&](double t_s, const SunPosition& sun) {
        const double hour = std::clamp(t_s / hour_s, 0.0, static_cast<double>(hours.size() - 1));
        const std::size_t i = std::min(static_cast<std::size_t>(hour), hours.size() - 2);
        return atmosphere_of(hours[i], hours[i + 1], hour - static_cast<double>(i), weather,
                             swing_K(weather, local_hour(site, t_s, sun)));
      },
      {fmt::format("weather: one of many that the month may bring (seed {}); another would differ",
                   weather.seed)});
}

}  // namespace

std::variant<Record, Problems> record_of(const Observations& file, const scenario::FileWeather& weather,
                                         const Site& site, const SunTrack& sun) {
  const Span run{site.start_unix_s, site.start_unix_s + site.duration_s};
  if (const std::optional<std::string> problem = coverage_problem(file, run)) return Problems{*problem};
  std::vector<std::string> notes = file.notes;
  std::variant<Columns, Problems> filled = fill_columns(file, weather, run, notes);
  if (Problems* problems = std::get_if<Problems>(&filled)) return std::move(*problems);
  const Columns& c = std::get<Columns>(filled);
  note_dew_above_air(c, run, notes);

  std::vector<double> times_s;
  for (const Samples* s : {&c.air, &c.water, &c.dew, &c.humidity, &c.wind, &c.pressure, &c.cloud, &c.rain,
                           &c.wave_height, &c.wave_period})
    append_times(times_s, *s, site);
  return RecordBuilder::build(
      site, sun, std::move(times_s),
      [&](double t_s, const SunPosition&) {
        const double now = site.start_unix_s + t_s;
        Atmosphere air{};
        air.air_temperature_degC = value_at(c.air, now);
        air.water_temperature_degC = value_at(c.water, now);
        const double saturated_Pa = saturation_pressure_Pa(air.air_temperature_degC);
        const double vapour_Pa = c.humidity.unix_s.empty() ? saturation_pressure_Pa(value_at(c.dew, now))
                                                           : saturated_Pa * value_at(c.humidity, now) / pct;
        air.vapour_pressure_Pa = std::min(vapour_Pa, saturated_Pa);
        air.wind_10m_m_s = value_at(c.wind, now);
        air.pressure_Pa = pascals_per_hPa * value_at(c.pressure, now);
        air.cloud_cover_fraction = value_at(c.cloud, now);
        air.rain_kg_m2_s = rain_kg_m2_s(value_at(c.rain, now));
        air.sea = {value_at(c.wave_height, now), value_at(c.wave_period, now)};
        return air;
      },
      std::move(notes));
}

Parsed read_observations(const std::filesystem::path& file, WeatherKind kind) {
  std::variant<std::string, Problems> text = read_text(file);
  if (Problems* problems = std::get_if<Problems>(&text)) return std::move(*problems);
  const std::string& content = std::get<std::string>(text);
  return observations(kind == WeatherKind::ndbc ? parse_ndbc(content) : parse_weather_csv(content));
}

std::variant<Record, Diagnostics> load_weather(const scenario::ResolvedWeather& weather, const Site& site,
                                               const std::filesystem::path& folder) {
  return load_weather(weather, site, folder, sun_track(site),
                      [](const std::filesystem::path& file, WeatherKind kind) {
                        return std::make_shared<const Parsed>(read_observations(file, kind));
                      });
}

std::variant<Record, Diagnostics> load_weather(const scenario::ResolvedWeather& weather, const Site& site,
                                               const std::filesystem::path& folder, const SunTrack& sun,
                                               const ParsedFile& parsed) {
  if (const auto* steady = std::get_if<scenario::SteadyWeather>(&weather))
    return stated_weather(*steady, site, sun);
  if (const auto* daily = std::get_if<scenario::DailyWeather>(&weather))
    return stated_weather(*daily, site, sun);
  if (const auto* variable = std::get_if<scenario::VariableWeather>(&weather))
    return varying_weather(*variable, site, sun);
  const auto& stated = std::get<scenario::FileWeather>(weather);
  const auto refused = [&](const Problems& problems) {
    Diagnostics out;
    for (const std::string& problem : problems)
      out.push_back({{}, "/weather/file", fmt::format("{}: {}", stated.file, problem)});
    return out;
  };
  const std::shared_ptr<const Parsed> file = parsed(folder / std::filesystem::path(stated.file), stated.kind);
  if (const Problems* problems = std::get_if<Problems>(file.get())) return refused(*problems);
  std::variant<Record, Problems> record = record_of(std::get<Observations>(*file), stated, site, sun);
  if (const Problems* problems = std::get_if<Problems>(&record)) return refused(*problems);
  return std::get<Record>(std::move(record));
}

double following_length_m(const scenario::ValidScenario& valid) {
  if (valid.raft_kind == nullptr) return constants::floater_length_m;
  const scenario::Raft& raft = valid.scenario.raft.value();
  return 2 * std::sqrt(raft.floor_area_m2 / std::numbers::pi);
}

Site site_of(const scenario::ValidScenario& valid) {
  return {valid.start_unix_s, valid.scenario.duration_h * hour_s, valid.scenario.position.latitude_deg,
          valid.scenario.position.longitude_deg, following_length_m(valid)};
}

std::variant<Record, Diagnostics> load(const scenario::ValidScenario& valid) {
  std::variant<Record, Diagnostics> loaded = load_weather(valid.weather, site_of(valid), valid.folder);
  if (Diagnostics* problems = std::get_if<Diagnostics>(&loaded))
    for (scenario::Diagnostic& problem : *problems) problem.file = valid.file;
  return loaded;
}

}  // namespace bide::weather
