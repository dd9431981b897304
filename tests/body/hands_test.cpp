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
  // Two thirds of 36.8 and a third of 31.8 degC.
  const double neutral = mean_body_degC(36.8, 31.8), cold = mean_body_degC(36.1, 21.2);
  CHECK(neutral == Approx(35.13).epsilon(1e-3));
  // A kilogram of finger (2830 J/K) at 2.8 mL/(mL h), Shitzer 1997: 2.8 L/h.
  CHECK(cold_dilatation_L_h(5.0, neutral, 2830.0) == Approx(2.8).epsilon(0.01));
  CHECK(cold_dilatation_L_h(10.0, 37.5, 2830.0) == Approx(2.8).epsilon(0.01));
  CHECK(cold_dilatation_L_h(12.5, neutral, 2830.0) == Approx(1.4).epsilon(0.01));
  CHECK(cold_dilatation_L_h(15.0, neutral, 2830.0) == 0);
  // Daanen & Ducharme 1999: 22 of 57 units in the cold body.
  CHECK(cold_dilatation_L_h(5.0, cold, 2830.0) == Approx(2.8 * 22 / 57).epsilon(0.05));
  // Almost absent in hypothermia (Daanen 2003): core 34, skin 18.
  CHECK(cold_dilatation_L_h(5.0, mean_body_degC(34.0, 18.0), 2830.0) == 0);
}

// Fingers that settle at f of a hand at 20 degC with a flow of m: m (20 - f) = g (f - around). The flow from
// the blood at 37, cut, has to bring the same.
TEST_CASE("what the hand leaves for the fingers settles them between hand and surroundings") {
  for (const double m : {0.05, 0.5, 5.0})
    for (const double g : {0.1, 0.4, 4.0})
      for (const double around : {-10.0, 5.0, 15.0}) {
        const double f = (m * 20 + g * around) / (m + g);
        CHECK(m * left_by_hand(37.0, 20.0, around, m, g) * (37 - f) == Approx(g * (f - around)));
      }
  CHECK(left_by_hand(37.0, 20.0, 25.0, 0.5, 0.4) == 0);  // a hand colder than the air feeds no warmth
  CHECK(left_by_hand(37.0, 37.0, 45.0, 5.0, 0.4) == Approx(1));
}

TEST_CASE("toes lie between foot and surroundings, nearer to what they have more of") {
  CHECK(toe_degC(30.0, 0.3, 0.1, 10.0) == Approx(25));
  CHECK(toe_degC(30.0, 0.0, 0.1, 10.0) == 10);
}

TEST_CASE("what fingers can do") {
  CHECK(dexterity(20.0) == 1);
  CHECK(dexterity(16.0) == 1);  // Brajkovic 2001
  CHECK(dexterity(12.0) == Approx(0.5));
  CHECK(dexterity(8.0) == 0);  // Ray 2019
}

TEST_CASE("exposure counters") {
  // Orr: lifecraft immersion at 15.6 to -3.9 degC injured, from 12 h on; trenches in 72 h; tissue freezes at
  // -0.55.
  CHECK(cold_injury_rate(10.0, 1.0) == 1);
  CHECK(cold_injury_rate(10.0, 0.0) == Approx(12.0 / 72));
  CHECK(cold_injury_rate(25.0, 1.0) == 0);
  CHECK(freezing_exposure(-1.0, -4.0) == 1);
  CHECK(freezing_exposure(0.0, -4.0) == 0);
  // Danielsson 1996, from memory: skin of -4.8 freezes; an hour's exposure in a minute.
  CHECK(freezing_exposure(-1.0, -5.0) == Approx(60));
}

TEST_CASE("the skin of fingers is colder than they are, by what comes out through it") {
  // 0.045 m2 that lose 1 W/K to -15 degC: 13 W, 289 W/m2, by 198 W/(m2 K) of the inside 1.46 K.
  CHECK(finger_skin_degC(-2.0, -15.0, 1.0, 0.045) == Approx(-3.459).epsilon(1e-3));
  CHECK(finger_skin_degC(20.0, 20.0, 1.0, 0.045) == 20);
}

TEST_CASE("minutes until a bare face may freeze") {
  const auto minutes = [](double air_degC, double km_h) {
    return 1 / (60 * face_freezing_per_s(air_degC, km_h / 3.6));
  };
  // By hand: (2111 - 24.5 x 32) x 15.2^-1.668 = 1327 x 0.01068; (2111 - 24.5 x 20) x 25.2^-1.668 = 1621 x
  // 0.004598.
  CHECK(minutes(-20, 32) == Approx(14.17).epsilon(1e-3));
  CHECK(minutes(-30, 20) == Approx(7.453).epsilon(1e-3));
  // DTIC ADA454525: nobody of twelve at 0 and -10 degC, some at -20.
  for (const double wind : {0.0, 16.01, 32.0}) {
    CHECK(face_freezing_per_s(0.0, wind / 3.6) == 0);
    CHECK(face_freezing_per_s(-10.0, wind / 3.6) == 0);
    CHECK((face_freezing_per_s(-20.0, wind / 3.6) > 0) == (wind > 0));
  }
  CHECK(minutes(-25, 200) == minutes(-25, 60));
}

TEST_CASE("a face freezes never later in more wind or in colder air") {
  for (double air = 5; air > -50; air -= 1.5)
    for (double wind = 0; wind < 40; wind += 0.5) {
      CAPTURE(air);
      CAPTURE(wind);
      const double here = face_freezing_per_s(air, wind);
      CHECK(here >= 0);
      CHECK(face_freezing_per_s(air, wind + 0.5) >= here);
      CHECK(face_freezing_per_s(air - 1.5, wind) >= here);
    }
}

TEST_CASE("hands in lanes agree with double") {
  check_lanes(AS_LAMBDA(dexterity), {{5}, {9}, {14}, {20}});
  check_lanes(AS_LAMBDA(finger_flow_L_h), {{0, 0, 500}, {1, 0.1, 500}, {30, 1, 500}, {0.1, 0.2, 300}});
  check_lanes(AS_LAMBDA(cold_dilatation_L_h), {{5, 36, 500}, {12, 33, 500}, {14, 28, 300}, {20, 36, 500}});
  check_lanes(AS_LAMBDA(left_by_hand),
              {{37, 20, 5, 1, 0.4}, {37, 20, 25, 1, 0.4}, {37, 37, 45, 1, 1}, {36, 37, 0, 3, 1}});
  check_lanes(AS_LAMBDA(toe_degC), {{30, 1, 1, 5}, {30, 0, 1, 5}, {10, 1, 0, 5}, {10, 0.1, 0.2, 12}});
  check_lanes(AS_LAMBDA(cold_injury_rate), {{5, 1}, {14.9, 0.3}, {15.1, 1}, {30, 0}});
  check_lanes(AS_LAMBDA(freezing_exposure), {{-5, -6}, {-0.5, -5}, {0, 0}, {-0.6, -0.7}});
  check_lanes(AS_LAMBDA(finger_skin_degC),
              {{5, 0, 1, 0.04}, {0, 0, 1, 0.04}, {-2, -9, 2, 0.05}, {30, 40, 1, 1}});
  check_lanes(AS_LAMBDA(face_freezing_per_s), {{-20, 9}, {-4, 9}, {-30, 2}, {-40, 50}});
}
