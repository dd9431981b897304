// The structured solve against a dense factorisation (Eigen's partial-pivoting LU) of the same equations,
// which are assembled here independently, node by node, from the definition of each flux.
#include "bide/system/solve.hpp"

#include <doctest/doctest.h>

#include <Eigen/Dense>

#include "support/equations.hpp"

using namespace bide;
using namespace bide::system;
using namespace bide::test;
namespace sat = bide::system::at;

TEST_CASE("one implicit stage equals the dense solution") {
  Random r;
  for (const int persons : {1, 4, 12}) {
    CAPTURE(persons);
    const auto c = random_coefficients(persons, r);
    const std::vector<int> entries = implicit_entries(persons);
    const auto n = static_cast<Eigen::Index>(entries.size());
    std::vector<double> y(state_size(persons), 0.0);
    for (const int i : entries) y[i] = i == sat::vapour ? 0.009 : i == sat::co2 ? 0.004 : r(5, 37);
    const double a = 58.6;
    // f is affine: columns of its matrix by differences of unit vectors.
    Eigen::MatrixXd m(n, n);
    Eigen::VectorXd rhs(n);
    const std::vector<double> zero(y.size(), 0.0), f0 = flows(c, zero);
    for (Eigen::Index j = 0; j < n; ++j) {
      std::vector<double> unit = zero;
      unit[entries[j]] = 1;
      const std::vector<double> fj = flows(c, unit);
      for (Eigen::Index i = 0; i < n; ++i)
        m(i, j) = (i == j ? capacity_of(c, entries[i]) / a : 0.0) - (fj[entries[i]] - f0[entries[i]]);
    }
    for (Eigen::Index i = 0; i < n; ++i)
      rhs(i) = capacity_of(c, entries[i]) / a * y[entries[i]] + f0[entries[i]];
    const Eigen::VectorXd dense = m.partialPivLu().solve(rhs);

    Factor<double> factored;
    factored.persons.resize(persons);
    factor(c, a, factored);
    std::vector<double> u(y.size(), 0.0);
    solve_stage(c, factored, y.data(), u.data());
    for (Eigen::Index i = 0; i < n; ++i) CHECK(u[entries[i]] == doctest::Approx(dense(i)).epsilon(1e-9));
  }
}

TEST_CASE("lanes solve what the scalar solves") {
  Random r;
  const auto c = random_coefficients(2, r);
  using L = Lanes<4>;
  Coefficients<L> wide{};
  set_lane(wide.cabin, 0, c.cabin);
  wide.persons.resize(2);
  for (int i = 0; i < 4; ++i) {
    set_lane(wide.cabin, i, c.cabin);
    for (int p = 0; p < 2; ++p) set_lane(wide.persons[p], i, c.persons[p]);
  }
  std::vector<double> y(state_size(2), 20.0), u(y.size());
  std::vector<L> wide_y(y.begin(), y.end()), wide_u(y.size());
  Factor<double> f;
  f.persons.resize(2);
  Factor<L> wf;
  wf.persons.resize(2);
  factor(c, 40, f);
  factor(wide, 40, wf);
  solve_stage(c, f, y.data(), u.data());
  solve_stage(wide, wf, wide_y.data(), wide_u.data());
  for (const int i : implicit_entries(2))
    for (int l = 0; l < 4; ++l) CHECK(wide_u[i][l] == doctest::Approx(u[i]).epsilon(1e-12));
}
