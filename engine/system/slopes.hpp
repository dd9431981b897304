// Slopes of the implicit entries at a given state: the right-hand side the reference integrates.
//
// States: temperatures, vapour and CO2. Inputs: coefficients frozen at this very state. Validity: as the
// coefficients. Source: every flux of cabin_links.hpp and person_links.hpp, taken from its first end and
// given to its second.
#pragma once

#include "bide/system/cabin_links.hpp"
#include "bide/system/person_links.hpp"

namespace bide::system {

// Adds every flux to what the nodes at its ends gain.
template <class T>
struct NodeGains {
  State<T> state;
  T* cabin_gain;
  T* own_gain = nullptr;  // of the person at hand

  template <class From, class To, class... Booked>
  void link(const T& coefficient, const From& from, const To& to, Booked...) {
    const T f = flux(coefficient, from, to, state);
    gains(node_of<From>{}, T(-felt(f, from)));
    gains(node_of<To>{}, felt(f, to));
  }
  template <class From, class To, class... Booked>
  void flow(const T& amount, From from, To to, Booked...) {
    gains(from, T(-amount));
    gains(to, amount);
  }

 private:
  // Entries that are not implicit are not the reference's to integrate here: see slow.hpp.
  template <int i>
  void gains(Cabin<i>, const T& x) {
    if constexpr (i < at::implicit_count) cabin_gain[i] += x;
  }
  template <int i>
  void gains(Own<i>, const T& x) {
    if constexpr (i < body::at::thermal_count) own_gain[i] += x;
  }
  template <int l>
  void gains(Layer<l>, const T& x) {
    own_gain[body::at::node(state.segment, l)] += x;
  }
  void gains(Outside, const T&) {}
};

template <class T>
void implicit_slopes(const Coefficients<T>& c, const T* x, T* k) {
  NodeGains<T> gains{{x}, k};
  for (int i = 0; i < at::implicit_count; ++i) k[i] = T(0);
  cabin_links(c.cabin, gains);
  for (int p = 0; p < static_cast<int>(c.persons.size()); ++p) {
    const body::PersonCoefficients<T>& person = c.persons[static_cast<std::size_t>(p)];
    gains.state.own = x + person_offset(p);
    gains.own_gain = k + person_offset(p);
    for (int i = 0; i < body::at::thermal_count; ++i) gains.own_gain[i] = T(0);
    finger_links(person, gains);
    for (int s = 0; s < body::segment_count; ++s) {
      gains.state.segment = s;
      segment_links(person, s, gains);
      for (int l = 0; l < body::layer_count; ++l)
        gains.own_gain[body::at::node(s, l)] /= person.capacity_J_K[s][l];
    }
    gains.own_gain[body::at::finger] /= person.finger_capacity_J_K;
    gains.own_gain[body::at::blood] /= person.blood_capacity_J_K;
  }
  const std::array<T, at::implicit_count> capacity = capacities(c.cabin);
  for (int i = 0; i < at::implicit_count; ++i) k[i] /= capacity[i];
}

}  // namespace bide::system
