// One person's part of the linear system of an implicit stage, eliminated exactly in O(nodes).
//
// Six chains of five nodes, core to clothing, hang on the central blood, and the fingers too; skin, clothing
// and fingers on the cabin's entries. Chains are eliminated first, then the blood; what is left is what the
// cabin's rows see of this person. The elimination is written out for this structure; its terms are those of
// person_links.hpp.
//
// States: none of its own. Inputs: frozen coefficients and 1/a, a = (method coefficient) x (step). Solves
// (C/a - A) u = (C/a) y + b for the temperatures. Source: block Gaussian elimination, without pivoting: rows
// are diagonally dominant because every off-diagonal term is a conductance that also stands on the diagonal.
#pragma once

#include <array>

#include "bide/system/person_links.hpp"

namespace bide::system {

inline constexpr int cabin_rows = at::implicit_count;
template <class T>
using CabinVector = std::array<T, cabin_rows>;
template <class T>
using CabinMatrix = std::array<CabinVector<T>, cabin_rows>;
// Per cabin entry that people touch.
template <class T>
using Four = std::array<T, 4>;

// One chain after elimination.
template <class T>
struct SegmentFactor {
  std::array<T, 5> inverse;      // of the eliminated diagonals
  std::array<T, 4> outward;      // of each node's right-hand side, what the next one outward gets
  T inward;                      // of the clothing's temperature, what the skin gets
  std::array<T, 5> blood;        // response of each node to one kelvin of blood
  std::array<T, 5> at_skin;      // response to one watt into the skin
  std::array<T, 5> at_clothing;  // response to one watt into the clothing
  std::array<T, 5> gain_W;       // what flows into each node whatever the temperatures
};

template <class T>
struct PersonFactor {
  std::array<SegmentFactor<T>, body::segment_count> segments;
  T finger_inverse, finger_gain_W;
  T blood_inverse;
  Four<T> blood_per_cabin;  // kelvin of blood per unit of each cabin unknown
  Four<T> cabin_per_blood;  // into each cabin row per kelvin of blood
};

// ---- What the elimination takes from the links ----------------------------------------------------------

// Rows of the cabin's entries.
template <class T>
struct CabinRows : NoRows {
  using NoRows::loses, NoRows::passes, NoRows::gains;
  CabinMatrix<T>& matrix;
  CabinVector<T>& gain;

  CabinRows(CabinMatrix<T>& m, CabinVector<T>& g) : matrix(m), gain(g) {}
  template <int i>
  [[gnu::always_inline]] void loses(Cabin<i>, const T& x) {
    matrix[i][i] += x;
  }
  template <int i, int k>
  [[gnu::always_inline]] void passes(Cabin<i>, Cabin<k>, const T& x) {
    matrix[k][i] -= x;
  }
  template <int i>
  [[gnu::always_inline]] void gains(Cabin<i>, const T& x) {
    if constexpr (i < cabin_rows) gain[i] += x;
  }
};

// Rows of one segment.
template <class T>
struct ChainRows : NoRows {
  using NoRows::loses, NoRows::passes, NoRows::gains;
  std::array<T, 5> diagonal;
  std::array<T, 4> outward = empty_sums<T, 4>();  // to each node from the next one inward
  T inward = empty_sum<T>();                      // to the skin from the clothing
  std::array<T, 5> blood = empty_sums<T, 5>(), gain_W = empty_sums<T, 5>();

