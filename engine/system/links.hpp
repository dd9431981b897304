// Links: each flux is stated once, and everything that needs it is derived from the statement.
//
// A link joins two ends and carries coefficient x (value at the first end - value at the second), positive
// from the first to the second. A flow carries an amount that does not depend on the ends. Lists of them
// (cabin_links.hpp, person_links.hpp) call `link` and `flow` of a visitor; slopes.hpp, slow.hpp, solve.hpp
// and eliminate_person.hpp hold the visitors. Which entry an end means is part of its type, so that a visitor
// compiles to the arithmetic that its entries need and to nothing else.
//
// States: none of its own. Inputs: frozen coefficients. Validity: one time step. Source: bookkeeping.
#pragma once

#include <array>
#include <cstddef>
#include <type_traits>
#include <utility>

#include "bide/body/layout.hpp"

namespace bide::system {

// ---- Where a flux can come from and go to ---------------------------------------------------------------

template <int entry>
struct Cabin {};  // an entry of the cabin's block
template <int entry>
struct Own {};  // an entry of the block of the person at hand
template <int layer>
struct Layer {};          // a node of the segment at hand
struct ClothingWater {};  // of the segment at hand
struct Outside {};        // none of the entries
using Blood = Own<body::at::blood>;
using Finger = Own<body::at::finger>;

// Surroundings of a known temperature, vapour density or volume fraction.
template <class T>
struct Known {
  T value;
};

// A wet surface: its value is the saturation vapour density at the temperature of `Node`, linear about the
// temperature it was frozen at. The vapour that leaves it is taken from `Liquid`, and its heat from `Node`.
template <class Node, class Liquid, class T>
struct Wet {
  T at_zero_kg_m3, slope_kg_m3_K, latent_heat_J_kg;
};

// The running total that a flux is added to, positive from the first end to the second.
template <int entry>
struct Book {};

template <class End>
struct NodeOf {
  using type = End;
};
template <class T>
struct NodeOf<Known<T>> {
  using type = Outside;
};
template <class Node, class Liquid, class T>
struct NodeOf<Wet<Node, Liquid, T>> {
  using type = Node;
};
template <class End>
using node_of = typename NodeOf<End>::type;
template <class End>
inline constexpr bool is_node = !std::is_same_v<node_of<End>, Outside>;

template <class End>
inline constexpr bool is_wet = false;
template <class Node, class Liquid, class T>
inline constexpr bool is_wet<Wet<Node, Liquid, T>> = true;

template <class Node, class Liquid, class T>
constexpr Liquid liquid_of(const Wet<Node, Liquid, T>&) {
  return {};
}

// One link by itself, where a list is not all that asks for it.
template <class T, class From, class To>
struct Link {
  T coefficient;
  From from;
  To to;
};

// Where sums of fluxes begin: adding to minus zero changes nothing, so that the first addition costs nothing
// (the compiler must keep one to plus zero).
template <class T>
[[gnu::always_inline]] inline T empty_sum() {
  return -T(0);
}
template <class T, std::size_t size>
[[gnu::always_inline]] inline std::array<T, size> empty_sums() {
  return []<std::size_t... i>(std::index_sequence<i...>) {
    return std::array<T, size>{((void)i, empty_sum<T>())...};
  }
  (std::make_index_sequence<size>{});
}

// ---- The flux at a state --------------------------------------------------------------------------------

// Values of the nodes.
template <class T>
struct State {
  const T* cabin;
  const T* own = nullptr;  // of the person at hand
  int segment = 0;         // at hand

