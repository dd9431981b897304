// Writes validation/climate.md: the climate of twenty places round the world, how much of the sea has one,
// and how it stands beside published pilot charts.   Usage: bide_places >validation/climate.md
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>
#include <optional>
#include <string>
#include <vector>

#include "bide/climate/month.hpp"
#include "bide/weather/variable.hpp"

namespace {

using bide::climate::Month;
using bide::climate::month_at;
using bide::climate::Point;

struct Place {
  const char* name;
  Point at;
};

constexpr Place places[] = {{"Norwegian Sea", {66, 2}},
                            {"North Sea", {56, 3}},
                            {"Biscay", {46, -6}},
                            {"North Atlantic, middle", {49, -21}},
                            {"Labrador Sea", {56, -50}},
                            {"Gulf of Maine", {43, -69}},
                            {"North Atlantic, trade winds", {10, -30}},
                            {"Gulf of Guinea", {0, 0}},
                            {"South Atlantic, middle", {-35, -20}},
                            {"Drake Passage", {-58, -65}},
                            {"Mediterranean, east", {34, 28}},
                            {"Red Sea", {20, 38}},
                            {"Arabian Sea", {15, 60}},
                            {"Bay of Bengal", {12, 88}},
                            {"South Indian Ocean", {-45, 80}},
                            {"South China Sea", {15, 115}},
                            {"Gulf of Alaska", {56, -145}},
                            {"North Pacific, date line", {40, 180}},
                            {"Pacific, equator at the date line", {0, -179.9}},
                            {"South Pacific, west winds", {-50, -120}}};

std::string position(const Point& p) {
  return fmt::format("{:.0f} {} {:.0f} {}", std::abs(p.latitude_deg), p.latitude_deg < 0 ? 'S' : 'N',
                     std::abs(p.longitude_deg), p.longitude_deg < 0 ? 'W' : 'E');
}

// Mean significant height in 20 years of hours that vary about the month, m.
double waves_m(const Month& m) {
  constexpr double twenty_years_s = 20 * 365.25 * 86400;
  bide::scenario::VariableWeather w{};
  w.wind_speed_m_s = m.wind_speed_m_s;
  w.wind_spread_fraction =
      std::min(m.wind_spread_m_s / m.wind_speed_m_s, bide::constants::no_prevailing_direction.value);
  w.cloud_cover_fraction = m.cloud_cover_fraction;
  double sum = 0;
  const std::vector<bide::weather::Hour> hours = bide::weather::variable_hours(w, twenty_years_s);
  for (const bide::weather::Hour& hour : hours) sum += hour.sea.wave_height_m;
  return sum / static_cast<double>(hours.size());
}

void print_places() {
  fmt::print(
      "| place | position | sea, degC | air, degC | wind, m/s | spread of a component, m/s | cloud, % | "
      "rain, mm/d | waves, m | farthest cell, km |\n|---|---|---|---|---|---|---|---|---|---|\n");
  for (const Place& place : places) {
    const auto january = month_at(place.at, 1), july = month_at(place.at, 7);
    const Month &a = std::get<Month>(january), &b = std::get<Month>(july);
    const auto pair = [&](const char* form, const std::function<double(const Month&)>& of) {
      return fmt::format("{} / {}", fmt::format(fmt::runtime(form), of(a)),
                         fmt::format(fmt::runtime(form), of(b)));
    };
    const Month& far = a.farthest_km > b.farthest_km ? a : b;
    const std::string from =
        far.farthest_km > 0 ? fmt::format("{:.0f} ({})", far.farthest_km, far.farthest) : "0";
    fmt::print("| {} | {} | {} | {} | {} | {} | {} | {} | {} | {} |\n", place.name, position(place.at),
               pair("{:.1f}", [](const Month& m) { return m.sea_temperature_degC; }),
               pair("{:.1f}", [](const Month& m) { return m.air_temperature_degC; }),
               pair("{:.1f}", [](const Month& m) { return m.wind_speed_m_s; }),
               pair("{:.1f}", [](const Month& m) { return m.wind_spread_m_s; }),
               pair("{:.0f}", [](const Month& m) { return 100 * m.cloud_cover_fraction; }),
               pair("{:.1f}", [](const Month& m) { return 24 * m.rain_mm_h; }), pair("{:.1f}", waves_m),
               from);
  }
}

// Per cent of sea area x months that has a climate, between two latitudes of either hemisphere.
double covered_pct(double from_deg, double to_deg) {
  constexpr double step_deg = 4;
  double with = 0, all = 0;
  for (double north = from_deg + step_deg / 2; north < to_deg; north += step_deg)
    for (const double latitude_deg : {north, -north})
      for (double longitude_deg = -180 + step_deg / 2; longitude_deg < 180; longitude_deg += step_deg) {
        const Point place{latitude_deg, longitude_deg};
        if (bide::climate::is_land(place)) continue;
        const double area = std::cos(latitude_deg * std::numbers::pi / 180);
        for (int month = 1; month <= 12; ++month) {
          all += area;
          if (std::holds_alternative<Month>(month_at(place, month))) with += area;
        }
      }
  return 100 * with / all;
}

// What a chart says: a range that the mean should lie in.
struct Published {
  const char* where;
  Point at;
  int month;
  const char* what;
  std::function<double(const Month&)> of;
  double low, high;
  const char* source;
};

constexpr const char* february =
    "Atlas of Pilot Charts, South Pacific Ocean (Pub. 107), February: text of the chart";
constexpr const char* january = "the same atlas, January";
constexpr const char* june = "Ocean Weather Services, Indian Ocean in June, from the pilot chart";

// Beaufort's forces in m/s at 10 m: force 3 from 3.4, 4 from 5.5, 5 from 8.0, 6 from 10.8 to 13.8. Means of
// temperature that the text rounds to a degree are given half of one more on both sides.
const std::vector<Published>& published() {
  static const auto air = [](const Month& m) { return m.air_temperature_degC; };
  static const auto wind = [](const Month& m) { return m.wind_speed_m_s; };
  static const auto pressure = [](const Month& m) { return m.pressure_hPa; };
  static const std::vector<Published> rows = {
      {"Pacific, equator off South America", {0, -85}, 2, "air, degC", air, 24.5, 25.5, february},
      {"Pacific, equator west of 155 W", {0, -170}, 2, "air, degC", air, 28, 29.5, february},
      {"South Pacific, 60 S", {-59.9, -120}, 2, "air, degC", air, 3.5, 5.5, february},
      {"South Pacific, west winds", {-50, -120}, 2, "wind, m/s (force 4 to 5)", wind, 5.5, 10.7, february},
      {"South Pacific, trade winds", {-20, -120}, 2, "wind, m/s (force 3 to 5)", wind, 3.4, 10.7, february},
      {"South Pacific, middle of the high", {-36, -98}, 2, "pressure, hPa", pressure, 1022, 1024, february},
      {"South Pacific, middle of the high", {-35, -93}, 1, "pressure, hPa", pressure, 1024, 1026, january},
      {"South Indian Ocean, 40 S", {-40, 80}, 6, "wind, m/s (force 5 to 6)", wind, 8.0, 13.8, june},
      {"South Indian Ocean, 40 S", {-40, 80}, 6, "waves, m", waves_m, 2, 3, june},
      {"South Indian Ocean, trade winds", {-15, 80}, 6, "wind, m/s (force 4 to 5)", wind, 5.5, 10.7, june},
      {"South Indian Ocean, trade winds", {-15, 80}, 6, "waves, m", waves_m, 1.5, 2, june},
      {"Bay of Bengal", {12, 88}, 6, "wind, m/s (force 4 to 5)", wind, 5.5, 10.7, june},
      {"Bay of Bengal", {12, 88}, 6, "waves, m", waves_m, 1.5, 2, june}};
  return rows;
}

void print_published() {
  fmt::print("| where | position | month | quantity | here | published | within | source |\n");
  fmt::print("|---|---|---|---|---|---|---|---|\n");
  for (const Published& row : published()) {
    const auto found = month_at(row.at, row.month);
    const double here = row.of(std::get<Month>(found));
    fmt::print("| {} | {} | {} | {} | {:.1f} | {:g} to {:g} | {} | {} |\n", row.where, position(row.at),
               row.month, row.what, here, row.low, row.high,
               here >= row.low && here <= row.high ? "yes" : "**no**", row.source);
  }
}

}  // namespace

int main() {
  fmt::print(
      "# The climate of the sea, place by place\n\n"
      "Written by `tools/readme`. Means are those of `bide new --place` (ship reports, "
      "`scenarios/catalogue/climate.bin`); waves are the mean of 20 years of the hours that `variable` "
      "weather "
      "makes of them, without swell from elsewhere; rain follows latitude alone, from memory, and is the "
      "same in "
      "every month. January / July.\n\n");
  print_places();
  fmt::print(
      "\nThe farthest cell is that of the mean that was taken from farthest off, with its name; "
      "clouds were gathered in cells of 4 by 5 degrees.\n\n"
      "Share of sea area x months with a climate: {:.2f} % between 60 N and 60 S, {:.0f} % poleward of "
      "that.\n\n## Beside published charts\n\n"
      "A chart's words are ranges; nothing here was fitted to them.\n\n",
      covered_pct(0, 60), covered_pct(60, 88));
  print_published();
}
