#include <algorithm>
#include <string>
#include <tuple>

#include "bide/cabin/co2.hpp"
#include "bide/cabin/envelope.hpp"
#include "bide/cabin/leakage.hpp"
#include "bide/core/moist_air.hpp"
#include "bide/core/units.hpp"
#include "validation/topics.hpp"

namespace bide::validation::cabin_air {

namespace {

// Man of 30 to 40 years, seated (1.0 met), L/s at 0 degC: Persily & de Jonge 2017, table 4.
constexpr double made_m3_s = 3.7e-6;
constexpr double outside = 420e-6;
constexpr const char* airing = "de Gids & Phaff 1982";

Row rule(const char* study, const std::string& quantity, const char* unit, double published, double share,
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

// A figure printed in whole units: within a share of it, or half of the last place.
Row whole(const char* study, const std::string& quantity, const char* unit, double published, double share,
          double model) {
  const double half = std::max(share * published, 0.5);
  Row r = rule(study, quantity, unit, published, 0, model, "printed in whole units: half of one, or a share");
  r.low = published - half;
  r.high = published + half;
  return r;
}

double through_crack_L_s(double wind_m_s) {
  constexpr double area_m2 = 0.05, height_m = 0.3, difference_K = 10, L_m3 = 1000;
  return L_m3 * cabin::one_sided_m3_s(area_m2, height_m, wind_m_s, difference_K);
}

Row crack(const char* quantity, double wind_m_s, double published) {
  Row r = rule(airing, quantity, "L/s", published, 0.02, through_crack_L_s(wind_m_s),
               "printed to two figures: 2 %");
  r.at = wind_m_s;
  return r;
}

// Minutes until a shut cabin reaches a share of CO2, by air volume per person.
void add_shut(const char* study, std::vector<Row>& out) {
  struct Line {
    const char *limit, *volume;
    double ppm, m3, min;
  };
  constexpr Line lines[] = {{"5,000", "0.3", 5000, 0.3, 6},     {"5,000", "0.5", 5000, 0.5, 10},
                            {"5,000", "1.0", 5000, 1.0, 21},    {"30,000", "0.3", 30000, 0.3, 40},
                            {"30,000", "1.0", 30000, 1.0, 133}, {"40,000", "0.3", 40000, 0.3, 53},
                            {"40,000", "0.5", 40000, 0.5, 89},  {"40,000", "1.0", 40000, 1.0, 178}};
  for (const Line& l : lines) {
    out.push_back(whole(study, std::string("time to ") + l.limit + " ppm, shut, " + l.volume + " m3 each",
                        "min", l.min, 0.01,
                        cabin::shut_time_s(outside, l.ppm * 1e-6, made_m3_s, l.m3) / minute_s));
    out.back().at = l.m3;
  }
}

// Water that air carries out: 95 % inside, 80 % outside.
void add_carried(std::vector<Row>& out) {
  struct Line {
    int inside_degC, outside_degC;
    double g_h[3];
  };
  constexpr Line lines[] = {{10, 5, {4, 10, 25}}, {15, 5, {7, 19, 48}}, {8, 0, {4, 11, 29}}};
  constexpr double litres_s[] = {0.3, 0.8, 2.0};
  constexpr const char* told[] = {"0.3", "0.8", "2.0"};
  constexpr double inside_humidity = 0.95, outside_humidity = 0.80;
  for (const Line& l : lines) {
    const double g_m3 = 1000 * (inside_humidity * saturation_density_kg_m3(double(l.inside_degC)) -
                                outside_humidity * saturation_density_kg_m3(double(l.outside_degC)));
    for (int i = 0; i < 3; ++i)
      out.push_back(whole("saturation densities",
                          std::string("water carried out by ") + told[i] + " L/s, " +
                              std::to_string(l.inside_degC) + " degC in, " + std::to_string(l.outside_degC) +
                              " out",
                          "g/h", l.g_h[i], 0.03, litres_s[i] * 1e-3 * hour_s * g_m3));
  }
}

// Heat loss of a canopy, in the middle of its unmeasured range, beside ISO 6946 films and gap without a sky.
void add_canopy(std::vector<Row>& out) {
  struct Line {
    double wind_m_s, single, two;
    const char* wind;
  };
  constexpr Line lines[] = {{0.5, 3.7, 2.3, "0.5 m/s"},
                            {2, 5.4, 2.9, "2 m/s"},
                            {5, 7.0, 3.3, "5 m/s"},
                            {10, 8.0, 3.5, "10 m/s"},
                            {15, 8.5, 3.6, "15 m/s"}};
  constexpr double sky_single = 2.3, sky_two = 1.15, below = 0.05, middle = 0.5;
  using scenario::CanopyKind;
  for (const auto& [skins, told, sky] : {std::tuple{CanopyKind::one_skin, "one skin, ", sky_single},
                                         std::tuple{CanopyKind::two_skins, "two skins, ", sky_two}}) {
    for (const Line& l : lines) {
      const double theory = skins == CanopyKind::one_skin ? l.single : l.two;
      out.push_back(rule("ISO 6946 films, summed by hand", std::string("canopy heat loss, ") + told + l.wind,
                         "W/(m2 K)", theory, below, cabin::layered_u_W_m2K(l.wind_m_s, skins, middle),
                         "sum without the sky: at most the margin of a film house above it"));
      out.back().high = theory + sky;
      out.back().at = l.wind_m_s;
    }
  }
}

}  // namespace

std::vector<Row> rows() {
  const char* mass_balance = "mass balance, CO2 table of Persily & de Jonge 2017";
  const char* rounding = "closed form printed to three figures: 1 %";
  std::vector<Row> out{
      rule(mass_balance, "CO2 above outdoor at 5 m3/h each", "ppm", 2660, 0.01,
           cabin::ppm_of_fraction(cabin::steady_co2_fraction(made_m3_s, 5 / hour_s, outside) - outside),
           rounding),
      rule(mass_balance, "CO2 above outdoor at 2.5 L/s each", "ppm", 1480, 0.01,
           cabin::ppm_of_fraction(cabin::steady_co2_fraction(made_m3_s, 2.5e-3, outside) - outside),
           rounding),
      rule(mass_balance, "time to 30,000 ppm, shut, 0.5 m3 each", "min", 67, 0.01,
           cabin::shut_time_s(outside, 30000e-6, made_m3_s, 0.5) / minute_s, rounding),
      crack("crack of 0.05 m2, 0.3 m high, 10 K, calm", 0, 3.6),
      crack("the same at 10 m/s", 10, 8.7),
      rule(mass_balance, "CO2 above outdoor at 5 L/s each", "ppm", 740, 0.01,
           cabin::ppm_of_fraction(cabin::steady_co2_fraction(made_m3_s, 5e-3, outside) - outside), rounding),
      rule(mass_balance, "CO2 at 0.81 L/s each", "ppm", 5000, 0.01,
           cabin::ppm_of_fraction(cabin::steady_co2_fraction(made_m3_s, 0.81e-3, outside)), rounding),
      crack("the same at 2 m/s", 2, 3.9),
      crack("the same at 5 m/s", 5, 5.3),
      crack("the same at 15 m/s", 15, 12.4),
      rule("air of 1.2 kg/m3", "heat carried by 5 m3/h", "W/K", 1.68, 0.01,
           cabin::air_exchange_W_K(5 / hour_s, 1.2), rounding),
  };
  for (Row& r : out)
    if (r.quantity == "time to 30,000 ppm, shut, 0.5 m3 each") r.at = 0.5;
  add_shut(mass_balance, out);
  add_carried(out);
  add_canopy(out);
  return out;
}

namespace {

// The limits of CO2 by the air that is shut in with each person.
Curve shut_curve(const std::vector<Row>& rows) {
  Curve curve;
  curve.title = "Time to a share of carbon dioxide in a shut cabin";
  curve.says =
      "A mass balance worked by hand, and the code's closed form: a check of the code. No series of carbon "
      "dioxide "
      "in a raft has been published.";
  curve.x_label = "air for each person", curve.x_unit = "m3";
  curve.y_label = "time", curve.y_unit = "min";
  curve.y_from_zero = true;
  constexpr double least_m3 = 0.2, most_m3 = 1.2, step_m3 = 0.1;
  for (const auto& [told, reached_ppm] :
       {std::pair{"5,000", 5000.0}, {"30,000", 30000.0}, {"40,000", 40000.0}}) {
    Condition condition{std::string(told) + " ppm", {}, {}};
    for (const Row& row : rows_named(rows, std::string("time to ") + told + " ppm, shut, "))
      condition.published.push_back(published_of(row));
    for (double m3 = least_m3; m3 <= most_m3; m3 += step_m3)
      condition.model.push_back(
          {m3, cabin::shut_time_s(outside, reached_ppm * 1e-6, made_m3_s, m3) / minute_s, {}, {}});
    curve.conditions.push_back(condition);
  }
  return curve;
}

Curve canopy_curve(const std::vector<Row>& rows) {
  Curve curve;
  curve.title = "Heat loss of a canopy, by wind";
  curve.says =
      "Sums of standard films without a sky, with what a sky may add, and the model over the whole of its "
      "range: no "
      "canopy of a raft has been measured.";
  curve.x_label = "wind", curve.x_unit = "m/s";
  curve.y_label = "heat loss", curve.y_unit = "W/(m2 K)";
  curve.y_from_zero = true;
  constexpr double most_m_s = 16, step_m_s = 1, middle = 0.5;
  using scenario::CanopyKind;
  for (const auto& [skins, told] :
       {std::pair{CanopyKind::one_skin, "one skin"}, {CanopyKind::two_skins, "two skins"}}) {
    Condition condition{told, {}, {}};
    for (const Row& row : rows_named(rows, std::string("canopy heat loss, ") + told))
      condition.published.push_back(published_of(row));
    for (double wind = step_m_s; wind <= most_m_s; wind += step_m_s)
      condition.model.push_back({wind, cabin::layered_u_W_m2K(wind, skins, middle),
                                 cabin::layered_u_W_m2K(wind, skins, 0.0),
                                 cabin::layered_u_W_m2K(wind, skins, 1.0)});
    curve.conditions.push_back(condition);
  }
  return curve;
}

Curve crack_curve(const std::vector<Row>& rows) {
  Curve curve;
  curve.title = "Air through a crack on one side, by wind";
  curve.says =
      "The law of de Gids and Phaff worked by hand, and the code: 0.05 m2, 0.3 m high, 10 K between inside "
      "and outside.";
  curve.x_label = "wind", curve.x_unit = "m/s";
  curve.y_label = "air", curve.y_unit = "L/s";
  curve.y_from_zero = true;
  Condition condition;
  for (const Row& row : rows)
    if (row.study == airing) condition.published.push_back(published_of(row));
  constexpr double most_m_s = 16, step_m_s = 1;
  for (double wind = 0; wind <= most_m_s; wind += step_m_s)
    condition.model.push_back({wind, through_crack_L_s(wind), {}, {}});
  curve.conditions = {condition};
  return curve;
}

}  // namespace

std::vector<Curve> curves(const std::vector<Row>& rows) {
  return {shut_curve(rows), canopy_curve(rows), crack_curve(rows)};
}

}  // namespace bide::validation::cabin_air
