#include "bide/body/hands.hpp"

#include <doctest/doctest.h>

#include "bide/body/layout.hpp"
#include "body/lanes_agree.hpp"

using namespace bide::body;
using doctest::Approx;

TEST_CASE("taking the fingers out moves, and loses nothing") {
  const BodyTable whole = standard_body_table();
  BodyTable table = whole;
  const FingerNode fingers = take_fingers(table);
  CHECK(table.area_m2[hands] + fingers.area_m2 == Approx(0.0946));
  double capacity = fingers.capacity_J_K, basal = fingers.basal_W, flow = fingers.basal_flow_L_h;
  for (int l = 0; l < tissue_count; ++l) {
    capacity += table.capacity_J_K[hands][l];
    basal += table.basal_W[hands][l];
    flow += table.basal_flow_L_h[hands][l];
  }
  CHECK(capacity == Approx(0.46 * 4186.8));
  CHECK(basal == Approx(0.36 * 1.163));
  CHECK(flow == Approx(2.38));
  CHECK(fingers.setpoint_C == 35.22);
  CHECK(table.area_m2[arms] == whole.area_m2[arms]);
  CHECK(table.capacity_J_K[feet][skin] == whole.capacity_J_K[feet][skin]);
  // Ten cylinders of 8 cm by 1.7 cm with their tips: 10 x (pi 1.7 x 8 + pi 1.7^2 / 4) = 450 cm2.
  CHECK(fingers.area_m2 == Approx(0.0450).epsilon(0.03));
}

TEST_CASE("flow of a finger stays between its extremes") {
  // 0.18 kg of fingers (0.27 x 0.68): 0.5 and 90 mL per 100 mL and minute are 0.9 and 165 mL/min.
  BodyTable table = standard_body_table();
  const double capacity = take_fingers(table).capacity_J_K;
  CHECK(finger_flow_L_h(0.0, 0.0, capacity) == Approx(0.0551).epsilon(0.01));
  CHECK(finger_flow_L_h(100.0, 0.0, capacity) == Approx(9.91).epsilon(0.01));
  CHECK(finger_flow_L_h(1.0, 0.0, capacity) == 1.0);
  CHECK(finger_flow_L_h(0.0, 0.5, capacity) == Approx(0.5551).epsilon(0.01));
  CHECK(finger_flow_L_h(9.0, 5.0, capacity) == Approx(9.91).epsilon(0.01));
}

TEST_CASE("cold fingers of a warm body open, those of a cold body do not") {
  // A kilogram of finger (2830 J/K) at 2.8 mL/(mL h), Shitzer 1997: 2.8 L/h.
  CHECK(cold_dilatation_L_h(5.0, 37.0, 2830.0) == Approx(2.8).epsilon(0.01));
  CHECK(cold_dilatation_L_h(10.0, 37.5, 2830.0) == Approx(2.8).epsilon(0.01));
  CHECK(cold_dilatation_L_h(12.5, 37.0, 2830.0) == Approx(1.4).epsilon(0.01));
  CHECK(cold_dilatation_L_h(15.0, 37.0, 2830.0) == 0);
  CHECK(cold_dilatation_L_h(5.0, 36.0, 2830.0) == Approx(1.4).epsilon(0.01));
  CHECK(cold_dilatation_L_h(5.0, 35.0, 2830.0) == 0);  // Daanen 2003: almost absent in hypothermia
}

TEST_CASE("what fingers can do") {
  CHECK(dexterity(20.0) == 1);
  CHECK(dexterity(16.0) == 1);  // Brajkovic 2001
  CHECK(dexterity(12.0) == Approx(0.5));
  CHECK(dexterity(8.0) == 0);  // Ray 2019
}

TEST_CASE("exposure counters") {
  // Orr: lifecraft immersion at 15.6 to -3.9 degC injured; tissue freezes at -0.55.
  CHECK(cold_wet_exposure(10.0, 1.0) == 1);
  CHECK(cold_wet_exposure(10.0, 0.4) == 0.4);
  CHECK(cold_wet_exposure(25.0, 1.0) == 0);
  CHECK(freezing_exposure(-1.0) == 1);
  CHECK(freezing_exposure(0.0) == 0);
}

TEST_CASE("hands in lanes agree with double") {
  check_lanes(AS_LAMBDA(dexterity), {{5}, {9}, {14}, {20}});
  check_lanes(AS_LAMBDA(finger_flow_L_h), {{0, 0, 500}, {1, 0.1, 500}, {30, 1, 500}, {0.1, 0.2, 300}});
  check_lanes(AS_LAMBDA(cold_dilatation_L_h), {{5, 37, 500}, {12, 36, 500}, {14, 34, 300}, {20, 37, 500}});
  check_lanes(AS_LAMBDA(cold_wet_exposure), {{5, 1}, {14.9, 0.3}, {15.1, 1}, {30, 0}});
  check_lanes(AS_LAMBDA(freezing_exposure), {{-5}, {-0.5}, {0}, {-0.6}});
}
