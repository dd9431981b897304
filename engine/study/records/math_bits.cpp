#include "bide/study/records/math_bits.hpp"

#include <cmath>
#include <cstring>

#include "bide/core/scalar.hpp"
#include "bide/study/records/hash.hpp"

namespace bide::study {
namespace {

constexpr int arguments_each = 4096;

void add_bits(Hash& hash, double value) {
  char bytes[sizeof value];
  std::memcpy(bytes, &value, sizeof value);
  hash.add({bytes, sizeof bytes});
}

// Arguments between low and high, evenly, none of them a number at which the result is exact.
template <class Function>
void add_results(Hash& hash, double low, double high, Function function) {
  for (int i = 0; i < arguments_each; ++i)
    add_bits(hash, function(low + (high - low) * (i + 0.5) / arguments_each));
}

// The same of a function of lanes, which is another function of the library.
template <class Function>
void add_results_in_lanes(Hash& hash, double low, double high, Function function) {
  for (int i = 0; i < arguments_each; i += block_width) {
    BlockLanes x;
    for (int lane = 0; lane < block_width; ++lane)
      x.set(lane, low + (high - low) * (i + lane + 0.5) / arguments_each);
    const BlockLanes y = function(x);
    for (int lane = 0; lane < block_width; ++lane) add_bits(hash, y[lane]);
  }
}

std::uint64_t worked_out() {
  // Wide enough for every branch that a model of people and weather takes.
  constexpr double turn = 6.3, half_turn = 1.57, large = 1e3, steep = 30;
  Hash hash;
  add_results(hash, -steep, steep, [](double x) { return std::exp(x); });
  add_results_in_lanes(hash, -steep, steep, [](BlockLanes x) { return exp(x); });
  add_results(hash, 0, 2, [](double x) { return std::log(x); });
  add_results(hash, 0, large, [](double x) { return std::log(x); });
  add_results_in_lanes(hash, 0, 2, [](BlockLanes x) { return log(x); });
  add_results_in_lanes(hash, 0, large, [](BlockLanes x) { return log(x); });
  add_results(hash, -1, 1, [](double x) { return std::log1p(x); });
  for (const double power : {-0.7, 0.16, 0.425, 0.6, 1.4, 4.0})
    add_results(hash, 0, large, [power](double x) { return std::pow(x, power); });
  add_results(hash, -steep, steep, [](double x) { return std::pow(2, x); });
  add_results(hash, -turn, turn, [](double x) { return std::sin(x); });
  add_results(hash, -turn, turn, [](double x) { return std::cos(x); });
  add_results(hash, -large, large, [](double x) { return std::sin(x); });
  add_results(hash, -large, large, [](double x) { return std::cos(x); });
  // Both of one argument are one call of a third function.
  add_results(hash, -turn, turn, [](double x) { return std::sin(x) * std::cos(x); });
  add_results(hash, -half_turn, half_turn, [](double x) { return std::tan(x); });
  add_results(hash, -1, 1, [](double x) { return std::asin(x); });
  add_results(hash, -1, 1, [](double x) { return std::acos(x); });
  add_results(hash, -turn, turn, [](double x) { return std::atan2(std::sin(x), x); });
  add_results(hash, 1, large, [](double x) { return std::acosh(x); });
  add_results(hash, -1, 1, [](double x) { return std::atanh(x); });
  add_results(hash, 0, large, [](double x) { return std::cbrt(x); });
  add_results(hash, 0, large, [](double x) { return std::hypot(x, 1); });
  return hash.value();
}

}  // namespace

std::uint64_t math_bits() {
  static const std::uint64_t bits = worked_out();
  return bits;
}

}  // namespace bide::study
