// Every number gets its own result, however many fit a register.
#include "bide/core/packs.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>

using namespace bide;

namespace {

template <class T>
struct Both {
  T twice, grown;
};

template <class T, int size>
void check_numbers() {
  std::array<int, static_cast<std::size_t>(size)> times{};
  in_packs<T, size>([](int i) { return T(0.5 * i); },
                    [](auto x) {
                      using Packed = decltype(x);
                      return Both<Packed>{x + x, exp(x)};
                    },
                    [&](int i, const Both<T>& out) {
                      ++times[static_cast<std::size_t>(i)];
                      CHECK(lane(out.twice, 0) == i);
                      CHECK(lane(out.grown, 0) == doctest::Approx(std::exp(0.5 * i)).epsilon(1e-14));
                    });
  for (const int each : times) CHECK(each == 1);
}

}  // namespace

TEST_CASE("numbers go through packs and come back in their places") {
  check_numbers<double, 1>();
  check_numbers<double, 7>();
  check_numbers<double, 8>();
  check_numbers<double, 13>();
  check_numbers<Lanes<4>, 7>();
}
