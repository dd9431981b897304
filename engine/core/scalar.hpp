// The closed list of scalars the model is compiled for, and the few operations model code may use on them.
//
// States: none. Inputs: a scalar type T, `double` or `Lanes<W>`. Validity: every operation is lane-wise, so a
// lane's result never depends on its neighbours. Source: none, this is arithmetic.
//
// In model code: `select()` instead of `if` on T, no literal but 0, 1, 2 and 0.5 (numbers live in
// constants/).
#pragma once

#include <Eigen/Core>
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <type_traits>

namespace bide {

// The compiler's own vector types (g++ 12 drops the attribute when its size is a template argument).
template <int W>
struct VectorOf;
#define BIDE_VECTOR_OF(W)                                       \
  template <>                                                   \
  struct VectorOf<W> {                                          \
    typedef double Vector __attribute__((vector_size((W)*8)));  \
    typedef long long Bits __attribute__((vector_size((W)*8))); \
  };
BIDE_VECTOR_OF(2)
BIDE_VECTOR_OF(4)
BIDE_VECTOR_OF(8)
#undef BIDE_VECTOR_OF

// W simulations in lock step, one per vector lane. A vector of the compiler's own kind: operators come with
// it, values are eager (no expression templates to dangle), and select() becomes one blend instruction.
template <int W>
struct Lanes {
  using Vector = typename VectorOf<W>::Vector;
  using Bits = typename VectorOf<W>::Bits;
  struct Mask {
    Bits bits;
    friend Mask operator&(Mask a, Mask b) { return {a.bits & b.bits}; }
    friend Mask operator|(Mask a, Mask b) { return {a.bits | b.bits}; }
    friend Mask operator!(Mask a) { return {~a.bits}; }
  };

  Vector v;

  Lanes() : v{} {}
  Lanes(double x) { v = Vector{} + x; }  // NOLINT(google-explicit-constructor): scalars broadcast
  explicit Lanes(Vector x) : v(x) {}

  double operator[](int i) const { return v[i]; }
  void set(int i, double x) { v[i] = x; }

