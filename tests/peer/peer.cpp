// Prints moist air and the sun over a grid of inputs, one line each, for comparison with public libraries.
#include <fmt/format.h>

#include "bide/core/moist_air.hpp"
#include "bide/core/units.hpp"
#include "bide/weather/sun.hpp"

namespace {

// air: degC, relative humidity, pressure, then what the engine makes of them.
void print_air() {
  using namespace bide;
  for (int t_degC = -20; t_degC <= 45; t_degC += 5)
    for (const double humidity : {0.1, 0.5, 0.95})
      for (const double pressure_Pa : {98000.0, 101325.0}) {
        const double t = t_degC + 0.25;  // off the triple point, where water and ice part
        const double reference_Pa = saturation_pressure_hyland_wexler_Pa(t);
        const double vapour_Pa = humidity * saturation_pressure_Pa(t);
        fmt::print("air {} {} {} {:.12g} {:.12g} {:.12g} {:.12g} {:.12g} {:.12g}\n", t, humidity, pressure_Pa,
                   reference_Pa, saturation_pressure_Pa(t), vapour_Pa, dew_point_degC(vapour_Pa),
                   humidity_ratio_kg_kg(vapour_Pa, pressure_Pa),
                   air_density_kg_m3(t, pressure_Pa, vapour_Pa));
      }
}

// sun: time, place, then apparent elevation and azimuth. day: the same, then rise, noon and set.
void print_sun() {
  using namespace bide;
  using namespace bide::weather;
  constexpr double start_unix_s = 1924992000;  // 2031-01-01 00:00 UTC
  constexpr double degrees_per_hour = 15;
  for (int day = 0; day < 365; day += 13)
    for (const double latitude_deg : {-72.0, -45.0, -10.0, 0.5, 23.4, 52.0, 60.0, 80.0})
      for (const double longitude_deg : {-150.0, -25.0, 0.0, 25.0, 120.0}) {
        for (double hour = 0; hour < 24; hour += 5) {
          const double unix_s = start_unix_s + day * day_s + hour * hour_s;
          const SunPosition sun = sun_position(unix_s, latitude_deg, longitude_deg);
          fmt::print("sun {:.0f} {} {} {:.9f} {:.9f}\n", unix_s, latitude_deg, longitude_deg,
                     sun.apparent_elevation_deg, sun.azimuth_deg);
        }
        const double noon_s = start_unix_s + day * day_s + (12 - longitude_deg / degrees_per_hour) * hour_s;
        const DayArc arc = day_arc(noon_s, latitude_deg, longitude_deg);
        if (arc.kind == DayKind::rises_and_sets)
          fmt::print("day {:.0f} {} {} {:.3f} {:.3f} {:.3f}\n", noon_s, latitude_deg, longitude_deg,
                     arc.rise_unix_s, arc.transit_unix_s, arc.set_unix_s);
      }
}

}  // namespace

int main() {
  print_air();
  print_sun();
}
