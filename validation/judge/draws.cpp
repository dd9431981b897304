#include "validation/judge/draws.hpp"

#include <oneapi/tbb/parallel_for.h>

#include <Eigen/QR>
#include <cmath>
#include <map>
#include <stdexcept>
#include <string>
#include <utility>

#include "bide/core/random.hpp"
#include "validation/judge/whole_runs.hpp"
#include "validation/support/march.hpp"
#include "validation/topics.hpp"

namespace bide::validation {

namespace {

// The topics that hold judged rows, so that the others need not run again.
std::vector<Topic> judged_topics(const std::vector<PlacedRow>& table) {
  std::vector<Topic> out;
  for (const Topic topic : topics) {
    const std::vector<Row> rows = topic.rows();
    for (const PlacedRow& each : table)
      if (!rows.empty() && rows.front().topic == each.topic) {
        out.push_back(topic);
        break;
      }
  }
  return out;
}

std::vector<double> values_at(const Point& point, const std::vector<Topic>& which, const Runs& runs) {
  const Altered altered([&](system::Compiled<double>& compiled) { scale(point, compiled); });
  std::map<std::string, double> by_id;
  for (const Topic topic : which)
    for (const Row& row : topic.rows()) by_id[row.id()] = row.model;
  std::vector<double> out;
  for (const JudgedRow& each : runs.rows) out.push_back(by_id.at(each.row.id()));
  for (const Row& row : whole_run_rows()) out.push_back(row.model);
  return out;
}

Point point_of(std::uint64_t seed, std::uint64_t k) {
  Point out;
  for (std::size_t i = 0; i < parameter_count; ++i)
    out[i] = (2 * uniform(seed, k, stream_of(parameters[i].name), 0) - 1) * parameters[i].farthest;
  return out;
}

Eigen::VectorXd terms_at(const Point& point) {
  Eigen::VectorXd out(static_cast<Eigen::Index>(Surface::terms));
  Eigen::Index next = 0;
  out(next++) = 1;
  const auto x = [&](std::size_t i) { return point[i] / parameters[i].farthest; };
  for (std::size_t i = 0; i < parameter_count; ++i) out(next++) = x(i);
  for (std::size_t i = 0; i < parameter_count; ++i)
    for (std::size_t j = i; j < parameter_count; ++j) out(next++) = x(i) * x(j);
  return out;
}

}  // namespace

Runs run_draws(std::size_t count, std::uint64_t seed) {
  const std::vector<PlacedRow> table = placed_rows();
  const std::vector<Topic> which = judged_topics(table);
  Runs out;
  std::vector<Row> rows;
  for (const Topic topic : which)
    for (Row& row : topic.rows()) rows.push_back(std::move(row));
  out.rows = judged(rows, table);
  out.whole_runs = whole_run_rows();
  for (std::size_t k = 0; k < count; ++k) out.points.push_back(point_of(seed, k));
  out.values.resize(count);
  oneapi::tbb::parallel_for(std::size_t{0}, count,
                            [&](std::size_t k) { out.values[k] = values_at(out.points[k], which, out); });
  return out;
}

Surface::Surface(const Runs& runs) {
  const auto points = static_cast<Eigen::Index>(runs.points.size());
  if (runs.points.size() <= terms) throw std::runtime_error("too few draws for a surface of second order");
  const auto rows = static_cast<Eigen::Index>(runs.values.front().size());
  Eigen::MatrixXd design(points, static_cast<Eigen::Index>(terms)), values(points, rows);
  for (Eigen::Index k = 0; k < points; ++k) {
    design.row(k) = terms_at(runs.points[static_cast<std::size_t>(k)]).transpose();
    for (Eigen::Index r = 0; r < rows; ++r)
      values(k, r) = runs.values[static_cast<std::size_t>(k)][static_cast<std::size_t>(r)];
  }
  coefficients_ = design.householderQr().solve(values);
  const Eigen::MatrixXd left = values - design * coefficients_;
  const double free = static_cast<double>(runs.points.size() - terms);
  const Eigen::VectorXd at_0 = coefficients_.transpose() * terms_at(Point{});
  for (Eigen::Index r = 0; r < rows; ++r) {
    misfit_.push_back(std::sqrt(left.col(r).squaredNorm() / free));
    const auto row = static_cast<std::size_t>(r);
    const double in_force =
        row < runs.rows.size() ? runs.rows[row].row.model : runs.whole_runs[row - runs.rows.size()].model;
    shift_.push_back(in_force - at_0(r));
  }
}

double Surface::at(std::size_t row, const Point& point) const {
  return coefficients_.col(static_cast<Eigen::Index>(row)).dot(terms_at(point)) + shift_[row];
}

std::vector<double> Surface::at(const Point& point) const {
  const Eigen::VectorXd values = coefficients_.transpose() * terms_at(point);
  std::vector<double> out;
  for (Eigen::Index r = 0; r < values.size(); ++r)
    out.push_back(values(r) + shift_[static_cast<std::size_t>(r)]);
  return out;
}

}  // namespace bide::validation