  friend Lanes operator+(Lanes a, Lanes b) { return Lanes(a.v + b.v); }
  friend Lanes operator-(Lanes a, Lanes b) { return Lanes(a.v - b.v); }
  friend Lanes operator*(Lanes a, Lanes b) { return Lanes(a.v * b.v); }
  friend Lanes operator/(Lanes a, Lanes b) { return Lanes(a.v / b.v); }
  friend Lanes operator-(Lanes a) { return Lanes(-a.v); }
  Lanes& operator+=(Lanes b) { return v += b.v, *this; }
  Lanes& operator-=(Lanes b) { return v -= b.v, *this; }
  Lanes& operator*=(Lanes b) { return v *= b.v, *this; }
  Lanes& operator/=(Lanes b) { return v /= b.v, *this; }
  friend Mask operator<(Lanes a, Lanes b) { return {a.v < b.v}; }
  friend Mask operator>(Lanes a, Lanes b) { return {a.v > b.v}; }
  friend Mask operator<=(Lanes a, Lanes b) { return {a.v <= b.v}; }
  friend Mask operator>=(Lanes a, Lanes b) { return {a.v >= b.v}; }
};

// Simulations that march in lock step: one register of doubles with AVX-512 and in a browser, else four
// (tools/bench has what was measured).
#ifdef __AVX512F__
inline constexpr int block_width = 8;
#elif defined __wasm_simd128__
inline constexpr int block_width = 2;
#else
inline constexpr int block_width = 4;
#endif
using BlockLanes = Lanes<block_width>;

template <class T>
inline constexpr int lane_count = 1;
template <int W>
inline constexpr int lane_count<Lanes<W>> = W;

// The truth value that comparing two T gives.
template <class T>
struct MaskOf {
  using type = bool;
};
template <int W>
struct MaskOf<Lanes<W>> {
  using type = typename Lanes<W>::Mask;
};
template <class T>
using Mask = typename MaskOf<T>::type;

// ---- select, and what is built on it --------------------------------------------------------------------

// `yes` where the condition holds, else `no`, lane by lane. Both are evaluated.
inline double select(bool condition, double yes, double no) {
  return condition ? yes : no;
}
template <int W>
inline Lanes<W> select(typename Lanes<W>::Mask condition, Lanes<W> yes, Lanes<W> no) {
  return Lanes<W>(condition.bits ? yes.v : no.v);
}
template <int W>
inline Lanes<W> select(typename Lanes<W>::Mask condition, double yes, Lanes<W> no) {
  return select(condition, Lanes<W>(yes), no);
}
template <int W>
inline Lanes<W> select(typename Lanes<W>::Mask condition, Lanes<W> yes, double no) {
  return select(condition, yes, Lanes<W>(no));
}

// Whether the condition holds in at least one lane.
inline bool any(bool m) {
  return m;
}
template <class M>
inline auto any(M m) -> decltype(m.bits, bool()) {
  bool found = false;
  for (std::size_t i = 0; i < sizeof(m.bits) / sizeof(long long); ++i) found = found || m.bits[i] != 0;
  return found;
}

// The larger and the smaller of two, lane by lane; b where either is not a number.
inline double larger(double a, double b) {
  return a > b ? a : b;
}
inline double smaller(double a, double b) {
  return a < b ? a : b;
}
template <int W>
inline Lanes<W> larger(Lanes<W> a, Lanes<W> b) {
  return select(a > b, a, b);
}
template <int W>
inline Lanes<W> larger(Lanes<W> a, double b) {
  return larger(a, Lanes<W>(b));
}
template <int W>
inline Lanes<W> larger(double a, Lanes<W> b) {
  return larger(Lanes<W>(a), b);
}
template <int W>
inline Lanes<W> smaller(Lanes<W> a, Lanes<W> b) {
  return select(a < b, a, b);
}
template <int W>
inline Lanes<W> smaller(Lanes<W> a, double b) {
  return smaller(a, Lanes<W>(b));
}
template <int W>
inline Lanes<W> smaller(double a, Lanes<W> b) {
  return smaller(Lanes<W>(a), b);
}

// x limited to [low, high]; low must not exceed high.
template <class T, class L, class H>
inline T clamp(T x, L low, H high) {
  return smaller(larger(x, T(low)), T(high));
}
// x where it is positive, else 0.
template <class T>
inline T positive_part(T x) {
  return larger(x, T(0));
}

// Smooth step: 0 below `low`, 1 above `high`, between them a cubic with zero slope at both ends (Hermite,
// 3x^2 - 2x^3).
// @param x    in the unit of low and high
// @param low  where the step begins
// @param high where it ends, above low
// @return [0, 1]
template <class T>
inline T smoothstep(T x, double low, double high) {
  constexpr double three = 3;
  const T s = clamp(T((x - T(low)) * T(1 / (high - low))), 0.0, 1.0);
  return s * s * (T(three) - T(2) * s);
}

// ---- functions of one argument --------------------------------------------------------------------------

using std::abs;
using std::exp;
using std::log;
using std::sqrt;

#ifdef BIDE_VECTOR_MATH
// All lanes at once by glibc's libmvec, within 4 units in the last place; elsewhere Eigen.
extern "C" Lanes<4>::Vector _ZGVdN4v_exp(Lanes<4>::Vector);
extern "C" Lanes<4>::Vector _ZGVdN4v_log(Lanes<4>::Vector);
inline Lanes<4> exp(Lanes<4> x) {
  return Lanes<4>(_ZGVdN4v_exp(x.v));
}
inline Lanes<4> log(Lanes<4> x) {
  return Lanes<4>(_ZGVdN4v_log(x.v));
}
#ifdef __AVX512F__
extern "C" Lanes<8>::Vector _ZGVeN8v_exp(Lanes<8>::Vector);
extern "C" Lanes<8>::Vector _ZGVeN8v_log(Lanes<8>::Vector);
inline Lanes<8> exp(Lanes<8> x) {
  return Lanes<8>(_ZGVeN8v_exp(x.v));
}
inline Lanes<8> log(Lanes<8> x) {
  return Lanes<8>(_ZGVeN8v_log(x.v));
}
#endif
#endif

namespace detail {
template <int W, class F>
inline Lanes<W> through_eigen(Lanes<W> x, F&& f) {
  using Array = Eigen::Array<double, W, 1>;
  alignas(sizeof(x.v)) double buffer[W];
  Eigen::Map<Array, Eigen::AlignedMax> map(buffer);
  __builtin_memcpy(buffer, &x.v, sizeof(x.v));
  map = f(map);
  __builtin_memcpy(&x.v, buffer, sizeof(x.v));
  return x;
}
}  // namespace detail

template <int W>
inline Lanes<W> exp(Lanes<W> x) {
  return detail::through_eigen(x, [](const auto& a) { return a.exp(); });
}
template <int W>
inline Lanes<W> log(Lanes<W> x) {
  return detail::through_eigen(x, [](const auto& a) { return a.log(); });
}
template <int W>
inline Lanes<W> sqrt(Lanes<W> x) {
  return detail::through_eigen(x, [](const auto& a) { return a.sqrt(); });
}
template <int W>
inline Lanes<W> abs(Lanes<W> x) {
  using Bits = typename Lanes<W>::Bits;
  constexpr long long all_but_the_sign = 0x7fffffffffffffff;
  return Lanes<W>(
      reinterpret_cast<typename Lanes<W>::Vector>(reinterpret_cast<Bits>(x.v) & all_but_the_sign));
}

// x to the power p.
// @param x base; 0 is returned for x <= 1e-300
// @param p exponent, the same in every lane
template <class T>
inline T power(T x, double p) {
  constexpr double tiny = 1e-300;
  const Mask<T> positive = x > T(tiny);
  // One stands in where there is no logarithm: a tiny number would underflow, which is slow.
  return select(positive, exp(T(p) * log(select(positive, x, T(1)))), T(0));
}

// Lane i of x; a plain double has one lane.
inline double lane(double x, int) {
  return x;
}
template <int W>
inline double lane(const Lanes<W>& x, int i) {
  return x[i];
}
inline void set_lane(double& x, int, double value) {
  x = value;
}
template <int W>
inline void set_lane(Lanes<W>& x, int i, double value) {
  x.set(i, value);
}

// Lane i of a struct that holds nothing but T: copied into (or out of) the same struct over double.
template <template <class> class S, class T>
void set_lane(S<T>& into, int i, const S<double>& from) {
  static_assert(std::is_trivially_copyable_v<S<double>>);
  static_assert(sizeof(S<T>) / sizeof(T) == sizeof(S<double>) / sizeof(double));
  T* to = reinterpret_cast<T*>(&into);
  const double* values = reinterpret_cast<const double*>(&from);
  for (std::size_t k = 0; k < sizeof(S<double>) / sizeof(double); ++k) set_lane(to[k], i, values[k]);
}
template <template <class> class S, class T>
S<double> lane(const S<T>& from, int i) {
  S<double> out;
  const T* values = reinterpret_cast<const T*>(&from);
  double* to = reinterpret_cast<double*>(&out);
  for (std::size_t k = 0; k < sizeof(S<double>) / sizeof(double); ++k) to[k] = lane(values[k], i);
  return out;
}

}  // namespace bide