  template <int i>
  [[gnu::always_inline]] T operator()(Cabin<i>) const {
    return cabin[i];
  }
  template <int i>
  [[gnu::always_inline]] T operator()(Own<i>) const {
    return own[i];
  }
  template <int l>
  [[gnu::always_inline]] T operator()(Layer<l>) const {
    return own[body::at::node(segment, l)];
  }
};

template <class Node, class T>
[[gnu::always_inline]] constexpr T value(Node node, const State<T>& x) {
  return x(node);
}
template <class T>
[[gnu::always_inline]] constexpr T value(const Known<T>& end, const State<T>&) {
  return end.value;
}
template <class Node, class Liquid, class T>
[[gnu::always_inline]] constexpr T value(const Wet<Node, Liquid, T>& end, const State<T>& x) {
  return end.at_zero_kg_m3 + end.slope_kg_m3_K * x(Node{});
}

template <class T, class From, class To>
[[gnu::always_inline]] constexpr T flux(const T& coefficient, const From& from, const To& to,
                                        const State<T>& x) {
  return coefficient * (value(from, x) - value(to, x));
}

// What a flux means to the node at an end: itself, or the heat of the vapour.
template <class T, class Node>
[[gnu::always_inline]] constexpr T felt(const T& flux, const Node&) {
  return flux;
}
template <class T, class Node, class Liquid>
[[gnu::always_inline]] constexpr T felt(const T& flux, const Wet<Node, Liquid, T>& end) {
  return end.latent_heat_J_kg * flux;
}

// ---- The flux as terms of a linear system ---------------------------------------------------------------

// Per unit of the node at an end.
template <class T, class Node>
[[gnu::always_inline]] constexpr T per_unit(const T& coefficient, const Node&) {
  return coefficient;
}
template <class T, class Node, class Liquid>
[[gnu::always_inline]] constexpr T per_unit(const T& coefficient, const Wet<Node, Liquid, T>& end) {
  return coefficient * end.slope_kg_m3_K;
}

// With every node at zero; `None` where nothing is left.
struct None {};
template <class Node>
[[gnu::always_inline]] constexpr None at_zero(const Node&) {
  return {};
}
template <class T>
[[gnu::always_inline]] constexpr T at_zero(const Known<T>& end) {
  return end.value;
}
template <class Node, class Liquid, class T>
[[gnu::always_inline]] constexpr T at_zero(const Wet<Node, Liquid, T>& end) {
  return end.at_zero_kg_m3;
}
template <class T>
[[gnu::always_inline]] constexpr None fixed_flux(const T&, None, None) {
  return {};
}
template <class T>
[[gnu::always_inline]] constexpr T fixed_flux(const T& coefficient, const T& from, None) {
  return coefficient * from;
}
template <class T>
[[gnu::always_inline]] constexpr T fixed_flux(const T& coefficient, None, const T& to) {
  return -(coefficient * to);
}
template <class T>
[[gnu::always_inline]] constexpr T fixed_flux(const T& coefficient, const T& from, const T& to) {
  return coefficient * (from - to);
}

// Takes every link and flow apart. `Rows` says what becomes of the terms, for the nodes that it solves for:
//   loses(node, per_unit)             what leaves a node per unit of its own value
//   passes(from, to, per_unit)        what reaches a node per unit of another's value
//   gains(node, amount)               what reaches a node with every node at zero
// It takes all other nodes too, and does nothing with them.
template <class Rows>
struct Terms : Rows {
  template <class T, class From, class To, class... Booked>
  [[gnu::always_inline]] constexpr void link(const T& coefficient, const From& from, const To& to,
                                             Booked...) {
    using First = node_of<From>;
    using Second = node_of<To>;
    if constexpr (is_node<From>) {
      const T out = per_unit(coefficient, from);
      this->loses(First{}, felt(out, from));
      if constexpr (is_node<To>) this->passes(First{}, Second{}, felt(out, to));
    }
    if constexpr (is_node<To>) {
      const T back = per_unit(coefficient, to);
      this->loses(Second{}, felt(back, to));
      if constexpr (is_node<From>) this->passes(Second{}, First{}, felt(back, from));
    }
    const auto fixed = fixed_flux(coefficient, at_zero(from), at_zero(to));
    if constexpr (!std::is_same_v<decltype(fixed), const None>) {
      if constexpr (is_node<From>) this->gains(First{}, T(-felt(fixed, from)));
      if constexpr (is_node<To>) this->gains(Second{}, felt(fixed, to));
    }
  }

  template <class T, class From, class To, class... Booked>
  [[gnu::always_inline]] constexpr void flow(const T& amount, From from, To to, Booked...) {
    if constexpr (is_node<From>) this->gains(from, T(-amount));
    if constexpr (is_node<To>) this->gains(to, amount);
  }
};

// Terms that are left alone.
struct NoRows {
  template <class Node, class T>
  [[gnu::always_inline]] constexpr void loses(Node, const T&) {}
  template <class From, class To, class T>
  [[gnu::always_inline]] constexpr void passes(From, To, const T&) {}
  template <class Node, class T>
  [[gnu::always_inline]] constexpr void gains(Node, const T&) {}
};

}  // namespace bide::system