  template <int l>
  [[gnu::always_inline]] void loses(Layer<l>, const T& x) {
    diagonal[l] += x;
  }
  // Below the skin conduction is the same both ways: `outward` says it.
  template <int from, int to>
  [[gnu::always_inline]] void passes(Layer<from>, Layer<to>, const T& x) {
    static_assert(to == from + 1 || to == from - 1, "a chain: each layer touches the next alone");
    if constexpr (to > from) outward[from] += x;
    if constexpr (from == body::clothing) inward += x;
  }
  template <int l>
  [[gnu::always_inline]] void passes(Blood, Layer<l>, const T& x) {
    blood[l] += x;
  }
  template <int l>
  [[gnu::always_inline]] void gains(Layer<l>, const T& x) {
    gain_W[l] += x;
  }
};

// A surface as the cabin meets it: per unit of each cabin entry, what reaches the surface, and per unit of
// the surface, what reaches each cabin row.
template <class T>
struct Facing {
  Four<T> from_cabin = empty_sums<T, 4>(), to_cabin = empty_sums<T, 4>();
};

// What blood and cabin rows get of a chain, or of the fingers, once eliminated: their own diagonals and
// gains, and the surfaces that face the cabin.
template <class T>
struct OuterRows : NoRows {
  using NoRows::loses, NoRows::passes, NoRows::gains;
  Four<T> cabin_diagonal = empty_sums<T, 4>(), cabin_gain = empty_sums<T, 4>();
  T blood_diagonal = empty_sum<T>();

  template <int i>
  [[gnu::always_inline]] void loses(Cabin<i>, const T& x) {
    cabin_diagonal[i] += x;
  }
  [[gnu::always_inline]] void loses(Blood, const T& x) { blood_diagonal += x; }
  template <int i>
  [[gnu::always_inline]] void gains(Cabin<i>, const T& x) {
    cabin_gain[i] += x;
  }

  [[gnu::always_inline]] void add_to(CabinMatrix<T>& matrix, CabinVector<T>& gain) const {
    for (int i = 0; i < 4; ++i) matrix[i][i] += cabin_diagonal[i], gain[i] += cabin_gain[i];
  }
};

template <class T>
struct SegmentOuterRows : OuterRows<T> {
  using OuterRows<T>::passes;
  Facing<T> skin, clothing;
  const SegmentFactor<T>* chain = nullptr;
  T returned_to_blood = empty_sum<T>();  // per kelvin of blood
  // Into the blood per watt into the surface.
  T skin_to_blood = empty_sum<T>(), clothing_to_blood = empty_sum<T>();

  template <int m, int l>
  [[gnu::always_inline]] void passes(Cabin<m>, Layer<l>, const T& x) {
    facing<l>().from_cabin[m] += x;
  }
  template <int l, int k>
  [[gnu::always_inline]] void passes(Layer<l>, Cabin<k>, const T& x) {
    facing<l>().to_cabin[k] += x;
  }
  template <int l>
  [[gnu::always_inline]] void passes(Layer<l>, Blood, const T& x) {
    returned_to_blood += x * chain->blood[l];
    skin_to_blood += x * chain->at_skin[l];
    clothing_to_blood += x * chain->at_clothing[l];
  }

 private:
  template <int l>
  constexpr Facing<T>& facing() {
    static_assert(l == body::skin || l == body::clothing, "only skin and clothing face the cabin");
    return l == body::skin ? skin : clothing;
  }
};

template <class T>
struct FingerRows : OuterRows<T> {
  using OuterRows<T>::loses, OuterRows<T>::passes, OuterRows<T>::gains;
  Facing<T> finger;
  T diagonal, from_blood = empty_sum<T>(), to_blood = empty_sum<T>(), gain_W = empty_sum<T>();

  [[gnu::always_inline]] void loses(Finger, const T& x) { diagonal += x; }
  [[gnu::always_inline]] void gains(Finger, const T& x) { gain_W += x; }
  [[gnu::always_inline]] void passes(Blood, Finger, const T& x) { from_blood += x; }
  [[gnu::always_inline]] void passes(Finger, Blood, const T& x) { to_blood += x; }
  template <int m>
  [[gnu::always_inline]] void passes(Cabin<m>, Finger, const T& x) {
    finger.from_cabin[m] += x;
  }
  template <int k>
  [[gnu::always_inline]] void passes(Finger, Cabin<k>, const T& x) {
    finger.to_cabin[k] += x;
  }
};

// Which cabin entries a surface meets, asked of the links while compiling.
template <class Node>
struct Meets : NoRows {
  using NoRows::passes;
  std::array<bool, 4> entry{};

