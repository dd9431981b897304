#include "cabin/co2.hpp"
#include "cabin/leakage.hpp"
#include "validation/topics.hpp"

namespace bide::validation {

namespace {

// Man of 30 to 40 years, seated (1.0 met), L/s at 0 degC: Persily & de Jonge 2017, table 4.
constexpr double made_m3_s = 3.7e-6;
constexpr double outside = 420e-6;

Row rule(const char* study, const char* quantity, const char* unit, double published, double share,
         double model, const char* why) {
  Row r;
  r.topic = "cabin_air";
  r.study = study;
  r.quantity = quantity;
  r.unit = unit;
  r.kind = Kind::rule;
  r.published = published;
  r.low = published * (1 - share);
  r.high = published * (1 + share);
  r.model = model;
  r.why = why;
  return r;
}

}  // namespace

std::vector<Row> cabin_air_rows() {
  constexpr double hour_s = 3600, minute_s = 60;
  const char* mass_balance = "mass balance, CO2 table of Persily & de Jonge 2017";
  const char* rounding = "closed form printed to three figures: 1 %";
  const char* airing = "de Gids & Phaff 1982";
  const char* two_figures = "printed to two figures: 2 %";
  return {
      rule(mass_balance, "CO2 above outdoor at 5 m3/h each", "ppm", 2660, 0.01,
           cabin::ppm_of_fraction(cabin::steady_co2_fraction(made_m3_s, 5 / hour_s, outside) - outside),
           rounding),
      rule(mass_balance, "CO2 above outdoor at 2.5 L/s each", "ppm", 1480, 0.01,
           cabin::ppm_of_fraction(cabin::steady_co2_fraction(made_m3_s, 2.5e-3, outside) - outside),
           rounding),
      rule(mass_balance, "time to 30,000 ppm, shut, 0.5 m3 each", "min", 67, 0.01,
           cabin::shut_time_s(outside, 30000e-6, made_m3_s, 0.5) / minute_s, rounding),
      rule(airing, "crack of 0.05 m2, 0.3 m high, 10 K, calm", "L/s", 3.6, 0.02,
           1000 * cabin::one_sided_m3_s(0.05, 0.3, 0.0, 10.0), two_figures),
      rule(airing, "the same at 10 m/s", "L/s", 8.7, 0.02,
           1000 * cabin::one_sided_m3_s(0.05, 0.3, 10.0, 10.0), two_figures),
  };
}

}  // namespace bide::validation
