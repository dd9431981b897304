// Gives the point of each sample of a study's design.
//
// States: none after construction. Inputs: a validated study and the sampler of its scenario. Sample k has
// the same point whatever was asked before, so that samples can be made in any order and on any machine.
// Latin hypercubes, Morris trajectories and points of a file are held in memory; other points are computed
// when asked for.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <variant>
#include <vector>

#include "bide/scenario/study_file.hpp"
#include "bide/study/sampling/design.hpp"
#include "bide/study/sampling/sampler.hpp"
#include "bide/study/statistics/sobol_indices.hpp"

namespace bide::study {

class Plan {
 public:
  // Makes the plan of a study, or says where the study does not fit what varies in its scenario.
  // @param study   a validated study
  // @param sampler of its scenario
  static std::variant<Plan, scenario::Diagnostics> make(const scenario::ValidStudy& study,
                                                        std::shared_ptr<const Sampler> sampler);

  std::uint64_t size() const { return size_; }  // runs
  // The point of a sample: one number for each factor, on scale().
  // @param k number of the sample, [0, size())
  std::vector<double> point(std::uint64_t k) const { return point_(k); }

  scenario::PointScale scale() const { return scale_; }  // unit but for points of the user's own
  // Where a sample's point stands, "points.csv, line 7"; empty but for points of a file.
  std::string place(std::uint64_t k) const;
  // All points where they are held in memory, one row for each sample; elsewhere empty.
  const Points& held_points() const { return *points_; }

  // Saltelli: names and columns of the groups; elsewhere each input alone.
  const std::vector<std::string>& group_names() const { return group_names_; }
  const Groups& groups() const { return groups_; }
  // Grid: which value of its list each input takes in row k, from 0.
  std::vector<std::size_t> grid_places(std::uint64_t k) const;
  const std::vector<std::vector<double>>& grid_values() const { return grid_values_; }

 private:
  Plan() = default;
  struct Maker;
  std::uint64_t size_ = 0;
  std::function<std::vector<double>(std::uint64_t)> point_;
  scenario::PointScale scale_ = scenario::PointScale::unit;
  std::string file_;        // of points
  std::vector<int> lines_;  // of its rows
  std::vector<std::string> group_names_;
  Groups groups_;
  std::shared_ptr<const Points> points_ = std::make_shared<const Points>();
  std::vector<std::vector<double>> grid_values_;
};

}  // namespace bide::study
