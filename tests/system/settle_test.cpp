// What the end of a step puts right; expected values are balances worked by hand beside each check.
#include "bide/system/settle.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace bide;
using doctest::Approx;
namespace at = system::at;

namespace {

// One person in 5 m3 of air of 20 degC that stores 10 kJ/K; outside 5 g/m3 of vapour and 420 ppm.
struct Cabin {
  system::Coefficients<double> c;
  system::Held<double> held;
  std::vector<double> mean, x, end_slopes, ahead;

  Cabin() {
    c.cabin = {};
    c.cabin.volume_m3 = 5;
    c.cabin.capacity[at::air] = 10'000;
    c.cabin.latent_heat_J_kg = 2.5e6;
    c.cabin.outside_vapour_kg_m3 = 0.005;
    c.cabin.outside_co2 = 420e-6;
    c.cabin.sea_degC = c.cabin.tube_degC = 15;
    c.persons.resize(1);
    held.persons.resize(1);
    const auto size = static_cast<std::size_t>(system::state_size(1));
    mean.assign(size, 0), x.assign(size, 0), end_slopes.assign(size, 0), ahead.assign(size, 0);
    x[at::air] = 20, x[at::canopy] = x[at::floor_water] = 15, x[at::vapour] = 0.012;
    x[at::co2] = 420e-6, x[at::water_mass] = 1, x[at::film_mass] = 0.1;
  }
  void settle(double length_s = 200) {
    system::StepEnd<double> end{length_s, mean, x, end_slopes, ahead};
    system::settle(c, held, end);
  }
  double& of_person(int i) { return x[static_cast<std::size_t>(system::person_offset(0) + i)]; }
};

}  // namespace

TEST_CASE("nothing to settle changes nothing") {
  Cabin t;
  const std::vector<double> before = t.x;
  t.settle();
  for (std::size_t i = 0; i < before.size(); ++i) CHECK(t.x[i] == Approx(before[i]).epsilon(1e-14));
}

