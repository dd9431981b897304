// Monthly climate of any place at sea, from a packed climatology.
//
// States: none. Inputs: a place and a month. Outputs: means of the nearest cell where ships reported, and how
// far off it is. Validity: means of many years of ship reports on a grid of 2 degrees; beyond 60 degrees of
// latitude reports are few, and most come from summer. Nothing of a single storm or calm is in them. Source:
// scenarios/catalogue/climate.bin, whose head names the data sets; tools/climate/make makes it.
#pragma once

#include <optional>
#include <string_view>

namespace bide::climate {

struct Point {
  double latitude_deg, longitude_deg;  // [-90, 90], [-180, 180]

  bool operator==(const Point&) const = default;
};

// Great-circle distance on a sphere of 6371 km, km.
double distance_km(const Point& a, const Point& b);

// In the order of the packed file.
enum class Field {
  sea_temperature,    // degC
  air_temperature,    // degC
  relative_humidity,  // pct
  wind_speed,         // mean of the speed at ship height, m/s
  vector_wind,        // speed of the mean wind vector, m/s
  cloud_cover,        // fraction
  pressure            // at sea level, hPa
};

struct Mean {
  double value;        // in the field's unit
  double distance_km;  // from the place to the middle of the cell it was taken from
};

// Mean of one field in the nearest cell that has one.
// @param month    1 to 12
// @param reach_km cells farther off are not taken, km
// @return empty when no cell within reach has a mean
std::optional<Mean> mean(Field field, const Point& place, int month, double reach_km);

// Whether the place is land, by relief averaged over cells of a third of a degree: small islands and narrow
// straits are not seen, land below sea level counts as sea.
bool is_land(const Point& place);
// Middle of the nearest cell of the relief that is sea; the place itself when that is sea.
Point nearest_sea(const Point& place);

// What the packed file says about its data.
std::string_view notice();

}  // namespace bide::climate
