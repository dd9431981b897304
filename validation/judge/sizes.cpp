#include "validation/judge/sizes.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "bide/body/region.hpp"
#include "bide/core/random.hpp"
#include "bide/study/sampling/distribution.hpp"
#include "validation/judge/candidates.hpp"

namespace bide::validation {

namespace {

constexpr std::size_t draws = 300;
constexpr double narrowest = 1, widest = 4, step = 0.5;  // never surer than the priors

bool about_water(const JudgedRow& row) {
  return row.about == "water";
}

double width_of(std::size_t error, const Widths& w) {
  return error == of_heat_made ? w.heat : error == of_water_loss ? w.water : w.conductance;
}

Point widened(const Point& normals, const Widths& widths) {
  Point out{};
  for (std::size_t i = 0; i < error_count; ++i)
    out[i] = std::clamp(width_of(i, widths) * parameters[i].sd * normals[i], -parameters[i].farthest,
                        parameters[i].farthest);
  return out;
}

Widths times(const Widths& w, double factor) {
  return {w.heat * factor, w.conductance * factor, w.water * factor};
}

// By place in Runs::rows: no study but its own is near.
std::vector<bool> far_rows(const std::vector<JudgedRow>& rows) {
  std::vector<bool> out;
  for (const JudgedRow& row : rows)
    out.push_back(std::none_of(rows.begin(), rows.end(), [&](const JudgedRow& other) {
      return other.row.study != row.row.study && body::is_near(row.at, other.at);
    }));
  return out;
}

}  // namespace

ErrorGrid::ErrorGrid(const Runs& runs, const Surface& surface, std::uint64_t seed)
    : runs_(runs), surface_(surface), far_(far_rows(runs.rows)) {
  for (std::size_t k = 0; k < draws; ++k) {
    Point normals{};
    for (std::size_t i = 0; i < error_count; ++i)
      normals[i] = study::standard_normal_quantile(uniform(seed, k, stream_of(parameters[i].name), 1));
    normals_.push_back(normals);
  }
  const auto cell = [&](const Widths& widths) {
    std::vector<Forecast> near(runs.rows.size()), far(runs.rows.size());
    for (const Point& normals : normals_) {
      const std::vector<double> close = surface.at(widened(normals, widths)),
                                apart = surface.at(widened(normals, times(widths, constants::far_wider)));
      for (std::size_t r = 0; r < runs.rows.size(); ++r) {
        near[r].values.push_back(close[r]);
        far[r].values.push_back(apart[r]);
      }
    }
    Cell out{widths, {}};
    for (std::size_t r = 0; r < runs.rows.size(); ++r) {
      Forecast& f = far_[r] ? far[r] : near[r];
      f.weights.assign(draws, 1.0 / draws);
      out.scores.push_back(coverage(runs.rows[r], f, row_scatter));
    }
    return out;
  };
  for (double water = narrowest; water <= widest; water += step) water_.push_back(cell({0, 0, water}));
  const double water = best(std::vector<bool>(runs.rows.size(), true)).front().water;
  for (double heat = narrowest; heat <= widest; heat += step)
    for (double conductance = narrowest; conductance <= widest; conductance += step)
      heat_.push_back(cell({heat, conductance, water}));
}

std::size_t ErrorGrid::best_cell(const std::vector<Cell>& cells, const std::vector<bool>& take) const {
  constexpr double half = 0.5, nine_tenths = 0.9, shortfall = 10, narrow = 0.002;
  std::size_t best = 0;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t c = 0; c < cells.size(); ++c) {
    const Summary s = summarise(runs_.rows, cells[c].scores, take);
    if (s.two_sided == 0) return 0;
    const double off_half = s.in_half - half, off = s.in_nine_tenths - nine_tenths;
    const Widths& w = cells[c].widths;
    const double loss = off_half * off_half + (off < 0 ? shortfall : 1) * off * off +
                        narrow * (w.heat + w.conductance + w.water);
    if (loss < least) least = loss, best = c;
  }
  return best;
}

// A row that the widest errors do not reach says nothing about how wide they are: what it misses is something
// else. It still counts where coverage is printed.
bool ErrorGrid::reached(std::size_t row) const {
  const auto covered = [&](const std::vector<Cell>& cells) {
    return !cells.empty() && cells.back().scores[row] && cells.back().scores[row]->in_nine_tenths;
  };
  return covered(water_) || covered(heat_);
}

WidthsByRegion ErrorGrid::best(const std::vector<bool>& take) const {
  const auto rows_where = [&](const auto& is) {
    std::vector<bool> out(runs_.rows.size());
    for (std::size_t r = 0; r < out.size(); ++r) out[r] = take[r] && reached(r) && is(runs_.rows[r]);
    return out;
  };
  const double water = water_[best_cell(water_, rows_where(about_water))].widths.water;
  WidthsByRegion out;
  for (int region = 0; region < constants::region_count; ++region) {
    Widths& here = out[static_cast<std::size_t>(region)];
    if (!heat_.empty())
      here = heat_[best_cell(heat_, rows_where([&](const JudgedRow& row) {
                               return row.region == region && !about_water(row) && row.about != "hands";
                             }))]
                 .widths;
    here.water = water;
  }
  return out;
}

RowScore ErrorGrid::at(std::size_t row, const Widths& widths) const {
  Forecast f;
  for (const Point& normals : normals_)
    f.values.push_back(
        surface_.at(row, widened(normals, far_[row] ? times(widths, constants::far_wider) : widths)));
  f.weights.assign(draws, 1.0 / draws);
  return score(runs_.rows[row], f, row_scatter);
}

Scores with_error(const Runs& runs, const ErrorGrid& grid) {
  std::set<std::string> studies;
  for (const JudgedRow& row : runs.rows) studies.insert(row.row.study);
  Scores out(runs.rows.size());
  for (const std::string& study : studies) {
    std::vector<bool> others;
    for (const JudgedRow& row : runs.rows) others.push_back(row.row.study != study);
    const WidthsByRegion widths = grid.best(others);
    for (std::size_t r = 0; r < runs.rows.size(); ++r)
      if (!others[r]) out[r] = grid.at(r, widths[static_cast<std::size_t>(runs.rows[r].region)]);
  }
  return out;
}

}  // namespace bide::validation
