#include <sstream>

#include "validation/support/rest.hpp"
#include "validation/topics.hpp"

namespace bide::validation {

namespace {

constexpr const char* topic = "immersion";
constexpr double minute_s = 60, hour_s = 3600;
constexpr int rectal = body::at::node(body::trunk, body::core);

Run immersed(double water_degC, double fat_pct, const char* clothing, const char* lifejacket) {
  Rest r;
  r.duration_h = 1;
  r.air_degC = r.sea_degC = water_degC;
  r.raft.clear();
  r.boarding = R"({"kind": "none"})";
  std::ostringstream crew;
  crew << R"([{"sex": "male", "age_years": 25, "height_m": 1.75, "mass_kg": 75, "body_fat_pct": )" << fat_pct
       << R"(, "clothing": ")" << clothing << R"(", "lifejacket": )" << lifejacket << "}]";
  r.crew = crew.str();
  return run_case(scenario_of(r, 10), 10 * minute_s);
}

double change(const Run& run, std::size_t from, std::size_t to, int entry) {
  return person(run.samples.at(to))[entry] - person(run.samples.at(from))[entry];
}

void clothed(std::vector<Row>& out) {
  constexpr double water_degC[] = {5, 10, 15}, cooling_K_h[] = {3.69, 2.67, 1.65}, heat_W[] = {252, 211, 170};
  constexpr const char* study = "Hayward, Eckerson & Collis 1975";
  for (int i = 0; i < 3; ++i) {
    const Run run = immersed(water_degC[i], 15, "indoor", "true");
    std::ostringstream at;
    at << " at " << water_degC[i] << " degC, clothed";
    out.push_back(make_row(topic, study, "cooling" + at.str(), "K/h", cooling_K_h[i], 0.75 * cooling_K_h[i],
                           1.25 * cooling_K_h[i], -change(run, 3, 6, rectal) * 2, "25 %: spread not known"));
    out.back().trivial = 0;
    blame(out.back(), "goes with the heat made, which is 140 W above this study's");
    out.push_back(make_row(topic, study, "heat production" + at.str(), "W", heat_W[i], 0.75 * heat_W[i],
                           1.25 * heat_W[i], change(run, 3, 6, body::at::total_metabolic) / (hour_s / 2),
                           "25 %: spread not known"));
    blame(out.back(), "the shivering law, from later trials, gives about twice the heat of this study");
  }
}

void nude(std::vector<Row>& out) {
  constexpr double water_degC[] = {20, 28}, fall_K[] = {-0.9, -0.5}, low_W[] = {275, 90},
                   moderate_W[] = {195, 45};
  constexpr const char* study = "Tikuisis, Gonzalez & Pandolf 1988";
  for (int i = 0; i < 2; ++i) {
    const Run low = immersed(water_degC[i], 10, "shorts", "false");
    const Run moderate = immersed(water_degC[i], 18, "shorts", "false");
    std::ostringstream at;
    at << " after 1 h at " << water_degC[i] << " degC, nude";
    out.push_back(make_row(topic, study, "rectal change" + at.str(), "K", fall_K[i], fall_K[i] - 0.4,
                           fall_K[i] + 0.4, (change(low, 0, 6, rectal) + change(moderate, 0, 6, rectal)) / 2,
                           "0.4 K: spread not stated"));
    out.back().trivial = 0;
    blame(out.back(), "closing of the skin's vessels seems to keep too much heat in the trunk in mild water");
    const auto rise = [&](const Run& run, const char* who, double W) {
      out.push_back(make_row(topic, study, std::string("metabolic rise of ") + who + at.str(), "W", W,
                             0.65 * W, 1.35 * W,
                             change(run, 5, 6, body::at::total_shivering) / (10 * minute_s),
                             "35 %: fatness of the groups is a judgement"));
      out.back().trivial = 0;
      blame(out.back(), "the law weakens with the root of fatness; 18 % may be leaner than the group was");
    };
    rise(low, "low fat", low_W[i]);
    rise(moderate, "moderate fat", moderate_W[i]);
  }
}

}  // namespace

std::vector<Row> immersion_rows() {
  std::vector<Row> out;
  clothed(out);
  nude(out);
  return out;
}

}  // namespace bide::validation