TEST_CASE("entrances open on 16,000 ppm: the air is renewed fifty times and carbon dioxide ends outdoors") {
  // Q h / V = 1.25 x 200 / 5 = 50; the step of second order had ended at -194 ppm. 15,580 ppm of 5 m3 left:
  // 0.0779 m3.
  Cabin t;
  t.c.cabin.ventilation_m3_s = 1.25;
  t.x[at::co2] = -194e-6;
  t.mean[at::co2] = (-194e-6 - 16'000e-6) / 200;
  t.x[at::total_co2_out] = 5 * (16'000e-6 + 194e-6);
  t.settle();
  CHECK(t.x[at::co2] == Approx(420e-6).epsilon(1e-12));
  CHECK(t.x[at::total_co2_out] == Approx(0.0779).epsilon(1e-12));
}

TEST_CASE(
    "a sleeve that dried within the step is warmed again first, up to the air, and the air by the rest") {
  // 2 g x 2.5 MJ/kg = 5 kJ. Cloth of 500 J/K at 15 degC takes 2.5 kJ up to the 20 degC of the air, which
  // takes the other 2.5 kJ: 0.25 K.
  Cabin t;
  t.c.persons[0].capacity_J_K[0][body::clothing] = 500;
  t.of_person(body::at::node(0, body::clothing)) = 15;
  t.of_person(body::at::clothing_water) = -0.002;
  t.settle();
  CHECK(t.of_person(body::at::node(0, body::clothing)) == Approx(20));
  CHECK(t.x[at::air] == Approx(20.25));
  CHECK(t.x[at::total_latent] == Approx(2500));
  CHECK(t.x[at::total_stored] == Approx(2500));
  CHECK(t.of_person(body::at::total_evaporation) == Approx(-2500));
  CHECK(t.of_person(body::at::total_stored) == Approx(2500));
}

TEST_CASE("air that is renewed within the step carries out its part of the heat that comes back") {
  // 4 g x 2.5 MJ/kg = 10 kJ into 10 kJ/K and 200 s x 50 W/K = 10 kJ/K: 0.5 K, and 5 kJ are carried out.
  Cabin t;
  t.c.cabin.air_exchange_W_K = 50;
  t.x[at::film_mass] = -0.004;
  t.settle();
  CHECK(t.x[at::air] == Approx(20.5));
  CHECK(t.x[at::total_by_air] == Approx(5000));
  CHECK(t.x[at::total_stored] == Approx(5000));
}

TEST_CASE("a canopy, a floor and a sleeve that dried within the step get back what they did not hold") {
  // 5 + 1 + 2 g: vapour falls by 8 g in 5 m3, and 8 g x 2.5 MJ/kg = 20 kJ warm the air by 2 K.
  Cabin t;
  t.x[at::film_mass] = -0.005, t.x[at::water_mass] = -0.001;
  t.of_person(body::at::clothing_water) = -0.002;
  t.settle();
  CHECK(t.x[at::film_mass] == 0);
  CHECK(t.x[at::water_mass] == 0);
  CHECK(t.of_person(body::at::clothing_water) == 0);
  CHECK(t.x[at::vapour] == Approx(0.012 - 0.0016));
  CHECK(t.x[at::air] == Approx(22));
  CHECK(t.x[at::total_condensed] == Approx(0.005));
  CHECK(t.x[at::total_floor_evaporation] == Approx(-0.001));
  CHECK(t.of_person(body::at::total_clothing_evaporation) == Approx(-0.002));
  CHECK(t.x[at::total_latent] == Approx(20'000));
  CHECK(t.x[at::total_stored] == Approx(20'000));
}

TEST_CASE("air that holds more than it can turns to fog, at most 1 % above saturation is left") {
  Cabin t;
  t.x[at::vapour] = 0.030;  // saturation at 20 degC: 17.3 g/m3
  t.settle();
  CHECK(t.x[at::vapour] <= 1.01 * saturation_density_kg_m3(t.x[at::air]) * (1 + 1e-12));
  CHECK(t.x[at::vapour] > 0.9 * saturation_density_kg_m3(t.x[at::air]));
  const double fog_kg = 5 * (0.030 - t.x[at::vapour]);
  CHECK(t.x[at::water_mass] == Approx(1 + fog_kg));
  CHECK(t.x[at::air] == Approx(20 + 250 * fog_kg));  // 2.5 MJ/kg over 10 kJ/K
  CHECK(t.x[at::total_latent] == Approx(2.5e6 * fog_kg));
}

TEST_CASE("in the open the excess drifts away") {
  Cabin t;
  t.held.enclosed = 0;
  t.x[at::vapour] = 0.030;
  t.settle();
  CHECK(t.x[at::vapour] == Approx(1.01 * saturation_density_kg_m3(20.0)));
  CHECK(t.x[at::total_vapour_out] == Approx(5 * (0.030 - t.x[at::vapour])));
  CHECK(t.x[at::air] == 20);
}

TEST_CASE("ventilation carries out no more vapour than there is above the driest air around") {
  // From 12 g/m3 to -1 within the step; outside 5: 6 g/m3 of 5 m3 too much.
  Cabin t;
  t.x[at::vapour] = -0.001;
  t.mean[at::vapour] = -0.013 / 200;
  t.settle();
  CHECK(t.x[at::vapour] == Approx(0.005));
  CHECK(t.x[at::total_vapour_out] == Approx(-0.030));
}

TEST_CASE("vapour that condenses on the skin runs off and does not hydrate") {
  // 1e-5 kg/s over 200 s: 2 g.
  for (const double in_water : {0.0, 1.0}) {
    Cabin t;
    t.held.persons[0].in_water = in_water;
    t.of_person(body::at::body_water) = 40.002;
    t.of_person(body::at::total_skin_water) = -0.002;
    t.mean[static_cast<std::size_t>(system::person_offset(0) + body::at::total_skin_water)] = -1e-5;
    t.settle();
    CHECK(t.of_person(body::at::body_water) == Approx(40));
    CHECK(std::abs(t.of_person(body::at::total_skin_water)) < 1e-15);
    CHECK(t.x[at::water_mass] == Approx(1 + 0.002 * (1 - in_water)));
    CHECK(t.of_person(body::at::total_overboard) == Approx(0.002 * in_water));
  }
}
