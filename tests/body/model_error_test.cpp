#include "bide/body/model_error.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "bide/body/region.hpp"
#include "bide/constants/left_out.hpp"

using namespace bide;
using namespace bide::body;

namespace {

constants::Conditions at_a_study() {
  return constants::studied[0];
}

}  // namespace

TEST_CASE("at the middle every factor is exactly one, and applying it changes nothing") {
  const ErrorFactors none = factors_at({}, at_a_study());
  CHECK(none.heat_made == 1);
  CHECK(none.tissue_conductance == 1);
  CHECK(none.clothing_conductance == 1);
  CHECK(none.water_loss == 1);
}

TEST_CASE("a place in a range is a quantile of a lognormal") {
  const constants::ErrorSizes& sizes = constants::left_out[region_of(at_a_study())].sizes;
  // 0.8413 of a normal distribution lies below one standard deviation.
  const ErrorFactors one_sd = factors_at({0.84134475, 0.5, 0.5, 0.5}, at_a_study());
  CHECK(std::log(one_sd.heat_made) == doctest::Approx(sizes.heat_made).epsilon(1e-4));
  CHECK(one_sd.tissue_conductance == 1);
  // The ends are finite: one in a hundred, 2.326 standard deviations, and a factor of 2.5 at most.
  const ErrorFactors least = factors_at({0.5, 0, 0.5, 0.5}, at_a_study());
  CHECK(std::log(least.tissue_conductance) ==
        doctest::Approx(-std::min(2.326 * sizes.tissue_conductance, std::log(2.5))).epsilon(1e-3));
  constants::Conditions far = at_a_study();
  far.age_years = 90;
  CHECK(factors_at({1, 0.5, 0.5, 0.5}, far).heat_made <= 2.5 + 1e-12);
}

TEST_CASE("far from every study the ranges are twice as wide") {
  constants::Conditions far = at_a_study();
  far.age_years = 90;  // no study is within 15 years of it
  const ErrorPositions high{0.6, 0.6, 0.6, 0.6};
  CHECK(std::log(factors_at(high, far).tissue_conductance) ==
        doctest::Approx(2 * std::log(factors_at(high, at_a_study()).tissue_conductance)));
}

TEST_CASE("each factor multiplies what its name says") {
  Build<double> b{};
  b.shivering_factor = 2, b.shivering_ceiling_W = 300, b.sweat_factor = 1;
  b.skin_vapour_conductance_m_s = 1e-4, b.burnt_skin_vapour_conductance_m_s = 3e-3;
  b.basal_W[legs][core] = 10, b.basal_total_W = 100;
  b.conductance_W_K[legs][muscle] = 10, b.insulation_m2K_W[trunk] = 0.2, b.immersed_insulation_m2K_W = 0.02;
  apply({1.5, 2, 4, 0.5}, b);
  CHECK(b.shivering_factor == 3);
  CHECK(b.shivering_ceiling_W == 450);
  // 1.5 to the 0.36: exp(0.36 x 0.4055) = 1.157.
  CHECK(b.basal_W[legs][core] == doctest::Approx(11.57).epsilon(0.001));
  CHECK(b.basal_total_W == doctest::Approx(115.7).epsilon(0.001));
  CHECK(b.conductance_W_K[legs][muscle] == 20);
  CHECK(b.insulation_m2K_W[trunk] == doctest::Approx(0.05));
  CHECK(b.immersed_insulation_m2K_W == doctest::Approx(0.005));
  CHECK(b.sweat_factor == 0.5);
  CHECK(b.skin_vapour_conductance_m_s == doctest::Approx(0.5e-4));
  CHECK(b.burnt_skin_vapour_conductance_m_s == doctest::Approx(1.5e-3));
}

TEST_CASE("regions part at their bounds, and near is near in every respect") {
  using constants::Dress, constants::Medium;
  constants::Conditions at{Medium::water, 17.9, Dress::bare, 15, 25};
  CHECK(region_of(at) == constants::cold_water);
  CHECK(span_of(1.9) == constants::first_hours);
  CHECK(span_of(2) == constants::later);
  at.degC = 18;
  CHECK(region_of(at) == constants::cool_water);
  at.medium = Medium::air;
  CHECK(region_of(at) == constants::mild_air);
  at.degC = 12.9;
  CHECK(region_of(at) == constants::cold_air);
  at.degC = 27;
  CHECK(region_of(at) == constants::warm_air);
  constants::Conditions other = at;
  CHECK(is_near(at, other));
  other.degC += 5.1;
  CHECK_FALSE(is_near(at, other));
  other = at, other.dress = Dress::suit;
  CHECK_FALSE(is_near(at, other));
  other = at, other.fat_pct += 9;
  CHECK_FALSE(is_near(at, other));
}
