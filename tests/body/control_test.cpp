// The controller against Stolwijk's table as printed in kcal, and a counter-current exchanger by hand.
#include "bide/body/control.hpp"

#include <doctest/doctest.h>

#include <array>

#include "bide/body/hands.hpp"

using namespace bide;
using namespace bide::body;
using doctest::Approx;

namespace {

constexpr double W_per_kcal_h = 1.163;  // 4186.8 J in a kilocalorie, 3600 s in an hour

// A person whose commands are the table's, and a state at the set points: 37 in the core, 34 at skin and
// fingers.
struct Person {
  Person() {
    b.sweat_factor = b.command_size = b.dilatation_age_factor = b.constriction_age_factor = 1;
    b.greatest_sweat_W_m2 = 400, b.area_total_m2 = 1.9;
    b.finger_setpoint_degC = x[at::finger] = 34;
    for (int s = 0; s < segment_count; ++s) {
      b.setpoint_degC[s][core] = x[static_cast<std::size_t>(at::node(s, core))] = 37;
      b.setpoint_degC[s][skin] = 34;
      b.receptor[s] = 1.0 / segment_count;
    }
    all_skin(34);
  }
  void all_skin(double degC) {
    for (int s = 0; s < segment_count; ++s) x[static_cast<std::size_t>(at::node(s, skin))] = degC;
  }
  void head(double degC) { x[static_cast<std::size_t>(at::node(body::head, core))] = degC; }
  Commands<double> told(double shift_K = 0, double rhythm_K = 0) const {
    return commands(b, x.data(), shift_K, rhythm_K);
  }
  Build<double> b{};
  std::array<double, at::count> x{};
};

}  // namespace

TEST_CASE("at the set points nothing is commanded") {
  const Commands<double> c = Person().told();
  CHECK(c.sweat_W == 0);
  CHECK(c.dilatation_L_h == 0);
  CHECK(c.constriction == 0);
  CHECK(c.finger_local == 1);
  CHECK(c.local[body::head] == 1);
}

// CSW 320 and SSW 29 kcal/(h K), CDIL 117 and SDIL 7.5 L/(h K): head 0.5 K and skin 1 K too warm.
TEST_CASE("a warm head and skin ask for sweat and flow") {
  Person p;
  p.head(37.5);
  p.all_skin(35);
  const Commands<double> c = p.told();
  CHECK(c.sweat_W == Approx((320 * 0.5 + 29 * 1) * W_per_kcal_h).epsilon(0.001));
  CHECK(c.dilatation_L_h == Approx(117 * 0.5 + 7.5));
  CHECK(c.constriction == 0);
  CHECK(c.local[body::head] == Approx(1.07177));  // 2^(1/10)
  // Thresholds 0.2 K later by dehydration, 0.1 by the clock.
  CHECK(p.told(0.2, 0.1).sweat_W == Approx((320 * 0.2 + 29 * 1) * W_per_kcal_h).epsilon(0.001));
  CHECK(p.told(0.2, 0.1).dilatation_L_h == Approx(117 * 0.2 + 7.5));
}

// CCON and SCON 5 1/K. Dehydration moves no threshold of the cold, the clock does.
TEST_CASE("a cold head and skin constrict, and ask for nothing else") {
  Person p;
  p.head(36.8);
  p.all_skin(31);
  p.x[at::finger] = 24;
  const Commands<double> c = p.told();
  CHECK(c.constriction == Approx(5 * 0.2 + 5 * 3));
  CHECK(c.sweat_W == 0);
  CHECK(c.dilatation_L_h == 0);
  CHECK(c.finger_local == Approx(0.5));
  CHECK(p.told(0.3, 0).constriction == Approx(16));
  CHECK(p.told(0, 0.1).constriction == Approx(16.5));
}

// 100 W over 1.9 m2 are asked for at a local factor of 2: 200 W; more than 400 W/m2 is never given.
TEST_CASE("sweat of a part of the skin, to the most that glands give") {
  Commands<double> c{};
  c.sweat_W = 100, c.greatest_sweat_W = 760;
  CHECK(sweat_W(0.5, c, 2.0) == Approx(100));
  CHECK(sweat_W(0.5, c, 10.0) == Approx(380));
}

// Q10 of 2, and no more than all when it is warmer.
TEST_CASE("cold tissue") {
  CHECK(cold_tissue_factor(-10.0) == Approx(0.5));
  CHECK(cold_tissue_factor(-20.0) == Approx(0.25));
  CHECK(cold_tissue_factor(5.0) == 1);
}

TEST_CASE("flow of muscle, skin and fat") {
  CHECK(muscle_flow_L_h(10.0, 100 * W_per_kcal_h) == Approx(110).epsilon(0.001));  // 1 L/h for each kcal/h
  Commands<double> c{};
  c.dilatation_L_h = 60, c.constriction = 4;
  const double open = unconstricted(0.5, c);
  CHECK(open == Approx(1.0 / 3));
  CHECK(skin_flow_L_h(3.0, 0.1, open, c, 0.5) == Approx((3 + 6) / 3.0 * 0.5));
  CHECK(fat_flow_L_h(3.0, open) == Approx(1));
}

// 10 L/h carry 11.63 W/K. Past an exchanger of the same conductance half arrives (NTU 1), past none all.
TEST_CASE("what a counter-current exchanger lets through") {
  CHECK(perfusion_per_flow(10.0, 0.0) == Approx(1.163));
  CHECK(perfusion_per_flow(10.0, 11.63) == Approx(1.163 / 2));
  CHECK(perfusion_per_flow(0.0, 0.0) == 0);
}

// Two conductances in series: 198 inside and 520 still water, 143.4; in fast water the body's film counts.
TEST_CASE("fingers under water") {
  CHECK(finger_to_water_W_m2K(100.0) == Approx(198.0 * 520 / (198 + 520)));
  CHECK(finger_to_water_W_m2K(1000.0) == Approx(198.0 * 1000 / 1198));
}
