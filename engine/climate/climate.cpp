#include "bide/climate/climate.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <numbers>
#include <stdexcept>
#include <vector>

namespace bide::climate {

// scenarios/catalogue/climate.bin, compiled in.
namespace embedded {
extern const std::string_view climate;
}

namespace {

constexpr double rad = std::numbers::pi / 180;

// One regular grid of the file: middles of its cells.
struct Grid {
  int rows, columns;
  double south_deg, west_deg, step_deg;

  Point middle(int row, int column) const {
    return {south_deg + step_deg * row, std::remainder(west_deg + step_deg * column, 360.0)};
  }
  int row_of(double latitude_deg) const {
    return std::clamp(static_cast<int>(std::lround((latitude_deg - south_deg) / step_deg)), 0, rows - 1);
  }
  int column_of(double longitude_deg) const {
    const int column = static_cast<int>(std::lround((longitude_deg - west_deg) / step_deg)) % columns;
    return column < 0 ? column + columns : column;
  }
};
constexpr Grid means{90, 180, -89, 1, 2};
constexpr Grid relief{540, 1080, -90 + 1.0 / 6, 1.0 / 6, 1.0 / 3};
constexpr int months = 12, fields = 7;
constexpr unsigned char missing = 255;

// The packed file, opened; a file that does not have its layout is a fault of the build.
struct Packed {
  std::string_view notice;
  double low[fields], step[fields];
  const unsigned char *values, *land;
};

class Bytes {
 public:
  explicit Bytes(std::string_view all) : left_(all) {}
  std::string_view take(std::size_t count) {
    if (count > left_.size()) throw std::logic_error("climate.bin: cut short");
    const std::string_view out = left_.substr(0, count);
    left_.remove_prefix(count);
    return out;
  }
  template <class T>
  T number() {
    static_assert(std::endian::native == std::endian::little);
    T out;
    std::memcpy(&out, take(sizeof(T)).data(), sizeof(T));
    return out;
  }
  bool empty() const { return left_.empty(); }

 private:
  std::string_view left_;
};

const unsigned char* bytes_of(std::string_view text) {
  return reinterpret_cast<const unsigned char*>(text.data());
}

Packed open() {
  constexpr std::string_view magic = "bide climate 1\n";
  Bytes all(embedded::climate);
  if (all.take(magic.size()) != magic) throw std::logic_error("climate.bin: another file");
  Packed out{};
  out.notice = all.take(all.number<std::uint32_t>());
  if (all.number<std::uint32_t>() != fields) throw std::logic_error("climate.bin: another number of fields");
  for (int f = 0; f < fields; ++f) {
    out.low[f] = all.number<double>();
    out.step[f] = all.number<double>();
  }
  out.values = bytes_of(all.take(static_cast<std::size_t>(fields) * months * means.rows * means.columns));
  constexpr int bits_per_byte = 8;
  out.land = bytes_of(all.take(static_cast<std::size_t>(relief.rows) * relief.columns / bits_per_byte));
  if (!all.empty()) throw std::logic_error("climate.bin: too long");
  return out;
}

const Packed& packed() {
  static const Packed all = open();
  return all;
}

bool land_cell(int row, int column) {
  constexpr int bits_per_byte = 8;
  const int bit = row * relief.columns + column;
  return (packed().land[bit / bits_per_byte] >> (bit % bits_per_byte)) & 1;
}

// The nearest cell that has what is asked for: `has(row, column)`. Rows are taken outwards from the place's
// own, until they are farther off than what was found.
template <class Has>
std::optional<Point> nearest(const Grid& grid, const Point& place, const Has& has) {
  std::optional<Point> best;
  double best_km = 0;
  const int home = grid.row_of(place.latitude_deg);
  const auto look = [&](int row) {
    if (row < 0 || row >= grid.rows) return;
    for (int column = 0; column < grid.columns; ++column) {
      if (!has(row, column)) continue;
      const Point middle = grid.middle(row, column);
      const double km = distance_km(place, middle);
      if (best && km >= best_km) continue;
      best = middle;
      best_km = km;
    }
  };
  look(home);
  for (int away = 1; away < grid.rows; ++away) {
    const double nearest_row_deg = (away - 1) * grid.step_deg;  // the place may lie half a row from its own
    if (best && distance_km({0, 0}, {std::min(nearest_row_deg, 180.0), 0}) > best_km) break;
    look(home - away);
    look(home + away);
  }
  return best;
}

}  // namespace

double distance_km(const Point& a, const Point& b) {
  constexpr double earth_radius_km = 6371;
  // Haversine: exact on the sphere, well conditioned for short distances.
  const double south_north = std::sin((a.latitude_deg - b.latitude_deg) * rad / 2);
  const double west_east = std::sin((a.longitude_deg - b.longitude_deg) * rad / 2);
  const double h = south_north * south_north +
                   std::cos(a.latitude_deg * rad) * std::cos(b.latitude_deg * rad) * west_east * west_east;
  return 2 * earth_radius_km * std::asin(std::sqrt(std::min(h, 1.0)));
}

std::optional<Mean> mean(Field field, const Point& place, int month, double reach_km) {
  if (month < 1 || month > months) throw std::invalid_argument("climate: month outside 1 to 12");
  const Packed& all = packed();
  const auto f = static_cast<std::size_t>(field);
  const unsigned char* of_month =
      all.values + (f * months + static_cast<std::size_t>(month - 1)) * means.rows * means.columns;
  const std::optional<Point> cell = nearest(
      means, place, [&](int row, int column) { return of_month[row * means.columns + column] != missing; });
  if (!cell) return std::nullopt;
  const double away_km = distance_km(place, *cell);
  if (away_km > reach_km) return std::nullopt;
  const unsigned char steps =
      of_month[means.row_of(cell->latitude_deg) * means.columns + means.column_of(cell->longitude_deg)];
  return Mean{all.low[f] + all.step[f] * steps, away_km};
}

bool is_land(const Point& place) {
  return land_cell(relief.row_of(place.latitude_deg), relief.column_of(place.longitude_deg));
}

Point nearest_sea(const Point& place) {
  if (!is_land(place)) return place;
  return *nearest(relief, place, [](int row, int column) { return !land_cell(row, column); });
}

std::string_view notice() {
  return packed().notice;
}

}  // namespace bide::climate
