#include <sstream>

#include "bide/cabin/clothing.hpp"
#include "bide/constants/body.hpp"
#include "bide/core/units.hpp"
#include "bide/system/readings.hpp"
#include "validation/support/rest.hpp"
#include "validation/topics.hpp"

namespace bide::validation::fatness {

namespace {

constexpr const char* topic = "fatness";

struct Man {
  double mass_kg, fat_pct;
};
constexpr Man average{72, 15}, very_fat{105, 38}, leanest{62, 7};

// Samples half an hour apart.
Run sit(const Man& man, double degC, double duration_h, bool in_water) {
  Rest r;
  r.duration_h = duration_h;
  r.air_degC = r.sea_degC = degC;
  std::ostringstream crew;
  crew << R"([{"sex": "male", "age_years": 25, "height_m": 1.75, "mass_kg": )" << man.mass_kg
       << R"(, "body_fat_pct": )" << man.fat_pct << R"(, "clothing": "shorts"}])";
  r.crew = crew.str();
  if (in_water) {
    r.raft.clear();
    r.boarding = R"({"kind": "none"})";
  }
  return run_case(scenario_of(r, 30), hour_s / 2);
}

double rate(const Run& run, int entry, std::size_t halves) {
  const std::size_t last = run.samples.size() - 1;
  return run.rates(last - halves, last)[static_cast<std::size_t>(system::person_offset(0) + entry)];
}

double core_degC(const Run& run, std::size_t sample) {
  return person(run.samples.at(sample))[body::at::node(body::trunk, body::core)];
}

double skin_degC(const Run& run) {
  return system::mean_skin_degC(run.compiled.persons[0], person(run.samples.back()));
}

double conductance_W_m2K(const Man& man) {
  const Run run = sit(man, 10, 2, false);
  const double lost_W = rate(run, body::at::total_metabolic, 1) - rate(run, body::at::total_stored, 1);
  return lost_W / run.compiled.persons[0].area_total_m2 /
         (core_degC(run, run.samples.size() - 1) - skin_degC(run));
}

// Mean skin and surroundings at which shivering reaches a tenth of resting heat, cooling by whole degrees.
struct Onset {
  double skin_degC, around_degC;
};
Onset onset(const Man& man, bool in_water) {
  constexpr double share = 0.1, warm_degC = 35;
  double before = 0, skin_before = 0;
  for (double degC = warm_degC; degC > 0; degC -= 1) {
    const Run run = sit(man, degC, in_water ? 3 : 2, in_water);
    const double part =
        rate(run, body::at::total_shivering, 1) / run.compiled.persons[0].basal_total_W - share;
    if (part >= 0) {
      const double back = part / (part - before);  // from this degree towards the one before
      return {skin_degC(run) + back * (skin_before - skin_degC(run)), degC + back};
    }
    before = part;
    skin_before = skin_degC(run);
  }
  return {0, 0};
}

// Settled in half a day: a fat man is still giving up a warm start after three hours. Not below a core of 35
// degC, where a trial ends.
double lowest_stable_degC(const Man& man) {
  constexpr double stable_K = 0.1, trial_ends_degC = 35, half_day_h = 12;
  for (double degC = 35; degC > 0; degC -= 1) {
    const Run run = sit(man, degC, half_day_h, true);
    const std::size_t end = run.samples.size() - 1;
    if (core_degC(run, end - 2) - core_degC(run, end) >= stable_K || core_degC(run, end) < trial_ends_degC)
      return degC + 1;
  }
  return 0;
}

// Share of a segment's internal insulation (core to skin over the heat that leaves it) that its fat accounts
// for, spread over its skin, once settled in water.
double fat_share_of_insulation(const Run& run, double water_degC, int segment) {
  const body::Build<double>& b = run.compiled.persons[0];
  const double* end = person(run.samples.back());
  const double skin_degC = end[body::at::node(segment, body::skin)];
  const double film = cabin::water_film_W_m2K(0.0), covered = b.covered[segment];
  const double lost_W_m2 =
      ((1 - covered) * film + covered * cabin::immersed_W_m2K(b.immersed_insulation_m2K_W, film)) *
      (skin_degC - water_degC);
  const double whole_m2K_W = (core_degC(run, run.samples.size() - 1) - skin_degC) / lost_W_m2;
  const double fat_kg =
      b.capacity_J_K[segment][body::fat] / (constants::fat_specific_heat_kcal_kgK * constants::kcal_J);
  const double fat_m2K_W =
      fat_kg / (constants::fat_density_kg_m3 * b.area_m2[segment] * constants::fat_conductivity_W_mK);
  return fat_m2K_W / whole_m2K_W;
}

double to_34_h(const Man& man) {
  const Run run = sit(man, 10, 12, true);
  return time_reached_s(
             run, [](const double* x) { return x[body::at::node(body::trunk, body::core)]; }, 34, false) /
         hour_s;
}

void resting_heat(std::vector<Row>& out) {
  constexpr double lean_kg = 61.2, fat_pct[] = {13, 25, 40}, W_m2[] = {67.9, 60.7, 51.6};
  for (int i = 0; i < 3; ++i) {
    const Run run = sit({lean_kg / (1 - fat_pct[i] / pct), fat_pct[i]}, 10, 3, false);
    std::ostringstream name;
    name << "metabolic rate at 10 degC in shorts, " << fat_pct[i] << " % fat";
    out.push_back(make_row(topic, "Response to cold air and body fat, 1963", name.str(), "W/m2", W_m2[i],
                           0.8 * W_m2[i], 1.2 * W_m2[i],
                           rate(run, body::at::total_metabolic, 2) / run.compiled.persons[0].area_total_m2,
                           "20 %: wide individual differences"));
    blame(out.back(), "the model makes what it loses; these people ran a debt, mostly of their limbs");
  }
}

// 1.88 f + 3.72 (1 - f) kJ/(kg K), f the fat.
void specific_heat(std::vector<Row>& out) {
  for (const Man& man : {Man{72, 15}, Man{90, 30}}) {
    const Run run = sit(man, 28, 1, false);
    const body::Build<double>& b = run.compiled.persons[0];
    double capacity_J_K = b.blood_capacity_J_K + b.finger_capacity_J_K;
    for (const auto& segment : b.capacity_J_K)
      for (const double node : segment) capacity_J_K += node;
    constexpr double J_kJ = 1000;
    const double fat = man.fat_pct / pct, kJ_kgK = 1.88 * fat + 3.72 * (1 - fat);
    std::ostringstream name;
    name << "specific heat of the body, " << man.fat_pct << " % fat";
    out.push_back(make_row(topic, "Webb, heat storage during cooling", name.str(), "kJ/(kg K)", kJ_kgK,
                           0.97 * kJ_kgK, 1.03 * kJ_kgK, capacity_J_K / J_kJ / man.mass_kg,
                           "3 %: no spread"));
    out.back().kind = Kind::rule;
  }
}

}  // namespace

std::vector<Row> rows() {
  std::vector<Row> out;
  resting_heat(out);
  const char* reactions = "Reactions to cold";
  out.push_back(make_row(topic, reactions, "conductance at 10 degC, average over very fat", "-", 2, 1.5, 2.5,
                         conductance_W_m2K(average) / conductance_W_m2K(very_fat), "two men"));
  out.back().trivial = 1;
  blame(out.back(), "muscle of the limbs keeps its flow in the cold, which hides part of the fat");
  out.push_back(make_row(topic, reactions, "mean skin at onset of shivering, average man", "degC", 30, 28, 32,
                         onset(average, false).skin_degC, "two men: 2 K"));
  out.push_back(make_row(topic, reactions, "mean skin at onset of shivering, very fat man", "degC", 25, 23,
                         27, onset(very_fat, false).skin_degC, "two men: 2 K"));
  blame(out.back(), "as above: his skin stays too warm and his core falls too soon");

  constexpr Man thin{72, 12}, thick{72, 25};
  constexpr double mm = 1000;
  const double area_m2 = sit(thin, 30, 1, false).compiled.persons[0].area_total_m2;
  const double skinfold_mm =
      2 * mm * (thick.fat_pct - thin.fat_pct) / pct * thin.mass_kg / (constants::fat_density_kg_m3 * area_m2);
  out.push_back(make_row(topic, "Smith & Hanna 1975", "critical water temperature per mm of skinfold", "K/mm",
                         -0.237, -0.36, -0.12,
                         (onset(thick, true).around_degC - onset(thin, true).around_degC) / skinfold_mm,
                         "half of it either way: skinfold is derived"));
  out.back().trivial = 0;
  const char* keatinge = "Hayward & Keatinge 1981";
  out.push_back(make_row(topic, keatinge, "lowest water with a stable core, leanest", "degC", 32, 26, 34,
                         lowest_stable_degC(leanest), "ends of the group"));
  blame(out.back(),
        "one of the least reactive people as well as the leanest: the reactive held their core in water 10 K "
        "colder at "
        "like fatness, and the model's lean man is an average one");
  out.push_back(make_row(topic, keatinge, "lowest water with a stable core, fattest", "degC", 12, 0, 16,
                         lowest_stable_degC(very_fat), "said to be below 12"));
  const double coldest_degC = lowest_stable_degC(average);
  const Run settled = sit(average, coldest_degC, 12, true);
  out.push_back(make_row(topic, keatinge, "share of the trunk's insulation that is fat's", "-", 0.6, 0.5, 1,
                         fat_share_of_insulation(settled, coldest_degC, body::trunk),
                         "said to be over half"));
  blame(out.back(),
        "the trunk's muscle and skin keep too little flow, or too much of the fat lies elsewhere");
  out.push_back(make_row(topic, keatinge, "share of the legs' insulation that is fat's", "-", 0.25, 0, 0.33,
                         fat_share_of_insulation(settled, coldest_degC, body::legs),
                         "said to be less than a third"));
  blame(out.back(), "the legs' muscle keeps its flow and insulates too little");
  for (Row& r : out)
    if (r.study != reactions && r.study != keatinge && r.quantity.find("metabolic") != 0)
      blame(r, "flow through the limbs' muscle is not closed in the cold, so fat counts for too little");
  out.push_back(make_row(topic, "physiology", "core 34 degC in water of 10 degC, fat man after lean", "h", 3,
                         0.1, 12, to_34_h(very_fat) - to_34_h(leanest), "later by any time"));
  out.back().kind = Kind::rule;
  specific_heat(out);
  blame_named(out, {{"specific heat of the body",
                     "the tissues of the 1971 table hold 3 % less heat at that fatness"}});
  return out;
}

}  // namespace bide::validation::fatness
