#include "bide/core/moist_air.hpp"
#include "bide/core/units.hpp"
#include "bide/system/readings.hpp"
#include "validation/support/raft_trial.hpp"
#include "validation/topics.hpp"

namespace bide::validation::raft_people {

namespace {

constexpr const char* topic = "raft_people";
constexpr const char* study = "Environmental Ergonomics XII, Piran 2007";
constexpr double step_s = 900;

// The first person at the end of 135 min.
struct End {
  double loss_W_m2, metabolic_W, core_degC, core_fall_K, skin_degC;
};

Run run_of(bool inflated, bool wet, int persons) {
  RaftTrial trial;
  trial.duration_h = 2.25;
  trial.air_degC = 19;
  trial.sea_degC = 16;
  trial.height_m = 1.78;
  trial.mass_kg = 82;
  trial.persons = persons;
  trial.inflated = inflated;
  trial.wet = wet;
  return run_case(scenario_of(trial, 15), step_s,
                  [](system::Compiled<double>& compiled) { dress_for_trial(compiled); });
}

End end_of(bool inflated, bool wet, int persons = 2) {
  const Run run = run_of(inflated, wet, persons);
  const std::size_t last = run.samples.size() - 1;
  const auto rate = [&](std::size_t from, int entry) {
    return run.rates(from, last)[static_cast<std::size_t>(system::person_offset(0) + entry)];
  };
  using namespace body::at;
  double loss_W = 0;
  for (const int path : {total_to_air, total_to_canopy, total_to_floor, total_to_floor_water, total_to_sea,
                         total_to_tube, total_evaporation})
    loss_W += rate(last - 1, path);
  const body::Build<double>& b = run.compiled.persons[0];
  const double* end = person(run.samples.back());
  // A heat-flow disc on the skin does not see what evaporates from the skin, whether it leaves or condenses
  // in the cloth.
  const double skin_degC = system::mean_skin_degC(b, end);
  loss_W -=
      latent_heat_J_kg(skin_degC) * (rate(last - 1, total_skin_water) + rate(last - 1, total_distilled));
  const double core_degC = system::core_degC(end);
  return {loss_W / b.area_total_m2, rate(0, total_metabolic), core_degC,
          system::core_degC(person(run.samples.front())) - core_degC, skin_degC};
}

}  // namespace

std::vector<Row> rows() {
  const End flat_dry = end_of(false, false), flat_wet = end_of(false, true);
  const End full_dry = end_of(true, false), full_wet = end_of(true, true);
  const End six = end_of(true, false, 6);
  std::vector<Row> out;
  const auto add = [&](const char* quantity, const char* unit, double published, double low, double high,
                       double model, double trivial, const char* why) {
    out.push_back(make_row(topic, study, quantity, unit, published, low, high, model, why));
    out.back().trivial = trivial;
    out.back().source_class = Class::from_memory;
  };
  add("skin heat loss, wet over dry, flat floor", "-", 1.21, 1.03, 1.39,
      flat_wet.loss_W_m2 / flat_dry.loss_W_m2, 1, "15 %; conditions from memory");
  add("skin heat loss, wet over dry, inflated floor", "-", 1.24, 1.05, 1.42,
      full_wet.loss_W_m2 / full_dry.loss_W_m2, 1, "15 %; conditions from memory");
  add("metabolic rate, wet over dry, flat floor", "-", 1.12, 1.01, 1.23,
      flat_wet.metabolic_W / flat_dry.metabolic_W, 1, "10 %; conditions from memory");
  add("metabolic rate, wet over dry, inflated floor", "-", 1.10, 1.00, 1.21,
      full_wet.metabolic_W / full_dry.metabolic_W, 1, "10 %; conditions from memory");
  add("fall of core, flat less inflated floor", "K", 0.4, 0.02, 0.8,
      flat_dry.core_fall_K - full_dry.core_fall_K, 0, "sign, and at most twice");
  add("fall of core, wet less dry, flat floor", "K", 0, -0.5, 0.5,
      flat_wet.core_fall_K - flat_dry.core_fall_K, 0, "no effect found: one SD of the fall");
  add("six less two people, skin", "K", 0, -0.7, 0.7, six.skin_degC - full_dry.skin_degC, 0,
      "no difference found: least printed SD");
  add("six less two people, core", "K", 0, -0.3, 0.3, six.core_degC - full_dry.core_degC, 0,
      "no difference found: least printed SD");
  add("six less two people, metabolic rate", "W", 0, -8.4, 8.4, six.metabolic_W - full_dry.metabolic_W, 0,
      "no difference found: least printed SD");
  for (Row& r : out) {
    const auto about = [&](const char* words) { return r.quantity.rfind(words, 0) == 0; };
    blame(
        r,
        about("six less two")
            ? "the shut cabin warms by about 3 K from two to six people; entrances of the trial may have "
              "stood open, and the canopy's heat loss and leakage are unmeasured"
        : about("metabolic rate")
            ? "the loss is raised more than found, and shivering makes up for more of it than people do"
        : about("skin heat loss, wet over dry")
            ? "wet cloth and a wet seat cost more than was found; which of them, or the trial's air, is not "
              "known"
            : "the floor takes too little heat (see raft_insulation), and shivering makes up for it");
  }
  return out;
}

std::vector<Curve> curves(const std::vector<Row>&) {
  Curve curve;
  curve.title = "Change of core temperature over 135 minutes in a raft";
  curve.says =
      "Two men in a sixteen-person raft, dry: mean fall by the end with one standard deviation, and the "
      "model. Only the "
      "difference between floors is compared in the table: why the trial's cores fell at all is not told. "
      "Sea and air "
      "temperatures are from memory.";
  curve.x_label = "time", curve.x_unit = "min";
  curve.y_label = "change of core temperature", curve.y_unit = "K";
  // Environmental Ergonomics XII, abstract: falls of 1.1 (0.5) and 0.7 (0.3) K.
  struct Floor {
    const char* name;
    bool inflated;
    double fall_K, sd_K;
  };
  for (const Floor& floor : {Floor{"flat floor", false, 1.1, 0.5}, {"inflated floor", true, 0.7, 0.3}}) {
    const Run run = run_of(floor.inflated, false, 2);
    const double start_degC = system::core_degC(person(run.samples.front()));
    Condition condition{
        floor.name, {{135, -floor.fall_K, -floor.fall_K - floor.sd_K, -floor.fall_K + floor.sd_K}}, {}};
    for (const Sample& sample : run.samples)
      condition.model.push_back(
          {sample.t_s / minute_s, system::core_degC(person(sample)) - start_degC, {}, {}});
    curve.conditions.push_back(condition);
  }
  return {curve};
}

}  // namespace bide::validation::raft_people
