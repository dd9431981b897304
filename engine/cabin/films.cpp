#include "bide/cabin/films.hpp"

#include <array>
#include <cstddef>

#include "bide/core/interpolate.hpp"

namespace bide::cabin {

double air_gap_m2K_W(double gap_mm, HeatFlow direction) {
  constexpr std::size_t rows = constants::gap_resistances.size();
  std::array<double, rows> gaps{}, values{};
  for (std::size_t i = 0; i < rows; ++i) {
    const constants::GapResistance& row = constants::gap_resistances[i];
    gaps[i] = row.gap_mm;
    values[i] = direction == HeatFlow::up ? row.up : direction == HeatFlow::level ? row.level : row.down;
  }
  return interpolate_linear(gaps, values, gap_mm);
}

}  // namespace bide::cabin