  template <int m>
  constexpr void passes(Cabin<m>, Node, const double&) {
    entry[m] = true;
  }
};
template <class Node>
inline constexpr std::array<bool, 4> meets = [] {
  Terms<Meets<Node>> met;
  const body::PersonCoefficients<double> none{};
  if constexpr (std::is_same_v<Node, Finger>)
    finger_links(none, met);
  else
    segment_links(none, 0, met);
  return met.entry;
}();

// ---- The elimination ------------------------------------------------------------------------------------

// Responses to one watt into the skin, and into the clothing: through_chain() without its zero terms.
template <class T>
inline void unit_responses(SegmentFactor<T>& f) {
  const auto inward_from_skin = [&](std::array<T, 5>& r) {
    for (int l = body::fat; l >= body::core; --l) r[l] = f.outward[l] * r[l + 1];
  };
  f.at_skin[4] = f.outward[3] * f.inverse[4];
  f.at_skin[3] = f.inverse[3] + f.inward * f.at_skin[4];
  inward_from_skin(f.at_skin);
  f.at_clothing[4] = f.inverse[4];
  f.at_clothing[3] = f.inward * f.inverse[4];
  inward_from_skin(f.at_clothing);
}

// Forward elimination and back substitution of one right-hand side through a chain, in place.
template <class T>
inline void through_chain(const SegmentFactor<T>& f, std::array<T, 5>& r) {
  for (int l = 0; l < 4; ++l) r[l + 1] += f.outward[l] * r[l];
  r[4] *= f.inverse[4];
  r[3] = r[3] * f.inverse[3] + f.inward * r[4];
  for (int l = body::fat; l >= body::core; --l) r[l] = r[l] * f.inverse[l] + f.outward[l] * r[l + 1];
}

// All chains of a person, layer by layer: divisions that do not wait for each other overlap.
template <class T>
inline void factor_chains(const body::PersonCoefficients<T>& c, T inverse_a,
                          std::array<SegmentFactor<T>, body::segment_count>& segments) {
  for (int s = 0; s < body::segment_count; ++s) {
    Terms<ChainRows<T>> rows;
    for (int l = 0; l < body::layer_count; ++l) rows.diagonal[l] = c.capacity_J_K[s][l] * inverse_a;
    segment_links(c, s, rows);
    // Diagonals and off-diagonals stand where their results will.
    SegmentFactor<T>& f = segments[s];
    f.inverse = rows.diagonal, f.outward = rows.outward, f.inward = rows.inward;
    f.blood = rows.blood, f.gain_W = rows.gain_W;
  }
  for (int l = 0; l < 3; ++l)
    for (SegmentFactor<T>& f : segments) {
      const T g = f.outward[l];
      f.inverse[l] = T(1) / f.inverse[l];
      f.outward[l] = g * f.inverse[l];
      f.inverse[l + 1] -= g * f.outward[l];
    }
  for (SegmentFactor<T>& f : segments) {
    const T down = f.inward;
    f.inverse[3] = T(1) / f.inverse[3];
    f.outward[3] *= f.inverse[3];
    f.inward *= f.inverse[3];
    f.inverse[4] -= down * f.outward[3];
  }
  for (SegmentFactor<T>& f : segments) {
    f.inverse[4] = T(1) / f.inverse[4];
    through_chain(f, f.blood);
    unit_responses(f);
  }
}

// Eliminates one person: what their surfaces take from the cabin goes onto its rows' diagonal, and what the
// rows see of the rest of the person is subtracted.
// @param gain of the cabin's rows, what flows into them whatever the unknowns
template <class T>
inline void eliminate_person(const body::PersonCoefficients<T>& c, T inverse_a, PersonFactor<T>& f,
                             CabinMatrix<T>& cabin, CabinVector<T>& gain) {
  T blood_diagonal = c.blood_capacity_J_K * inverse_a;
  f.blood_per_cabin = f.cabin_per_blood = {T(0), T(0), T(0), T(0)};
  Terms<FingerRows<T>> finger;
  finger.diagonal = c.finger_capacity_J_K * inverse_a;
  finger_links(c, finger);
  finger.add_to(cabin, gain);
  f.finger_inverse = T(1) / finger.diagonal;
  f.finger_gain_W = finger.gain_W;
  const T finger_per_blood = finger.from_blood * f.finger_inverse;
  const T blood_per_finger = finger.to_blood * f.finger_inverse;
  blood_diagonal += finger.blood_diagonal - finger.to_blood * finger_per_blood;
  std::array<Four<T>, 4> seen{};  // of surfaces by the cabin's rows
  for (int m = 0; m < 4; ++m) {
    if (!meets<Finger>[m]) continue;
    f.blood_per_cabin[m] = blood_per_finger * finger.finger.from_cabin[m];
    f.cabin_per_blood[m] = finger.finger.to_cabin[m] * finger_per_blood;
    const T alone = f.finger_inverse * finger.finger.from_cabin[m];
    for (int k = 0; k < 4; ++k)
      if (meets<Finger>[k]) seen[k][m] = finger.finger.to_cabin[k] * alone;
  }
  factor_chains(c, inverse_a, f.segments);
  for (int s = 0; s < body::segment_count; ++s) {
    const SegmentFactor<T>& g = f.segments[s];
    Terms<SegmentOuterRows<T>> rows;
    rows.chain = &g;
    segment_links(c, s, rows);
    rows.add_to(cabin, gain);
    blood_diagonal += rows.blood_diagonal - rows.returned_to_blood;
    const Facing<T>&skin = rows.skin, &cloth = rows.clothing;
    constexpr const auto& cloth_meets = meets<Layer<body::clothing>>;
    Four<T> skin_warms, cloth_warms;
    for (int m = 0; m < 4; ++m) {
      f.blood_per_cabin[m] += rows.skin_to_blood * skin.from_cabin[m];
      f.cabin_per_blood[m] += skin.to_cabin[m] * g.blood[body::skin];
      skin_warms[m] = g.at_skin[body::skin] * skin.from_cabin[m];
      cloth_warms[m] = g.at_skin[body::clothing] * skin.from_cabin[m];
    }
    for (int m = 0; m < 4; ++m)
      if (cloth_meets[m]) {
        f.blood_per_cabin[m] += rows.clothing_to_blood * cloth.from_cabin[m];
        f.cabin_per_blood[m] += cloth.to_cabin[m] * g.blood[body::clothing];
        skin_warms[m] += g.at_clothing[body::skin] * cloth.from_cabin[m];
        cloth_warms[m] += g.at_clothing[body::clothing] * cloth.from_cabin[m];
      }
    for (int k = 0; k < 4; ++k) {
      if (cloth_meets[k])
        for (int m = 0; m < 4; ++m)
          seen[k][m] += skin.to_cabin[k] * skin_warms[m] + cloth.to_cabin[k] * cloth_warms[m];
      else
        for (int m = 0; m < 4; ++m) seen[k][m] += skin.to_cabin[k] * skin_warms[m];
    }
  }
  f.blood_inverse = T(1) / blood_diagonal;
  for (int m = 0; m < 4; ++m) f.blood_per_cabin[m] *= f.blood_inverse;
  for (int k = 0; k < 4; ++k)
    for (int m = 0; m < 4; ++m) cabin[k][m] -= seen[k][m] + f.cabin_per_blood[k] * f.blood_per_cabin[m];
}

// What the nodes of a segment, or the fingers, at known values bring to blood and cabin rows.
template <class T>
struct Brought : NoRows {
  using NoRows::passes;
  CabinVector<T>& cabin;
  T& blood;
  const T* chain;
  T finger;

