// How wide the model's own error must be drawn so that its ranges cover studies it is not fitted to, and to
// which side it errs, by region of conditions.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "bide/constants/regions.hpp"
#include "validation/judge/draws.hpp"
#include "validation/judge/score.hpp"

namespace bide::validation {

// Multiples of the priors' standard deviations of the errors (parameters.hpp).
struct Widths {
  double heat = 0, conductance = 0, water = 0;
};
using WidthsByRegion = std::array<Widths, constants::region_count>;

// The model's error drawn at widths of a grid, and what is covered at each.
class ErrorGrid {
 public:
  // A row far from all studies but its own is forecast as the engine does there: so many times wider.
  ErrorGrid(const Runs& runs, const Surface& surface, std::uint64_t seed);

  // The widths at which the middle 90 and 50 % come nearest to covering 90 and 50 % of the published values;
  // a shortfall of the 90 % counts ten times. The narrowest of equals. Water is sized over all regions
  // together: it has few rows. Rows on hands are left out, for nothing that is drawn is about them, and rows
  // that the widest errors do not reach.
  // @param take rows to size on
  WidthsByRegion best(const std::vector<bool>& take) const;
  // Forecast at widths.
  RowScore at(std::size_t row, const Widths& widths) const;

 private:
  struct Cell {
    Widths widths;
    Scores scores;  // coverage, without width
  };
  bool reached(std::size_t row) const;
  std::size_t best_cell(const std::vector<Cell>& cells, const std::vector<bool>& take) const;

  const Runs& runs_;
  const Surface& surface_;
  std::vector<Point> normals_;
  std::vector<bool> far_;
  std::vector<Cell> heat_, water_;
};

// Forecasts by the model with its error, each study's widths sized without it.
Scores with_error(const Runs& runs, const ErrorGrid& grid);

// To which side the model errs in a region and span, and how many measurements its error covers (regions.hpp
// has the meaning).
// @param with_error as above; may be empty, and then nothing is covered
constants::Forecast forecast_in(const Runs& runs, const Scores& with_error, constants::Region region,
                                constants::Span span);

// The text of engine/constants/left_out.hpp.
// @param with_error as above
std::string left_out_text(const Runs& runs, const Scores& with_error, const WidthsByRegion& widths);

}  // namespace bide::validation
