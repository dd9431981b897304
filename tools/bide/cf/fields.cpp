#include "fields.hpp"

#include <algorithm>

#include "bide/core/moist_air.hpp"
#include "bide/core/units.hpp"
#include "refused.hpp"

namespace bide::tool::cf {
namespace {

constexpr double anywhere_m = 1e9, near_surface_m = 10, reported_wind_m = 10;

enum class Kind { temperature, speed, pressure, share, percent, length, time, amount, rate };

Kind kind_of(Field field) {
  switch (field) {
    case Field::air_temperature:
    case Field::dew_point:
    case Field::sea_temperature:
      return Kind::temperature;
    case Field::relative_humidity:
      return Kind::percent;
    case Field::wind_east:
    case Field::wind_north:
    case Field::wind_speed:
      return Kind::speed;
    case Field::pressure:
      return Kind::pressure;
    case Field::cloud:
      return Kind::share;
    case Field::rain_rate:
      return Kind::rate;
    case Field::rain_amount:
      return Kind::amount;
    case Field::wave_height:
      return Kind::length;
    case Field::wave_period:
    case Field::wave_period_energy:
      return Kind::time;
  }
  return Kind::share;
}

struct UnitName {
  Kind kind;
  std::string_view name;  // without blanks and asterisks
  Linear to_ours;
};

constexpr double kelvin = -constants::zero_celsius_K, hPa_per_Pa = 0.01, hPa_per_kPa = 10, mm_per_m = 1000;
// International knot: 1852 m an hour, exactly.
constexpr double knot_m_s = 1852 / hour_s;
// 1 kg/m2 of water is 1 mm.
const UnitName unit_names[] = {
    {Kind::temperature, "K", {1, kelvin}},
    {Kind::temperature, "kelvin", {1, kelvin}},
    {Kind::temperature, "Kelvin", {1, kelvin}},
    {Kind::temperature, "degC", {}},
    {Kind::temperature, "deg_C", {}},
    {Kind::temperature, "C", {}},
    {Kind::temperature, "celsius", {}},
    {Kind::temperature, "Celsius", {}},
    {Kind::temperature, "degree_Celsius", {}},
    {Kind::temperature, "degrees_Celsius", {}},
    {Kind::temperature, "degrees_celsius", {}},
    {Kind::speed, "ms-1", {}},
    {Kind::speed, "m/s", {}},
    {Kind::speed, "meters/second", {}},
    {Kind::speed, "knots", {knot_m_s, 0}},
    {Kind::speed, "knot", {knot_m_s, 0}},
    {Kind::speed, "kt", {knot_m_s, 0}},
    {Kind::pressure, "Pa", {hPa_per_Pa, 0}},
    {Kind::pressure, "hPa", {}},
    {Kind::pressure, "hectopascals", {}},
    {Kind::pressure, "mbar", {}},
    {Kind::pressure, "millibar", {}},
    {Kind::pressure, "kPa", {hPa_per_kPa, 0}},
    {Kind::share, "1", {}},
    {Kind::share, "(0-1)", {}},
    {Kind::share, "0-1", {}},
    {Kind::share, "fraction", {}},
    {Kind::share, "%", {1 / pct, 0}},
    {Kind::share, "percent", {1 / pct, 0}},
    {Kind::percent, "%", {}},
    {Kind::percent, "percent", {}},
    {Kind::percent, "1", {pct, 0}},
    {Kind::length, "m", {}},
    {Kind::length, "meter", {}},
    {Kind::length, "meters", {}},
    {Kind::length, "metre", {}},
    {Kind::length, "metres", {}},
    {Kind::time, "s", {}},
    {Kind::time, "second", {}},
    {Kind::time, "seconds", {}},
    {Kind::amount, "m", {mm_per_m, 0}},
    {Kind::amount, "mofwaterequivalent", {mm_per_m, 0}},
    {Kind::amount, "mm", {}},
    {Kind::amount, "kgm-2", {}},
    {Kind::rate, "kgm-2s-1", {hour_s, 0}},
    {Kind::rate, "mms-1", {hour_s, 0}},
    {Kind::rate, "mm/s", {hour_s, 0}},
    {Kind::rate, "ms-1", {mm_per_m * hour_s, 0}},
    {Kind::rate, "mmh-1", {}},
    {Kind::rate, "mmhr-1", {}},
    {Kind::rate, "mmhour-1", {}},
    {Kind::rate, "mm/h", {}},
    {Kind::rate, "mm/hr", {}},
    {Kind::rate, "mmday-1", {1 / day_h, 0}},
    {Kind::rate, "mmd-1", {1 / day_h, 0}},
    {Kind::rate, "mm/day", {1 / day_h, 0}},
};

// What is allowed, as people write it.
const char* allowed_units(Kind kind) {
  switch (kind) {
    case Kind::temperature:
      return "K or degC";
    case Kind::speed:
      return "m s-1 or knots";
    case Kind::pressure:
      return "Pa, hPa, mbar or kPa";
    case Kind::share:
      return "1 or %";
    case Kind::percent:
      return "% or 1";
    case Kind::length:
      return "m";
    case Kind::time:
      return "s";
    case Kind::amount:
      return "m, mm or kg m-2";
    case Kind::rate:
      return "kg m-2 s-1, m s-1, mm s-1, mm h-1 or mm day-1";
  }
  return "";
}

}  // namespace

const std::vector<FieldFacts>& fields() {
  static const std::vector<FieldFacts> all{
      {Field::air_temperature,
       "air temperature",
       "degC",
       {"t2m", "2t", "VAR_2T", "tas"},
       {"air_temperature"},
       0,
       near_surface_m},
      {Field::dew_point,
       "dew point",
       "degC",
       {"d2m", "2d", "VAR_2D"},
       {"dew_point_temperature"},
       0,
       near_surface_m},
      {Field::relative_humidity,
       "relative humidity",
       "%",
       {"r2", "2r", "hurs"},
       {"relative_humidity"},
       0,
       near_surface_m},
      {Field::sea_temperature,
       "sea temperature",
       "degC",
       {"sst", "SSTK", "tos"},
       {"sea_surface_temperature", "sea_surface_foundation_temperature", "sea_surface_subskin_temperature"},
       -anywhere_m,
       anywhere_m},
      {Field::wind_east,
       "eastward wind",
       "m/s",
       {"u10", "10u", "VAR_10U", "uas"},
       {"eastward_wind"},
       reported_wind_m,
       reported_wind_m},
      {Field::wind_north,
       "northward wind",
       "m/s",
       {"v10", "10v", "VAR_10V", "vas"},
       {"northward_wind"},
       reported_wind_m,
       reported_wind_m},
      {Field::wind_speed,
       "wind speed",
       "m/s",
       {"si10", "10si", "ws10", "sfcWind"},
       {"wind_speed"},
       reported_wind_m,
       reported_wind_m},
      {Field::pressure,
       "pressure",
       "hPa",
       {"msl", "psl", "sp", "ps"},
       {"air_pressure_at_mean_sea_level", "air_pressure_at_sea_level", "surface_air_pressure"},
       0,
       near_surface_m},
      {Field::cloud,
       "cloud cover",
       "of the sky",
       {"tcc", "clt"},
       {"cloud_area_fraction"},
       -anywhere_m,
       anywhere_m},
      {Field::rain_rate,
       "rain",
       "mm/h",
       {"mtpr", "avg_tprate", "tprate", "pr"},
       {"precipitation_flux", "lwe_precipitation_rate", "rainfall_rate", "rainfall_flux"},
       -anywhere_m,
       anywhere_m},
      {Field::rain_amount,
       "rain",
       "mm",
       {"tp"},
       {"precipitation_amount", "lwe_thickness_of_precipitation_amount", "rainfall_amount"},
       -anywhere_m,
       anywhere_m},
      {Field::wave_height,
       "wave height",
       "m",
       {"swh"},
       {"sea_surface_wave_significant_height"},
       -anywhere_m,
       anywhere_m},
      {Field::wave_period,
       "wave period",
       "s",
       {"mp2"},
       {"sea_surface_wave_zero_upcrossing_period",
        "sea_surface_wave_mean_period_from_variance_spectral_density_second_frequency_moment"},
       -anywhere_m,
       anywhere_m},
      {Field::wave_period_energy,
       "wave period",
       "s",
       {"mwp"},
       {"sea_surface_wave_mean_period_from_variance_spectral_density_inverse_frequency_moment"},
       -anywhere_m,
       anywhere_m},
  };
  return all;
}

const FieldFacts& facts(Field field) {
  return fields()[static_cast<std::size_t>(field)];
}

Linear read_units(Field field, const std::optional<std::string>& units) {
  const Kind kind = kind_of(field);
  if (!units && kind == Kind::share) return {};
  if (!units) refuse("units: missing; allowed {}", allowed_units(kind));
  std::string plain;
  for (const char letter : *units)
    if (letter != ' ' && letter != '*') plain += letter;
  for (const UnitName& each : unit_names)
    if (each.kind == kind && each.name == plain) return each.to_ours;
  refuse("units: found \"{}\"; allowed {}", *units, allowed_units(kind));
}

}  // namespace bide::tool::cf