  Brought(CabinVector<T>& rows, T& blood_row, const T* nodes, T finger_degC)
      : cabin(rows), blood(blood_row), chain(nodes), finger(finger_degC) {}
  template <int l, int k>
  [[gnu::always_inline]] void passes(Layer<l>, Cabin<k>, const T& x) {
    cabin[k] += x * chain[l];
  }
  template <int l>
  [[gnu::always_inline]] void passes(Layer<l>, Blood, const T& x) {
    blood += x * chain[l];
  }
  template <int k>
  [[gnu::always_inline]] void passes(Finger, Cabin<k>, const T& x) {
    cabin[k] += x * finger;
  }
  [[gnu::always_inline]] void passes(Finger, Blood, const T& x) { blood += x * finger; }
};

// What the cabin and the blood at known values bring to skin, clothing and fingers, W.
template <class T>
struct Received : NoRows {
  using NoRows::passes;
  const CabinVector<T>& cabin;
  T blood;
  T skin = empty_sum<T>(), clothing = empty_sum<T>(), finger = empty_sum<T>();

  Received(const CabinVector<T>& entries, T blood_degC) : cabin(entries), blood(blood_degC) {}
  template <int m>
  [[gnu::always_inline]] void passes(Cabin<m>, Layer<body::skin>, const T& x) {
    skin += x * cabin[m];
  }
  template <int m>
  [[gnu::always_inline]] void passes(Cabin<m>, Layer<body::clothing>, const T& x) {
    clothing += x * cabin[m];
  }
  template <int m>
  [[gnu::always_inline]] void passes(Cabin<m>, Finger, const T& x) {
    finger += x * cabin[m];
  }
  [[gnu::always_inline]] void passes(Blood, Finger, const T& x) { finger += x * blood; }
};

// One person's nodes with blood and cabin held at zero, into u; then the blood; then what the cabin rows get.
template <class T>
inline void forward_person(const body::PersonCoefficients<T>& c, const PersonFactor<T>& f, T inverse_a,
                           const T* y, T* u, CabinVector<T>& cabin) {
  namespace node = body::at;
  const T finger = (c.finger_capacity_J_K * inverse_a * y[node::finger] + f.finger_gain_W) * f.finger_inverse;
  u[node::finger] = finger;
  T blood = c.blood_capacity_J_K * inverse_a * y[node::blood];
  std::array<T, 5> chain;
  Terms<Brought<T>> brought{{cabin, blood, chain.data(), finger}};
  finger_links(c, brought);
  for (int s = 0; s < body::segment_count; ++s) {
    const SegmentFactor<T>& g = f.segments[s];
    const T* start = y + node::node(s, 0);
    for (int l = 0; l < 5; ++l) chain[l] = c.capacity_J_K[s][l] * inverse_a * start[l] + g.gain_W[l];
    through_chain(g, chain);
    for (int l = 0; l < 5; ++l) u[node::node(s, l)] = chain[l];
    segment_links(c, s, brought);
  }
  blood *= f.blood_inverse;
  u[node::blood] = blood;
  for (int k = 0; k < 4; ++k) cabin[k] += f.cabin_per_blood[k] * blood;
}

// The cabin is known: blood, then every node.
template <class T>
inline void back_person(const body::PersonCoefficients<T>& c, const PersonFactor<T>& f,
                        const CabinVector<T>& cabin, T* u) {
  namespace node = body::at;
  T blood = u[node::blood];
  for (int m = 0; m < 4; ++m) blood += f.blood_per_cabin[m] * cabin[m];
  u[node::blood] = blood;
  Terms<Received<T>> at_finger{{cabin, blood}};
  finger_links(c, at_finger);
  u[node::finger] += f.finger_inverse * at_finger.finger;
  for (int s = 0; s < body::segment_count; ++s) {
    const SegmentFactor<T>& g = f.segments[s];
    Terms<Received<T>> in{{cabin, blood}};
    segment_links(c, s, in);
    for (int l = 0; l < 5; ++l)
      u[node::node(s, l)] += g.blood[l] * blood + g.at_skin[l] * in.skin + g.at_clothing[l] * in.clothing;
  }
}

}  // namespace bide::system
