// The linear system of one implicit stage, solved exactly in O(nodes).
//
// People hang on the cabin's entries and on nothing else. Each person is eliminated (eliminate_person.hpp);
// then the cabin's own system is solved without pivoting: rows are diagonally dominant because every
// off-diagonal term is a conductance that also stands on the diagonal. Its terms are those of
// cabin_links.hpp.
//
// States: none of its own. Inputs: frozen coefficients and a = (method coefficient) x (step). Solves
// (C/a - A) u = (C/a) y + b for temperatures, vapour density and CO2. Source: block Gaussian elimination.
#pragma once

#include <array>
#include <vector>

#include "bide/system/cabin_links.hpp"
#include "bide/system/eliminate_person.hpp"

namespace bide::system {

template <class T>
struct Factor {
  T inverse_a;
  CabinVector<T> held;  // C/a: of each entry's value at the start of the stage, what stays in its row
  CabinMatrix<T> lu;    // unit upper triangle above, lower with inverse diagonal
  CabinVector<T> gain;  // b: what flows into each row whatever the unknowns, people included
  std::vector<PersonFactor<T>> persons;
};

// Which rows of the cabin hold which entries, asked of the links while compiling; people touch four entries
// together, and elimination from the last row up fills in more.
struct Couples : NoRows {
  using NoRows::passes;
  std::array<std::array<bool, cabin_rows>, cabin_rows> at{};

  template <int i, int k>
  constexpr void passes(Cabin<i>, Cabin<k>, const double&) {
    at[k][i] = true;
  }
};
inline constexpr auto couples = [] {
  Terms<Couples> c;
  for (int i = 0; i < cabin_rows; ++i) c.at[i][i] = true;
  cabin_links(CabinCoefficients<double>{}, c);
  for (int r = 0; r < 4; ++r)
    for (int q = 0; q < 4; ++q) c.at[r][q] = true;
  for (int i = cabin_rows - 1; i >= 0; --i)
    for (int r = 0; r < i; ++r)
      for (int q = 0; q < i; ++q) c.at[r][q] = c.at[r][q] || (c.at[r][i] && c.at[i][q]);
  return c.at;
}();

template <class T>
void factor(const Coefficients<T>& c, double a, Factor<T>& f) {
  f.inverse_a = T(1 / a);
  const CabinVector<T> capacity = capacities(c.cabin);
  for (int r = 0; r < cabin_rows; ++r)
    for (int q = 0; q < cabin_rows; ++q)
      if (couples[r][q]) f.lu[r][q] = empty_sum<T>();
  for (int i = 0; i < cabin_rows; ++i) {
    f.lu[i][i] = f.held[i] = capacity[i] * f.inverse_a;
    f.gain[i] = empty_sum<T>();
  }
  Terms<CabinRows<T>> rows{{f.lu, f.gain}};
  cabin_links(c.cabin, rows);
  for (std::size_t p = 0; p < c.persons.size(); ++p)
    eliminate_person(c.persons[p], f.inverse_a, f.persons[p], f.lu, f.gain);
  // From the last row up: CO2 and the outer skin touch next to nothing.
  auto& m = f.lu;
#pragma GCC unroll 6
  for (int i = cabin_rows - 1; i >= 0; --i) {
    m[i][i] = T(1) / m[i][i];
#pragma GCC unroll 6
    for (int r = 0; r < i; ++r) {
      if (!couples[r][i]) continue;
      m[r][i] *= m[i][i];
#pragma GCC unroll 6
      for (int q = 0; q < i; ++q)
        if (couples[i][q]) m[r][q] -= m[r][i] * m[i][q];
    }
  }
}

// Solves one stage: u from y (both whole state vectors; only the implicit entries are read and written).
template <class T>
void solve_stage(const Coefficients<T>& c, const Factor<T>& f, const T* y, T* u) {
  CabinVector<T> r;
  for (int i = 0; i < cabin_rows; ++i) r[i] = f.held[i] * y[i] + f.gain[i];
  for (std::size_t p = 0; p < c.persons.size(); ++p) {
    const int at_person = person_offset(static_cast<int>(p));
    forward_person(c.persons[p], f.persons[p], f.inverse_a, y + at_person, u + at_person, r);
  }
  for (int i = cabin_rows - 1; i >= 0; --i)
    for (int q = i + 1; q < cabin_rows; ++q)
      if (couples[i][q]) r[i] -= f.lu[i][q] * r[q];
  for (int i = 0; i < cabin_rows; ++i) {
    for (int q = 0; q < i; ++q)
      if (couples[i][q]) r[i] -= f.lu[i][q] * r[q];
    r[i] *= f.lu[i][i];
  }
  for (int i = 0; i < cabin_rows; ++i) u[i] = r[i];
  for (std::size_t p = 0; p < c.persons.size(); ++p)
    back_person(c.persons[p], f.persons[p], r, u + person_offset(static_cast<int>(p)));
}

}  // namespace bide::system
