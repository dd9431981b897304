#include "bide/cabin/floor.hpp"

#include "bide/cabin/films.hpp"

namespace bide::cabin {

FloorResistance floor_resistance(scenario::FloorKind kind, bool inflated) {
  using namespace constants;
  switch (kind) {
    case scenario::FloorKind::foam:
      return {floor_foam_m2K_W, floor_foam_m2K_W};
    case scenario::FloorKind::inflated: {
      if (inflated) {
        const double gap = air_gap_m2K_W(floor_unloaded_gap_mm, HeatFlow::down);
        return {floor_inflated_m2K_W, gap + 2 * cloth_resistance_m2K_W};
      }
      const double two_cloths = floor_single_m2K_W + cloth_resistance_m2K_W;
      return {two_cloths, two_cloths};
    }
    case scenario::FloorKind::single:
      break;
  }
  return {floor_single_m2K_W, floor_single_m2K_W};
}

SeatPad seat_pad(scenario::Seat seat) {
  using namespace constants;
  switch (seat) {
    case scenario::Seat::lifejacket:
      return {lifejacket_seat_m2K_W, lifejacket_seat_cover};
    case scenario::Seat::foam_pad:
      return {foam_pad_m2K_W, foam_pad_cover};
    case scenario::Seat::floor:
      break;
  }
  return {0, 0};
}

}  // namespace bide::cabin
