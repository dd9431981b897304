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
  CabinMatrix<T> lu;    // unit lower triangle below, upper with inverse diagonal
  CabinVector<T> gain;  // b: what flows into each row whatever the unknowns, people included
  std::vector<PersonFactor<T>> persons;
};

template <class T>
void factor(const Coefficients<T>& c, double a, Factor<T>& f) {
  f.inverse_a = T(1 / a);
  const CabinVector<T> capacity = capacities(c.cabin);
  CabinRows<T> rows;
  for (int i = 0; i < cabin_rows; ++i) rows.matrix[i][i] = f.held[i] = capacity[i] * f.inverse_a;
  Terms<CabinRows<T>> terms{rows};
  cabin_links(c.cabin, terms);
  f.lu = terms.matrix;
  f.gain = terms.gain;
  for (std::size_t p = 0; p < c.persons.size(); ++p)
    eliminate_person(c.persons[p], f.inverse_a, f.persons[p], f.lu, f.gain);
  auto& m = f.lu;
  for (int i = 0; i < cabin_rows; ++i) {
    m[i][i] = T(1) / m[i][i];
    for (int r = i + 1; r < cabin_rows; ++r) {
      m[r][i] *= m[i][i];
      for (int q = i + 1; q < cabin_rows; ++q) m[r][q] -= m[r][i] * m[i][q];
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
  for (int i = 0; i < cabin_rows; ++i)
    for (int q = 0; q < i; ++q) r[i] -= f.lu[i][q] * r[q];
  for (int i = cabin_rows - 1; i >= 0; --i) {
    for (int q = i + 1; q < cabin_rows; ++q) r[i] -= f.lu[i][q] * r[q];
    r[i] *= f.lu[i][i];
  }
  for (int i = 0; i < cabin_rows; ++i) u[i] = r[i];
  for (std::size_t p = 0; p < c.persons.size(); ++p)
    back_person(c.persons[p], f.persons[p], r, u + person_offset(static_cast<int>(p)));
}

}  // namespace bide::system
