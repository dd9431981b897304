#include "bide/constants/air.hpp"
#include "bide/constants/boarding.hpp"
#include "bide/constants/weather.hpp"
#include "validation/support/outlook.hpp"
#include "validation/support/rest.hpp"
#include "validation/topics.hpp"

namespace bide::validation::common_practice {

namespace {

Rest four_people(const char* raft, const std::string& clothing) {
  Rest r;
  r.raft = std::string(R"({"kind": ")") + raft + R"("})";
  const auto someone = [&](const char* sex, int age_years, double height_m, int mass_kg) {
    return std::string(R"({"sex": ")") + sex + R"(", "age_years": )" + std::to_string(age_years) +
           R"(, "height_m": )" + std::to_string(height_m) + R"(, "mass_kg": )" + std::to_string(mass_kg) +
           R"(, "clothing": ")" + clothing + R"("})";
  };
  r.crew = "[" + someone("male", 44, 1.80, 84) + ", " + someone("female", 41, 1.68, 66) + ", " +
           someone("male", 29, 1.76, 73) + ", " + someone("female", 33, 1.70, 62) + "]";
  r.boarding = R"({"kind": "dry"})";
  r.rationing = "{}";
  r.routine = "{}";
  return r;
}

double night_inside_degC(const char* raft) {
  Rest r = four_people(raft, "wet_weather");
  r.start = "2031-10-14T20:00:00Z";
  r.latitude_deg = 46;
  r.duration_h = 10;
  r.air_degC = 10;
  r.sea_degC = 13;
  r.humidity_pct = 80;
  r.wind_m_s = 0.5;
  r.cloud = 0.8;
  const timeline::Timeline run = timeline_of(scenario_of(r, 10));
  return mean_over(run, run.inside_air_degC, 6.5, 9.5);
}

// How many of the four stop being able for want of water.
double ended_by_thirst() {
  Rest r = four_people("offshore_4", "temperate_sailing");
  r.start = "2031-06-02T16:00:00Z";
  r.latitude_deg = 44.5;
  r.duration_h = 288;
  r.air_degC = 16;
  r.sea_degC = 16.5;
  r.humidity_pct = 80;
  r.wind_m_s = 6;
  r.cloud = 0.6;
  r.wind_sea = true;
  r.stores = R"({"pack": "iso_9650_less_than_24_h"})";
  double count = 0;
  for (const timeline::Fate& fate : timeline_of(scenario_of(r, 60)).fates)
    if (fate.able_cause == system::Limit::able_water_deficit) count += 1;
  return count;
}

}  // namespace

std::vector<Row> rows() {
  constexpr const char *topic = "common_practice", *study = "training, from memory";
  constexpr double Pa_per_kPa = 1000;
  std::vector<Row> out;
  out.push_back(make_row(topic, study, "four in a raft for four less in one for eight, inside air", "K", 1,
                         0.1, 10, night_inside_degC("offshore_4") - night_inside_degC("offshore_8"),
                         "warmer: sign, not a trace; no size is told"));
  out.back().trivial = 0;
  out.push_back(make_row(topic, study, "pack for less than 24 h: ended by thirst, of four people", "people",
                         4, 4, 4, ended_by_thirst(), "all of them"));
  out.push_back(make_row(
      topic, "MSC/Circ.811", "pressure at the depth of release", "kPa", 30, 20, 40,
      constants::release_depth_m * constants::water_density_kg_m3 * constants::gravity_m_s2 / Pa_per_kPa,
      "2 to 4 m of water, told as 0.2 to 0.4 bar"));
  for (Row& r : out) {
    r.kind = Kind::rule;
    r.source_class = Class::common_practice;
  }
  return out;
}

}  // namespace bide::validation::common_practice
